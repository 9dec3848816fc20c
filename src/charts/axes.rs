//! The axes of a chart laid out: lines, notches, and the figures beside them.

use super::chart::{Chart, Grain};
use super::layout::{Drawing, Stroke, TEXT, TOP, Words, width_of};
use super::pen::Pen;
use super::ticks::Tick;

/// Lines of the ticks and what stands beside them.
pub(super) fn axes(
    drawing: &mut Drawing,
    chart: &Chart,
    up: &[Tick],
    across: &[Tick],
    (left, right, bottom): (i64, i64, i64),
) {
    let mut grid = Pen::new();
    let words = |x: i64, y: i64, anchor: &'static str, words: String| Words {
        x,
        y,
        anchor,
        words,
    };
    for tick in up {
        let y = drawing.y.at(tick.at);
        if !drawing.lying {
            grid.line(&[(left, y), (right, y)]);
        } else if matches!(chart.y.grain, Grain::Days) {
            // A notch in the upright.
            grid.line(&[(left - 50, y), (left, y)]);
        }
        let beside = words(left - 70, y + 45, "end", tick.label.clone());
        drawing.words.push(beside);
    }
    let below = bottom + (TEXT + 5) * 10;
    let mut free = 0;
    for tick in across {
        let x = drawing.x.at(tick.at);
        if drawing.lying {
            grid.line(&[(x, TOP * 10), (x, bottom)]);
        } else {
            grid.line(&[(x, bottom), (x, bottom + 40)]);
        }
        let half = width_of(&tick.label) / 2;
        let middle = x.clamp(half, (drawing.width * 10 - half).max(half));
        if middle - half < free {
            continue;
        }
        free = middle + half + 40;
        let under = words(middle, below, "middle", tick.label.clone());
        drawing.words.push(under);
    }
    drawing.strokes.push(Stroke {
        class: "chart-grid".to_owned(),
        path: grid.path(),
    });
    let mut base = Pen::new();
    let class = if drawing.lying {
        base.line(&[(left, TOP * 10), (left, bottom)]);
        "chart-axis upright"
    } else {
        base.line(&[(left, bottom), (right, bottom)]);
        "chart-axis"
    };
    drawing.strokes.push(Stroke {
        class: class.to_owned(),
        path: base.path(),
    });
    if !chart.y.label.is_empty() {
        let at = (TEXT - 1) * 10;
        drawing
            .words
            .push(words(0, at, "start", chart.y.label.clone()));
    }
    if !chart.x.label.is_empty() {
        let at = (drawing.height - 4) * 10;
        drawing
            .words
            .push(words(right, at, "end", chart.x.label.clone()));
    }
}

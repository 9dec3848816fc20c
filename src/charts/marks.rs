//! The marks of a chart laid out: each a path with the classes that say how it is drawn.

use super::chart::{Ink, Mark, Shape};
use super::layout::{Drawing, Stroke};
use super::pen::Pen;
use super::thin::{thin_dots, thin_line};

/// How wide the notch at the end of a peg is, in tenths.
const NOTCH_WIDTH: i64 = 40;

/// How far a notch reaches above and below its place, in tenths.
const NOTCH: i64 = 100;

/// The classes of a mark.
#[must_use]
pub fn class_of(mark: &Mark) -> String {
    let shape = match mark.shape {
        Shape::Line | Shape::Steps => "mark-line",
        Shape::Band => "mark-band",
        Shape::Dots => "mark-dots",
        Shape::Rings => "mark-rings",
        Shape::Squares => "mark-squares",
        Shape::Notches => "mark-notches",
        Shape::Bars | Shape::Lying | Shape::Pegs => "mark-bars",
    };
    format!("{shape} {}", ink_class(mark.ink))
}

fn ink_class(ink: Ink) -> &'static str {
    match ink {
        Ink::Main => "ink-main",
        Ink::Second => "ink-second",
        Ink::Third => "ink-third",
        Ink::Quiet => "ink-quiet",
    }
}

pub(super) fn draw(drawing: &mut Drawing, mark: &Mark) {
    let upper: Vec<(i64, i64)> = mark
        .spots
        .iter()
        .map(|spot| drawing.place(spot.x, spot.y))
        .collect();
    let mut pen = Pen::new();
    match mark.shape {
        Shape::Line => pen.line(&thin_line(&upper)),
        Shape::Steps => pen.steps(&thin_line(&upper)),
        Shape::Band => {
            let lower = mark
                .spots
                .iter()
                .map(|spot| drawing.place(spot.x, spot.from));
            pen.area(&thin_line(&upper), &thin_line(&lower.collect::<Vec<_>>()));
        }
        Shape::Dots | Shape::Rings | Shape::Squares => {
            for place in thin_dots(&upper) {
                pen.dot(place);
            }
        }
        Shape::Notches => {
            for (x, y) in thin_dots(&upper) {
                pen.line(&notch(drawing, (x, y)));
            }
        }
        Shape::Bars => {
            for spot in &mark.spots {
                let (from, to) = drawing.x.around(spot.x, mark.width);
                pen.bar((from, drawing.y.at(spot.from)), (to, drawing.y.at(spot.y)));
            }
        }
        Shape::Pegs => {
            for spot in &mark.spots {
                let (top, bottom) = drawing.y.around(spot.y, mark.width);
                let thin = (bottom - top) / 3;
                let (begin, end) = (drawing.x.at(spot.from), drawing.x.at(spot.x));
                let notch = (end - NOTCH_WIDTH).max(begin);
                pen.bar((begin, top + thin), (notch, bottom - thin));
                pen.bar((notch, top), (end.max(notch + 15), bottom));
            }
        }
        Shape::Lying => {
            for spot in &mark.spots {
                let (from, to) = drawing.y.around(spot.y, mark.width);
                pen.bar((drawing.x.at(spot.from), from), (drawing.x.at(spot.x), to));
            }
        }
    }
    let path = pen.path();
    let class = class_of(mark);
    if mark.shape == Shape::Rings {
        // The hole is a smaller dot in the colour of the ground.
        let hole = Stroke {
            class: "mark-hole".to_owned(),
            path: path.clone(),
        };
        drawing.strokes.extend([Stroke { class, path }, hole]);
    } else {
        drawing.strokes.push(Stroke { class, path });
    }
}

/// A notch, as far as it lies in the plot.
fn notch(drawing: &Drawing, (x, y): (i64, i64)) -> [(i64, i64); 2] {
    let (top, bottom) = drawing.upright();
    [(x, (y - NOTCH).max(top)), (x, (y + NOTCH).min(bottom))]
}

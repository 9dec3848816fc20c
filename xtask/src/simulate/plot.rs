//! The plot of a simulation, as a small SVG: gain against misses, and foretold chances against what came.

use std::fmt::Write;

use super::Results;

/// Side of a panel's square, in pixels, and where the panels begin.
const SIDE: f64 = 240.0;
const LEFT: [f64; 2] = [56.0, 376.0];
const TOP: f64 = 28.0;

/// Where the axes of the first panel end: gain and misses, as shares.
const GAIN_MAX: f64 = 0.2;
const MISSED_MAX: f64 = 0.8;

/// The whole picture.
pub fn svg(results: &Results) -> String {
    let mut out = String::from(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 640 330\" width=\"640\" height=\"330\" \
         font-family=\"sans-serif\" font-size=\"12\" role=\"img\">\n\
         <title>Gain against missed sets by rule; foretold chances against what came</title>\n\
         <rect width=\"640\" height=\"330\" fill=\"#ffffff\"/>\n",
    );
    panel(
        &mut out,
        0,
        "missed sets, %",
        "gain in 40 weeks, %",
        [MISSED_MAX, GAIN_MAX],
    );
    for (rule, tally) in &results.rules {
        if let (Some(gain), Some(missed)) = (tally.gain.get(), tally.missed.share()) {
            let (x, y) = at(0, missed / MISSED_MAX, gain / GAIN_MAX);
            dot(&mut out, x, y);
            // The name stands where there is room for it.
            let (aside, anchor) = if missed > MISSED_MAX / 2.0 {
                (-7.0, "end")
            } else {
                (7.0, "start")
            };
            text(&mut out, x + aside, y + 4.0, anchor, rule.name);
        }
    }
    panel(
        &mut out,
        1,
        "foretold chance of the rep range, %",
        "how often it came, %",
        [1.0, 1.0],
    );
    let ((x1, y1), (x2, y2)) = (at(1, 0.0, 0.0), at(1, 1.0, 1.0));
    let _ = writeln!(
        out,
        "<path d=\"M{x1:.1} {y1:.1} {x2:.1} {y2:.1}\" stroke=\"#999999\" stroke-dasharray=\"4 4\"/>"
    );
    for (chance, came) in &results.together().foretold {
        if let (Some(chance), Some(came)) = (chance.get(), came.share()) {
            let (x, y) = at(1, chance, came);
            dot(&mut out, x, y);
        }
    }
    out.push_str("</svg>\n");
    out
}

/// A frame with its axes: names, and a figure at the middle and the end of each.
fn panel(out: &mut String, which: usize, across: &str, upward: &str, ends: [f64; 2]) {
    let left = LEFT[which];
    let bottom = TOP + SIDE;
    let _ = writeln!(
        out,
        "<path d=\"M{left} {TOP} V{bottom} H{}\" fill=\"none\" stroke=\"#333333\"/>",
        left + SIDE
    );
    text(out, left, TOP - 10.0, "start", upward);
    text(out, left + SIDE / 2.0, bottom + 38.0, "middle", across);
    for part in [0.5, 1.0] {
        let (x, y) = at(which, part, part);
        let figure = |end: f64| format!("{:.4}", part * end * 100.0);
        let plain = |end| {
            let figure = figure(end);
            figure
                .trim_end_matches('0')
                .trim_end_matches('.')
                .to_owned()
        };
        text(out, x, bottom + 18.0, "middle", &plain(ends[0]));
        text(out, left - 8.0, y + 4.0, "end", &plain(ends[1]));
    }
}

/// Pixels of a point given in shares of the axes.
fn at(which: usize, across: f64, upward: f64) -> (f64, f64) {
    let inside = |share: f64| share.clamp(0.0, 1.0) * SIDE;
    (LEFT[which] + inside(across), TOP + SIDE - inside(upward))
}

fn dot(out: &mut String, x: f64, y: f64) {
    let _ = writeln!(
        out,
        "<circle cx=\"{x:.1}\" cy=\"{y:.1}\" r=\"4\" fill=\"#1f5fa8\"/>"
    );
}

fn text(out: &mut String, x: f64, y: f64, anchor: &str, words: &str) {
    let _ = writeln!(
        out,
        "<text x=\"{x:.1}\" y=\"{y:.1}\" text-anchor=\"{anchor}\" fill=\"#222222\">{words}</text>"
    );
}

//! The estimated maximum over time: what each session said, what was known after it, and which changes are more than noise.

use super::asked::{Asked, day, hundredths, load_grain, without_others};
use super::stretch::no_estimate;
use crate::charts::{Axis, Cell, Chart, Column, Grain, Ink, Mark, Row, Shape, Spot};
use crate::ledger::{Past, moved_as_newest};
use crate::say;
use crate::strength::{
    Change, Curve, Said, Told, Traced, change_between, maximum_said, to_tenth, trace,
};
use crate::units::{Load, Unit};
use crate::words::{t, t_in};

/// The estimate by `curve` over the period, of what was moved as the last time; sessions of light weeks say nothing of it.
///
/// A change is real where it is the minimal detectable change at 95 % or more: 2.772 × the typical error of the two
/// estimates (Hopkins 2000, Sports Med 30(1):1–15), whose noise is that of published test and retest (Grgic et al. 2020,
/// Sports Med Open 6:31).
#[must_use]
pub fn estimate(history: &[&Past], asked: Asked, curve: Curve) -> Chart {
    let unit = asked.unit;
    let (counting, others) = moved_as_newest(history.iter().copied());
    let traced = trace(counting.iter().map(|past| &past.performance), curve);
    let shown: Vec<&Traced> = traced
        .iter()
        .filter(|step| asked.holds(counting[step.index]))
        .collect();
    let mut rows = Vec::new();
    let (mut about, mut at_least, mut below) = (Vec::new(), Vec::new(), Vec::new());
    let (mut line, mut band, mut real) = (Vec::new(), Vec::new(), Vec::new());
    for step in &shown {
        let x = day(counting[step.index]);
        let known = step.after.e1rm();
        let [low, middle, high] =
            [known.low, known.middle, known.high].map(|load| in_tenths(load, unit));
        let said = in_tenths(step.said.load(), unit);
        let load = maximum_said(step.said.load(), unit);
        let (spots, told) = match step.said {
            Said::About(_) => (&mut about, load),
            Said::AtLeast(_) => (&mut at_least, say!("{load} or more", load)),
            Said::Below(_) => (&mut below, say!("{load} or less", load)),
        };
        spots.push(Spot::at(x, said));
        line.push(Spot::at(x, middle));
        band.push(Spot {
            x,
            y: high,
            from: low,
        });
        if step.change.is_some() {
            real.push(Spot::at(x, middle));
        }
        rows.push(Row {
            x,
            y: middle,
            cells: vec![
                Cell::Of(x),
                Cell::Of(middle),
                Cell::Between(low, high),
                Cell::Words(told),
                step.change
                    .map_or(Cell::Empty, |change| Cell::Words(in_words(&change))),
            ],
        });
    }
    let said = match no_estimate(history).filter(|_| shown.is_empty()) {
        Some(why) => why.to_owned(),
        None => gist(&shown, asked, curve),
    };
    let grain = || load_grain(unit);
    Chart {
        title: t("Estimated maximum").to_owned(),
        about: without_others(said, others),
        x: asked.days(),
        y: Axis::of(grain(), unit.sign()),
        marks: vec![
            Mark::new(Shape::Band, Ink::Main, t("its 80 % interval"), band),
            Mark::new(
                Shape::Rings,
                Ink::Second,
                t("a session said: that or more"),
                at_least,
            ),
            Mark::new(
                Shape::Squares,
                Ink::Third,
                t("a session said: less than that"),
                below,
            ),
            Mark::new(Shape::Dots, Ink::Second, t("a session said"), about),
            Mark::new(Shape::Line, Ink::Main, t("the estimate"), line),
            Mark::new(
                Shape::Notches,
                Ink::Second,
                t("more than noise since the notch before"),
                real,
            ),
        ],
        columns: vec![
            Column::new(t("day"), Grain::Days),
            Column::new(t("estimate"), grain()),
            Column::new(t("80 % interval"), grain()),
            Column::new(t("session said"), grain()),
            Column::unsaid(t_in("chart", "change"), Grain::count()),
        ],
        rows,
    }
}

/// A load in hundredths, as it is said.
fn in_tenths(load: Load, unit: Unit) -> i64 {
    hundredths(to_tenth(load, unit), unit)
}

fn percent(share: f64) -> i64 {
    (share.abs() * 100.0).round() as i64
}

fn in_words(change: &Change) -> String {
    let by = percent(change.by);
    if change.by > 0.0 {
        say!("{by} % up, more than noise", by)
    } else {
        say!("{by} % down, more than noise", by)
    }
}

/// What is to be seen, in words.
fn gist(shown: &[&Traced], asked: Asked, curve: Curve) -> String {
    let (Some(first), Some(last)) = (shown.first(), shown.last()) else {
        return t(
            "Nothing in this period that feeds the estimate: a work set of reps with a known load does.",
        )
        .to_owned();
    };
    let unit = asked.unit;
    let known = last.after.e1rm();
    let said = |load: Load| maximum_said(load, unit);
    let now = say!(
        "{load} by the curve of {curve}; in 80 of 100 cases it lies between {low} and {high}.",
        load = said(known.middle),
        curve = curve.name(),
        low = said(known.low),
        high = said(known.high)
    );
    if shown.len() < 2 {
        return format!("{now} {}", t("One session alone shows no change."));
    }
    let change = change_between(&first.after, &last.after);
    let by = percent(change.by);
    let bound = percent(change.detectable);
    let span = change.span_said();
    let told = match (change.told == Told::Noise, change.by > 0.0) {
        (true, true) => say!(
            "Since the first session shown, {span} before, {by} % up: not to be told from noise, which {bound} % and more would be.",
            span,
            by,
            bound
        ),
        (true, false) => say!(
            "Since the first session shown, {span} before, {by} % down: not to be told from noise, which {bound} % and more would be.",
            span,
            by,
            bound
        ),
        (false, true) => say!(
            "Since the first session shown, {span} before, {by} % up: more than noise, from {bound} % on it can be told.",
            span,
            by,
            bound
        ),
        (false, false) => say!(
            "Since the first session shown, {span} before, {by} % down: more than noise, from {bound} % on it can be told.",
            span,
            by,
            bound
        ),
    };
    format!("{now} {told}")
}

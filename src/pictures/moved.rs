//! What a set moved: the written load, and with the body what is moved in all.

use super::asked::{Asked, day, hundredths, load_grain};
use crate::charts::{Axis, Cell, Chart, Column, Grain, Ink, Mark, Row, Shape, Spot};
use crate::ledger::Past;
use crate::sheet::LoadBasis;
use crate::strength::{SetResult, system_load};
use crate::units::Load;
use crate::words::t;

/// Whether its load stands beside a part of the body's own.
pub(super) fn with_body(past: &Past) -> bool {
    matches!(
        past.performance.basis,
        Some(LoadBasis::BodyMassPlus | LoadBasis::BodyMassMinus | LoadBasis::BodyMassShare(_))
    )
}

/// What a set moved in all; none where that is not known.
pub(super) fn moved(past: &Past, set: &SetResult) -> Option<Load> {
    match &past.performance.basis {
        Some(basis) => system_load(basis, set.load, past.performance.body_mass).ok(),
        None => set.load.filter(|load| !load.is_zero()),
    }
}

/// The load as written; with the body none is none added.
pub(super) fn written(past: &Past, set: &SetResult) -> Option<Load> {
    set.load.or_else(|| with_body(past).then_some(Load::ZERO))
}

/// The sets that count for bests, here as in [`crate::ledger::Bests`]: plain work sets with full reps.
pub(super) fn plain_sets(past: &Past) -> impl Iterator<Item = &SetResult> {
    let sets = past.performance.sets.iter();
    sets.filter(|set| set.work && set.unfed.is_none() && set.reps.get() > 0)
}

/// The heaviest set of each session where the body is moved: in all, and as written. None where no body is
/// moved for reps.
#[must_use]
pub fn both_loads(history: &[&Past], asked: Asked) -> Option<Chart> {
    let mut with_reps = history.iter().filter(|past| with_body(past));
    if !with_reps.any(|past| plain_sets(past).next().is_some()) {
        return None;
    }
    let unit = asked.unit;
    let mut rows: Vec<Row> = Vec::new();
    let (mut all, mut as_written) = (Vec::new(), Vec::new());
    let within = history.iter().filter(|past| asked.holds(past));
    for past in within.filter(|past| with_body(past)) {
        let sets = plain_sets(past).filter_map(|set| Some((moved(past, set)?, set)));
        let Some((load, set)) = sets.max_by_key(|(load, _)| load.kg()) else {
            continue;
        };
        let (x, y) = (day(past), hundredths(load, unit));
        let own = hundredths(written(past, set).unwrap_or(Load::ZERO), unit);
        let body = past
            .performance
            .body_mass
            .map(|mass| hundredths(mass, unit));
        all.push(Spot::at(x, y));
        as_written.push(Spot::at(x, own));
        rows.push(Row {
            x,
            y,
            cells: vec![
                Cell::Of(x),
                Cell::Of(y),
                Cell::Of(own),
                body.map_or(Cell::Empty, Cell::Of),
            ],
        });
    }
    let about = t(if rows.is_empty() {
        "Nothing in this period with a known body mass. A session goes by the body mass of its day: see Body."
    } else {
        "The heaviest set of each session. What is moved in all is the part of the body mass of that day and what was added; assistance is taken off."
    });
    let grain = || load_grain(unit);
    Some(Chart {
        title: t("Moved with the body").to_owned(),
        about: about.to_owned(),
        x: asked.days(),
        y: Axis::of(grain(), unit.sign()),
        marks: vec![
            Mark::new(Shape::Line, Ink::Second, "", as_written.clone()),
            Mark::new(Shape::Rings, Ink::Second, t("load as written"), as_written),
            Mark::new(Shape::Line, Ink::Main, "", all.clone()),
            Mark::new(Shape::Dots, Ink::Main, t("moved in all"), all),
        ],
        columns: vec![
            Column::new(t("day"), Grain::Days),
            Column::new(t("moved in all"), grain()),
            Column::new(t("as written"), grain()),
            Column::new(t("body mass"), grain()),
        ],
        rows,
    })
}

//! What each exercise did last: enough for the next proposal without reading the history.

use super::record::{BlockRecord, DoneLine, SessionRecord};
use crate::order;
use crate::session::Amount;
use crate::sheet::{ExerciseId, Line, RepTarget, SetKind, Stage, Target};
use crate::strength::{self, Curve, Performance, SetResult, Unfed};
use crate::units::Reps;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// Most performances that are kept of an exercise, the newest ones.
pub const PERFORMANCES_MAX: usize = 24;

/// What was done last of one exercise.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExerciseSummary {
    /// The exercise.
    pub exercise: ExerciseId,
    /// Its name in the newest of the sessions.
    pub name: Line,
    /// Its last performances, newest last, at most [`PERFORMANCES_MAX`].
    pub performances: Vec<Performance>,
}

/// What a session did of each exercise, block by block in the order of its sheet.
///
/// Two blocks of one exercise are two performances. Blocks of which nothing was done are left out. A session of a light
/// week has none: it was meant to be easy, so no rule may judge by it.
#[must_use]
pub fn performances_of(record: &SessionRecord) -> Vec<(ExerciseId, Performance)> {
    counting(record)
        .map(|block| {
            let exercise = block.block.exercise.id.clone();
            (exercise, performance(record, block))
        })
        .collect()
}

/// The blocks of which something was done that counts for the next load.
fn counting(record: &SessionRecord) -> impl Iterator<Item = &BlockRecord> {
    let blocks = if record.light {
        &[][..]
    } else {
        &record.blocks
    };
    blocks.iter().filter(|block| !block.lines.is_empty())
}

/// Why the sets of a block of `record` do not feed the estimate by `curve`, set by set in their order; none for one that
/// does.
#[must_use]
pub fn unfed_of(record: &SessionRecord, block: &BlockRecord, curve: Curve) -> Vec<Option<Unfed>> {
    let performance = performance(record, block);
    let sets = performance.sets.iter();
    sets.map(|set| {
        if record.light {
            return Some(Unfed::LightWeek);
        }
        strength::unfed(&performance, set, curve)
    })
    .collect()
}

pub(super) fn performance(record: &SessionRecord, block: &BlockRecord) -> Performance {
    Performance {
        session: record.session.0,
        at: record.began,
        shape: block.block.shape(),
        basis: Some(block.block.basis.clone()),
        body_mass: record.body_mass,
        sets: block.lines.iter().map(result).collect(),
    }
}

fn result(line: &DoneLine) -> SetResult {
    let (low, top) = asked(line);
    let full = i64::from(line.amount.full_reps());
    let plain = matches!(line.target, Target::Reps(_)) && matches!(line.amount, Amount::Reps(_));
    SetResult {
        load: line.load,
        reps: Reps::saturating(full),
        low,
        top,
        reserve: line.reserve,
        work: plain && is_plain_work(&line.kind),
        to_limit: line.kind == SetKind::ToFailure
            || matches!(line.target, Target::Reps(RepTarget::AtLeast(_))),
        unfed: unfed(line),
    }
}

/// Why this kind of set says nothing about strength. What its figures say is judged by the estimate itself.
fn unfed(line: &DoneLine) -> Option<Unfed> {
    match line.kind {
        SetKind::RampUp { .. } => return Some(Unfed::RampUp),
        SetKind::BackOff { .. } => return Some(Unfed::BackOff),
        SetKind::Drop { .. } => return Some(Unfed::Drop),
        SetKind::Cluster { .. } => return Some(Unfed::Cluster),
        SetKind::Work | SetKind::ToFailure => {}
    }
    match (&line.target, &line.amount) {
        (Target::Stages(_), _) | (_, Amount::Stages(_)) => Some(Unfed::Staged),
        (Target::Timed(_), _) | (_, Amount::Timed(_)) => Some(Unfed::Timed),
        (Target::Distance(_), _) | (_, Amount::Distance(_)) => Some(Unfed::Distance),
        (Target::Reps(_), Amount::Reps(_) | Amount::Sides { .. }) => None,
    }
}

fn is_plain_work(kind: &SetKind) -> bool {
    match kind {
        SetKind::Work | SetKind::Cluster { .. } | SetKind::ToFailure => true,
        SetKind::RampUp { .. } | SetKind::BackOff { .. } | SetKind::Drop { .. } => false,
    }
}

/// Full repetitions asked for, at least and at the top; none for a time or a distance.
fn asked(line: &DoneLine) -> (Reps, Reps) {
    let times = match line.kind {
        SetKind::Cluster { portions, .. } => i64::from(portions),
        _ => 1,
    };
    let mut low = 0;
    let mut top = 0;
    let mut add = |target: &RepTarget| {
        low += i64::from(target.low().get()) * times;
        top += i64::from(target.top().get()) * times;
    };
    match &line.target {
        Target::Reps(target) => add(target),
        Target::Stages(stages) => {
            for stage in stages {
                if let Stage::Reps { reps, .. } = stage {
                    add(reps);
                }
            }
        }
        Target::Timed(_) | Target::Distance(_) => {}
    }
    (Reps::saturating(low), Reps::saturating(top))
}

/// Takes a session into the summaries: its own earlier entries are replaced, so doing it twice changes nothing.
///
/// Equal to [`summaries_of`] all sessions, whatever the order they come in, as long as no session is taken in again
/// with fewer blocks done than before: then an entry older than the kept ones would have to come back. After an import
/// make the summaries anew.
pub fn update(summaries: &mut BTreeMap<ExerciseId, ExerciseSummary>, record: &SessionRecord) {
    for summary in summaries.values_mut() {
        summary
            .performances
            .retain(|performance| performance.session != record.session.0);
    }
    for block in counting(record) {
        let exercise = &block.block.exercise;
        let summary = summaries
            .entry(exercise.id.clone())
            .or_insert_with(|| ExerciseSummary {
                exercise: exercise.id.clone(),
                name: exercise.name.clone(),
                performances: Vec::new(),
            });
        summary.performances.push(performance(record, block));
        // The sort is stable: blocks of one session stay in the order of the sheet.
        order::by_key(&mut summary.performances, |performance| {
            (performance.at, performance.session)
        });
        let newest = summary.performances.last().map(|last| last.session);
        if newest == Some(record.session.0) {
            summary.name = exercise.name.clone();
        }
        let surplus = summary.performances.len().saturating_sub(PERFORMANCES_MAX);
        summary.performances.drain(..surplus);
    }
    summaries.retain(|_, summary| !summary.performances.is_empty());
}

/// The summaries of all sessions, from scratch.
#[must_use]
pub fn summaries_of<'a>(
    records: impl IntoIterator<Item = &'a SessionRecord>,
) -> BTreeMap<ExerciseId, ExerciseSummary> {
    let mut summaries = BTreeMap::new();
    for record in records {
        update(&mut summaries, record);
    }
    summaries
}

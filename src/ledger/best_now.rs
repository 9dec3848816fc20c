//! Bests at the moment they happen: what the set logged last beats, and what a session beat.

use super::bests::Best;
use super::history::{Past, pasts_of};
use super::record::SessionRecord;
use super::summary::ExerciseSummary;
use crate::order::Map;
use crate::sheet::{ExerciseId, SetKey};
use crate::strength::Curve;

/// What the summaries say of each exercise.
type Summaries = Map<ExerciseId, ExerciseSummary>;

/// What the set `last` of a session under way beats, told to a lifter of that curve; the sets first. Nothing where its
/// exercise was never done before in a session that counts.
///
/// `summaries` do not hold this session.
#[must_use]
pub fn beaten_just_now(
    record: &SessionRecord,
    last: SetKey,
    summaries: &Summaries,
    curve: Curve,
) -> Vec<Best> {
    let block = record.blocks.iter().find(|block| {
        let mut lines = block.lines.iter();
        lines.any(|line| line.key == last)
    });
    let Some(exercise) = block.map(|block| &block.block.exercise.id) else {
        return Vec::new();
    };
    let known = summaries.get(exercise);
    let Some(summary) = known.filter(|known| !known.performances.is_empty()) else {
        return Vec::new();
    };
    let mut without = record.clone();
    for block in &mut without.blocks {
        block.lines.retain(|line| line.key != last);
    }
    let (before, now) = (done_of(&without, exercise), done_of(record, exercise));
    let mut beaten = summary.bests.beaten_by(&before, &now);
    beaten.retain(|best| best.counts(curve));
    beaten
}

fn done_of(record: &SessionRecord, exercise: &ExerciseId) -> Vec<Past> {
    let pasts = pasts_of(record).into_iter();
    pasts
        .filter(|(id, _)| id == exercise)
        .map(|(_, past)| past)
        .collect()
}

/// What a finished session beat, exercise by exercise in the order of its sheet, told to a lifter of that curve.
///
/// `summaries` hold this session. Nothing of an exercise that was done since.
#[must_use]
pub fn beaten_in<'a>(
    record: &'a SessionRecord,
    summaries: &'a Summaries,
    curve: Curve,
) -> Vec<(&'a str, &'a Best)> {
    let mut seen: Vec<&ExerciseId> = Vec::new();
    let mut all = Vec::new();
    for block in record.blocks.iter().filter(|block| !block.lines.is_empty()) {
        let exercise = &block.block.exercise;
        if seen.contains(&&exercise.id) {
            continue;
        }
        seen.push(&exercise.id);
        let newest = summaries.get(&exercise.id).filter(|summary| {
            let last = summary.performances.last();
            last.is_some_and(|last| last.session == record.session.0)
        });
        let beaten = newest.into_iter().flat_map(|summary| summary.beaten(curve));
        all.extend(beaten.map(|best| (exercise.id.said(&exercise.name), best)));
    }
    all
}

//! What each exercise did last: enough for the next proposal without reading the history.

use super::bests::{Best, Bests};
use super::history::{Past, in_order, pasts_of};
use super::record::{BlockRecord, DoneLine, SessionRecord};
use crate::order::Map;
use crate::session::{Amount, StageAmount};
use crate::sheet::{Block, ExerciseId, Line, RepTarget, SetKind, Stage, Target};
use crate::strength::{self, Curve, Performance, SetResult, Stretch, Unfed};
use crate::units::Reps;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};

/// Most performances that are kept of an exercise, the newest ones.
pub const PERFORMANCES_MAX: usize = 24;

/// What was done last of one exercise. No light session counts for the next load.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ExerciseSummary {
    /// The exercise.
    pub exercise: ExerciseId,
    /// Its name in the newest of the sessions that count, or in the newest of all while none does.
    pub name: Line,
    /// When the newest of all its sessions began, were it a light one.
    pub last_done: DateTime<FixedOffset>,
    /// Its last performances that count, newest last, at most [`PERFORMANCES_MAX`].
    pub performances: Vec<Performance>,
    /// The bests of all that was ever done of it.
    #[serde(default)]
    pub bests: Bests,
    /// What the newest of its sessions beat, by every curve: see [`Best::counts`].
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub beaten: Vec<Best>,
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

/// Why the sets of a block of `record` do not feed the estimate, set by set in their order; none for one that does.
#[must_use]
pub fn unfed_of(record: &SessionRecord, block: &BlockRecord) -> Vec<Option<Unfed>> {
    let performance = performance(record, block);
    let sets = performance.sets.iter();
    sets.map(|set| {
        if record.light {
            return Some(Unfed::LightWeek);
        }
        strength::unfed(&performance, set)
    })
    .collect()
}

pub(super) fn performance(record: &SessionRecord, block: &BlockRecord) -> Performance {
    let lines = block.lines.iter();
    let sets: Vec<SetResult> = lines.map(|line| result(&block.block, line)).collect();
    let done = sets.iter().filter(|set| set.work).count();
    let left = planned(&block.block).saturating_sub(done);
    Performance {
        session: record.session.0,
        at: record.began,
        shape: block.block.shape(),
        basis: Some(block.block.basis.clone()),
        body_mass: record.body_mass,
        sets,
        left: u8::try_from(left).unwrap_or(u8::MAX),
    }
}

/// How many plain work sets a block asks for.
fn planned(block: &Block) -> usize {
    let plain = block
        .sets
        .iter()
        .filter(|sets| matches!(sets.target, Target::Reps(_)) && is_plain_work(&sets.kind));
    plain.map(|sets| usize::from(sets.count)).sum()
}

fn result(block: &Block, line: &DoneLine) -> SetResult {
    let (low, top) = asked(line);
    let full = i64::from(line.amount.full_reps());
    let plain = matches!(line.target, Target::Reps(_))
        && matches!(line.amount, Amount::Reps(_) | Amount::Sides { .. });
    SetResult {
        load: line.load,
        reps: Reps::saturating(full),
        stretch: match line.amount {
            Amount::Timed(seconds) => Some(Stretch::Held(seconds)),
            Amount::Distance(metres) => Some(Stretch::Carried(metres)),
            Amount::Reps(_) | Amount::Sides { .. } | Amount::Stages(_) => None,
        },
        stages: match &line.amount {
            Amount::Stages(stages) => stages.iter().map(StageAmount::get).collect(),
            _ => Vec::new(),
        },
        low,
        top,
        reserve: line.reserve,
        work: plain && is_plain_work(&line.kind),
        to_limit: block.goes_to_limit(&line.kind, &line.target, line.reserve_asked),
        to_spare: block.leaves_reps(line.reserve_asked),
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

/// Whether a past counts: it was no light session's.
fn counts(past: &Past) -> bool {
    !past.light
}

impl ExerciseSummary {
    /// The summary of a history, the oldest first; none of an empty one.
    #[must_use]
    pub fn of(exercise: &ExerciseId, history: &[Past]) -> Option<ExerciseSummary> {
        let counting: Vec<Past> = history
            .iter()
            .filter(|past| counts(past))
            .cloned()
            .collect();
        let last = history.last()?;
        let mut summary = ExerciseSummary {
            exercise: exercise.clone(),
            name: last.name.clone(),
            last_done: last.performance.at,
            performances: Vec::new(),
            bests: Bests::default(),
            beaten: Vec::new(),
        };
        let Some(newest) = counting.last() else {
            return Some(summary);
        };
        let session = newest.session();
        let place = counting.partition_point(|past| past.session() != session);
        let (before, newest) = counting.split_at(place);
        summary.bests = Bests::of(before);
        let from = before.len().saturating_sub(PERFORMANCES_MAX);
        let kept = before[from..].iter();
        summary.performances = kept.map(|past| past.performance.clone()).collect();
        summary.put(newest);
        Some(summary)
    }

    /// Takes in what one session did of the exercise, block by block. False, and nothing is changed, where that session is
    /// not later than all that is known: then the summary is to be rebuilt from the history, by [`ExerciseSummary::of`].
    #[must_use]
    pub fn take(&mut self, session: &[Past]) -> bool {
        let counting: Vec<Past> = session
            .iter()
            .filter(|past| counts(past))
            .cloned()
            .collect();
        let order = |done: &Performance| (done.at, done.session);
        let (first, last) = (counting.first(), self.performances.last());
        if let (Some(first), Some(last)) = (first, last)
            && order(&first.performance) <= order(last)
        {
            return false;
        }
        if let Some(newest) = session.last() {
            if counting.is_empty() && self.performances.is_empty() {
                return false;
            }
            self.last_done = self.last_done.max(newest.performance.at);
        }
        self.put(&counting);
        true
    }

    /// Puts the newest session in.
    fn put(&mut self, session: &[Past]) {
        let Some(newest) = session.last() else {
            return;
        };
        self.name = newest.name.clone();
        self.beaten = self.bests.beaten_by(&[], session);
        self.bests.take(session);
        let performances = session.iter().map(|past| past.performance.clone());
        self.performances.extend(performances);
        let surplus = self.performances.len().saturating_sub(PERFORMANCES_MAX);
        self.performances.drain(..surplus);
    }

    /// What the newest session beat, as a lifter with that curve is told.
    pub fn beaten(&self, curve: Curve) -> impl Iterator<Item = &Best> {
        self.beaten.iter().filter(move |best| best.counts(curve))
    }
}

/// The summaries of all sessions, from scratch.
#[must_use]
pub fn summaries_of<'a>(
    records: impl IntoIterator<Item = &'a SessionRecord>,
) -> Map<ExerciseId, ExerciseSummary> {
    let mut histories: Map<ExerciseId, Vec<Past>> = Map::new();
    for record in records {
        for (exercise, past) in pasts_of(record) {
            histories.or_default(exercise).push(past);
        }
    }
    let mut summaries = Map::new();
    for (exercise, mut history) in histories {
        in_order(&mut history);
        if let Some(summary) = ExerciseSummary::of(&exercise, &history) {
            summaries.insert(exercise, summary);
        }
    }
    summaries
}

//! What moved: the best set of each exercise against the last time it was done in the same way.

use super::record::SessionRecord;
use super::summary::{ExerciseSummary, performances_of};
use crate::order::Map;
use crate::say;
use crate::sheet::{Block, ExerciseId, LoadBasis};
use crate::strength::{Performance, SetResult, Unfed};
use crate::units::{Load, Reps, Unit};
use crate::words::{many, t};
use std::cmp::Reverse;
use std::fmt;

/// What the figure of load of a set means.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Carried {
    /// It is moved.
    Moved,
    /// It is added to the body.
    Added,
    /// It takes off the body.
    Assisting,
}

/// The best set of an exercise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Top {
    /// Name of the exercise.
    pub name: String,
    /// Its load, where there is one.
    pub load: Option<Load>,
    /// What that load means.
    pub carried: Carried,
    /// Full repetitions.
    pub reps: Reps,
}

/// What moved in one exercise since the last time it was done in the same way.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Moved {
    /// Never done in this way before.
    First(Top),
    /// More load, or less assistance.
    Harder(Top, Load),
    /// Less load, or more assistance.
    Easier(Top, Load),
    /// More reps at the same load.
    MoreReps(Top, Reps),
    /// Fewer reps at the same load.
    FewerReps(Top, Reps),
    /// As last time.
    Same(Top),
}

/// What moved in `record`, block by block, against earlier performances in `before`.
///
/// The best set is the one with the most load (the least assistance), then the most reps, among plain work sets; where
/// a block has none, among all but ramp-ups, which say nothing of what moved. `before` may hold this session already: only
/// earlier ones of the same shape are looked at. Blocks without a full repetition (holds, carries) are left out.
#[must_use]
pub fn moved(record: &SessionRecord, before: &Map<ExerciseId, ExerciseSummary>) -> Vec<Moved> {
    let done = record.blocks.iter().filter(|block| !block.lines.is_empty());
    done.zip(performances_of(record))
        .filter_map(|(block, (exercise, now))| {
            let block = &block.block;
            let best_now = best(&now, block)?;
            let last = before.get(&exercise).and_then(|summary| {
                let mut earlier = summary.performances.iter().rev().filter(|earlier| {
                    earlier.session != now.session
                        && (earlier.at, earlier.session) < (now.at, now.session)
                        && earlier.shape == now.shape
                });
                earlier.find_map(|earlier| best(earlier, block))
            });
            Some(compare(block, best_now, last))
        })
        .collect()
}

fn best<'a>(performance: &'a Performance, block: &Block) -> Option<&'a SetResult> {
    let counts = |set: &&SetResult| set.reps.get() > 0 && set.unfed != Some(Unfed::RampUp);
    let done = || performance.sets.iter().filter(counts);
    let work: Vec<&SetResult> = done().filter(|set| set.work).collect();
    let candidates = if work.is_empty() {
        done().collect()
    } else {
        work
    };
    let load = |set: &SetResult| set.load.unwrap_or(Load::ZERO);
    if block.basis.assists() {
        candidates
            .into_iter()
            .max_by_key(|set| (Reverse(load(set)), set.reps))
    } else {
        candidates
            .into_iter()
            .max_by_key(|set| (load(set), set.reps))
    }
}

fn compare(block: &Block, now: &SetResult, last: Option<&SetResult>) -> Moved {
    let top = Top {
        name: block.exercise.said(),
        load: now.load.filter(|_| block.basis.has_load()),
        carried: match block.basis {
            LoadBasis::BodyMassPlus | LoadBasis::BodyMassShare(_) => Carried::Added,
            LoadBasis::BodyMassMinus => Carried::Assisting,
            LoadBasis::External | LoadBasis::Band(_) | LoadBasis::Unloaded => Carried::Moved,
        },
        reps: now.reps,
    };
    let Some(last) = last else {
        return Moved::First(top);
    };
    let load = top.load.unwrap_or(Load::ZERO);
    let load_last = last.load.unwrap_or(Load::ZERO);
    let more = load.minus(load_last);
    let less = load_last.minus(load).to_unit(load.unit());
    let assists = top.carried == Carried::Assisting;
    if load > load_last {
        if assists {
            Moved::Easier(top, more)
        } else {
            Moved::Harder(top, more)
        }
    } else if load < load_last {
        if assists {
            Moved::Harder(top, less)
        } else {
            Moved::Easier(top, less)
        }
    } else if now.reps > last.reps {
        let by = i64::from(now.reps.get()) - i64::from(last.reps.get());
        Moved::MoreReps(top, Reps::saturating(by))
    } else if now.reps < last.reps {
        let by = i64::from(last.reps.get()) - i64::from(now.reps.get());
        Moved::FewerReps(top, Reps::saturating(by))
    } else {
        Moved::Same(top)
    }
}

impl Moved {
    /// The best set of this session.
    #[must_use]
    pub fn top(&self) -> &Top {
        match self {
            Moved::First(top)
            | Moved::Harder(top, _)
            | Moved::Easier(top, _)
            | Moved::MoreReps(top, _)
            | Moved::FewerReps(top, _)
            | Moved::Same(top) => top,
        }
    }

    /// The sentence, loads in `unit`.
    #[must_use]
    pub fn sentence(&self, unit: Unit) -> String {
        let top = self.top();
        let shown = |load: &Load| load.shown(unit);
        let reps = top.reps;
        let set = match (top.load, top.carried) {
            (None, _) => said_reps(reps),
            (Some(load), Carried::Added) if load.is_zero() => said_reps(reps),
            (Some(load), Carried::Moved) => say!("{load} for {reps}", load = shown(&load), reps),
            (Some(load), Carried::Added) => say!("+{load} for {reps}", load = shown(&load), reps),
            (Some(load), Carried::Assisting) => {
                say!("{load} of assistance for {reps}", load = shown(&load), reps)
            }
        };
        let assists = top.carried == Carried::Assisting;
        let change = match self {
            Moved::First(_) => t("the first time").to_owned(),
            Moved::Same(_) => t("as last time").to_owned(),
            Moved::Harder(_, by) if assists => say!("{load} less than last time", load = shown(by)),
            Moved::Easier(_, by) if assists => say!("{load} more than last time", load = shown(by)),
            Moved::Harder(_, by) => say!("{load} more than last time", load = shown(by)),
            Moved::Easier(_, by) => say!("{load} less than last time", load = shown(by)),
            Moved::MoreReps(_, by) => many(
                usize::from(by.get()),
                "{n} more rep than last time",
                "{n} more reps than last time",
            ),
            Moved::FewerReps(_, by) => many(
                usize::from(by.get()),
                "{n} fewer rep than last time",
                "{n} fewer reps than last time",
            ),
        };
        say!("{name}: {set}, {change}", name = top.name, set, change)
    }
}

fn said_reps(reps: Reps) -> String {
    many(usize::from(reps.get()), "{n} rep", "{n} reps")
}

impl fmt::Display for Moved {
    /// The sentence, loads in the unit that this session's was typed in.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.top().load.map_or(Unit::Kg, Load::unit);
        f.write_str(&self.sentence(unit))
    }
}

//! What moved: the best set of each exercise against the last time it was done in the same way.

use super::record::{DoneLine, SessionRecord};
use super::summary::{ExerciseSummary, performances_of};
use crate::order::Map;
use crate::say;
use crate::session::{Amount, StageAmount, stages_said};
use crate::sheet::{Block, ExerciseId, LoadBasis, Pattern, Stage, Target};
use crate::strength::{Performance, SetResult, Stretch, Unfed};
use crate::units::{Load, Reps, Unit};
use crate::words::{many, t};
use std::cmp::Reverse;
use std::fmt;
use std::mem::discriminant;

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
    /// In place of repetitions, how long it was held or how far carried.
    pub stretch: Option<Stretch>,
    /// True for a carry, which is not held on the spot though it goes by time.
    pub carry: bool,
    /// In place of repetitions, how much was done of each stage; empty for a set that has none.
    pub stages: Vec<StageAmount>,
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
    /// More reps, seconds or metres at the same load.
    More(Top, u32),
    /// Fewer reps, seconds or metres at the same load.
    Fewer(Top, u32),
    /// More or less of the stages at the same load: what was done of them last time.
    Stages(Top, Vec<StageAmount>),
    /// As last time.
    Same(Top),
}

/// What moved in `record`, block by block, against earlier performances in `before`.
///
/// The best set is the one with the most load (the least assistance), then the most reps, among plain work sets; where
/// a block has none, among all but ramp-ups, which say nothing of what moved. Of holds and carries it is the longest or the
/// farthest at the most load, of sets in stages the one with the most full reps, then with the most of the first stage that
/// differs. `before` may hold this session already: only earlier ones of the same shape are looked at; of
/// holds and carries those that are loaded alike, since there it is the time or the distance that is to rise. Blocks of
/// which nothing was done are left out.
#[must_use]
pub fn moved(record: &SessionRecord, before: &Map<ExerciseId, ExerciseSummary>) -> Vec<Moved> {
    let done = record.blocks.iter().filter(|block| !block.lines.is_empty());
    done.zip(performances_of(record))
        .filter_map(|(block, (exercise, now))| {
            let (block_lines, block) = (&block.lines, &block.block);
            let best_now = best(&now, block)?;
            let loaded = block.load_shape();
            let last = before.get(&exercise).and_then(|summary| {
                let mut earlier = summary.performances.iter().rev().filter(|earlier| {
                    earlier.session != now.session
                        && (earlier.at, earlier.session) < (now.at, now.session)
                        && match best_now.stretch {
                            None => earlier.shape == now.shape,
                            Some(_) => earlier.shape.starts_with(&loaded),
                        }
                });
                let alike = |last: &&SetResult| kind(last) == kind(best_now);
                earlier.find_map(|earlier| best(earlier, block).filter(alike))
            });
            let mut lines = block_lines.iter().zip(&now.sets);
            let line = lines.find(|(_, set)| std::ptr::eq(*set, best_now));
            let stages = line.map_or(&[][..], |(line, _)| stages_of(line));
            Some(compare(block, best_now, stages, last))
        })
        .collect()
}

/// The stages of a set as they were done; none of another set.
fn stages_of(line: &DoneLine) -> &[StageAmount] {
    match &line.amount {
        Amount::Stages(stages) => stages,
        _ => &[],
    }
}

/// True where all that the block asks for in stages is in the same ones: only then is it known of which stage a number is that
/// was kept.
fn is_staged_alike(block: &Block) -> bool {
    let mut asked = block.sets.iter().filter_map(|sets| match &sets.target {
        Target::Stages(stages) => Some(stages.iter().map(discriminant::<Stage>)),
        _ => None,
    });
    let Some(first) = asked.next() else {
        return true;
    };
    asked.all(|stages| stages.eq(first.clone()))
}

/// What is counted of a set: stages, repetitions, seconds or metres.
fn kind(set: &SetResult) -> u8 {
    match set.stretch {
        None if !set.stages.is_empty() => 0,
        None => 1,
        Some(Stretch::Held(_)) => 2,
        Some(Stretch::Carried(_)) => 3,
    }
}

/// How much was done of it.
fn much(set: &SetResult) -> u32 {
    set.stretch.map_or(u32::from(set.reps.get()), Stretch::get)
}

fn best<'a>(performance: &'a Performance, block: &Block) -> Option<&'a SetResult> {
    let any = |set: &SetResult| much(set) > 0 || set.stages.iter().any(|done| *done > 0);
    let counts = |set: &&SetResult| any(set) && set.unfed != Some(Unfed::RampUp);
    let done: Vec<&SetResult> = performance.sets.iter().filter(counts).collect();
    // What is counted in one way is not compared with what is counted in another.
    let first = done.iter().map(|set| (!set.work, kind(set))).min()?;
    let candidates = done
        .into_iter()
        .filter(|set| (!set.work, kind(set)) == first);
    let load = |set: &SetResult| set.load.unwrap_or(Load::ZERO);
    if block.basis.assists() {
        candidates.max_by_key(|set| (Reverse(load(set)), much(set), &set.stages))
    } else {
        candidates.max_by_key(|set| (load(set), much(set), &set.stages))
    }
}

fn compare(
    block: &Block,
    now: &SetResult,
    stages: &[StageAmount],
    last: Option<&SetResult>,
) -> Moved {
    let top = Top {
        name: block.exercise.said(),
        load: now.load.filter(|_| block.basis.has_load()),
        carried: match block.basis {
            LoadBasis::BodyMassPlus | LoadBasis::BodyMassShare(_) => Carried::Added,
            LoadBasis::BodyMassMinus => Carried::Assisting,
            LoadBasis::External | LoadBasis::Band(_) | LoadBasis::Unloaded => Carried::Moved,
        },
        reps: now.reps,
        stretch: now.stretch,
        carry: block.exercise.pattern == Pattern::Carry,
        stages: stages.to_vec(),
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
    } else if now.stages != last.stages && is_staged_alike(block) {
        let pairs = top.stages.iter().zip(&last.stages);
        let before = pairs.map(|(stage, number)| stage.of_as_much(*number));
        let before = before.collect();
        Moved::Stages(top, before)
    } else if much(now) > much(last) {
        Moved::More(top, much(now) - much(last))
    } else if much(now) < much(last) {
        Moved::Fewer(top, much(last) - much(now))
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
            | Moved::More(top, _)
            | Moved::Fewer(top, _)
            | Moved::Stages(top, _)
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
            (None, _) => top.done(),
            (Some(load), Carried::Added) if load.is_zero() => top.done(),
            (Some(load), carried) if top.stretch.is_some() || !top.stages.is_empty() => {
                let (amount, load) = (top.done(), shown(&load));
                match carried {
                    Carried::Moved => say!("{amount} at {load}", amount, load),
                    Carried::Added => format!("{amount}, +{load}"),
                    Carried::Assisting => {
                        say!("{amount} with {load} of assistance", amount, load)
                    }
                }
            }
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
            Moved::Stages(_, before) => say!("last time {amount}", amount = stages_said(before)),
            Moved::Harder(_, by) if assists => say!("{load} less than last time", load = shown(by)),
            Moved::Easier(_, by) if assists => say!("{load} more than last time", load = shown(by)),
            Moved::Harder(_, by) => say!("{load} more than last time", load = shown(by)),
            Moved::Easier(_, by) => say!("{load} less than last time", load = shown(by)),
            Moved::More(_, by) => match top.of_stretch(*by) {
                Some(by) => say!("{load} more than last time", load = by),
                None => many(
                    *by as usize,
                    "{n} more rep than last time",
                    "{n} more reps than last time",
                ),
            },
            Moved::Fewer(_, by) => match top.of_stretch(*by) {
                Some(by) => say!("{load} less than last time", load = by),
                None => many(
                    *by as usize,
                    "{n} fewer rep than last time",
                    "{n} fewer reps than last time",
                ),
            },
        };
        say!("{name}: {set}, {change}", name = top.name, set, change)
    }
}

impl Top {
    /// How much was done, without the load.
    fn done(&self) -> String {
        match self.stretch {
            None if !self.stages.is_empty() => stages_said(&self.stages),
            None => many(usize::from(self.reps.get()), "{n} rep", "{n} reps"),
            Some(Stretch::Held(seconds)) if self.carry => {
                say!("{time} carried", time = seconds.clock())
            }
            Some(Stretch::Held(seconds)) => say!("{time} held", time = seconds.clock()),
            Some(Stretch::Carried(metres)) => format!("{metres} m"),
        }
    }

    /// So many seconds or metres; none where repetitions are counted.
    fn of_stretch(&self, by: u32) -> Option<String> {
        Some(match self.stretch? {
            Stretch::Held(_) => format!("{by} s"),
            Stretch::Carried(_) => format!("{by} m"),
        })
    }
}

impl fmt::Display for Moved {
    /// The sentence, loads in the unit that this session's was typed in.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let unit = self.top().load.map_or(Unit::Kg, Load::unit);
        f.write_str(&self.sentence(unit))
    }
}

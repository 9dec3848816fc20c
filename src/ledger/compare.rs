//! Two periods side by side: what was done of each exercise in one and in the other. It counts; it does not judge.

use super::heading::Heading;
use super::history::Past;
use super::much::Much;
use super::volume::VolumeLoad;
use crate::order;
use crate::order::Map;
use crate::sheet::{ExerciseId, LoadBasis};
use crate::strength::{SetResult, Stretch};
use crate::units::{Load, Unit};
use crate::words::t;
use chrono::{DateTime, Days, FixedOffset, NaiveDate};
use std::cmp::{Ordering, Reverse};
use std::fmt;

/// Whole days, the first and the last among them. The first is never after the last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Period {
    first: NaiveDate,
    last: NaiveDate,
}

/// The last day is before the first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct EndsBefore;

impl fmt::Display for EndsBefore {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(t(
            "a period ends on its first day or later: change one of the two days",
        ))
    }
}

impl std::error::Error for EndsBefore {}

impl Period {
    /// From the first day to the last.
    ///
    /// # Errors
    /// [`EndsBefore`].
    pub fn new(first: NaiveDate, last: NaiveDate) -> Result<Period, EndsBefore> {
        if first <= last {
            Ok(Period { first, last })
        } else {
            Err(EndsBefore)
        }
    }

    /// So many weeks up to a day, and as many before them: the earlier one first. At the beginning of the calendar the
    /// periods are shorter.
    #[must_use]
    pub fn weeks_up_to(last: NaiveDate, weeks: u8) -> [Period; 2] {
        let days = u64::from(weeks.max(1)) * 7;
        let before = |day: NaiveDate, days: u64| {
            let day = day.checked_sub_days(Days::new(days));
            day.unwrap_or(NaiveDate::MIN)
        };
        let later = Period {
            first: before(last, days - 1),
            last,
        };
        let end = before(later.first, 1);
        let earlier = Period {
            first: before(end, days - 1),
            last: end,
        };
        [earlier, later]
    }

    /// Its first day.
    #[must_use]
    pub fn first(self) -> NaiveDate {
        self.first
    }

    /// Its last day.
    #[must_use]
    pub fn last(self) -> NaiveDate {
        self.last
    }

    /// How many days it has, 1 or more.
    #[must_use]
    pub fn days(self) -> i64 {
        (self.last - self.first).num_days() + 1
    }

    /// Whether a time falls into it, by the calendar of where it was taken.
    #[must_use]
    pub fn has(self, at: DateTime<FixedOffset>) -> bool {
        (self.first..=self.last).contains(&at.date_naive())
    }
}

/// A set, the best of its exercise in a period.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BestOfPeriod {
    /// Its load as written on the basis; none where there was none.
    pub load: Option<Load>,
    /// What the load is added to.
    pub basis: LoadBasis,
    /// How much was done of it.
    pub much: Much,
    /// When its session began.
    pub at: DateTime<FixedOffset>,
}

/// What was done in a period, of one exercise or in all.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct InPeriod {
    /// Sessions in which it was done.
    pub sessions: u32,
    /// Sets but ramp-ups.
    pub sets: u32,
    /// Those of them that were hard: see [`super::ShareOf::hard`].
    pub hard: u32,
    /// Volume load of work sets.
    pub volume: VolumeLoad,
    /// The best set; none where nothing of one was done, and for all exercises together.
    pub best: Option<BestOfPeriod>,
}

impl InPeriod {
    fn add(&mut self, sets: u32, hard: u32, volume: VolumeLoad) {
        self.sessions = self.sessions.saturating_add(1);
        self.sets = self.sets.saturating_add(sets);
        self.hard = self.hard.saturating_add(hard);
        self.volume = self.volume.plus(volume);
    }
}

/// Two periods side by side.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Comparison {
    /// All exercises together.
    pub all: [InPeriod; 2],
    /// Each exercise that was done in one of them: those with the most sets first.
    pub exercises: Vec<(ExerciseId, [InPeriod; 2])>,
}

impl Comparison {
    /// Counted from the headings of both periods; headings outside them and those without a set are passed over. Of
    /// periods that overlap, a session counts in both. The best sets come by [`Comparison::note_best`].
    #[must_use]
    pub fn of(periods: [Period; 2], headings: &[Heading]) -> Comparison {
        let mut all = [InPeriod::default(), InPeriod::default()];
        let mut exercises: Map<&ExerciseId, [InPeriod; 2]> = Map::new();
        for heading in headings.iter().filter(|heading| heading.has_sets()) {
            for (at, period) in periods.iter().enumerate() {
                if !period.has(heading.began) {
                    continue;
                }
                let sum = |of: fn(&super::ShareOf) -> u32| heading.shares.iter().map(of).sum();
                all[at].add(
                    sum(|share| share.sets),
                    sum(|share| share.hard),
                    heading.volume,
                );
                for share in &heading.shares {
                    let done = exercises.or_default(&share.exercise);
                    done[at].add(share.sets, share.hard, share.volume);
                }
            }
        }
        let mut exercises: Vec<(ExerciseId, [InPeriod; 2])> = exercises
            .into_iter()
            .map(|(id, done)| (id.clone(), done))
            .collect();
        order::by_key(&mut exercises, |(id, done)| {
            let sets = done[0].sets.saturating_add(done[1].sets);
            (Reverse(sets), id.clone())
        });
        Comparison { all, exercises }
    }

    /// Notes the best sets of an exercise from all that was ever done of it.
    pub fn note_best(&mut self, periods: [Period; 2], exercise: &ExerciseId, pasts: &[Past]) {
        let of_it = self.exercises.iter_mut().find(|(id, _)| id == exercise);
        if let Some((_, done)) = of_it {
            for (done, period) in done.iter_mut().zip(periods) {
                done.best = best(period, pasts);
            }
        }
    }
}

/// The best set in a period: the one with the most load, or the least assistance; of equal loads the one with more reps, longer or farther;
/// of equal ones the first. Where the basis changed within the period, that of its newest session is looked at, because
/// loads on different bases do not compare. No formula is in it (common practice, no source).
#[must_use]
pub fn best(period: Period, pasts: &[Past]) -> Option<BestOfPeriod> {
    let within = || pasts.iter().filter(|past| period.has(past.performance.at));
    let basis_of = |past: &Past| {
        let basis = past.performance.basis.clone();
        basis.unwrap_or(LoadBasis::External)
    };
    let newest = within().max_by_key(|past| (past.performance.at, past.performance.session))?;
    let basis = basis_of(newest);
    let sets = within()
        .filter(|past| basis_of(past) == basis)
        .flat_map(|past| {
            let at = past.performance.at;
            past.performance.sets.iter().map(move |set| (at, set))
        });
    let better = |one: &BestOfPeriod, other: &BestOfPeriod| {
        let loads = match (one.load, other.load) {
            (Some(one), Some(other)) if basis.assists() => other.cmp(&one),
            (one, other) => one.cmp(&other),
        };
        loads.then(one.much.cmp(&other.much)) == Ordering::Greater
    };
    let found: Vec<BestOfPeriod> = sets
        .filter_map(|(at, set)| {
            Some(BestOfPeriod {
                load: set.load,
                basis: basis.clone(),
                much: much(set)?,
                at,
            })
        })
        .collect();
    // What is counted otherwise does not compare: reps before all, else what was done last.
    let reps = found.iter().find(|set| matches!(set.much, Much::Reps(_)));
    let like = reps.or(found.last())?.much;
    let alike = found.into_iter().filter(|set| set.much.is_like(like));
    alike.reduce(|best, set| if better(&set, &best) { set } else { best })
}

/// How much was done of a set, whatever its kind; none where that is nothing. A warm-up hold is a hold too, as a ramp-up
/// is a set of reps.
fn much(set: &SetResult) -> Option<Much> {
    let much = match set.stretch {
        None => Much::Reps(set.reps),
        Some(Stretch::Held(seconds)) => Much::Held(seconds),
        Some(Stretch::Carried(metres)) => Much::Carried(metres),
    };
    (much.get() > 0).then_some(much)
}

/// A best set in words, its load in the unit on display and on its basis; a dash where there is none.
#[must_use]
pub fn best_said(best: Option<&BestOfPeriod>, unit: Unit) -> String {
    let Some(BestOfPeriod {
        load, basis, much, ..
    }) = best
    else {
        return "–".to_owned();
    };
    match (much, load.filter(|_| basis.has_load())) {
        (Much::Reps(reps) | Much::Staged(reps), Some(load)) => {
            format!("{} × {reps}", basis.told(load, unit))
        }
        (_, Some(load)) => much.said_at(basis, load, unit),
        (Much::Held(_) | Much::Carried(_), None) => {
            format!("1 × {}", much.said_at(basis, Load::ZERO, unit))
        }
        (_, None) => much.said_at(basis, Load::ZERO, unit),
    }
}

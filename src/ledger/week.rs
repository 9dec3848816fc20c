//! A week of training, summed from the headings of its sessions alone.

use super::heading::Heading;
use super::volume::VolumeLoad;
use super::week_load::DayLoads;
use crate::exercises::{Catalogue, Muscle, Muscles};
use crate::order::{self, Map};
use crate::sheet::{ExerciseId, Pattern};
use chrono::{Datelike, Days, NaiveDate};

/// Sets of one muscle in a week, ramp-ups not among them.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct MuscleSets {
    /// The muscle.
    pub muscle: Muscle,
    /// Sets in which it is a main muscle.
    pub main: u32,
    /// Sets in which it also works.
    pub also: u32,
    /// Hard ones among the sets in which it is a main muscle.
    pub hard_main: u32,
    /// Hard ones among the sets in which it also works.
    pub hard_also: u32,
}

impl MuscleSets {
    /// All of them in halves of a set: a set counts 1 for a main muscle and 0.5 for one that also works (Pelland et al.
    /// 2024, preprint).
    #[must_use]
    pub fn halves(&self) -> u32 {
        2 * self.main + self.also
    }

    /// The hard ones in halves of a set, counted the same way.
    #[must_use]
    pub fn hard_halves(&self) -> u32 {
        2 * self.hard_main + self.hard_also
    }
}

/// Sets by movement pattern, ramp-ups not among them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Balance {
    /// Sets of pulls, across and downward.
    pub pull: u32,
    /// Sets of pushes, across and upward.
    pub push: u32,
    /// Sets of hinges.
    pub hinge: u32,
    /// Sets of squats.
    pub squat: u32,
}

/// Time trained by sheets with a time budget, against it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Budgeted {
    /// Sessions whose sheet had a budget.
    pub sessions: u32,
    /// Minutes that they took.
    pub taken: u32,
    /// Minutes that their budgets allow.
    pub planned: u32,
}

/// A week of training. It begins on a Monday (ISO 8601), and a session belongs to the day on which it began by the
/// clock of the place where it was done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Week {
    /// Its first day.
    pub monday: NaiveDate,
    /// How many sessions.
    pub sessions: u32,
    /// Minutes trained.
    pub minutes: u32,
    /// Sets, ramp-ups not among them.
    pub sets: u32,
    /// Hard ones among them: see [`super::HARD_RESERVE_MAX`].
    pub hard: u32,
    /// Volume load of the work sets.
    pub volume: VolumeLoad,
    /// Time trained against the budgets of its sheets.
    pub budget: Budgeted,
    /// Session loads, day by day.
    pub load: DayLoads,
    /// Sets by movement pattern.
    pub balance: Balance,
    /// Sets of each muscle that had any, from the legs up.
    pub muscles: Vec<MuscleSets>,
    /// Sets of exercises of which nobody wrote down muscles and pattern: they are in neither.
    pub unknown: u32,
}

/// The Monday of the week of a day.
#[must_use]
pub fn monday_of(day: NaiveDate) -> NaiveDate {
    let gone = u64::from(day.weekday().num_days_from_monday());
    day.checked_sub_days(Days::new(gone)).unwrap_or(day)
}

/// The days of a period, first and last, of which weeks can say something. Before `since`, the day of the first session
/// of all, and after `today` no week is one without training. Sessions of a later day than today, from a clock that was
/// ahead, are in it.
///
/// So a year that is still being typed (2, 20 and 202 on the way to 2026) makes no hundred thousand weeks.
#[must_use]
pub fn days_told(
    headings: &[Heading],
    (first, last): (NaiveDate, NaiveDate),
    since: Option<NaiveDate>,
    today: NaiveDate,
) -> (NaiveDate, NaiveDate) {
    let days = headings.iter().map(|heading| heading.began.date_naive());
    let newest = days.fold(today, NaiveDate::max);
    (first.max(since.unwrap_or(first)), last.min(newest))
}

/// The weeks from the one of `first` to the one of `last`, the oldest first, those without a session too. Sessions of
/// other weeks are passed over, and so are those without a set.
#[must_use]
pub fn weeks(
    headings: &[Heading],
    catalogue: &Catalogue,
    first: NaiveDate,
    last: NaiveDate,
) -> Vec<Week> {
    let mut known = Known {
        catalogue,
        facts: Map::new(),
    };
    let day_of = |heading: &Heading| heading.began.date_naive();
    let done = headings.iter().filter(|heading| heading.has_sets());
    let mut sorted: Vec<&Heading> = done.collect();
    order::by_key(&mut sorted, |heading| day_of(heading));
    let mut monday = monday_of(first);
    // The sessions from this week on: each is looked at in its own week alone, as a period may have thousands of both.
    let mut left = &sorted[sorted.partition_point(|heading| day_of(heading) < monday)..];
    let mut weeks = Vec::new();
    while monday <= last {
        let Some(next) = monday.checked_add_days(Days::new(7)) else {
            break;
        };
        let (of_week, after) =
            left.split_at(left.partition_point(|heading| day_of(heading) < next));
        weeks.push(Week::of(monday, of_week, &mut known));
        (monday, left) = (next, after);
    }
    weeks
}

/// What is known of exercises, each looked up once.
struct Known<'a> {
    catalogue: &'a Catalogue,
    facts: Map<ExerciseId, Option<(Muscles, Muscles, Pattern)>>,
}

impl Known<'_> {
    fn of(&mut self, exercise: &ExerciseId) -> Option<(Muscles, Muscles, Pattern)> {
        if let Some(facts) = self.facts.get(exercise) {
            return *facts;
        }
        let known = self.catalogue.of(exercise.as_str());
        let facts = known.map(|known| (known.main(), known.also(), known.pattern()));
        self.facts.insert(exercise.clone(), facts);
        facts
    }
}

impl Week {
    fn of(monday: NaiveDate, headings: &[&Heading], known: &mut Known) -> Week {
        let mut week = Week {
            monday,
            sessions: 0,
            minutes: 0,
            sets: 0,
            hard: 0,
            volume: VolumeLoad::default(),
            budget: Budgeted::default(),
            load: DayLoads::default(),
            balance: Balance::default(),
            muscles: Vec::new(),
            unknown: 0,
        };
        let mut muscles = Muscle::ALL.map(|muscle| MuscleSets {
            muscle,
            main: 0,
            also: 0,
            hard_main: 0,
            hard_also: 0,
        });
        for heading in headings {
            week.take(heading);
            for share in &heading.shares {
                week.sets += share.sets;
                week.hard += share.hard;
                let Some((main, also, pattern)) = known.of(&share.exercise) else {
                    week.unknown += share.sets;
                    continue;
                };
                week.balance.take(pattern, share.sets);
                for of_muscle in &mut muscles {
                    if main.has(of_muscle.muscle) {
                        of_muscle.main += share.sets;
                        of_muscle.hard_main += share.hard;
                    } else if also.has(of_muscle.muscle) {
                        of_muscle.also += share.sets;
                        of_muscle.hard_also += share.hard;
                    }
                }
            }
        }
        let trained = muscles.into_iter().filter(|sets| sets.halves() > 0);
        week.muscles = trained.collect();
        week
    }

    /// Takes in what a heading says of the whole session.
    fn take(&mut self, heading: &Heading) {
        self.sessions += 1;
        self.minutes = self.minutes.saturating_add(heading.minutes);
        self.volume = self.volume.plus(heading.volume);
        if let Some(budget) = heading.budget_minutes {
            self.budget.sessions += 1;
            self.budget.taken = self.budget.taken.saturating_add(heading.minutes);
            self.budget.planned = self.budget.planned.saturating_add(u32::from(budget.get()));
        }
        let day = heading.began.weekday().num_days_from_monday() as usize;
        self.load.add(day, heading.rpe, heading.minutes);
    }

    /// Its last day.
    #[must_use]
    pub fn sunday(&self) -> NaiveDate {
        self.monday
            .checked_add_days(Days::new(6))
            .unwrap_or(self.monday)
    }

    /// True when no day of it is still to come after `today`, which is over when it is its Sunday.
    #[must_use]
    pub fn is_over(&self, today: NaiveDate) -> bool {
        today > self.sunday()
    }
}

impl Balance {
    fn take(&mut self, pattern: Pattern, sets: u32) {
        match pattern {
            Pattern::PullAcross | Pattern::PullDownward => self.pull += sets,
            Pattern::PushAcross | Pattern::PushUpward => self.push += sets,
            Pattern::Hinge => self.hinge += sets,
            Pattern::Squat => self.squat += sets,
            Pattern::Carry | Pattern::Explosive | Pattern::Trunk | Pattern::SingleJoint => {}
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_pattern_counts_on_its_own_side() {
        let mut balance = Balance::default();
        for (pattern, sets) in [
            (Pattern::PullAcross, 1),
            (Pattern::PullDownward, 2),
            (Pattern::PushAcross, 3),
            (Pattern::PushUpward, 4),
            (Pattern::Hinge, 5),
            (Pattern::Squat, 6),
            (Pattern::Carry, 9),
        ] {
            balance.take(pattern, sets);
        }
        let of = (balance.pull, balance.push, balance.hinge, balance.squat);
        assert_eq!(of, (3, 7, 5, 6));
    }
}

//! A planned light week: every so many weeks less load and fewer sets. Common practice, no source.

use crate::say;
use crate::units::Share;
use chrono::{DateTime, Datelike, Days, FixedOffset, NaiveDate};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Fewest weeks from one light week to the next: every other week.
pub const LIGHT_EVERY_MIN: u8 = 2;
/// Most weeks from one light week to the next.
pub const LIGHT_EVERY_MAX: u8 = 12;
/// Least share of the proposed load in a light week, in percent.
pub const LIGHT_LOAD_MIN: u8 = 40;
/// Least share of the work sets in a light week, in percent.
pub const LIGHT_SETS_MIN: u8 = 30;

/// A Monday.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(try_from = "NaiveDate", into = "NaiveDate")]
pub struct Monday(NaiveDate);

/// A light week, planned.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "LightForm")]
pub struct LightWeek {
    every: u8,
    from: Monday,
    load: Share,
    sets: Share,
}

/// Why a light week does not hold together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnfitLight {
    /// Every so many weeks.
    Every(u8),
    /// That share of the load.
    Load(Share),
    /// That share of the sets.
    Sets(Share),
    /// No Monday.
    From(NaiveDate),
}

impl fmt::Display for UnfitLight {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitLight::Every(given) => f.write_str(&say!(
                "a light week comes every {least} to {most} weeks, not {given}",
                least = LIGHT_EVERY_MIN,
                most = LIGHT_EVERY_MAX,
                given
            )),
            UnfitLight::Load(given) => f.write_str(&say!(
                "the loads of a light week are {least} % to 100 % of the usual ones, not {given}",
                least = LIGHT_LOAD_MIN,
                given
            )),
            UnfitLight::Sets(given) => f.write_str(&say!(
                "the sets of a light week are {least} % to 100 % of the usual ones, not {given}",
                least = LIGHT_SETS_MIN,
                given
            )),
            UnfitLight::From(given) => {
                f.write_str(&say!("{given} is no Monday: weeks begin on Monday", given))
            }
        }
    }
}

impl std::error::Error for UnfitLight {}

impl Monday {
    /// The Monday of the week of `date`; the first Monday that a calendar can hold where there is none before it.
    #[must_use]
    pub fn of(date: NaiveDate) -> Monday {
        let back = Days::new(u64::from(date.weekday().num_days_from_monday()));
        let ahead = Days::new(7 - u64::from(date.weekday().num_days_from_monday()));
        let monday = date.checked_sub_days(back);
        Monday(monday.or(date.checked_add_days(ahead)).unwrap_or(date))
    }

    /// The date.
    #[must_use]
    pub fn date(self) -> NaiveDate {
        self.0
    }

    /// Whole weeks from this Monday to `other`; below zero when it lies before.
    #[must_use]
    pub fn weeks_to(self, other: Monday) -> i64 {
        (other.0 - self.0).num_weeks()
    }
}

impl TryFrom<NaiveDate> for Monday {
    type Error = UnfitLight;
    fn try_from(date: NaiveDate) -> Result<Monday, UnfitLight> {
        if date.weekday() == chrono::Weekday::Mon {
            Ok(Monday(date))
        } else {
            Err(UnfitLight::From(date))
        }
    }
}

impl From<Monday> for NaiveDate {
    fn from(monday: Monday) -> NaiveDate {
        monday.0
    }
}

impl LightWeek {
    /// Every `every`th week counted from that of `from` (which is the first), with `load` of the usual loads and
    /// `sets` of the usual work sets.
    ///
    /// # Errors
    /// [`UnfitLight`] outside 2 to 12 weeks, 40 to 100 % of the loads, 30 to 100 % of the sets.
    pub fn new(every: u8, from: Monday, load: Share, sets: Share) -> Result<LightWeek, UnfitLight> {
        let within =
            |share: Share, least| (Share::percent(least)..=Share::percent(100)).contains(&share);
        if !(LIGHT_EVERY_MIN..=LIGHT_EVERY_MAX).contains(&every) {
            Err(UnfitLight::Every(every))
        } else if !within(load, LIGHT_LOAD_MIN) {
            Err(UnfitLight::Load(load))
        } else if !within(sets, LIGHT_SETS_MIN) {
            Err(UnfitLight::Sets(sets))
        } else {
            Ok(LightWeek {
                every,
                from,
                load,
                sets,
            })
        }
    }

    /// What is usual: every fourth week from that of `now` on, nine tenths of the loads and half of the sets. Common
    /// practice, no source.
    ///
    /// # Panics
    /// Never: these are within their ranges.
    #[must_use]
    pub fn usual(now: DateTime<FixedOffset>) -> LightWeek {
        let from = Monday::of(now.date_naive());
        LightWeek::new(4, from, Share::percent(90), Share::percent(50))
            .expect("a written light week is in range")
    }

    /// Every so many weeks one is light.
    #[must_use]
    pub fn every(&self) -> u8 {
        self.every
    }

    /// The week that is counted as the first.
    #[must_use]
    pub fn from(&self) -> Monday {
        self.from
    }

    /// Share of the usual loads.
    #[must_use]
    pub fn load(&self) -> Share {
        self.load
    }

    /// Share of the usual work sets; at least one is left.
    #[must_use]
    pub fn sets(&self) -> Share {
        self.sets
    }

    /// The Monday of the first light week after the week of `now`; `from` where the calendar ends.
    #[must_use]
    pub fn next_from(&self, now: DateTime<FixedOffset>) -> Monday {
        let every = i64::from(self.every);
        let week = self.from.weeks_to(Monday::of(now.date_naive())).max(-1) + 1;
        // The weeks that are light have the numbers every − 1, 2 · every − 1, and so on.
        let light = week + (every - 1 - week).rem_euclid(every);
        let days = u64::try_from(light * 7).unwrap_or(0);
        let monday = self.from.date().checked_add_days(Days::new(days));
        monday.map_or(self.from, Monday)
    }

    /// True when the week of `now`, by the calendar where the lifter is, is light. Weeks before the first are not.
    #[must_use]
    pub fn is_now(&self, now: DateTime<FixedOffset>) -> bool {
        let week = self.from.weeks_to(Monday::of(now.date_naive()));
        week >= 0 && (week + 1) % i64::from(self.every) == 0
    }
}

/// The file's form of a light week, before it is checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct LightForm {
    every: u8,
    from: Monday,
    load: Share,
    sets: Share,
}

impl TryFrom<LightForm> for LightWeek {
    type Error = UnfitLight;
    fn try_from(form: LightForm) -> Result<LightWeek, UnfitLight> {
        LightWeek::new(form.every, form.from, form.load, form.sets)
    }
}

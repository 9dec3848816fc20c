//! What a person wants to see of an exercise: which period, which prescriptions, in which unit.

use crate::charts::{Axis, Grain, day_of};
use crate::ledger::Past;
use crate::units::{Load, Unit};
use crate::words::{t, t_in};
use chrono::{Days, NaiveDate};
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

/// How far back pictures go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Period {
    /// 13 weeks: a quarter of a year.
    Quarter,
    /// 52 weeks.
    Year,
    /// As far as there is something.
    All,
}

impl Period {
    /// All of them in the order of the choice.
    pub const ALL: [Period; 3] = [Period::Quarter, Period::Year, Period::All];

    /// Its words.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Period::Quarter => t("13 weeks"),
            Period::Year => t("a year"),
            Period::All => t_in("period", "all"),
        }
    }

    /// Its first day when it ends today; none where it has none.
    #[must_use]
    pub fn first(self, today: NaiveDate) -> Option<NaiveDate> {
        let weeks: u64 = match self {
            Period::Quarter => 13,
            Period::Year => 52,
            Period::All => return None,
        };
        today.checked_sub_days(Days::new(weeks * 7 - 1))
    }

    /// The axis of days of a picture of this period.
    #[must_use]
    pub fn days(self, today: NaiveDate) -> Axis {
        let axis = Axis::of(Grain::Days, "");
        match self.first(today) {
            Some(first) => axis.spanning(day_of(first), day_of(today)),
            None => axis,
        }
    }

    /// Whether a day lies in it.
    #[must_use]
    pub fn holds(self, today: NaiveDate, day: NaiveDate) -> bool {
        self.first(today).is_none_or(|first| day >= first)
    }
}

/// What is wanted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Asked {
    /// The unit of loads.
    pub unit: Unit,
    /// How far back.
    pub period: Period,
    /// The day on which it is asked.
    pub today: NaiveDate,
}

impl Asked {
    /// Whether what was done counts for it.
    #[must_use]
    pub fn holds(&self, past: &Past) -> bool {
        let day = past.performance.at.date_naive();
        self.period.holds(self.today, day)
    }

    /// The axis of days.
    #[must_use]
    pub fn days(&self) -> Axis {
        self.period.days(self.today)
    }
}

/// Those done by the prescription of the newest (see [`crate::sheet::Block::shape`]), or all; their order stays.
#[must_use]
pub fn chosen(history: &[Past], comparable: bool) -> Vec<&Past> {
    let newest = history.last().map(|past| past.performance.shape.as_str());
    history
        .iter()
        .filter(|past| !comparable || Some(past.performance.shape.as_str()) == newest)
        .collect()
}

/// The day of what was done.
pub(super) fn day(past: &Past) -> i64 {
    day_of(past.performance.at.date_naive())
}

/// A load in hundredths of a unit, rounded.
#[must_use]
pub fn hundredths(load: Load, unit: Unit) -> i64 {
    in_parts(load.amount_in(unit), 2)
}

/// A number in parts of ten to the power of `decimals`, rounded.
pub(super) fn in_parts(amount: Decimal, decimals: u32) -> i64 {
    let parts = amount * Decimal::from(10_i64.pow(decimals));
    let whole = parts.round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero);
    whole.to_i64().unwrap_or(i64::MAX)
}

/// Loads in hundredths of a unit.
#[must_use]
pub fn load_grain(unit: Unit) -> Grain {
    Grain::Number {
        decimals: 2,
        unit: unit.sign(),
    }
}

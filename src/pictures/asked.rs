//! What a person wants to see of an exercise: which period, which prescriptions, in which unit.

use crate::charts::{Axis, Chart, Grain, Ink, Mark, Row, Shape, Spot, day_of};
use crate::ledger::Past;
use crate::say;
use crate::units::{Load, Unit};
use crate::words::{t, t_in};
use chrono::{Days, NaiveDate};
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};
use uuid::Uuid;

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

    /// A picture of one dot a session on a line, day by day; what is said of it where there is nothing, and else.
    pub(super) fn over_time(&self, rows: Vec<Row>, [nothing, some]: [&'static str; 2]) -> Chart {
        let spots: Vec<Spot> = rows.iter().map(|row| Spot::at(row.x, row.y)).collect();
        Chart {
            about: if rows.is_empty() { nothing } else { some }.to_owned(),
            x: self.days(),
            marks: vec![
                Mark::new(Shape::Line, Ink::Quiet, "", spots.clone()),
                Mark::new(Shape::Dots, Ink::Main, "", spots),
            ],
            rows,
            ..Chart::default()
        }
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

/// In how many sessions of the period something was done that [`chosen`] leaves out when it asks for one prescription.
#[must_use]
pub fn hidden(history: &[Past], asked: Asked) -> usize {
    let newest = history.last().map(|past| past.performance.shape.as_str());
    let others = history
        .iter()
        .filter(|past| asked.holds(past) && Some(past.performance.shape.as_str()) != newest);
    let mut sessions: Vec<Uuid> = others.map(|past| past.performance.session).collect();
    sessions.dedup();
    sessions.len()
}

/// A picture of what is [`chosen`]. Where that is nothing, although there is something by other prescriptions, the picture
/// says that it is hidden, and by what.
#[must_use]
pub fn drawn(history: &[Past], comparable: bool, draw: impl Fn(&[&Past]) -> Chart) -> Chart {
    let mut chart = draw(&chosen(history, comparable));
    if comparable && chart.rows.is_empty() && !draw(&chosen(history, false)).rows.is_empty() {
        chart.about = say!(
            "“{one}” hides what there is to see here; “{all}” shows it.",
            one = t("same prescription"),
            all = t_in("prescriptions", "all")
        );
    }
    chart
}

/// What a picture says, of which others were left out or not: see [`crate::ledger::moved_as_newest`].
pub(super) fn without_others(about: String, others: bool) -> String {
    if !others {
        return about;
    }
    let left_out =
        t("What was done with other equipment or other sides than the last time is not in it.");
    format!("{about} {left_out}")
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::pictures::volume;

    /// What was done on a day of March by the prescription `shape`, of so much volume load.
    fn past(day: u32, shape: &str, kg: u32) -> Past {
        let id = Uuid::from_u128(u128::from(day));
        serde_json::from_str(&format!(
            "{{\"name\":\"front squat\",\"performance\":{{\"session\":\"{id}\",\"at\":\"2026-03-{day:02}T09:00:00Z\",\
             \"shape\":\"{shape}\",\"sets\":[],\"left\":0}},\"sheet\":\"{id}\",\"volume\":\"{kg} kg\"}}"
        ))
        .expect("a past")
    }

    #[test]
    fn an_empty_picture_says_what_hides_the_rest() {
        let asked = Asked {
            unit: Unit::Kg,
            period: Period::Quarter,
            today: NaiveDate::from_ymd_opt(2026, 3, 20).unwrap(),
        };
        let draw = |history: &[Past], comparable| {
            drawn(history, comparable, |chosen| volume(chosen, asked))
        };
        let history = [
            past(1, "5 reps", 300),
            past(3, "5 reps", 300),
            past(5, "hold", 0),
        ];
        assert_eq!(
            draw(&history, true).about,
            "“same prescription” hides what there is to see here; “all” shows it."
        );
        assert_eq!(hidden(&history, asked), 2);
        assert_eq!(draw(&history, false).rows.len(), 2);
        assert_eq!(hidden(&history[..2], asked), 0);
        let alone = draw(&history[2..], true).about;
        assert_eq!(alone, "No volume load in this period.");
    }
}

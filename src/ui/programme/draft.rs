//! What is typed and tapped of a programme, before it is kept.

use crate::programme::{
    LIGHT_LOAD_MIN, LIGHT_SETS_MIN, LightWeek, Monday, Plan, Programme, ROTATION_SHEETS_MAX,
    Rotation, Weekdays,
};
use crate::sheet::{Line, SheetId};
use crate::ui::parts::read_name;
use crate::units::Share;
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use rust_decimal::Decimal;

/// By how many percent a tap changes a share.
const STEP: u8 = 5;

/// What is typed and tapped so far.
#[derive(Clone, PartialEq)]
pub struct Draft {
    /// Name.
    pub name: String,
    /// True for sheets on weekdays, false for a rotation.
    pub on_days: bool,
    /// Sheets of the rotation in order.
    pub order: Vec<SheetId>,
    /// Sheets of the days, Monday first.
    pub days: [Option<SheetId>; 7],
    /// Whether there is a light week now and then.
    pub lightens: bool,
    /// What it is, as far as it was said.
    pub light: LightWeek,
}

/// The share a step up or down, kept between `least` and 100 %.
fn stepped(share: Share, more: bool, least: u8) -> Share {
    let step = Decimal::from(STEP);
    let percent = share.in_percent();
    let percent = if more { percent + step } else { percent - step };
    Share::new(percent.clamp(Decimal::from(least), Decimal::ONE_HUNDRED)).unwrap_or(share)
}

impl Draft {
    /// A rotation of nothing yet.
    pub fn new(now: DateTime<FixedOffset>) -> Draft {
        Draft {
            name: t("My programme").to_owned(),
            on_days: false,
            order: Vec::new(),
            days: [None; 7],
            lightens: false,
            light: LightWeek::usual(now),
        }
    }

    /// What a programme says; sheets that do not `exist` any more are left out.
    pub fn of(
        programme: &Programme,
        exists: &dyn Fn(SheetId) -> bool,
        now: DateTime<FixedOffset>,
    ) -> Draft {
        let mut draft = Draft::new(now);
        draft.name = programme.name.to_string();
        match &programme.plan {
            Plan::Rotation(rotation) => {
                let sheets = rotation.sheets().iter().copied();
                draft.order = sheets.filter(|sheet| exists(*sheet)).collect();
            }
            Plan::Weekdays(days) => {
                draft.on_days = true;
                draft.days = days
                    .days()
                    .map(|sheet| sheet.filter(|sheet| exists(*sheet)));
            }
        }
        draft.lightens = programme.light.is_some();
        draft.light = programme.light.unwrap_or(draft.light);
        draft
    }

    /// Puts a sheet at the end of the rotation, unless it is full.
    pub fn add(&mut self, sheet: SheetId) {
        if self.order.len() < ROTATION_SHEETS_MAX {
            self.order.push(sheet);
        }
    }

    /// Takes the sheet at a place out of the rotation.
    pub fn take_out(&mut self, at: usize) {
        if at < self.order.len() {
            self.order.remove(at);
        }
    }

    /// Changes the light week where the change is allowed.
    fn relight(&mut self, every: u8, from: Monday, load: Share, sets: Share) {
        self.light = LightWeek::new(every, from, load, sets).unwrap_or(self.light);
    }

    /// One week more or less from one light week to the next.
    pub fn step_every(&mut self, more: bool) {
        let every = self.light.every();
        let every = if more { every + 1 } else { every - 1 };
        self.relight(
            every,
            self.light.from(),
            self.light.load(),
            self.light.sets(),
        );
    }

    /// Counts the weeks from that of `now`.
    pub fn count_from(&mut self, now: DateTime<FixedOffset>) {
        let from = Monday::of(now.date_naive());
        self.relight(
            self.light.every(),
            from,
            self.light.load(),
            self.light.sets(),
        );
    }

    /// More or less load in a light week.
    pub fn step_load(&mut self, more: bool) {
        let load = stepped(self.light.load(), more, LIGHT_LOAD_MIN);
        self.relight(
            self.light.every(),
            self.light.from(),
            load,
            self.light.sets(),
        );
    }

    /// More or fewer sets in a light week.
    pub fn step_sets(&mut self, more: bool) {
        let sets = stepped(self.light.sets(), more, LIGHT_SETS_MIN);
        self.relight(
            self.light.every(),
            self.light.from(),
            self.light.load(),
            sets,
        );
    }

    /// Name, plan and light week, or what is wrong.
    pub fn read(&self) -> Result<(Line, Plan, Option<LightWeek>), String> {
        let name = read_name(&self.name)?;
        let plan = if self.on_days {
            Weekdays::new(self.days).map(Plan::Weekdays)
        } else {
            Rotation::new(self.order.clone()).map(Plan::Rotation)
        };
        let plan = plan.map_err(|unfit| unfit.to_string())?;
        Ok((name, plan, self.lightens.then_some(self.light)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use uuid::Uuid;

    fn now() -> DateTime<FixedOffset> {
        DateTime::parse_from_rfc3339("2026-01-07T09:00:00+01:00").unwrap()
    }

    #[test]
    fn a_rotation_takes_sheets_in_the_order_of_the_taps() {
        let mut draft = Draft::new(now());
        assert!(draft.read().unwrap_err().contains("1 to 14 sheets"));
        for n in [1, 2, 1] {
            draft.add(SheetId(Uuid::from_u128(n)));
        }
        draft.take_out(0);
        draft.take_out(7);
        let (_, plan, light) = draft.read().unwrap();
        assert_eq!(plan.sheets(), [2, 1].map(|n| SheetId(Uuid::from_u128(n))));
        assert_eq!(light, None);
        for _ in 0..20 {
            draft.add(SheetId(Uuid::from_u128(3)));
        }
        assert_eq!(draft.order.len(), 14);
    }

    #[test]
    fn the_light_week_stays_within_its_limits() {
        let mut draft = Draft::new(now());
        for _ in 0..30 {
            draft.step_every(false);
            draft.step_load(false);
            draft.step_sets(true);
        }
        assert_eq!(draft.light.every(), 2);
        assert_eq!(draft.light.load(), Share::percent(40));
        assert_eq!(draft.light.sets(), Share::percent(100));
        assert_eq!(draft.light.from().date().to_string(), "2026-01-05");
    }
}

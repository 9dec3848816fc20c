//! A light session that is offered though no light week is planned: where nothing was gained for weeks in main work.

use super::light::LightWeek;
use crate::say;
use crate::sheet::{Block, ExerciseId, Role, Sheet};
use crate::strength::{
    Curve, NO_BREAK_DAYS, PLATEAU_DAYS, Performance, Plateau, days_between, moved_alike, plateau,
};
use crate::units::day;
use chrono::{DateTime, FixedOffset};

/// How long it is offered from the first light session on, in days: a week (common practice, no source).
const OFFERED_DAYS: i64 = 7;

/// A light session that is offered, and why.
#[derive(Debug, Clone, PartialEq)]
pub struct Relief {
    /// The exercise in which nothing was gained.
    pub exercise: String,
    /// Since when, and over how many sessions.
    pub plateau: Plateau,
    /// How light.
    pub light: LightWeek,
}

/// What is known when a sheet is about to be begun.
pub struct Lately<'a> {
    /// What was done of an exercise, newest last.
    pub history: &'a dyn Fn(&ExerciseId) -> &'a [Performance],
    /// When sessions of the sheet were done light, in any order.
    pub lightened: &'a [DateTime<FixedOffset>],
    /// The curve that the maximum is estimated by.
    pub curve: Curve,
    /// Now.
    pub now: DateTime<FixedOffset>,
}

/// Whether `sheet` is offered light today, `light` saying how: the first block of power or strength whose exercise shows
/// no gain for weeks ([`plateau`]) and was done lately. A light week is for a week: from the first light session on it is
/// offered for seven days, then not until the last one lies as far back as a plateau takes to be called; these days are whole
/// ones that have gone by. It helps often, common practice, no source.
#[must_use]
pub fn relief(sheet: &Sheet, light: LightWeek, lately: &Lately<'_>) -> Option<Relief> {
    let ago = |at: DateTime<FixedOffset>| (lately.now - at).num_days();
    let mut lightened = lately.lightened.iter().map(|at| ago(*at));
    if lightened.any(|days| (OFFERED_DAYS..PLATEAU_DAYS).contains(&days)) {
        return None;
    }
    main_work(sheet).find_map(|block| {
        let history = (lately.history)(&block.exercise.id);
        let history = moved_alike(history, block);
        let last = history.clone().last()?;
        // Whoever has not done it for longer has rested, and is led back by the rule of a break.
        if days_between(last.at, lately.now) > NO_BREAK_DAYS {
            return None;
        }
        Some(Relief {
            exercise: block.exercise.said(),
            plateau: plateau(history, lately.curve)?,
            light,
        })
    })
}

/// The blocks that are main work.
fn main_work(sheet: &Sheet) -> impl Iterator<Item = &Block> {
    let is_main = |block: &&Block| matches!(block.role, Role::Power | Role::Strength);
    sheet.blocks().filter(is_main)
}

impl Relief {
    /// Why, in one sentence.
    #[must_use]
    pub fn said(&self) -> String {
        say!(
            "{exercise}: no gain to be seen in {sessions} sessions since {day}. A lighter week often helps (common practice): {load} of the load, {sets} of the work sets.",
            exercise = self.exercise,
            sessions = self.plateau.sessions,
            day = day(self.plateau.since),
            load = self.light.load(),
            sets = self.light.sets()
        )
    }
}

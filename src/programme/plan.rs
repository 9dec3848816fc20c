//! How the sheets of a programme follow each other.

use crate::say;
use crate::sheet::SheetId;
use crate::words::t;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Most sheets in a rotation; one may stand in it several times.
pub const ROTATION_SHEETS_MAX: usize = 14;

/// Sheets one after the other, and again from the first: 1 to 14.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "Vec<SheetId>", into = "Vec<SheetId>")]
pub struct Rotation(Vec<SheetId>);

/// Sheets on days of the week, Monday first; at least one.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "[Option<SheetId>; 7]", into = "[Option<SheetId>; 7]")]
pub struct Weekdays([Option<SheetId>; 7]);

/// How the sheets follow each other.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Plan {
    /// One after the other, whatever the day.
    Rotation(Rotation),
    /// Each on its day.
    Weekdays(Weekdays),
}

/// Why sheets are no plan.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnfitPlan {
    /// A rotation of so many sheets.
    Rotation(usize),
    /// No day has a sheet.
    NoDay,
}

impl fmt::Display for UnfitPlan {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitPlan::Rotation(given) => f.write_str(&say!(
                "a rotation has 1 to {most} sheets, not {given}",
                most = ROTATION_SHEETS_MAX,
                given
            )),
            UnfitPlan::NoDay => f.write_str(t("give at least one day of the week a sheet")),
        }
    }
}

impl std::error::Error for UnfitPlan {}

impl Rotation {
    /// Checks how many there are.
    ///
    /// # Errors
    /// [`UnfitPlan`].
    pub fn new(sheets: Vec<SheetId>) -> Result<Rotation, UnfitPlan> {
        if (1..=ROTATION_SHEETS_MAX).contains(&sheets.len()) {
            Ok(Rotation(sheets))
        } else {
            Err(UnfitPlan::Rotation(sheets.len()))
        }
    }

    /// Its sheets in order.
    #[must_use]
    pub fn sheets(&self) -> &[SheetId] {
        &self.0
    }
}

impl Weekdays {
    /// Checks that some day has a sheet.
    ///
    /// # Errors
    /// [`UnfitPlan`].
    pub fn new(days: [Option<SheetId>; 7]) -> Result<Weekdays, UnfitPlan> {
        if days.iter().any(Option::is_some) {
            Ok(Weekdays(days))
        } else {
            Err(UnfitPlan::NoDay)
        }
    }

    /// The sheet of each day, Monday first.
    #[must_use]
    pub fn days(&self) -> &[Option<SheetId>; 7] {
        &self.0
    }
}

impl Plan {
    /// Every sheet that stands in it, in order; one may come several times.
    #[must_use]
    pub fn sheets(&self) -> Vec<SheetId> {
        match self {
            Plan::Rotation(rotation) => rotation.0.clone(),
            Plan::Weekdays(days) => days.0.iter().flatten().copied().collect(),
        }
    }
}

impl TryFrom<Vec<SheetId>> for Rotation {
    type Error = UnfitPlan;
    fn try_from(sheets: Vec<SheetId>) -> Result<Rotation, UnfitPlan> {
        Rotation::new(sheets)
    }
}

impl From<Rotation> for Vec<SheetId> {
    fn from(rotation: Rotation) -> Vec<SheetId> {
        rotation.0
    }
}

impl TryFrom<[Option<SheetId>; 7]> for Weekdays {
    type Error = UnfitPlan;
    fn try_from(days: [Option<SheetId>; 7]) -> Result<Weekdays, UnfitPlan> {
        Weekdays::new(days)
    }
}

impl From<Weekdays> for [Option<SheetId>; 7] {
    fn from(days: Weekdays) -> [Option<SheetId>; 7] {
        days.0
    }
}

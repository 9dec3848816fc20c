//! Why a sheet is offered, in words.

use super::next::Why;
use crate::say;
use crate::sheet::SheetId;
use crate::units::{day, weekday};
use crate::words::t;

impl Why {
    /// The sentence. `name` gives the name of a sheet that is still known.
    #[must_use]
    pub fn said(&self, name: &dyn Fn(SheetId) -> Option<String>) -> String {
        match *self {
            Why::First => t("first of the rotation").to_owned(),
            Why::After { sheet, on } => {
                let before =
                    name(sheet).unwrap_or_else(|| t("a sheet that was removed").to_owned());
                say!(
                    "follows on {before}, done on {date}",
                    before,
                    date = day(on)
                )
            }
            Why::Today { day } => say!("the sheet of {weekday}, today", weekday = weekday(day)),
            Why::Missed { day } => say!("missed on {weekday}", weekday = weekday(day)),
            Why::Coming { day } => say!("next is the sheet of {weekday}", weekday = weekday(day)),
        }
    }
}

//! Why a sheet is offered, in words.

use super::next::Why;
use crate::sheet::SheetId;
use crate::units::{WEEKDAYS, day};

impl Why {
    /// The sentence. `name` gives the name of a sheet that is still known.
    #[must_use]
    pub fn said(&self, name: &dyn Fn(SheetId) -> Option<String>) -> String {
        match *self {
            Why::First => "first of the rotation".to_owned(),
            Why::After { sheet, on } => {
                let before = name(sheet).unwrap_or_else(|| "a sheet that was removed".to_owned());
                format!("follows on {before}, done on {}", day(on))
            }
            Why::Today { day } => format!("the sheet of {}, today", WEEKDAYS[day]),
            Why::Missed { day } => format!("missed on {}", WEEKDAYS[day]),
            Why::Coming { day } => format!("next is the sheet of {}", WEEKDAYS[day]),
        }
    }
}

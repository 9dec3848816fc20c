//! Lines of a sheet that were typed and not kept: who goes back by the gesture, or reads the page again, finds them as they were.

use crate::device::prefs;
use crate::sheet::SheetId;
use crate::ui::stanchion::Stanchion;
use leptos::prelude::*;
use serde::{Deserialize, Serialize};

/// Where this tab remembers them, each lifter's own.
const KEY: &str = "lines";

/// As they are remembered.
#[derive(Serialize, Deserialize)]
struct Remembered {
    of: Option<SheetId>,
    /// The lines of the sheet as they were; where it is another one by now, these are of no use.
    begun_from: String,
    lines: String,
}

/// The lines of one sheet, or of a new one.
#[derive(Clone, Copy)]
pub struct Unkept {
    app: Stanchion,
    of: Option<SheetId>,
    begun_from: StoredValue<String>,
}

impl Unkept {
    /// Those of a sheet that began as `begun_from`.
    pub fn of(app: Stanchion, of: Option<SheetId>, begun_from: String) -> Unkept {
        Unkept {
            app,
            of,
            begun_from: StoredValue::new(begun_from),
        }
    }

    fn key(self) -> String {
        self.app.model.with_untracked(|model| model.pref(KEY))
    }

    /// What was typed, or else how the sheet begins.
    pub fn lines(self) -> String {
        let kept: Option<Remembered> = prefs::get_in_tab(&self.key());
        let begun_from = self.begun_from.get_value();
        let kept = kept.filter(|kept| kept.of == self.of && kept.begun_from == begun_from);
        kept.map_or(begun_from, |kept| kept.lines)
    }

    /// Remembers lines as they are typed.
    pub fn keep(self, lines: &str) {
        let kept = Remembered {
            of: self.of,
            begun_from: self.begun_from.get_value(),
            lines: lines.to_owned(),
        };
        prefs::set_in_tab(&self.key(), &kept);
    }

    /// They were kept as a sheet, whose lines are these now: what is typed from here on is typed into those.
    pub fn goes_on_from(self, lines: String) {
        self.begun_from.set_value(lines);
    }

    /// Forgets them: they were kept, or put aside on purpose.
    pub fn forget(self) {
        prefs::set_in_tab(&self.key(), &());
    }
}

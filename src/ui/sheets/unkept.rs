//! Lines of a sheet that were typed and not kept: who goes back by the gesture, or reads the page again, finds them as they were.

use crate::device::prefs;
use crate::sheet::SheetId;
use serde::{Deserialize, Serialize};

/// Lines that were typed and not kept.
#[derive(Serialize, Deserialize)]
pub struct Unkept {
    of: Option<SheetId>,
    /// The lines of the sheet as they were; where it is another one by now, these are of no use.
    begun_from: String,
    lines: String,
}

impl Unkept {
    /// Where this tab remembers them.
    const KEY: &str = "lines";

    /// The lines that were typed for a sheet, or a new one, that began as `begun_from`; none where nothing else was typed.
    pub fn lines(of: Option<SheetId>, begun_from: &str) -> Option<String> {
        let kept: Unkept = prefs::get_in_tab(Self::KEY)?;
        (kept.of == of && kept.begun_from == begun_from).then_some(kept.lines)
    }

    /// Remembers lines as they are typed.
    pub fn keep(of: Option<SheetId>, begun_from: &str, lines: &str) {
        let kept = Unkept {
            of,
            begun_from: begun_from.to_owned(),
            lines: lines.to_owned(),
        };
        prefs::set_in_tab(Self::KEY, &kept);
    }

    /// Forgets them: they were kept, or put aside on purpose.
    pub fn forget() {
        prefs::set_in_tab(Self::KEY, &());
    }
}

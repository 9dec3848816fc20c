//! What the model knows of the ledger without reading it: the newest sessions, and of each sheet the last.

use super::model::Model;
use crate::ledger::{Heading, Pace};
use crate::programme::DoneSheet;
use crate::session::SessionId;
use crate::sheet::SheetId;
use crate::store::LastOf;
use chrono::{DateTime, FixedOffset};

impl Model {
    /// The lifter's own pace, by the sessions of the ledger.
    #[must_use]
    pub fn pace(&self) -> Pace {
        Pace::of(&self.headings)
    }

    /// The line of the ledger of a session that is among the newest or open.
    #[must_use]
    pub fn heading(&self, id: SessionId) -> Option<&Heading> {
        let known = self.headings.iter().chain(&self.opened_heading);
        known.into_iter().find(|heading| heading.session == id)
    }

    /// When that sheet was done last, and in which session.
    #[must_use]
    pub fn last_of(&self, sheet: SheetId) -> Option<(DateTime<FixedOffset>, SessionId)> {
        let among = self
            .headings
            .iter()
            .filter(|heading| heading.sheet_id == sheet);
        let known = self
            .lasts
            .get(&sheet)
            .map(|last| (last.began, last.session));
        among.map(Heading::place).chain(known).max()
    }

    /// What was done so far, as a programme looks at it: the newest sessions, and of each sheet the last.
    #[must_use]
    pub fn done_sheets(&self) -> Vec<DoneSheet> {
        let newest = self.headings.iter().map(|heading| DoneSheet {
            sheet: heading.sheet_id,
            began: heading.began,
        });
        let is_known = |last: &&LastOf| self.headings.iter().any(|it| it.session == last.session);
        let older = self.lasts.values().filter(|last| !is_known(last));
        let older = older.map(|last| DoneSheet {
            sheet: last.sheet,
            began: last.began,
        });
        newest.chain(older).collect()
    }
}

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

    /// When that sheet was done last, and in which session. One that was begun and ended without a set does not count.
    #[must_use]
    pub fn last_of(&self, sheet: SheetId) -> Option<(DateTime<FixedOffset>, SessionId)> {
        let among = self
            .headings
            .iter()
            .filter(|heading| heading.sheet_id == sheet && heading.has_sets());
        let known = self
            .lasts
            .get(&sheet)
            .filter(|last| !self.among_newest(last))
            .map(|last| (last.began, last.session));
        among.map(Heading::place).chain(known).max()
    }

    /// What was done so far, as a programme looks at it: the newest sessions, and of each sheet the last. Where nothing was
    /// done, the programme stays where it is.
    #[must_use]
    pub fn done_sheets(&self) -> Vec<DoneSheet> {
        let newest = self.headings.iter().filter(|heading| heading.has_sets());
        let newest = newest.map(|heading| DoneSheet {
            sheet: heading.sheet_id,
            began: heading.began,
        });
        let older = self.lasts.values().filter(|last| !self.among_newest(last));
        let older = older.map(|last| DoneSheet {
            sheet: last.sheet,
            began: last.began,
        });
        newest.chain(older).collect()
    }

    /// Whether that session is among the newest, which say more of it.
    fn among_newest(&self, last: &LastOf) -> bool {
        self.headings.iter().any(|it| it.session == last.session)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn heading(day: u32, sheet: u128, sets: u32) -> Heading {
        let (id, sheet) = (
            uuid::Uuid::from_u128(u128::from(day)),
            uuid::Uuid::from_u128(sheet),
        );
        crate::json::parse(&format!(
            "{{\"session\":\"{id}\",\"began\":\"2026-03-{day:02}T09:00:00Z\",\"sheet_id\":\"{sheet}\",\
             \"sheet\":\"Lower A\",\"sets_done\":{sets},\"volume\":\"0 kg\",\"minutes\":4}}"
        ))
        .expect("a heading")
    }

    #[test]
    fn a_session_without_a_set_is_no_turn_of_its_sheet() {
        let headings = vec![heading(4, 1, 0), heading(3, 2, 5), heading(2, 1, 5)];
        let last = |heading: &Heading| LastOf {
            sheet: heading.sheet_id,
            session: heading.session,
            began: heading.began,
        };
        let mut model = Model::default();
        for heading in headings[1..].iter().map(last) {
            model.lasts.insert(heading.sheet, heading);
        }
        model.headings = headings;
        let one = model.headings[0].sheet_id;
        let done: Vec<DateTime<FixedOffset>> =
            model.done_sheets().iter().map(|done| done.began).collect();
        assert_eq!(
            done,
            [model.headings[1].began, model.headings[2].began],
            "the empty one is left out, and each turn is told once"
        );
        let before = model.headings[2].place();
        assert_eq!(model.last_of(one), Some(before));
    }
}

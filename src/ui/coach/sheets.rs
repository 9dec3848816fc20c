//! Sheets that are written for another lifter while their ledger is looked at: proposals by their history and their kit,
//! kept among one's own sheets.

use crate::device::clock;
use crate::device::db::Write;
use crate::draft::Draft;
use crate::sheet::{Line, SheetId};
use crate::ui::drafts::row;
use crate::ui::model::Model;
use crate::ui::place::Place;
use crate::ui::stanchion::Stanchion;
use crate::words::t;

impl Model {
    /// Whether the sheet or the draft of that id is written for another one, and may be changed while their ledger is
    /// looked at.
    fn is_for_them(&self, id: SheetId) -> bool {
        let draft = self.drafts.get(&id).map(Draft::sheet);
        let sheet = draft.or_else(|| self.sheet(id));
        let may = self.other.as_ref().is_some_and(|own| !own.follows);
        may && self.looks_at.is_some() && sheet.is_some_and(|sheet| sheet.written_for.is_some())
    }

    /// Changes the sheets that are shown and, while another one's ledger is looked at, one's own too.
    pub fn change_sheets(&mut self, change: &mut dyn FnMut(&mut Model)) {
        change(self);
        if self.looks_at.is_some()
            && let Some(own) = &mut self.other
        {
            change(own);
        }
    }
}

impl Stanchion {
    /// Whether that sheet may be written here; if not, the person is told.
    pub fn may_write_sheet(self, id: SheetId) -> bool {
        self.model.with_untracked(|model| model.is_for_them(id)) || self.may_write()
    }

    /// Writes what belongs to a sheet: among one's own, whoever's ledger is looked at.
    pub fn write_sheets(self, writes: Vec<Write>) {
        let looks = self.model.with_untracked(|model| model.looks_at.is_some());
        match self.other_keep().filter(|_| looks) {
            Some(own) => self.write_in(&own, writes),
            None => self.write(writes),
        }
    }

    /// Begins a new sheet for the one whose ledger is looked at, from one of theirs, and leads to it.
    pub fn write_next(self, id: SheetId) {
        let (sheet, whom, follows) = self.model.with_untracked(|model| {
            let whom = model
                .looks_at
                .as_ref()
                .and_then(|name| Line::new(name).ok());
            let follows = model.other.as_ref().is_none_or(|own| own.follows);
            (model.sheet(id).cloned(), whom, follows)
        });
        let (Some(sheet), Some(whom)) = (sheet, whom) else {
            return;
        };
        if follows {
            return self.complain(
                t("Another tab or window of Stanchion is in use: close it, or take over there, to write sheets."),
            );
        }
        let next = SheetId(self.id());
        let draft = Draft::for_another(&sheet, next, &mut || self.id(), clock::wall(), whom);
        self.write_sheets(vec![row(&draft)]);
        self.model.update(|model| {
            model.change_sheets(&mut |model| {
                model.drafts.insert(next, draft.clone());
            });
        });
        // Here something is written, after all.
        if let Some(said) = self.model.with_untracked(Model::only_looks) {
            self.unsay(&said);
        }
        self.go(Place::Draft(next));
    }
}

//! Sheets that are being written: begun, changed, kept or thrown away. Each change is on disk at once.

use super::keep::put;
use super::place::Place;
use super::stanchion::Stanchion;
use crate::device::clock;
use crate::device::db::Write;
use crate::draft::{Draft, Unfit};
use crate::ledger::{SessionRecord, again};
use crate::sheet::{Block, BlockId, Sheet, SheetId, SheetVersion};
use crate::store::Shelf;
use crate::words::t;

impl Stanchion {
    /// Begins a new sheet and leads to it.
    pub fn begin_draft(self) {
        if !self.may_write() {
            return;
        }
        let (id, version) = (SheetId(self.id()), SheetVersion(self.id()));
        let draft = Draft::new(id, version, clock::wall());
        self.model.update(|model| {
            model.drafts.insert(id, draft);
        });
        self.go(Place::Draft(id));
    }

    /// Begins a new sheet as a copy of another and leads to it.
    pub fn copy_sheet(self, id: SheetId) {
        let sheet = self.model.with_untracked(|model| model.sheet(id).cloned());
        let (Some(sheet), true) = (sheet, self.may_write()) else {
            return;
        };
        let copy = SheetId(self.id());
        let draft = Draft::copy(&sheet, copy, &mut || self.id(), clock::wall());
        self.write(vec![row(&draft)]);
        self.model.update(|model| {
            model.drafts.insert(copy, draft);
        });
        self.go(Place::Draft(copy));
    }

    /// Begins a new sheet of what the session of the ledger that is open did, and leads to it.
    pub fn sheet_again(self) {
        if !self.may_write() {
            return;
        }
        let id = SheetId(self.id());
        let made = self.model.with_untracked(|model| {
            let session = model.opened.as_ref()?;
            let record = SessionRecord::from_events(session.events()).ok()?;
            let written = &session.state().began.sheet;
            again(&record, written, id, &mut || self.id(), clock::wall())
        });
        let Some(sheet) = made else {
            return self.complain(t(
                "Nothing was done in this session, so there is nothing to do again.",
            ));
        };
        let draft = Draft::resumed(sheet);
        self.write(vec![row(&draft)]);
        self.model.update(|model| {
            model.drafts.insert(id, draft);
        });
        self.go(Place::Draft(id));
    }

    /// Opens a sheet to be changed, or goes on with what was begun of it, and leads to it.
    pub fn open_draft(self, id: SheetId) {
        if !self.may_write_sheet(id) {
            return;
        }
        self.model.update(|model| {
            let sheet = model.sheet(id).cloned();
            if let (Some(sheet), false) = (sheet, model.drafts.contains_key(&id)) {
                model.drafts.insert(id, Draft::of(sheet));
            }
        });
        self.go(Place::Draft(id));
    }

    /// Changes a draft; what does not hold together is refused in words.
    pub fn change_draft(
        self,
        id: SheetId,
        change: &mut dyn FnMut(&mut Draft) -> Result<(), Unfit>,
    ) -> Result<(), String> {
        if !self.may_write_sheet(id) {
            return Ok(());
        }
        let mut done = Ok(());
        let mut write = None;
        self.model.update(|model| {
            if let Some(draft) = model.drafts.get_mut(&id) {
                done = change(draft).map_err(|unfit| unfit.to_string());
                write = Some(row(draft));
                let draft = draft.clone();
                model.change_sheets(&mut |model| _ = model.drafts.insert(id, draft.clone()));
            }
        });
        if let (Ok(()), Some(write)) = (&done, write) {
            self.write_sheets(vec![write]);
        }
        done
    }

    /// Changes a block of a draft.
    pub fn change_block(
        self,
        id: SheetId,
        block: BlockId,
        change: &mut dyn FnMut(&mut Block),
    ) -> Result<(), String> {
        self.change_draft(id, &mut |draft| draft.change(block, change))
    }

    /// Puts a sheet that was read from lines in the place of a draft, so that it is not lost.
    pub fn draft_lines(self, sheet: &Sheet) {
        let id = sheet.id;
        self.model.update(|model| {
            let before = model.sheet(id).cloned();
            // Of a new sheet there is no before: it begins as it was read.
            let begun = before.map_or_else(|| Draft::resumed(sheet.clone()), Draft::of);
            model.drafts.or_insert_with(id, || begun);
        });
        let changed = self.change_draft(id, &mut |draft| {
            draft.replace(t("the lines"), sheet.clone());
            Ok(())
        });
        if let Err(why) = changed {
            self.complain(why);
        }
    }

    /// Keeps a draft as a version of its sheet and shows it. False where it is no fit sheet.
    pub fn keep_draft(self, id: SheetId) -> bool {
        let draft = self
            .model
            .with_untracked(|model| model.drafts.get(&id).cloned());
        let version = SheetVersion(self.id());
        let kept = draft.map(|draft| draft.kept(version, clock::wall()));
        if let Some(Ok(sheet)) = &kept {
            self.keep_sheet(sheet.clone());
            self.drop_draft(id);
            self.go(Place::Sheet(id));
        }
        !matches!(kept, Some(Err(_)))
    }

    /// Throws a draft away; the sheet stays as it was.
    pub fn drop_draft(self, id: SheetId) {
        if !self.may_write_sheet(id) {
            return;
        }
        self.model
            .update(|model| model.change_sheets(&mut |model| _ = model.drafts.remove(&id)));
        self.write_sheets(vec![taken_off(id)]);
    }
}

/// The write that keeps a draft over a reload. Its shelf holds those that are unkept, and no others: an export counts them
/// there.
pub fn row(draft: &Draft) -> Write {
    let sheet = draft.sheet();
    if draft.is_unkept() {
        put(Shelf::Drafts, &sheet.id.0.to_string(), sheet)
    } else {
        taken_off(sheet.id)
    }
}

fn taken_off(id: SheetId) -> Write {
    Write::Delete {
        shelf: Shelf::Drafts.name().to_owned(),
        key: id.0.to_string(),
    }
}

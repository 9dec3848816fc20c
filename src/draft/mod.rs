//! A sheet while it is being written: every change leaves it sound, and every change can be taken back.
//!
//! A draft may still be without a block; a sheet may not. Nothing else that a sheet forbids can come about here: what
//! does not hold together is refused with its reason and changes nothing.

mod arrange;
mod fill;
#[cfg(test)]
mod tests;

pub use fill::new_block;

use crate::sheet::{
    Block, BlockId, Group, LINE_CHARS_MAX, Line, Note, Sheet, SheetId, SheetVersion, UnfitSets,
    UnfitSheet,
};
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use std::fmt;
use std::num::NonZeroU16;
use uuid::Uuid;

/// Most changes that can be taken back.
pub const PAST_MAX: usize = 100;

/// What a new sheet is called until its writer says otherwise.
fn new_name() -> &'static str {
    t("New sheet")
}

/// What a copy has behind its name until its writer says otherwise.
fn copy_mark() -> &'static str {
    t(", copy")
}

/// A sheet while it is being written.
#[derive(Debug, Clone, PartialEq)]
pub struct Draft {
    sheet: Sheet,
    /// What it was before each change, with words for the change; the newest last.
    past: Vec<(String, Sheet)>,
    /// True when it was changed before it was opened again.
    resumed: bool,
}

/// Why a change was refused.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unfit {
    /// There is no such block.
    NoSuchBlock,
    /// There is nothing to do it together with.
    Alone,
    /// A list too long or too short.
    Sheet(UnfitSheet),
    /// A line of sets that does not hold together.
    Sets(UnfitSets),
}

impl fmt::Display for Unfit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Unfit::NoSuchBlock => f.write_str(t("this block is not on the sheet any more")),
            Unfit::Alone => f.write_str(t(
                "a pair needs another exercise behind this one: add it first, or move this one up",
            )),
            Unfit::Sheet(unfit) => unfit.fmt(f),
            Unfit::Sets(unfit) => unfit.fmt(f),
        }
    }
}

impl std::error::Error for Unfit {}

impl From<UnfitSheet> for Unfit {
    fn from(unfit: UnfitSheet) -> Unfit {
        Unfit::Sheet(unfit)
    }
}

impl Draft {
    /// A new sheet without a block.
    ///
    /// # Panics
    /// Never: the name that it begins with is a fit line.
    #[must_use]
    pub fn new(id: SheetId, version: SheetVersion, written: DateTime<FixedOffset>) -> Draft {
        Draft::of(Sheet {
            id,
            version,
            written,
            name: Line::new(new_name()).expect("a written line is fit"),
            warm_up: Vec::new(),
            notes: Note::default(),
            budget_minutes: None,
            groups: Vec::new(),
            settled: Vec::new(),
            written_for: None,
        })
    }

    /// A draft that begins as `sheet`.
    #[must_use]
    pub fn of(sheet: Sheet) -> Draft {
        Draft {
            sheet,
            past: Vec::new(),
            resumed: false,
        }
    }

    /// A draft that was changed before, opened again as it was left.
    #[must_use]
    pub fn resumed(sheet: Sheet) -> Draft {
        Draft {
            resumed: true,
            ..Draft::of(sheet)
        }
    }

    /// A draft of a new sheet that begins as a copy of another. `ids` gives new ids, for its version and its blocks.
    ///
    /// # Panics
    /// Never: a name with a letter less and a number behind it is a fit line.
    #[must_use]
    pub fn copy(
        sheet: &Sheet,
        id: SheetId,
        ids: &mut dyn FnMut() -> Uuid,
        written: DateTime<FixedOffset>,
    ) -> Draft {
        let mark = copy_mark();
        let most = LINE_CHARS_MAX.saturating_sub(mark.chars().count());
        let name: String = sheet.name.as_str().chars().take(most).collect();
        let name = Line::new(&(name + mark)).expect("a shortened name with a mark is fit");
        let copy = Draft::another(sheet, id, ids, written);
        Draft::resumed(Sheet { name, ..copy })
    }

    /// A draft of a new sheet for `whom`, that begins as one of theirs. `ids` gives new ids, for its version and its
    /// blocks: it never stands in for one of the writer's own.
    #[must_use]
    pub fn for_another(
        sheet: &Sheet,
        id: SheetId,
        ids: &mut dyn FnMut() -> Uuid,
        written: DateTime<FixedOffset>,
        whom: Line,
    ) -> Draft {
        let next = Draft::another(sheet, id, ids, written);
        Draft::resumed(Sheet {
            written_for: Some(whom),
            ..next
        })
    }

    fn another(
        sheet: &Sheet,
        id: SheetId,
        ids: &mut dyn FnMut() -> Uuid,
        written: DateTime<FixedOffset>,
    ) -> Sheet {
        let mut copy = sheet.clone();
        copy.id = id;
        copy.version = SheetVersion(ids());
        copy.written = written;
        copy.settled.clear();
        for group in &mut copy.groups {
            for block in group.blocks_mut() {
                block.id = BlockId(ids());
            }
        }
        copy
    }

    /// The sheet as it stands. Its version is the one that the draft began from.
    #[must_use]
    pub fn sheet(&self) -> &Sheet {
        &self.sheet
    }

    /// The sheet as a version of its own.
    ///
    /// # Errors
    /// [`UnfitSheet`] while there is no block.
    pub fn kept(
        &self,
        version: SheetVersion,
        written: DateTime<FixedOffset>,
    ) -> Result<Sheet, UnfitSheet> {
        self.sheet.check()?;
        Ok(Sheet {
            version,
            written,
            ..self.sheet.clone()
        })
    }

    /// True when it is not as it began.
    #[must_use]
    pub fn is_changed(&self) -> bool {
        self.resumed || !self.past.is_empty()
    }

    /// True when it holds what no version of its sheet does and could be kept as one: what stays over a reload, and is in no
    /// file. A sheet without a block cannot be read again: there is nothing to lose.
    #[must_use]
    pub fn is_unkept(&self) -> bool {
        self.is_changed() && self.sheet.check().is_ok()
    }

    /// What [`Draft::undo`] would take back, in words.
    #[must_use]
    pub fn undoable(&self) -> Option<&str> {
        self.past.last().map(|(what, _)| what.as_str())
    }

    /// Takes the newest change back.
    pub fn undo(&mut self) {
        if let Some((_, before)) = self.past.pop() {
            self.sheet = before;
        }
    }

    /// Another name.
    pub fn set_name(&mut self, name: Line) {
        self.alter(t("the name"), |sheet| sheet.name = name);
    }

    /// Other warm-up lines.
    ///
    /// # Errors
    /// [`Unfit::Sheet`] when there are too many.
    pub fn set_warm_up(&mut self, lines: Vec<Line>) -> Result<(), Unfit> {
        self.attempt(t("the warm-up"), |sheet| {
            sheet.warm_up = lines;
            Ok(())
        })
    }

    /// Other notes.
    pub fn set_notes(&mut self, notes: Note) {
        self.alter(t("the notes"), |sheet| sheet.notes = notes);
    }

    /// Another time budget in minutes, or none.
    pub fn set_budget(&mut self, minutes: Option<NonZeroU16>) {
        self.alter(t("the time budget"), |sheet| sheet.budget_minutes = minutes);
    }

    /// Puts another sheet of the same id in its place, as one change: text that was written, cuts that were taken.
    pub fn replace(&mut self, what: &str, sheet: Sheet) {
        self.alter(what, |old| *old = sheet);
    }

    /// Changes a block.
    ///
    /// # Errors
    /// [`Unfit`] when the block would not hold together; the draft is as before then.
    pub fn change(&mut self, id: BlockId, change: &mut dyn FnMut(&mut Block)) -> Result<(), Unfit> {
        let name = self.named(id)?;
        self.attempt(&name, |sheet| {
            let block = block_mut(sheet, id).ok_or(Unfit::NoSuchBlock)?;
            change(block);
            for sets in &block.sets {
                sets.check().map_err(Unfit::Sets)?;
            }
            Ok(())
        })
    }

    fn named(&self, id: BlockId) -> Result<String, Unfit> {
        let block = self.sheet.block(id).ok_or(Unfit::NoSuchBlock)?;
        Ok(block.exercise.said())
    }

    /// Makes a change that cannot go wrong. One that changes nothing is not remembered.
    fn alter(&mut self, what: &str, change: impl FnOnce(&mut Sheet)) {
        let mut sheet = self.sheet.clone();
        change(&mut sheet);
        self.put(what, sheet);
    }

    /// Makes a change, unless the sheet would not hold together after it.
    fn attempt(
        &mut self,
        what: &str,
        change: impl FnOnce(&mut Sheet) -> Result<(), Unfit>,
    ) -> Result<(), Unfit> {
        let mut sheet = self.sheet.clone();
        change(&mut sheet)?;
        sheet.forget_unknown();
        if !sheet.groups.is_empty() {
            sheet.check()?;
        }
        self.put(what, sheet);
        Ok(())
    }

    fn put(&mut self, what: &str, sheet: Sheet) {
        if sheet == self.sheet {
            return;
        }
        let before = std::mem::replace(&mut self.sheet, sheet);
        if self.past.len() == PAST_MAX {
            self.past.remove(0);
        }
        self.past.push((what.to_owned(), before));
    }
}

/// The block of that id, to be changed.
fn block_mut(sheet: &mut Sheet, id: BlockId) -> Option<&mut Block> {
    let mut blocks = sheet.groups.iter_mut().flat_map(Group::blocks_mut);
    blocks.find(|block| block.id == id)
}

//! What is written: in the background, in order, and told as done only when it is on disk.

use super::books::{apply_next, follow};
use super::keep::Keep;
use super::model::{Keeping, Model};
use super::stanchion::Stanchion;
use crate::device::db::{DbError, Write};
use crate::device::faults;
use crate::device::painted::once_painted;
use crate::device::timer::after;
use crate::store::{Shelf, Unreadable};
use leptos::prelude::*;
use leptos::task::spawn_local;

/// What could not be written is tried again after this, in milliseconds.
const AGAIN_MS: u32 = 10_000;

/// While this is there nothing that waits is written. It must be gone before anything is waited for that waits for a
/// write.
pub struct Alone {
    app: Stanchion,
    keep: Keep,
}

impl Drop for Alone {
    fn drop(&mut self) {
        self.keep.end_writing();
        self.app.drain(self.keep.clone());
    }
}

impl Stanchion {
    /// Whether this tab may write; if another one does, or somebody else's records are looked at, the person is told.
    pub fn may_write(self) -> bool {
        let refused = self.model.with_untracked(Model::only_looks);
        if let Some(why) = refused {
            self.complain(why);
            return false;
        }
        true
    }

    /// Writes in the background, in order; the screen says *saved* only when it is on disk.
    pub fn write(self, writes: Vec<Write>) {
        self.write_in(&self.keep(), writes);
    }

    /// As [`Stanchion::write`], into those records.
    pub fn write_in(self, keep: &Keep, writes: Vec<Write>) {
        keep.enqueue(writes);
        self.count_waiting();
        self.drain(keep.clone());
    }

    /// As [`Stanchion::write`], begun when what was done is on the screen: a tap is seen sooner.
    pub fn write_once_painted(self, writes: Vec<Write>) {
        let keep = self.keep();
        keep.enqueue(writes);
        self.count_waiting();
        once_painted(move || self.drain(keep));
    }

    /// Tries again what could not be written.
    pub fn write_again(self) {
        let opened: Vec<Keep> = self
            .desk
            .with_value(|desk| desk.opened().cloned().collect());
        for keep in opened {
            self.drain(keep);
        }
    }

    fn count_waiting(self) {
        let waiting = self.desk.with_value(super::desk::Desk::waiting);
        self.unsaved.set(waiting);
    }

    fn drain(self, keep: Keep) {
        if !keep.begin_writing() {
            return;
        }
        self.again.set_value(None);
        spawn_local(async move {
            let written = self.write_all(&keep).await;
            keep.end_writing();
            match written {
                Ok(()) => self.succeeded(),
                Err(error) => self.failed(&error),
            }
        });
    }

    /// Writes all that waits, in order, up to what cannot be written. Only for who has begun to write.
    async fn write_all(self, keep: &Keep) -> Result<(), DbError> {
        while let Some(writes) = keep.next() {
            let written = apply_next(keep, writes).await;
            keep.note_failing(written.is_err());
            let books = written?;
            keep.done();
            self.tell_others(keep);
            self.follow_books(keep, &books);
            self.count_waiting();
        }
        Ok(())
    }

    /// Holds back what is to be written into those records, until what this gives is dropped.
    pub async fn hold_back(self, keep: &Keep) -> Alone {
        keep.begin_alone().await;
        let keep = keep.clone();
        Alone { app: self, keep }
    }

    /// Writes all that waits, then holds back what comes: what is read from now on stays so until it was changed. For what
    /// reads many records and writes what follows from them.
    ///
    /// # Errors
    /// What waits cannot be written; then nothing is held back.
    pub async fn alone(self, keep: &Keep) -> Result<Alone, DbError> {
        let alone = self.hold_back(keep).await;
        self.write_all(keep).await?;
        Ok(alone)
    }

    /// What was written to the books of those records comes into the model that shows them.
    fn follow_books(self, keep: &Keep, books: &[Write]) {
        if books.is_empty() {
            return;
        }
        let aside = self.other_keep().is_some_and(|other| other.is(keep));
        if !self.has_left(keep) {
            self.model.update(|model| follow(model, books));
        } else if aside {
            self.model.update(|model| {
                if let Some(other) = &mut model.other {
                    follow(other, books);
                }
            });
        }
    }

    fn failed(self, error: &DbError) {
        faults::note(&format!("writing: {error}"));
        self.model
            .update(|model| model.keeping = Keeping::Failing(error.to_string()));
        // There may be room, or a browser that answers, without a tap.
        let again = after(AGAIN_MS, move || self.write_again());
        self.again.set_value(Some(again));
    }

    fn succeeded(self) {
        let fails = self.desk.try_update_value(|desk| {
            desk.leave();
            desk.opened().any(Keep::fails)
        });
        let failing = |model: &Model| matches!(model.keeping, Keeping::Failing(_));
        if fails == Some(false) && self.model.with_untracked(failing) {
            self.model.update(|model| model.keeping = Keeping::Safe);
        }
    }

    /// Takes down rows that could not be read, so that Kit offers them as a file; gives how many there are.
    pub fn set_aside(self, unreadable: Vec<(Shelf, Unreadable)>) -> usize {
        let lines = unreadable.iter().map(|(shelf, row)| row.line(*shelf));
        let lines: Vec<String> = lines.collect();
        self.model.update(|model| {
            for line in &lines {
                if !model.aside.contains(line) {
                    model.aside.push(line.clone());
                }
            }
        });
        lines.len()
    }
}

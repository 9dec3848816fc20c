//! Who is at the desk: the records that are in use, those put aside, and this tab's place among the tabs, each under the
//! name of a lifter's database. What is read for one lifter never comes into the model of another.

use super::keep::Keep;
use super::layout;
use super::model::{Keeping, Model, Stage};
use super::stanchion::Stanchion;
use super::start::read_again;
use crate::device::channel::Channel;
use crate::device::db::Answer;
use crate::device::locks::{Role, Writer, writer};
use crate::store::DATABASE;
use crate::words::t;
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::future::Future;

/// Records, seats among the tabs, and what is under way with them.
#[derive(Default)]
pub struct Desk {
    /// What is in use.
    keep: Keep,
    /// What the model's `other` is kept in.
    other: Option<Keep>,
    /// All that were opened since the page was, with what becomes of what is written there.
    opened: Vec<(Keep, Keeping)>,
    /// This tab's place at each database that is in use.
    seats: Vec<Seat>,
    /// How many changes of many records are under way.
    changes: usize,
    /// What was read of some records before there was an app, until it is looked at.
    ahead: Option<(Keep, Vec<Answer>)>,
    /// Whether it was looked at, and this tab's role is not known since: another one may have written meanwhile.
    looked: bool,
}

/// This tab's place among those that have the records of one lifter open.
struct Seat {
    writer: Writer,
    channel: Channel,
    database: String,
}

impl Desk {
    fn seat(&self, database: &str) -> Option<&Seat> {
        self.seats.iter().find(|seat| seat.database == database)
    }

    /// The records that were opened.
    pub fn opened(&self) -> impl Iterator<Item = &Keep> {
        self.opened.iter().map(|(keep, _)| keep)
    }

    /// How many times something was to be written and is not yet.
    pub fn waiting(&self) -> usize {
        self.opened().map(Keep::waiting).sum()
    }

    /// Gives up the seats at what is neither in use nor still to be written.
    pub fn leave(&mut self) {
        let (keep, other, opened) = (&self.keep, &self.other, &self.opened);
        self.seats.retain(|seat| {
            let here = |keep: &Keep| keep.name() == seat.database;
            here(keep)
                || other.as_ref().is_some_and(here)
                || opened
                    .iter()
                    .any(|(keep, _)| here(keep) && keep.waiting() > 0)
        });
    }
}

impl Stanchion {
    /// Where records are kept.
    pub fn keep(self) -> Keep {
        self.desk.with_value(|desk| desk.keep.clone())
    }

    /// Sets where records are kept.
    pub fn keep_in(self, keep: Keep) {
        self.desk.update_value(|desk| desk.keep = keep);
    }

    /// Where the model's `other` is kept.
    pub fn other_keep(self) -> Option<Keep> {
        self.desk.with_value(|desk| desk.other.clone())
    }

    /// Sets where the model's `other` is kept.
    pub fn other_in(self, keep: Option<Keep>) {
        self.desk.update_value(|desk| desk.other = keep);
    }

    /// Whether records are kept elsewhere by now: what was read from `keep` is for nobody.
    pub fn has_left(self, keep: &Keep) -> bool {
        !self.keep().is(keep)
    }

    /// The records of that database, opened once, and what becomes of what is written there.
    pub async fn records_of(self, database: &str) -> (Keep, Keeping) {
        let known = self.desk.with_value(|desk| {
            let mut opened = desk.opened.iter();
            opened.find(|(keep, _)| keep.name() == database).cloned()
        });
        if let Some(known) = known {
            return known;
        }
        let opened = layout::opened(database).await;
        self.opens(opened.0.clone(), opened.1.clone());
        opened
    }

    /// Keeps in mind that those records are open.
    pub fn opens(self, keep: Keep, keeping: Keeping) {
        self.desk
            .update_value(|desk| desk.opened.push((keep, keeping)));
    }

    /// Keeps what was read of those records ahead, until it is looked at or forgotten.
    pub fn read_ahead(self, keep: Keep, read: Vec<Answer>) {
        let ahead = (!read.is_empty()).then_some((keep, read));
        self.desk.update_value(|desk| desk.ahead = ahead);
    }

    /// What was read of those records ahead, once.
    pub fn take_ahead(self, keep: &Keep) -> Option<Vec<Answer>> {
        let taken = self.desk.try_update_value(|desk| {
            let (_, read) = desk.ahead.take_if(|(ahead, _)| ahead.is(keep))?;
            desk.looked = true;
            Some(read)
        });
        taken.flatten()
    }

    /// Forgets what was read ahead: from now on it is old.
    pub fn forget_ahead(self) {
        self.desk.update_value(|desk| desk.ahead = None);
    }

    /// The records with the list of those who train with this phone.
    pub async fn home(self) -> Keep {
        self.records_of(DATABASE).await.0
    }

    /// Does what reads and writes many records; nobody else sits down until it is done.
    pub fn change(self, work: impl Future<Output = ()> + 'static) {
        self.desk.update_value(|desk| desk.changes += 1);
        spawn_local(async move {
            work.await;
            self.desk.update_value(|desk| desk.changes -= 1);
        });
    }

    /// Whether no such change is under way; if one is, the person is told.
    pub fn is_settled(self) -> bool {
        let changes = self.desk.with_value(|desk| desk.changes > 0);
        if changes {
            self.complain(t("Something is just being written. Try again in a moment."));
        }
        !changes
    }

    /// Puts the lifter in use aside, with model and records, for another one whose records those are: nothing was read of
    /// them yet.
    pub fn put_aside(self, keep: Keep) {
        self.other_in(Some(self.keep()));
        self.keep_in(keep);
        self.model.update(|model| {
            let another = model.of_another();
            let own = std::mem::replace(model, another);
            model.other = Some(Box::new(own));
            model.stage = Stage::Opening;
        });
    }

    /// Lets the one go who was put aside.
    pub fn drop_other(self) {
        self.other_in(None);
        self.model.update(|model| {
            model.other = None;
            model.pair = None;
            model.pairing = None;
        });
        self.desk.update_value(Desk::leave);
    }

    /// Exchanges the lifter in use with the one that is put aside: model and records.
    pub fn exchange(self) {
        let had = self.desk.try_update_value(|desk| {
            let other = desk.other.take()?;
            desk.other = Some(std::mem::replace(&mut desk.keep, other));
            Some(())
        });
        if had.flatten().is_some() {
            self.model.update(Model::exchange);
            self.settle_role();
        }
    }

    // ---- among the tabs ----

    /// Takes a seat at the records in use. One tab writes; the others follow what it writes. One that takes over reads all
    /// of it first: until then it may not write. What another tab still had to write when it was taken over comes later,
    /// and is read then.
    pub fn sit(self) {
        let database = self.keep().name().to_owned();
        self.desk.update_value(Desk::leave);
        let sits = self
            .desk
            .with_value(|desk| database.is_empty() || desk.seat(&database).is_some());
        if !sits {
            let at = database.clone();
            let channel = Channel::open(&database, move |_| self.heard(&at));
            let at = database.clone();
            let writer = writer(&database, move |role| self.role_changed(&at, role));
            let seat = Seat {
                writer,
                channel,
                database,
            };
            self.desk.update_value(|desk| desk.seats.push(seat));
        }
        self.settle_role();
    }

    /// Another tab wrote into that database.
    fn heard(self, database: &str) {
        if self.keep().name() == database {
            spawn_local(read_again(self));
        } else if self.is_other(database) {
            // What is in memory is not what is on disk any more: it is read when they are turned to.
            self.other_follows();
        }
    }

    fn is_other(self, database: &str) -> bool {
        self.other_keep()
            .is_some_and(|other| other.name() == database)
    }

    fn other_follows(self) {
        self.model.update(|model| {
            if let Some(other) = &mut model.other {
                other.follows = true;
            }
        });
    }

    fn role_changed(self, database: &str, role: Role) {
        if self.keep().name() == database {
            self.settle_role();
        } else if self.is_other(database) && role == Role::Waiting {
            // Whether it may write again is asked when they are turned to.
            self.other_follows();
        }
    }

    /// What this tab may do with the records in use; none where they are nobody's.
    fn role(self) -> Option<Role> {
        self.desk
            .with_value(|desk| Some(desk.seat(desk.keep.name())?.writer.role()))
    }

    /// Brings the model in line with what this tab may do.
    fn settle_role(self) {
        let before = self.model.with_untracked(|model| model.follows);
        match self.role() {
            Some(Role::Waiting) if !before => {
                self.model.update(|model| model.follows = true);
                let looked = |desk: &mut Desk| std::mem::take(&mut desk.looked);
                if self.desk.try_update_value(looked) == Some(true) {
                    spawn_local(read_again(self));
                }
            }
            Some(Role::Writer) if !before => self.desk.update_value(|desk| desk.looked = false),
            Some(Role::Writer) if before => {
                let keep = self.keep();
                let events = move || {
                    let count = |model: &Model| Some(model.session.as_ref()?.events().len());
                    self.model.with_untracked(count)
                };
                spawn_local(async move {
                    // What the other tab still had to write may be on its way: it is read until nothing more comes.
                    let mut known = None;
                    loop {
                        read_again(self).await;
                        if self.has_left(&keep) || known == Some(events()) {
                            break;
                        }
                        known = Some(events());
                    }
                    if !self.has_left(&keep) {
                        // It may have been taken back meanwhile.
                        let writes = self.role() == Some(Role::Writer);
                        self.model.update(|model| model.follows = !writes);
                    }
                });
            }
            _ => {}
        }
    }

    /// Takes over from the other tab, because the person said so.
    pub fn take_over(self) {
        self.desk.with_value(|desk| {
            if let Some(seat) = desk.seat(desk.keep.name()) {
                seat.writer.steal();
            }
        });
    }

    /// Tells the other tabs that something was written there.
    pub fn tell_others(self, keep: &Keep) {
        self.desk.with_value(|desk| {
            if let Some(seat) = desk.seat(keep.name()) {
                seat.channel.post("written");
            }
        });
    }
}

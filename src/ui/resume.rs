//! A session of the ledger goes on: it leaves the ledger and is on the floor again, all in one write.

use super::change::delete;
use super::keep::put;
use super::model::Model;
use super::place::Place;
use super::stanchion::{Stanchion, moment};
use crate::device::clock;
use crate::device::db::Write;
use crate::session::{Session, What};
use crate::store::Shelf;
use leptos::prelude::*;

impl Stanchion {
    /// Goes on with the session of the ledger that is open, at most three hours after its end.
    pub fn resume(self) {
        if !self.may_write() {
            return;
        }
        if self.model.with_untracked(Model::in_session) {
            return self
                .complain("Another session is under way. End it first, then go on with this one.");
        }
        let Some(mut session) = self.model.with_untracked(|model| model.opened.clone()) else {
            return;
        };
        let times = session.events().iter().map(|event| event.at);
        times.max().into_iter().for_each(clock::run_on_from);
        let now = moment();
        let event = self.event(now, What::Resumed);
        if let Err(refusal) = session.take(event) {
            clock::go_by_the_phone();
            return self.complain(refusal.to_string());
        }
        let mut writes = Vec::new();
        self.model.update(|model| {
            writes = onto_floor(model, &session);
            model.session = Some(session);
            model.opened = None;
        });
        self.now.set(now);
        self.write(writes);
        self.go(Place::Floor);
    }
}

/// Takes a session out of the ledger: its events are rows of the floor again; the books forget it in the same write, until
/// its end.
fn onto_floor(model: &mut Model, session: &Session) -> Vec<Write> {
    let id = session.state().began.session;
    let events = session.events().iter();
    let mut writes: Vec<Write> = events
        .map(|event| put(Shelf::Events, &event.id.0.to_string(), event))
        .collect();
    writes.push(delete(Shelf::Sessions, &id.0.to_string()));
    model.headings.retain(|heading| heading.session != id);
    model.sessions = model.sessions.saturating_sub(1);
    writes
}

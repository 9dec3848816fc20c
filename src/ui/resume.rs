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
use crate::words::t;

impl Stanchion {
    /// Goes on with the session of the ledger that is open, at most three hours after its end.
    pub fn resume(self) {
        if !self.may_write() {
            return;
        }
        if self.model.with_untracked(Model::in_session) {
            return self.complain(t(
                "Another session is under way. End it first, then go on with this one.",
            ));
        }
        // What an import brings of it would stay in the ledger.
        if !self.is_settled() {
            return;
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::session::{Began, Event, EventId, Mint, Moment, SessionId, Tick};
    use crate::strength::Curve;
    use crate::ui::ended::into_ledger;
    use chrono::TimeDelta;

    /// A session of the demo's first sheet, with a clock of its own.
    struct Garage {
        mint: Mint,
        now: Moment,
        session: Option<Session>,
    }

    impl Garage {
        fn open() -> Garage {
            let now = Moment {
                at: "2026-03-02T18:00:00+01:00".parse().unwrap(),
                tick: Tick { run: 1, ms: 0 },
            };
            let mut garage = Garage {
                mint: Mint::default(),
                now,
                session: None,
            };
            let began = Began {
                session: SessionId(garage.mint.next(1, [1; 10])),
                sheet: crate::store::demo().current_sheets()[0].clone(),
                body_mass: None,
                proposals: Vec::new(),
                light: false,
                curve: Curve::default(),
                along: None,
            };
            garage.act(What::Began(Box::new(began)));
            garage
        }

        fn act(&mut self, what: What) -> EventId {
            self.now.at += TimeDelta::minutes(1);
            self.now.tick.ms += 60_000;
            let ms = u64::try_from(self.now.at.timestamp_millis()).unwrap();
            let event = Event {
                id: EventId(self.mint.next(ms, [0; 10])),
                at: self.now.at,
                tick: self.now.tick,
                what,
            };
            let id = event.id;
            match &mut self.session {
                Some(session) => session.take(event).unwrap(),
                None => self.session = Session::begin(event).ok(),
            }
            id
        }

        fn session(&self) -> &Session {
            self.session.as_ref().unwrap()
        }

        fn log(&mut self) -> EventId {
            let slot = self.session().state().current().unwrap().clone();
            self.act(What::SetDone {
                set: slot.planned.key,
                done: slot.as_prescribed(None),
                proposed: None,
            })
        }
    }

    fn count(writes: &[Write], shelf: Shelf, deletes: bool) -> usize {
        let fits = |write: &&Write| match write {
            Write::Put { shelf: on, .. } => !deletes && on == shelf.name(),
            Write::Delete { shelf: on, .. } => deletes && on == shelf.name(),
            Write::Clear { .. } => false,
        };
        writes.iter().filter(fits).count()
    }

    #[test]
    fn a_session_leaves_the_ledger_whole_and_comes_back_whole() {
        let mut garage = Garage::open();
        garage.log();
        garage.act(What::Ended);
        let mut model = Model::default();
        into_ledger(&mut model, garage.session());
        assert_eq!((model.headings.len(), model.sessions), (1, 1));

        garage.act(What::Resumed);
        let writes = onto_floor(&mut model, garage.session());
        assert_eq!((model.headings.len(), model.sessions), (0, 0));
        let events = garage.session().events().len();
        assert_eq!(count(&writes, Shelf::Events, false), events);
        assert_eq!(count(&writes, Shelf::Sessions, true), 1);
        assert_eq!(count(&writes, Shelf::Sessions, false), 0);

        garage.act(What::Ended);
        model.session = Some(garage.session().clone());
        let writes = into_ledger(&mut model, garage.session());
        assert_eq!((model.headings.len(), model.sessions), (1, 1));
        assert_eq!(count(&writes, Shelf::Events, true), events + 1);
        assert_eq!(count(&writes, Shelf::Sessions, false), 1);
    }

    #[test]
    fn a_set_taken_out_of_the_ledger_leaves_the_heading_without_it() {
        let mut garage = Garage::open();
        let event = garage.log();
        garage.act(What::Ended);
        let mut model = Model::default();
        into_ledger(&mut model, garage.session());
        assert_eq!(model.headings[0].sets_done, 1);
        garage.act(What::Undone { event });
        into_ledger(&mut model, garage.session());
        assert_eq!((model.headings[0].sets_done, model.sessions), (0, 1));
    }
}

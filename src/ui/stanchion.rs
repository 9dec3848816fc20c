//! The handle that every view holds: the model, and what can be done with it.

use super::desk::Desk;
use super::happen::{Lies, take_all};
use super::keep::put;
use super::kit::{Hearing, hearing};
use super::later::Later;
use super::model::{Model, Notice};
use super::place::Place;
use crate::device::install::{Install, Way};
use crate::device::sound::Sound;
use crate::device::timer::Timer;
use crate::device::wake::Stay;
use crate::device::{clock, persist, place as address, rest, worker::Worker};
use crate::ledger::ExerciseSummary;
use crate::programme::{LightWeek, lighten};
use crate::session::{
    Began, Event, EventId, Mint, Moment, Session, SessionId, Tick, What, logged_last, tapped_last,
};
use crate::sheet::SheetId;
use crate::store::Shelf;
use crate::strength::{Performance, Proposal, propose};
use crate::ui::live::Live;
use crate::ui::seen::Seen;
use leptos::prelude::*;
use uuid::Uuid;

/// The handle. Copied into every view that needs it.
#[derive(Clone, Copy)]
pub struct Stanchion {
    /// Everything that the screens are a function of.
    pub model: Live<Model>,
    /// Now, on both clocks; moves while something on screen counts.
    pub now: Live<Moment>,
    /// Sound.
    pub sound: StoredValue<Sound, LocalStorage>,
    /// What is to be heard, as chosen in Kit.
    pub hearing: Live<Hearing>,
    /// By how many milliseconds the ear is behind the clock: what the count on the board follows.
    pub behind: Live<u32>,
    /// Whether cues are under way that cannot be heard.
    pub unheard: Live<bool>,
    /// How many writes are not on disk yet.
    pub unsaved: Live<usize>,
    /// Whether the screen stays on.
    pub awake: Live<Stay>,
    /// The browser's offer to put the app on the home screen.
    pub install: StoredValue<Install, LocalStorage>,
    /// How the app gets to the home screen.
    pub home: Live<Way>,
    /// Whether all of the app is there; before that, only the first screens and the floor are.
    pub whole: Live<bool>,
    /// The service worker, once registered.
    pub worker: StoredValue<Option<Worker>, LocalStorage>,
    /// The records, and this tab's place among those that have them open.
    pub(super) desk: StoredValue<Desk, LocalStorage>,
    /// What tries again to write.
    pub(super) again: StoredValue<Option<Timer>, LocalStorage>,
    /// What was read and not looked through yet.
    pub(super) later: StoredValue<Option<Later>, LocalStorage>,
    mint: StoredValue<Mint>,
}

/// The handle that the app provides.
pub fn stanchion() -> Stanchion {
    expect_context()
}

/// Now, on both clocks. A session that was begun before the phone's clock was set back goes on in its own time.
pub fn moment() -> Moment {
    Moment {
        at: clock::running_on(),
        // Milliseconds since the page was opened: never negative, far below 2^53.
        tick: Tick {
            run: clock::run_id(),
            ms: clock::monotonic_ms() as u64,
        },
    }
}

impl Stanchion {
    /// A handle on an empty model.
    pub fn new() -> Stanchion {
        Stanchion {
            model: Live::new(Model::default()),
            now: Live::new(moment()),
            sound: StoredValue::new_local(Sound::new()),
            hearing: Live::new(hearing()),
            behind: Live::new(0),
            unheard: Live::new(false),
            unsaved: Live::new(0),
            awake: Live::new(Stay::default()),
            install: StoredValue::new_local(Install::default()),
            home: Live::new(Install::default().way()),
            whole: Live::new(rest::is_here()),
            worker: StoredValue::new_local(None),
            desk: StoredValue::new_local(Desk::default()),
            again: StoredValue::new_local(None),
            later: StoredValue::new_local(None),
            mint: StoredValue::new(Mint::default()),
        }
    }

    /// The handle with another model in place of this one, of which nothing is seen.
    pub fn on_stage(self, model: Model) -> Stanchion {
        Stanchion {
            model: Live::new(model),
            now: Live::new(moment()),
            ..self
        }
    }

    /// A new id, greater than all before.
    pub fn id(self) -> Uuid {
        let ms = u64::try_from(clock::wall().timestamp_millis()).unwrap_or(0);
        let mut id = Uuid::nil();
        self.mint
            .update_value(|mint| id = mint.next(ms, clock::random_bytes()));
        id
    }

    /// Makes later ids greater than `seen`.
    pub fn see_id(self, seen: Uuid) {
        self.mint.update_value(|mint| mint.see(seen));
    }

    /// A projection of the model that a view follows.
    pub fn of<T, F>(self, project: F) -> Seen<T>
    where
        T: PartialEq + Send + Sync + 'static,
        F: Fn(&Model) -> T + Send + Sync + 'static,
    {
        self.model.seen(project)
    }

    /// Tells the person something.
    pub fn say(self, text: impl Into<String>) {
        let notice = Notice {
            text: text.into(),
            wrong: false,
        };
        self.model.update(|model| model.notice = Some(notice));
    }

    /// Tells the person that something went wrong.
    pub fn complain(self, text: impl Into<String>) {
        let notice = Notice {
            text: text.into(),
            wrong: true,
        };
        self.model.update(|model| model.notice = Some(notice));
    }

    /// Puts that message away where it is the one that is shown: it holds no more.
    pub fn unsay(self, text: &str) {
        let shown = |model: &Model| model.notice.as_ref().is_some_and(|it| it.text == text);
        if self.model.with_untracked(shown) {
            self.model.update(|model| model.notice = None);
        }
    }

    /// Goes to a place.
    pub fn go(self, place: Place) {
        address::go(&place.fragment());
    }

    // ---- the session ----

    pub(super) fn event(self, now: Moment, what: What) -> Event {
        Event {
            id: EventId(self.id()),
            at: now.at,
            tick: now.tick,
            what,
        }
    }

    /// Begins a session on a sheet, with what its history proposes.
    pub fn begin(self, id: SheetId) {
        self.begin_in(id, None);
    }

    /// Begins a session on a sheet as a light week has it.
    pub fn begin_light(self, id: SheetId, light: LightWeek) {
        self.begin_in(id, Some(light));
    }

    fn begin_in(self, id: SheetId, light: Option<LightWeek>) {
        if self.may_write() {
            self.completed(move || self.begin_now(id, light));
        }
    }

    fn begin_now(self, id: SheetId, light: Option<LightWeek>) {
        let now = moment();
        let fresh = SessionId(self.id());
        let began = self.model.with_untracked(|model| {
            if model.in_session() {
                return None;
            }
            let sheet = model.sheet(id)?.clone();
            let usual: Vec<Proposal> = sheet
                .blocks()
                .map(|block| propose(block, &model.today(&block.exercise.id, now.at)))
                .collect();
            let (sheet, proposals) = match light {
                Some(light) => lighten(&sheet, &usual, &light, model.rack()),
                None => (sheet, usual),
            };
            Some(Began {
                session: model.pair.as_ref().map_or(fresh, |pair| pair.session),
                sheet,
                body_mass: model.newest_body_mass(),
                proposals,
                light: light.is_some(),
                curve: model.curve(),
                along: model.pair.as_ref().map(|pair| pair.along),
            })
        });
        let Some(began) = began else { return };
        let event = self.event(now, What::Began(Box::new(began)));
        match Session::begin(event.clone()) {
            Ok(session) => {
                self.now.set(now);
                self.model.update(|model| {
                    model.session = Some(session);
                    // What was said before goes, the set needs the room. What went wrong stays until it is put away.
                    model.notice.take_if(|notice| !notice.wrong);
                });
                self.write(vec![put(Shelf::Events, &event.id.0.to_string(), &event)]);
                self.go(Place::Floor);
            }
            Err(refusal) => self.complain(refusal.to_string()),
        }
    }

    /// Makes something happen in the session on the floor. False when it was refused; the person is told.
    pub fn act(self, what: What) -> bool {
        self.act_all(vec![what])
    }

    /// Makes several things happen by one tap: all of them or, where one is refused, none. They bear one moment, are
    /// written in one transaction, and [`Stanchion::undo`] takes all of them back.
    pub fn act_all(self, whats: Vec<What>) -> bool {
        self.happen_all(Lies::OnFloor, whats).is_some()
    }

    /// Makes things happen in the session of the ledger that is open by one tap: corrections, notes, a rating, a set
    /// more; all or none. Gives the events, so that they can be taken back.
    pub fn correct_all(self, whats: Vec<What>) -> Option<Vec<EventId>> {
        // Written behind an import or a removal, the session as it was would stand in the ledger again.
        if !self.is_settled() {
            return None;
        }
        self.happen_all(Lies::InLedger, whats)
    }

    fn happen_all(self, lies: Lies, whats: Vec<What>) -> Option<Vec<EventId>> {
        if !self.may_write() {
            return None;
        }
        let now = moment();
        let events = whats.into_iter().map(|what| self.event(now, what));
        let events: Vec<Event> = events.collect();
        let ids = events.iter().map(|event| event.id).collect();
        let mut taken = Ok(Vec::new());
        self.model
            .update(|model| taken = take_all(model, lies, events));
        self.now.set(moment());
        match taken {
            Err(refusal) => {
                self.complain(refusal.to_string());
                None
            }
            Ok(writes) => {
                self.write_once_painted(writes);
                Some(ids)
            }
        }
    }

    /// Takes the newest tap back, with all that it did.
    pub fn undo(self) {
        self.turn_if(tapped_last);
        self.take_back(Session::undo_last_tap);
    }

    /// Takes the last logged or skipped set back, with all that followed it.
    pub fn undo_set(self) {
        self.turn_if(logged_last);
        self.take_back(Session::undo_last_set);
    }

    fn take_back(self, targets: fn(&Session) -> Vec<EventId>) {
        let targets = self.model.with_untracked(|model| {
            let session = model.session.as_ref();
            session.map(targets).unwrap_or_default()
        });
        if !targets.is_empty() {
            let undone = |event| What::Undone { event };
            self.act_all(targets.into_iter().map(undone).collect());
        }
    }

    /// Puts the ended session away. True where another lifter trains along and is here now.
    pub fn put_away(self) -> bool {
        clock::go_by_the_phone();
        self.model.update(|model| model.session = None);
        let other = self.part();
        // Now there is something to lose: the browser is asked to keep it. One asks the person in turn, so not before.
        persist::ask(move |promise| self.model.update(|model| model.promise = Some(promise)));
        other
    }
}

impl Model {
    /// What is known of an exercise, oldest first.
    pub fn history(&self, exercise: &crate::sheet::ExerciseId) -> &[Performance] {
        self.summaries
            .get(exercise)
            .map_or(&[], |summary: &ExerciseSummary| &summary.performances)
    }
}

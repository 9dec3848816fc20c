//! The handle that every view holds: the model, and what can be done with it.

use super::archive::archive;
use super::keep::{Keep, put};
use super::kit::sound_on;
use super::model::{Keeping, Model, Notice};
use super::place::Place;
use crate::device::channel::Channel;
use crate::device::db::Write;
use crate::device::locks::{Role, Writer};
use crate::device::sound::Sound;
use crate::device::{clock, faults, persist, place as address, worker::Worker};
use crate::ledger::ExerciseSummary;
use crate::programme::{LightWeek, lighten};
use crate::session::{
    Began, Event, EventId, Mint, Moment, Refusal, Session, SessionId, Tick, What,
};
use crate::sheet::SheetId;
use crate::store::Shelf;
use crate::strength::{Performance, Proposal, propose};
use leptos::prelude::*;
use leptos::task::spawn_local;
use std::collections::VecDeque;
use uuid::Uuid;

/// The handle. Copied into every view that needs it.
#[derive(Clone, Copy)]
pub struct Stanchion {
    /// Everything that the screens are a function of.
    pub model: RwSignal<Model>,
    /// Now, on both clocks; moves while something on screen counts.
    pub now: RwSignal<Moment>,
    /// Sound.
    pub sound: StoredValue<Sound, LocalStorage>,
    /// Whether cues sound.
    pub cues_on: RwSignal<bool>,
    /// The service worker, once registered.
    pub worker: StoredValue<Option<Worker>, LocalStorage>,
    /// This tab's place among those that have the app open.
    pub writer: StoredValue<Option<Writer>, LocalStorage>,
    /// The line to the other tabs.
    pub others: StoredValue<Option<Channel>, LocalStorage>,
    keep: StoredValue<Keep, LocalStorage>,
    mint: StoredValue<Mint>,
    queue: StoredValue<VecDeque<Vec<Write>>, LocalStorage>,
    writing: StoredValue<bool>,
}

/// The handle that the app provides.
pub fn stanchion() -> Stanchion {
    expect_context()
}

/// Now, on both clocks.
pub fn moment() -> Moment {
    Moment {
        at: clock::wall(),
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
            model: RwSignal::new(Model::default()),
            now: RwSignal::new(moment()),
            sound: StoredValue::new_local(Sound::new()),
            cues_on: RwSignal::new(sound_on()),
            worker: StoredValue::new_local(None),
            writer: StoredValue::new_local(None),
            others: StoredValue::new_local(None),
            keep: StoredValue::new_local(Keep::default()),
            mint: StoredValue::new(Mint::default()),
            queue: StoredValue::new_local(VecDeque::new()),
            writing: StoredValue::new(false),
        }
    }

    /// Where records are kept.
    pub fn keep(self) -> Keep {
        self.keep.get_value()
    }

    /// Sets where records are kept.
    pub fn keep_in(self, keep: Keep) {
        self.keep.set_value(keep);
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
    pub fn of<T, F>(self, project: F) -> Memo<T>
    where
        T: PartialEq + Send + Sync + 'static,
        F: Fn(&Model) -> T + Send + Sync + 'static,
    {
        Memo::new(move |_| self.model.with(&project))
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

    /// Goes to a place.
    pub fn go(self, place: Place) {
        address::go(&place.fragment());
    }

    // ---- what is written ----

    /// Whether this tab may write; if another one does, the person is told.
    pub fn may_write(self) -> bool {
        let role = self
            .writer
            .with_value(|writer| writer.as_ref().map(Writer::role));
        let may = role != Some(Role::Waiting);
        if !may {
            self.complain(
                "Another tab or window of Stanchion is in use. Close it, or take over here.",
            );
        }
        may
    }

    /// Writes in the background, in order; the screen says *saved* only when it is on disk.
    pub fn write(self, writes: Vec<Write>) {
        self.queue.update_value(|queue| queue.push_back(writes));
        self.model.update(|model| model.unsaved += 1);
        self.drain();
    }

    /// Tries again what could not be written.
    pub fn write_again(self) {
        self.drain();
    }

    fn drain(self) {
        if self.writing.get_value() {
            return;
        }
        self.writing.set_value(true);
        spawn_local(async move {
            while let Some(writes) = self.queue.with_value(|queue| queue.front().cloned()) {
                match self.keep().apply(writes).await {
                    Ok(()) => {
                        self.queue.update_value(|queue| {
                            queue.pop_front();
                        });
                        self.tell_others();
                        self.model.update(|model| {
                            model.unsaved = model.unsaved.saturating_sub(1);
                            if matches!(model.keeping, Keeping::Failing(_)) {
                                model.keeping = Keeping::Safe;
                            }
                        });
                    }
                    Err(error) => {
                        faults::note(&format!("writing: {error}"));
                        self.model
                            .update(|model| model.keeping = Keeping::Failing(error.to_string()));
                        break;
                    }
                }
            }
            self.writing.set_value(false);
        });
    }

    /// Tells the other tabs that something was written.
    pub fn tell_others(self) {
        self.others.with_value(|others| {
            if let Some(others) = others {
                others.post("written");
            }
        });
    }

    // ---- the session ----

    fn event(self, what: What) -> Event {
        let now = moment();
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
        if !self.may_write() {
            return;
        }
        let now = moment();
        let session = SessionId(self.id());
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
                Some(light) => lighten(&sheet, &usual, &light, &model.kit),
                None => (sheet, usual),
            };
            Some(Began {
                session,
                sheet,
                body_mass: model.newest_body_mass(),
                proposals,
                light: light.is_some(),
                curve: model.curve(),
            })
        });
        let Some(began) = began else { return };
        let event = self.event(What::Began(Box::new(began)));
        match Session::begin(event.clone()) {
            Ok(session) => {
                self.now.set(now);
                self.model.update(|model| model.session = Some(session));
                self.write(vec![put(Shelf::Events, &event.id.0.to_string(), &event)]);
                self.go(Place::Floor);
            }
            Err(refusal) => self.complain(refusal.to_string()),
        }
    }

    /// Makes something happen in the session on the floor. False when it was refused; the person is told.
    pub fn act(self, what: What) -> bool {
        self.happen(Lies::OnFloor, what)
    }

    /// Makes something happen in the session of the ledger that is open: a correction, a note, a rating.
    pub fn correct(self, what: What) -> bool {
        self.happen(Lies::InLedger, what)
    }

    fn happen(self, lies: Lies, what: What) -> bool {
        if !self.may_write() {
            return false;
        }
        let event = self.event(what);
        let mut taken = Ok(Vec::new());
        self.model.update(|model| taken = take(model, lies, event));
        self.now.set(moment());
        match taken {
            Err(refusal) => {
                self.complain(refusal.to_string());
                false
            }
            Ok(writes) => {
                self.write(writes);
                true
            }
        }
    }

    /// Takes the newest event back.
    pub fn undo(self) {
        let newest = self.model.with_untracked(|model| {
            model
                .session
                .as_ref()
                .and_then(|session| session.newest_undoable().map(|event| event.id))
        });
        if let Some(event) = newest {
            self.act(What::Undone { event });
        }
    }

    /// Takes the last logged or skipped set back, with all that followed it.
    pub fn undo_set(self) {
        let targets = self.model.with_untracked(|model| {
            model
                .session
                .as_ref()
                .map(Session::undo_last_set)
                .unwrap_or_default()
        });
        for event in targets {
            self.act(What::Undone { event });
        }
    }

    /// Puts the ended session away.
    pub fn put_away(self) {
        self.model.update(|model| model.session = None);
        // Now there is something to lose: the browser is asked to keep it. One asks the person in turn, so not before.
        persist::ask(move |promise| self.model.update(|model| model.promise = Some(promise)));
    }
}

/// Where a session lies in the model.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Lies {
    OnFloor,
    InLedger,
}

/// Takes an event into a session of the model and gives what is to be written.
///
/// A session that has just ended may lie on the floor and be open in the ledger too. Both are then made the same: an
/// archive is written whole, and from an older copy it would lose what the newer one holds.
fn take(model: &mut Model, lies: Lies, event: Event) -> Result<Vec<Write>, Refusal> {
    let place = match lies {
        Lies::OnFloor => &mut model.session,
        Lies::InLedger => &mut model.opened,
    };
    let Some(session) = place else {
        return Ok(Vec::new());
    };
    session.take(event.clone())?;
    if lies == Lies::OnFloor && !session.state().has_ended() {
        return Ok(vec![put(Shelf::Events, &event.id.0.to_string(), &event)]);
    }
    let session = session.clone();
    let id = session.state().began.session;
    for copy in [&mut model.session, &mut model.opened]
        .into_iter()
        .flatten()
    {
        if copy.state().began.session == id {
            *copy = session.clone();
        }
    }
    Ok(archive(model, &session))
}

impl Model {
    /// What is known of an exercise, oldest first.
    pub fn history(&self, exercise: &crate::sheet::ExerciseId) -> &[Performance] {
        self.summaries
            .get(exercise)
            .map_or(&[], |summary: &ExerciseSummary| &summary.performances)
    }
}

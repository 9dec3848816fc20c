//! One writer among the tabs where the browser has no locks: a record in local storage that says who writes, renewed
//! every second. It may be wrong for a moment; nothing is lost by that, because each event is a row of its own.

use super::{Role, State, set_role};
use crate::device::events::{Listener, on_page_hide, on_storage};
use crate::device::timer::{self, Timer};
use crate::device::{clock, prefs};
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};

/// How often the one who writes says so.
const BEAT_MS: u32 = 1_000;

/// One who has not said so for this long is gone, or sleeps. Hidden pages may speak once a second only.
const SILENT_MS: i64 = 4_000;

/// Two who claim at once see each other's claim after this.
const SETTLE_MS: u32 = 100;

/// A tab's part in it; dropping it gives it up.
pub(super) struct Beat {
    claim: Rc<Claim>,
    _timer: Timer,
    _listeners: [Listener; 2],
}

struct Claim {
    /// The name of the setting.
    key: String,
    id: u32,
    state: Weak<State>,
    /// When the person said last that this tab writes, in milliseconds, later than any before it; 0 where nobody did. Two
    /// tabs may speak at once, the one that gives up not knowing it yet: the later word counts.
    taken: Cell<i64>,
    /// A claim that has to settle first.
    settling: RefCell<Option<Timer>>,
}

/// Takes part; none where there is no local storage either.
pub(super) fn begin(state: &Weak<State>) -> Option<Beat> {
    let name = state.upgrade()?.name.clone();
    let claim = Rc::new(Claim {
        key: format!("writer.{name}"),
        id: u32::from_le_bytes(clock::random_bytes()),
        state: state.clone(),
        taken: Cell::new(0),
        settling: RefCell::new(None),
    });
    let (tick, told, left) = (Rc::clone(&claim), Rc::clone(&claim), Rc::clone(&claim));
    if claim.holder().is_none() && !claim.say() {
        return None;
    }
    claim.look();
    Some(Beat {
        _timer: timer::every(BEAT_MS, move || tick.look()),
        _listeners: [
            on_storage(move || told.look()),
            on_page_hide(move || left.give_up()),
        ],
        claim,
    })
}

/// The record.
struct Said {
    id: u32,
    /// When, in milliseconds.
    at: i64,
    /// `Claim::taken` of that tab.
    taken: i64,
}

impl Beat {
    /// Writes from now on, because the person said so.
    pub(super) fn take(&self) {
        let now = clock::wall().timestamp_millis();
        let before = self.claim.said().map_or(0, |said| said.taken);
        // What was claimed before is decided by this.
        self.claim.settling.take();
        self.claim.taken.set(now.max(before.saturating_add(1)));
        self.claim.say();
        set_role(&self.claim.state, Role::Writer);
    }
}

impl Drop for Beat {
    fn drop(&mut self) {
        self.claim.give_up();
    }
}

impl Claim {
    /// What was said last; none where nobody did, or it cannot be read.
    fn said(&self) -> Option<Said> {
        let said: String = prefs::get(&self.key)?;
        let mut parts = said.split(' ');
        Some(Said {
            id: parts.next()?.parse().ok()?,
            at: parts.next()?.parse().ok()?,
            taken: parts.next()?.parse().ok()?,
        })
    }

    /// Who writes, if anyone has said so lately.
    fn holder(&self) -> Option<Said> {
        let said = self.said()?;
        let silent = clock::wall().timestamp_millis().saturating_sub(said.at);
        // A clock that was set back makes it come from the future: that is silence too.
        (silent.saturating_abs() < SILENT_MS).then_some(said)
    }

    /// Another tab that writes.
    fn other(&self) -> Option<Said> {
        self.holder().filter(|said| said.id != self.id)
    }

    /// Says that we write; whether it could be said.
    fn say(&self) -> bool {
        let now = clock::wall().timestamp_millis();
        let said = format!("{} {now} {}", self.id, self.taken.get());
        prefs::set(&self.key, &said).is_ok()
    }

    /// Leaves it to another tab.
    fn wait(&self) {
        self.taken.set(0);
        set_role(&self.state, Role::Waiting);
    }

    /// Looks who writes: goes on saying that we do, waits, or claims it.
    fn look(self: &Rc<Self>) {
        let is_writer = self
            .state
            .upgrade()
            .is_some_and(|state| state.role.get() == Role::Writer);
        match self.other() {
            Some(other) if is_writer && other.taken < self.taken.get() => _ = self.say(),
            Some(_) => self.wait(),
            None if is_writer && self.holder().is_some() => _ = self.say(),
            None => {
                if self.say() {
                    let own = Rc::downgrade(self);
                    let settle = move || {
                        if let Some(claim) = own.upgrade() {
                            claim.settle();
                        }
                    };
                    *self.settling.borrow_mut() = Some(timer::after(SETTLE_MS, settle));
                } else {
                    set_role(&self.state, Role::Writer);
                }
            }
        }
    }

    /// A claim that nobody else has made since holds.
    fn settle(&self) {
        match self.other() {
            Some(_) => self.wait(),
            None => set_role(&self.state, Role::Writer),
        }
    }

    fn give_up(&self) {
        if self.holder().is_some_and(|said| said.id == self.id) {
            prefs::remove(&self.key);
        }
    }
}

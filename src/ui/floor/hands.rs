//! What hands do on the floor, whatever they do it with: a tap, a key, a page-turner, a headset.

mod headset;

use super::keys::Wish;
use super::pad::{has_load, has_reserve};
use super::safety::{Answered, ask};
use super::screen::{Face, Open};
use super::touch::{REP_TAP_MS, SLIP_MS, Touches, apart};
use crate::device::dom;
use crate::device::events::Pointer;
use crate::device::haptic::buzz;
use crate::device::media::MediaKeys;
use crate::session::{Amount, Board, Phase, What};
use crate::sheet::SetKey;
use crate::ui::cueing::COUNT_IN_SECONDS;
use crate::ui::live::Live;
use crate::ui::model::Model;
use crate::ui::seen::Seen;
use crate::ui::stanchion::{Stanchion, moment};
use crate::units::{Load, Reps};
use leptos::prelude::*;

/// How long the phone shakes when a set is logged, in milliseconds.
const LOGGED_BUZZ_MS: u32 = 40;

/// How long it shakes when a tap counted a rep.
const REP_BUZZ_MS: u32 = 15;

/// Seconds by which the rest is stretched or cut.
pub const REST_STEP_SECONDS: i32 = 15;

/// What the second tap for a jump of load would do.
#[derive(Clone, Copy, PartialEq)]
pub enum Sure {
    /// Log the set.
    Log,
    /// Begin it by ear.
    Begin,
    /// It was given when the set was begun: logging asks no more.
    Given,
}

/// The set and the load that were asked about: another load is asked about again.
type Asked = (SetKey, Option<Load>, Sure);

/// The hands. Copied into every pad.
#[derive(Clone, Copy)]
pub struct Hands {
    /// The app.
    pub app: Stanchion,
    /// The board of the set that is to be done now or next.
    pub board: Seen<Option<Board>>,
    /// The panel that is open.
    pub open: Live<Open>,
    /// What the floor shows.
    pub face: Seen<Face>,
    /// What a tap would log.
    pub offer: Seen<Option<Amount>>,
    /// The set whose reps are counted by taps.
    pub counting: Live<Option<SetKey>>,
    /// True once the end of the session was asked for and not yet confirmed.
    pub ending: Live<bool>,
    /// The jump of load that was asked about.
    asked: Live<Option<Asked>>,
    tapped: StoredValue<Option<u64>>,
    rep_tapped: StoredValue<Option<u64>>,
    touches: StoredValue<Touches>,
    media: StoredValue<Option<MediaKeys>, LocalStorage>,
    /// The exercises for which it was answered whether a set to failure is safe.
    pub answered: Answered,
    /// The set for which that was asked last. Put away, the question comes again with the next such set.
    pub safety_asked: StoredValue<Option<SetKey>>,
}

/// That the set on the board is done as it is offered now.
pub(super) fn done_now(app: Stanchion, board: &Board) -> Option<What> {
    // By the clock of the pad: what stands on it is what is logged, though the next rep may just have ended.
    let now = app.now.get_untracked();
    app.model.with_untracked(|model| {
        let state = model.session.as_ref()?.state();
        let slot = state.slot(board.key)?;
        Some(What::SetDone {
            set: board.key,
            done: state.done_as_offered(slot, board.load, &now, COUNT_IN_SECONDS),
            proposed: board.prescribed,
        })
    })
}

impl Hands {
    /// The hands on a floor.
    pub fn on(app: Stanchion, board: Seen<Option<Board>>, face: Seen<Face>) -> Hands {
        let offer = Seen::new(move || {
            let now = app.now.get();
            app.model.with(|model| {
                let state = model.session.as_ref()?.state();
                Some(state.offer(state.current()?, &now, COUNT_IN_SECONDS))
            })
        });
        Hands {
            app,
            board,
            face,
            offer,
            open: Live::new(Open::Nothing),
            counting: Live::new(None),
            ending: Live::new(false),
            asked: Live::new(None),
            tapped: StoredValue::new(None),
            rep_tapped: StoredValue::new(None),
            touches: StoredValue::new(Touches::default()),
            media: StoredValue::new_local(None),
            answered: Answered::unread(),
            safety_asked: StoredValue::new(None),
        }
    }

    /// Whether there is a board of which that is true.
    pub fn board_is(self, ask: fn(&Board) -> bool) -> bool {
        self.board.with(|board| board.as_ref().is_some_and(ask))
    }

    // ---- taps that count and taps that do not ----

    /// Tells the hands what a pointer did.
    pub fn touch(self, pointer: Pointer) {
        let now = moment().tick.ms;
        self.touches
            .update_value(|touches| touches.take(pointer, now));
    }

    /// From now on for a moment a tap on the large button is taken for an accident: what it does has just changed.
    pub fn settle(self) {
        self.tapped.set_value(Some(moment().tick.ms));
    }

    /// Whether a tap on the large button counts: by one finger, and not right after another.
    fn once(self) -> bool {
        let now = moment().tick.ms;
        let counts = self.touches.with_value(|touches| touches.count(now))
            && apart(self.tapped.get_value(), now, SLIP_MS);
        if counts {
            self.tapped.set_value(Some(now));
        }
        counts
    }

    // ---- what the large button does ----

    /// What a tap on the large button does.
    pub fn main(self) {
        self.wake();
        match self.face.get_untracked() {
            Face::Set(key) if self.counting.get_untracked() == Some(key) => self.count_rep(key),
            Face::Set(_) => self.log(),
            Face::Rest(_) => {
                if self.once() {
                    self.begin_set();
                }
            }
            Face::AllDone => {
                if self.once() {
                    self.end();
                }
            }
        }
    }

    fn end(self) {
        if self.ending.get_untracked() {
            self.app.act(What::Ended);
        } else {
            self.ending.set(true);
        }
    }

    /// Logs the set as it stands on the pad; a load that is not known opens its panel, a jump of load asks first.
    pub fn log(self) {
        let Some(board) = self.board.get_untracked() else {
            return;
        };
        if needs_load(&board) {
            self.open.set(Open::Load);
        } else if self.once() && self.sure(&board, Sure::Log) {
            self.log_now(&board);
        }
    }

    fn log_now(self, board: &Board) {
        let what = done_now(self.app, board);
        if what.is_some_and(|what| self.app.act(what)) {
            // Felt where the screen is wet and nobody looks.
            buzz(&[LOGGED_BUZZ_MS]);
            self.app.turn_after_log();
        }
    }

    /// What was asked about the load on the board; none where nothing was, or it is no jump.
    pub fn asked(self, board: &Board) -> Option<Sure> {
        let (key, load, sure) = self.asked.get()?;
        let same = board.asks_twice() && key == board.key && load == board.load;
        same.then_some(sure)
    }

    /// Whether a tap may do its work now; else it has asked, and the next tap may.
    fn sure(self, board: &Board, to: Sure) -> bool {
        let asked = untrack(|| self.asked(board));
        let sure = !board.asks_twice() || asked == Some(to) || asked == Some(Sure::Given);
        if board.asks_twice() {
            let next = if sure { Sure::Given } else { to };
            self.asked.set(Some((board.key, board.load, next)));
        }
        sure
    }

    /// Begins the set by ear; a jump of load wants a second tap. Whether a set to failure is safe is asked before anything
    /// counts in: nobody answers under the bar.
    fn begin_set(self) {
        self.wake();
        if let Some(board) = self.board.get_untracked()
            && !ask(self, Some(&board))
            && self.sure(&board, Sure::Begin)
        {
            self.app.act(What::SetStarted { set: board.key });
        }
    }

    // ---- what the others do ----

    /// Begins the set by ear, or stops its cues and offers what was heard.
    pub fn cues(self) {
        let Some(board) = self.board.get_untracked() else {
            return;
        };
        if self.working() {
            let now = self.app.now.get_untracked();
            let stop = self.app.model.with_untracked(|model| {
                let state = model.session.as_ref()?.state();
                Some(state.stop(board.key, &now, COUNT_IN_SECONDS))
            });
            if let Some(stop) = stop {
                self.app.act(stop);
            }
        } else if !board.asks_twice() || self.once() {
            // The tap that asks and the one that answers are two.
            self.begin_set();
        }
    }

    fn working(self) -> bool {
        self.app.model.with_untracked(works)
    }

    /// One rep more or fewer at the tap; five seconds or metres where those are counted.
    pub fn step(self, more: bool) {
        let Some(offered) = self.offer.get_untracked().filter(can_step) else {
            return;
        };
        // The question stands where the figure is: what is changed is seen first, and asked about again.
        if let Some((_, _, Sure::Log)) = self.asked.get_untracked() {
            self.asked.set(None);
        }
        let what = self.app.model.with_untracked(|model| {
            let slot = model.session.as_ref()?.state().current()?;
            slot.offer_stepped(offered, more)
        });
        if let Some(what) = what {
            self.app.act(what);
        }
    }

    /// Stretches or cuts the rest; one that is held open stays as it is.
    pub fn rest(self, more: bool) {
        if self.app.model.with_untracked(held) {
            return;
        }
        let by_seconds = if more {
            REST_STEP_SECONDS
        } else {
            -REST_STEP_SECONDS
        };
        self.app.act(What::RestChanged { by_seconds });
    }

    /// Holds the rest open, or ends the one that is held.
    pub fn hold(self) {
        let held = self.app.model.with_untracked(held);
        self.app.act(if held {
            What::RestEnded
        } else {
            What::RestHeld
        });
    }

    /// Takes the last set back.
    pub fn undo_set(self) {
        if self
            .touches
            .with_value(|touches| touches.count(moment().tick.ms))
        {
            // The button goes with the rest. While all is laid, the keyboard is handed on for less than it is found
            // for after it was lost.
            dom::hand_on(".pad-row", ".pad-main");
            self.app.undo_set();
        }
    }

    // ---- a tap a rep ----

    /// From now on each tap on the pad counts a rep of the set.
    pub fn count_from(self, from: Reps) {
        if let Some(board) = self.board.get_untracked() {
            self.wake();
            let set = board.key;
            if self.app.act(What::RepsChosen { set, reps: from }) {
                self.counting.set(Some(set));
            }
        }
    }

    /// Counts no more, and offers what is prescribed.
    pub fn stop_counting(self) {
        self.counting.set(None);
        let planned = self.app.model.with_untracked(|model| {
            let slot = model.session.as_ref()?.state().current()?;
            Some((slot.planned.key, slot.planned.offered?))
        });
        if let Some((set, reps)) = planned {
            self.app.act(What::RepsChosen { set, reps });
        }
    }

    fn count_rep(self, set: SetKey) {
        let now = moment().tick.ms;
        let counts = self.touches.with_value(|touches| touches.count(now))
            && apart(self.rep_tapped.get_value(), now, REP_TAP_MS);
        let offered = self.offer.get_untracked().and_then(|offer| offer.reps());
        if let Some(reps) = offered.filter(|_| counts) {
            self.rep_tapped.set_value(Some(now));
            let counted = Reps::saturating(i64::from(reps) + 1);
            if counted > reps && self.app.act(What::RepsChosen { set, reps: counted }) {
                buzz(&[REP_BUZZ_MS]);
            }
        }
    }

    // ---- keys ----

    /// Does what a key asks for; whether that meant something here.
    pub fn wish(self, wish: Wish) -> bool {
        let face = self.face.get_untracked();
        let is = |ask: fn(&Board) -> bool| untrack(|| self.board_is(ask));
        match (wish, face) {
            (Wish::Main, _) => self.main(),
            (Wish::Other, Face::Set(_)) => self.cues(),
            (Wish::Other, Face::Rest(_)) => self.hold(),
            (Wish::Less | Wish::More, Face::Set(_)) => self.step(wish == Wish::More),
            (Wish::Less | Wish::More, Face::Rest(_)) => self.rest(wish == Wish::More),
            (Wish::Undo, Face::Set(_)) => self.app.undo(),
            (Wish::Undo, _) => self.undo_set(),
            (Wish::Load, Face::Set(_)) if is(has_load) => self.open.set(Open::Load),
            (Wish::Reserve, Face::Set(_)) if is(has_reserve) => self.open.set(Open::Reserve),
            (Wish::Everything, _) => self.open.set(Open::More),
            (Wish::Help, _) => self.open.set(Open::Keys),
            _ => return false,
        }
        true
    }
}

/// True while the cues of a set run.
pub fn works(model: &Model) -> bool {
    let phase = model.session.as_ref().map(|session| session.state().phase);
    matches!(phase, Some(Phase::Working { .. }))
}

/// True while the rest under way is held open.
pub fn held(model: &Model) -> bool {
    match model.session.as_ref().map(|session| session.state().phase) {
        Some(Phase::Resting(rest)) => rest.held.is_some(),
        _ => false,
    }
}

/// True when the set cannot be logged before a load is chosen.
pub fn needs_load(board: &Board) -> bool {
    board.basis.has_load() && board.load.is_none()
}

/// True for an amount that can be stepped: all but stages without reps.
pub fn can_step(amount: &Amount) -> bool {
    !matches!(amount, Amount::Stages(_)) || amount.reps().is_some()
}

//! A list of tones under way: where it is, and whether it can be heard.
//!
//! Its truth is the steady clock: a rest goes on while a phone call holds the sound. While the
//! audio clock keeps up, the tones are scheduled on it and it says where they are.

use super::graph::{self, Graph};
use super::output::{latency_ms, state};
use super::{Sound, State};
use crate::cues::tone::{Tone, due};
use crate::device::clock::monotonic_ms;
use std::cell::{Cell, RefCell};
use std::rc::Rc;
use web_sys::AudioContext;

/// From the call to the first sample: what is asked for "now" would begin in the past.
const LEAD_MS: f64 = 20.0;
/// What the call itself may take on top, so that the first tone is as exact as the rest.
const CALL_MS: f64 = 5.0;
/// A first tone that waits for the output to wake may come this late; later it would mislead.
const LATE_MS: f64 = 250.0;
/// How far the two clocks may be apart before the audio clock counts as stuck. They drift by some
/// tens of millionths, 10 ms in three minutes.
const APART_MS: f64 = 300.0;

pub(super) struct Line {
    tones: Vec<Tone>,
    from_ms: f64,
    /// When the line is at `from_ms`, on the steady clock.
    since_ms: f64,
    over: Cell<bool>,
    begun: Cell<bool>,
    sounding: RefCell<Option<Sounding>>,
}

struct Sounding {
    context: AudioContext,
    graph: Graph,
    /// Position of the line when the context's clock was at zero.
    zero_ms: f64,
}

impl Sounding {
    fn position_ms(&self) -> f64 {
        self.zero_ms + self.context.current_time() * 1000.0
    }
}

impl Line {
    pub(super) fn new(tones: &[Tone], from_ms: f64) -> Self {
        Self {
            tones: tones
                .iter()
                .filter(|tone| f64::from(tone.at_ms) >= from_ms)
                .copied()
                .collect(),
            from_ms,
            since_ms: monotonic_ms() + LEAD_MS + CALL_MS,
            over: Cell::new(false),
            begun: Cell::new(false),
            sounding: RefCell::new(None),
        }
    }

    fn steady_ms(&self) -> f64 {
        self.from_ms + monotonic_ms() - self.since_ms
    }

    /// Schedules all that is still to come, from where the line is by the steady clock.
    pub(super) fn sound_on(&self, context: &AudioContext, volume: f32) {
        if self.over.get() || self.is_kept_up() {
            return;
        }
        self.silence();
        let position = self.steady_ms() + LEAD_MS;
        let start_s = context.current_time() + LEAD_MS / 1000.0;
        let late = if self.begun.replace(true) {
            0.0
        } else {
            LATE_MS
        };
        let coming = due(&self.tones, position, late);
        let sounding = graph::build(context, &coming, start_s, volume)
            .ok()
            .map(|graph| Sounding {
                context: context.clone(),
                graph,
                zero_ms: position - start_s * 1000.0,
            });
        *self.sounding.borrow_mut() = sounding;
    }

    /// Takes every tone back; the line itself goes on.
    pub(super) fn silence(&self) {
        if let Some(sounding) = self.sounding.borrow_mut().take() {
            sounding.graph.fade(sounding.context.current_time());
        }
    }

    pub(super) fn set_volume(&self, volume: f32) {
        if let Some(sounding) = &*self.sounding.borrow() {
            sounding
                .graph
                .set_volume(volume, sounding.context.current_time());
        }
    }

    fn end(&self) {
        self.over.set(true);
        self.silence();
    }

    /// Whether the audio clock runs and agrees with the steady one.
    fn is_kept_up(&self) -> bool {
        self.sounding.borrow().as_ref().is_some_and(|sounding| {
            state(&sounding.context) == State::Running
                && (sounding.position_ms() - self.steady_ms()).abs() < APART_MS
        })
    }

    fn position_ms(&self) -> f64 {
        let heard = self.sounding.borrow();
        let position = match &*heard {
            Some(sounding) if self.is_kept_up() => {
                sounding.position_ms() - latency_ms(&sounding.context)
            }
            _ => self.steady_ms(),
        };
        position.max(self.from_ms)
    }
}

/// A list being played; dropping it stops it.
#[must_use = "the sound stops when this is dropped"]
pub struct Playing {
    line: Rc<Line>,
    /// Keeps the output open for as long as something plays.
    _sound: Sound,
}

impl Playing {
    pub(super) fn new(line: Rc<Line>, sound: Sound) -> Self {
        Self {
            line,
            _sound: sound,
        }
    }

    /// Where the list is, in its own milliseconds, as heard now: for painting. Goes on by the
    /// steady clock while there is no sound.
    #[must_use]
    pub fn position_ms(&self) -> f64 {
        self.line.position_ms()
    }

    /// Where the list is by the steady clock, from which its times are counted; the ear is behind by what the output
    /// takes.
    #[must_use]
    pub fn clock_ms(&self) -> f64 {
        self.line.steady_ms()
    }

    /// Whether the sound output runs; if not, the screen has to show what can't be heard.
    #[must_use]
    pub fn is_heard(&self) -> bool {
        self.line.is_kept_up()
    }

    /// Fades what sounds and takes back what has not begun.
    pub fn stop(self) {
        drop(self);
    }
}

impl Drop for Playing {
    fn drop(&mut self) {
        self.line.end();
    }
}

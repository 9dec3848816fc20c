//! Sound on the audio clock: a list of tones is scheduled whole, and timers move none of it.
//!
//! Browsers start sound only after a tap, phones interrupt it (a call, the lock screen), and some
//! come back saying "running" with a clock that stands. All of that ends in one of two states:
//! heard, or not heard with the position still right.

pub mod graph;
mod line;
mod output;

pub use line::Playing;

use super::events::{Listener, on_visibility};
use super::timer::{self, Timer};
use crate::cues::tone::Tone;
use line::Line;
use output::Output;
use std::cell::{Cell, RefCell};
use std::rc::{Rc, Weak};

/// How long an output that was just resumed has to show that its clock runs.
const WATCH_MS: u32 = 250;

/// What can be expected of the sound output.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum State {
    /// This browser has no Web Audio.
    Absent,
    /// A tap is needed first ([`Sound::unlock`]), or there is no device to play on.
    Locked,
    /// Sound is heard, as far as the browser knows.
    Running,
    /// The phone took the output away (a call, the lock screen); a tap may bring it back.
    Interrupted,
}

/// How our sound goes with the music that may be playing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Mode {
    /// Beside it; a phone's silent switch mutes us.
    #[default]
    Beside,
    /// Heard in spite of the silent switch; the phone stops other sound for it.
    Always,
}

/// Whether the phone can tell the two modes apart.
#[must_use]
pub fn knows_modes() -> bool {
    super::js::navigator("audioSession").is_some()
}

/// The sound output; a clone is the same output.
#[derive(Clone)]
pub struct Sound {
    inner: Rc<Inner>,
}

struct Inner {
    output: RefCell<Option<Output>>,
    volume: Cell<f32>,
    mode: Cell<Mode>,
    lines: RefCell<Vec<Weak<Line>>>,
    watch: RefCell<Option<Timer>>,
    /// The output was taken away and did not come back when asked: the next tap builds another.
    worn: Cell<bool>,
    /// Another output was built without a tap, in place of one whose clock stood; if its own stands too, only a tap
    /// helps.
    tried: Cell<bool>,
    on_shown: RefCell<Option<Listener>>,
}

impl Default for Sound {
    fn default() -> Self {
        Self::new()
    }
}

impl Sound {
    /// An output that is not open yet, at full volume.
    #[must_use]
    pub fn new() -> Self {
        let sound = Self {
            inner: Rc::new(Inner {
                output: RefCell::new(None),
                volume: Cell::new(1.0),
                mode: Cell::new(Mode::default()),
                lines: RefCell::new(Vec::new()),
                watch: RefCell::new(None),
                worn: Cell::new(false),
                tried: Cell::new(false),
                on_shown: RefCell::new(None),
            }),
        };
        let weak = Rc::downgrade(&sound.inner);
        let listener = on_visibility(move |shown| {
            if let Some(inner) = weak.upgrade().filter(|_| shown) {
                inner.wake();
                inner.follow_state();
                inner.watch();
            }
        });
        *sound.inner.on_shown.borrow_mut() = Some(listener);
        sound
    }

    /// Opens the output, or brings it back. To be called in a tap, in every one: browsers allow
    /// sound only there. Cheap when all is well.
    pub fn unlock(&self) {
        let inner = &self.inner;
        inner.tried.set(false);
        if inner.worn.take() {
            inner.output.take();
        }
        if inner.output.borrow().is_none() {
            inner.open();
        }
        inner.wake();
        inner.watch();
    }

    /// Schedules the whole list now, from `from_ms` of it; what starts before that is left out.
    /// While the output does not run the list goes on unheard, and what is still to come is
    /// scheduled when it does.
    pub fn play(&self, tones: &[Tone], from_ms: f64) -> Playing {
        let line = Rc::new(Line::new(tones, from_ms));
        {
            let mut lines = self.inner.lines.borrow_mut();
            lines.retain(|line| line.strong_count() > 0);
            lines.push(Rc::downgrade(&line));
        }
        self.inner.wake();
        self.inner.follow_state();
        Playing::new(line, self.clone())
    }

    /// Looks after an output that says it runs and is not heard: what it held back is scheduled again, and one whose
    /// clock stands is given up. To be called as often as one likes while a list is not heard. One that waits for a
    /// tap, or that the phone took away, tells by itself when it is back.
    pub fn tend(&self) {
        if self.state() == State::Running && self.inner.watch.borrow().is_none() {
            self.inner.watch();
        }
    }

    /// Sets the volume, 0 to 1, also of what is playing.
    pub fn set_volume(&self, volume: f32) {
        let volume = volume.clamp(0.0, 1.0);
        self.inner.volume.set(volume);
        self.inner.each_line(|line| line.set_volume(volume));
    }

    /// Sets how our sound goes with other sound, where the phone can tell the two apart.
    pub fn set_mode(&self, mode: Mode) {
        self.inner.mode.set(mode);
        output::set_mode(mode);
    }

    /// The state of the output now.
    #[must_use]
    pub fn state(&self) -> State {
        match &*self.inner.output.borrow() {
            Some(output) => output.state(),
            None if super::js::global("AudioContext").is_none() => State::Absent,
            None => State::Locked,
        }
    }
}

impl Inner {
    fn open(self: &Rc<Self>) {
        output::set_mode(self.mode.get());
        let weak = Rc::downgrade(self);
        let output = Output::open(move || {
            if let Some(inner) = weak.upgrade() {
                inner.follow_state();
                inner.watch();
            }
        });
        *self.output.borrow_mut() = output;
    }

    fn each_line(&self, f: impl Fn(&Line)) {
        let lines: Vec<_> = self
            .lines
            .borrow()
            .iter()
            .filter_map(Weak::upgrade)
            .collect();
        lines.iter().for_each(|line| f(line));
    }

    fn wake(&self) {
        if let Some(output) = self.output.borrow().as_ref()
            && output.state() != State::Running
        {
            output.resume();
        }
    }

    /// Schedules what is unheard if the output runs, takes it back if not: left in place it would
    /// sound late by as long as the output stood.
    fn follow_state(&self) {
        if let Some(output) = self.output.borrow().as_ref() {
            if output.state() == State::Running {
                self.each_line(|line| line.sound_on(output.context(), self.volume.get()));
            } else {
                self.each_line(Line::silence);
            }
        }
    }

    /// Looks, a moment from now, whether the clock moves.
    fn watch(self: &Rc<Self>) {
        let Some(before) = self.time() else { return };
        let weak = Rc::downgrade(self);
        let timer = timer::after(WATCH_MS, move || {
            if let Some(inner) = weak.upgrade() {
                inner.watch.take();
                inner.judge(before);
            }
        });
        *self.watch.borrow_mut() = Some(timer);
    }

    fn judge(self: &Rc<Self>, before: f64) {
        let state = self.output.borrow().as_ref().map(Output::state);
        match state {
            Some(State::Running) if self.time() == Some(before) => self.give_up(),
            Some(State::Running) => {
                self.tried.set(false);
                // What an output held back that stood for a while is scheduled where it belongs now.
                self.follow_state();
            }
            Some(State::Interrupted) => self.worn.set(true),
            _ => {}
        }
    }

    /// It says it runs and stands: only a new one helps. Built here it may run at once; if that stands too, or is not
    /// allowed without a tap, the state says so and the next tap builds another.
    fn give_up(self: &Rc<Self>) {
        self.output.take();
        self.each_line(Line::silence);
        if !self.tried.replace(true) {
            self.open();
            self.wake();
            self.follow_state();
            self.watch();
        }
    }

    fn time(&self) -> Option<f64> {
        self.output
            .borrow()
            .as_ref()
            .map(|output| output.context().current_time())
    }
}

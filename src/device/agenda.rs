//! Things to do at times on the steady clock: what goes with a sound and need not be as exact. No cue is among them.
//!
//! One timer is set after the other. A hidden page's timers are slowed; what comes later than it may is left out, as a
//! number that is said late would mislead.

use super::clock::monotonic_ms;
use super::timer::{Timer, after};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::rc::{Rc, Weak};

/// What is done for an item.
type Act<T> = Box<dyn Fn(T)>;

/// An agenda under way; dropping it leaves out what is still to come.
#[must_use = "what is still to come is left out when this is dropped"]
pub struct Agenda<T: 'static> {
    _inner: Rc<Inner<T>>,
}

struct Inner<T> {
    items: RefCell<VecDeque<(f64, T)>>,
    late_ms: f64,
    act: Act<T>,
    timer: RefCell<Option<Timer>>,
}

impl<T: 'static> Agenda<T> {
    /// Calls `act` with each item so many milliseconds from now, in their order, at most `late_ms` later than that.
    pub fn begin(items: Vec<(f64, T)>, late_ms: f64, act: impl Fn(T) + 'static) -> Self {
        let now = monotonic_ms();
        let items = items.into_iter().map(|(in_ms, item)| (now + in_ms, item));
        let inner = Rc::new(Inner {
            items: RefCell::new(items.collect()),
            late_ms,
            act: Box::new(act),
            timer: RefCell::new(None),
        });
        inner.wait();
        Self { _inner: inner }
    }
}

impl<T: 'static> Inner<T> {
    fn wait(self: &Rc<Self>) {
        let next = self.items.borrow().front().map(|(at, _)| *at);
        let timer = next.map(|at| {
            let weak: Weak<Self> = Rc::downgrade(self);
            // Rounded up: a timer that rings early would only be set again.
            let in_ms = (at - monotonic_ms()).max(0.0).ceil() as u32;
            after(in_ms, move || {
                if let Some(inner) = weak.upgrade() {
                    inner.ring();
                }
            })
        });
        *self.timer.borrow_mut() = timer;
    }

    fn ring(self: &Rc<Self>) {
        let now = monotonic_ms();
        loop {
            let due = {
                let mut items = self.items.borrow_mut();
                match items.front() {
                    Some((at, _)) if *at <= now => items.pop_front(),
                    _ => None,
                }
            };
            match due {
                Some((at, item)) if now - at <= self.late_ms => (self.act)(item),
                Some(_) => {}
                None => break,
            }
        }
        self.wait();
    }
}

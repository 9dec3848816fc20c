//! What waits to be written, in order, and who writes it: one at a time.

use super::{Keep, Waiting};
use crate::device::db::Write;
use crate::device::oneshot::OneShot;
use crate::store::Shelf;

impl Keep {
    /// True for the one that writes what waits from now on; false where somebody does already.
    pub fn begin_writing(&self) -> bool {
        !std::mem::replace(&mut self.held.borrow_mut().writing, true)
    }

    /// Waits until nobody writes what waits; from then on nobody else does, as after [`Keep::begin_writing`].
    pub async fn begin_alone(&self) {
        while !self.begin_writing() {
            let turn = OneShot::new();
            self.held.borrow_mut().turns.push(turn.clone());
            turn.wait().await;
        }
    }

    /// Nobody writes what waits any more, or it is let go on.
    pub fn end_writing(&self) {
        let turns = {
            let mut held = self.held.borrow_mut();
            held.writing = false;
            std::mem::take(&mut held.turns)
        };
        // The first of them goes on, the others wait again.
        turns.iter().for_each(|turn| turn.give(()));
    }

    /// Whether what waits could be written.
    pub fn note_failing(&self, failing: bool) {
        self.held.borrow_mut().failing = failing;
    }

    /// Whether the last write failed.
    pub fn fails(&self) -> bool {
        self.held.borrow().failing
    }

    /// Puts writes at the end of those that wait.
    pub fn enqueue(&self, writes: Vec<Write>) {
        let (asked, more) = (writes, Vec::new());
        let mut held = self.held.borrow_mut();
        held.waiting.push_back(Waiting { asked, more });
    }

    /// The writes that are next.
    pub fn next(&self) -> Option<Vec<Write>> {
        let held = self.held.borrow();
        held.waiting.front().map(|next| next.asked.clone())
    }

    /// What follows for the books from the writes that are next; counts as waiting with them.
    pub fn note_books(&self, more: Vec<Write>) {
        if let Some(next) = self.held.borrow_mut().waiting.front_mut() {
            next.more = more;
        }
    }

    /// Takes the writes that were next off: they are done.
    pub fn done(&self) {
        self.held.borrow_mut().waiting.pop_front();
    }

    /// How many times something was to be written and is not yet.
    pub fn waiting(&self) -> usize {
        self.held.borrow().waiting.len()
    }

    /// The keys on a shelf that wait to be written.
    pub fn waiting_on(&self, shelf: Shelf) -> Vec<String> {
        let held = self.held.borrow();
        let puts = held
            .waiting
            .iter()
            .flat_map(|waiting| &waiting.asked)
            .filter_map(|write| match write {
                Write::Put { shelf: on, key, .. } if on == shelf.name() => Some(key.clone()),
                _ => None,
            });
        puts.collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::pin::pin;
    use std::task::{Context, Poll, Waker};

    #[test]
    fn whoever_wants_to_be_alone_waits_until_nobody_writes_and_then_nobody_does() {
        let keep = Keep::in_memory("");
        let mut context = Context::from_waker(Waker::noop());
        assert!(keep.begin_writing());
        let (mut one, mut other) = (pin!(keep.begin_alone()), pin!(keep.begin_alone()));
        assert_eq!(one.as_mut().poll(&mut context), Poll::Pending);
        assert_eq!(other.as_mut().poll(&mut context), Poll::Pending);
        keep.end_writing();
        assert_eq!(one.as_mut().poll(&mut context), Poll::Ready(()));
        assert!(!keep.begin_writing(), "it waits in line meanwhile");
        assert_eq!(other.as_mut().poll(&mut context), Poll::Pending);
        keep.end_writing();
        assert_eq!(other.as_mut().poll(&mut context), Poll::Ready(()));
        keep.end_writing();
        assert!(keep.begin_writing());
    }
}

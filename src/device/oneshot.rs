//! A value that a callback hands to a future, once; work that is begun before somebody waits for it; and a future with a time
//! limit.

use super::timer;
use std::cell::RefCell;
use std::future::{Future, poll_fn};
use std::pin::pin;
use std::rc::Rc;
use std::task::{Context, Poll, Waker};
use wasm_bindgen_futures::spawn_local;

struct Slot<T> {
    value: Option<T>,
    waker: Option<Waker>,
}

/// Shared by callbacks that race to give a value and one future that waits for it.
pub struct OneShot<T>(Rc<RefCell<Slot<T>>>);

impl<T> Clone for OneShot<T> {
    fn clone(&self) -> Self {
        Self(Rc::clone(&self.0))
    }
}

impl<T> Default for OneShot<T> {
    fn default() -> Self {
        Self::new()
    }
}

impl<T> OneShot<T> {
    /// Nothing was given yet.
    #[must_use]
    pub fn new() -> Self {
        Self(Rc::new(RefCell::new(Slot {
            value: None,
            waker: None,
        })))
    }

    /// Gives the value; the first one wins.
    pub fn give(&self, value: T) {
        let waker = {
            let mut slot = self.0.borrow_mut();
            if slot.value.is_none() {
                slot.value = Some(value);
            }
            slot.waker.take()
        };
        if let Some(waker) = waker {
            waker.wake();
        }
    }

    fn poll(&self, context: &Context) -> Poll<T> {
        let mut slot = self.0.borrow_mut();
        match slot.value.take() {
            Some(value) => Poll::Ready(value),
            None => {
                slot.waker = Some(context.waker().clone());
                Poll::Pending
            }
        }
    }

    /// Waits until a value is given.
    pub async fn wait(&self) -> T {
        poll_fn(|context| self.poll(context)).await
    }
}

/// Begins at once, and hands the result to whoever waits for it.
pub fn begun<T: 'static>(work: impl Future<Output = T> + 'static) -> OneShot<T> {
    let done = OneShot::new();
    let gives = done.clone();
    spawn_local(async move { gives.give(work.await) });
    done
}

/// The future's result, or `None` if it takes longer than `limit_ms`.
pub(super) async fn within<T>(limit_ms: u32, future: impl Future<Output = T>) -> Option<T> {
    let over = OneShot::new();
    let ring = over.clone();
    let _timer = timer::after(limit_ms, move || ring.give(()));
    let mut future = pin!(future);
    poll_fn(|context| match future.as_mut().poll(context) {
        Poll::Ready(value) => Poll::Ready(Some(value)),
        Poll::Pending => over.poll(context).map(|()| None),
    })
    .await
}

//! What a view follows: a value computed from signals, told on only when it changes.

use leptos::prelude::*;
use std::any::Any;
use std::marker::PhantomData;
use std::sync::Arc;

/// A computed value that is computed anew when what it reads changes, and wakes those that read it only when it differs.
///
/// A `Memo` inside, one concrete one for all types: each type of memo would load the whole of its machinery once more.
pub struct Seen<T> {
    memo: Memo<Held>,
    of: PhantomData<fn() -> T>,
}

impl<T> Clone for Seen<T> {
    fn clone(&self) -> Seen<T> {
        *self
    }
}

impl<T> Copy for Seen<T> {}

/// A value of any type, and how two of its type are compared.
#[derive(Clone)]
struct Held {
    value: Arc<dyn Any + Send + Sync>,
    same: fn(&dyn Any, &dyn Any) -> bool,
}

impl PartialEq for Held {
    fn eq(&self, other: &Held) -> bool {
        (self.same)(&*self.value, &*other.value)
    }
}

fn memo(compute: Box<dyn Fn() -> Held + Send + Sync>) -> Memo<Held> {
    Memo::new(move |_| compute())
}

fn same<T: PartialEq + 'static>(one: &dyn Any, other: &dyn Any) -> bool {
    one.downcast_ref::<T>() == other.downcast_ref::<T>()
}

impl<T: PartialEq + Send + Sync + 'static> Seen<T> {
    /// Follows what `compute` reads.
    pub fn new(compute: impl Fn() -> T + Send + Sync + 'static) -> Seen<T> {
        let held = move || Held {
            value: Arc::new(compute()),
            same: same::<T>,
        };
        Seen {
            memo: memo(Box::new(held)),
            of: PhantomData,
        }
    }
}

impl<T: 'static> Seen<T> {
    /// Reads the value, and follows it.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(open(&self.memo.get()))
    }

    /// Reads the value as it is now, not followed.
    pub fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(open(&self.memo.get_untracked()))
    }
}

impl<T: Clone + 'static> Seen<T> {
    /// The value, followed.
    pub fn get(self) -> T {
        open::<T>(&self.memo.get()).clone()
    }

    /// The value as it is now, not followed.
    pub fn get_untracked(self) -> T {
        open::<T>(&self.memo.get_untracked()).clone()
    }
}

/// The value inside; it was put there as a `T` by [`Seen::new`], which alone makes a `Seen<T>`.
fn open<T: 'static>(held: &Held) -> &T {
    match held.value.downcast_ref() {
        Some(value) => value,
        None => unreachable!("a value of another type was held"),
    }
}

impl<T: Clone + Send + Sync + 'static> From<Seen<T>> for Signal<T> {
    fn from(seen: Seen<T>) -> Signal<T> {
        Signal::derive(move || seen.get())
    }
}

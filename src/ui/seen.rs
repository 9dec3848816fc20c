//! What a view follows: a value computed from what is live, passed on only when it changes.

use super::unfollow::leave_with_owner;
use leptos::prelude::*;
use leptos::reactive::computed::ArcMemo;
use leptos::reactive::graph::ToAnySubscriber;
use std::any::Any;
use std::cell::Cell;
use std::marker::PhantomData;
use std::sync::Arc;

/// A computed value that is computed again when what it reads changes, and wakes those that read it only when it differs;
/// or one that never changes.
///
/// One concrete memo inside for all types: each type of memo would load the whole of its machinery once more.
pub struct Seen<T> {
    source: Source,
    of: PhantomData<fn() -> T>,
}

impl<T> Clone for Seen<T> {
    fn clone(&self) -> Seen<T> {
        *self
    }
}

impl<T> Copy for Seen<T> {}

#[derive(Clone, Copy)]
enum Source {
    Fixed(StoredValue<Held>),
    Memo(Memo<Held>),
}

/// A value of any type, and how two of its type are compared.
#[derive(Clone)]
pub struct Held {
    value: Arc<dyn Any + Send + Sync>,
    same: fn(&dyn Any, &dyn Any) -> bool,
}

impl Held {
    /// Holds a value.
    pub fn new<T: PartialEq + Send + Sync + 'static>(value: T) -> Held {
        Held {
            value: Arc::new(value),
            same: same::<T>,
        }
    }
}

impl PartialEq for Held {
    fn eq(&self, other: &Held) -> bool {
        (self.same)(&*self.value, &*other.value)
    }
}

fn same<T: PartialEq + 'static>(one: &dyn Any, other: &dyn Any) -> bool {
    one.downcast_ref::<T>() == other.downcast_ref::<T>()
}

impl<T: PartialEq + Send + Sync + 'static> Seen<T> {
    /// Follows what `compute` reads.
    pub fn new(compute: impl Fn() -> T + Send + Sync + 'static) -> Seen<T> {
        Seen::of_memo(memo(Box::new(move || Held::new(compute()))))
    }

    /// A value that never changes.
    pub fn fixed(value: T) -> Seen<T> {
        Seen {
            source: fix(Held::new(value)),
            of: PhantomData,
        }
    }
}

impl<T> Seen<T> {
    /// What a memo holds; each value of it must have been a `T`.
    pub(super) fn of_memo(memo: Memo<Held>) -> Seen<T> {
        Seen {
            source: Source::Memo(memo),
            of: PhantomData,
        }
    }
}

impl<T: 'static> Seen<T> {
    /// Reads the value, and follows it.
    pub fn with<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(open(&held(self.source)))
    }

    /// Reads the value as it is now, not followed.
    pub fn with_untracked<R>(self, read: impl FnOnce(&T) -> R) -> R {
        read(open(&held_untracked(self.source)))
    }
}

impl<T: Clone + 'static> Seen<T> {
    /// The value, followed.
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    /// The value as it is now, not followed.
    pub fn get_untracked(self) -> T {
        self.with_untracked(T::clone)
    }
}

impl<T: Clone + 'static> Seen<T> {
    /// The value where it never changes.
    pub fn if_fixed(self) -> Option<T> {
        match self.source {
            Source::Fixed(_) => Some(self.get_untracked()),
            Source::Memo(_) => None,
        }
    }
}

impl From<bool> for Seen<bool> {
    fn from(truth: bool) -> Seen<bool> {
        Seen::fixed(truth)
    }
}

impl From<String> for Seen<String> {
    fn from(text: String) -> Seen<String> {
        Seen::fixed(text)
    }
}

impl From<&str> for Seen<String> {
    fn from(text: &str) -> Seen<String> {
        Seen::fixed(text.to_owned())
    }
}

/// Does `act` soon, and again whenever what it read changes.
pub fn whenever(act: impl Fn() + 'static) {
    whenever_of(Box::new(act));
}

/// The same for what needs to know what it said the last time.
pub fn whenever_after<T: 'static>(act: impl Fn(Option<T>) -> T + 'static) {
    let last = Cell::new(None);
    whenever(move || last.set(Some(act(last.take()))));
}

#[inline(never)]
fn whenever_of(act: Box<dyn Fn()>) {
    let effect = Effect::new(move |_| act());
    leave_with_owner(effect.to_any_subscriber());
}

/// The value inside; it was put there as a `T`: see [`Seen::new`], [`Seen::fixed`] and [`Seen::of_memo`].
fn open<T: 'static>(held: &Held) -> &T {
    match held.value.downcast_ref() {
        Some(value) => value,
        None => of_another_type(),
    }
}

/// Never happens: a `Seen<T>` or a `Live<T>` alone holds what is inside, and puts only values of `T` there.
#[cold]
#[inline(never)]
pub(super) fn of_another_type() -> ! {
    unreachable!("a value of another type was held")
}

// What follows is compiled once, and kept out of what calls it.

/// A memo that leaves what it follows when its owner ends.
#[inline(never)]
pub(super) fn memo(compute: Box<dyn Fn() -> Held + Send + Sync>) -> Memo<Held> {
    let memo = ArcMemo::new(move |_| compute());
    leave_with_owner(memo.to_any_subscriber());
    memo.into()
}

#[inline(never)]
fn fix(held: Held) -> Source {
    Source::Fixed(StoredValue::new(held))
}

#[inline(never)]
fn held(source: Source) -> Held {
    match source {
        Source::Fixed(held) => held.get_value(),
        Source::Memo(memo) => memo.get(),
    }
}

#[inline(never)]
fn held_untracked(source: Source) -> Held {
    match source {
        Source::Fixed(held) => held.get_value(),
        Source::Memo(memo) => memo.get_untracked(),
    }
}

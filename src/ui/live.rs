//! What is set, and wakes the views that read it.

use super::seen::{Held, Seen, memo, of_another_type};
use leptos::prelude::*;
use std::any::Any;
use std::marker::PhantomData;
use std::ops::{Deref, DerefMut};

/// A value that is set and changed; whoever read it is told.
///
/// A signal inside, one concrete one for all types: each type of signal would load the whole of its machinery once more.
pub struct Live<T> {
    signal: Signal,
    of: PhantomData<fn() -> T>,
}

impl<T> Clone for Live<T> {
    fn clone(&self) -> Live<T> {
        *self
    }
}

impl<T> Copy for Live<T> {}

/// A value of any type.
type Value = Box<dyn Any + Send + Sync>;
type Signal = RwSignal<Value>;
/// What is taken out of a value of any type.
type Project = Box<dyn Fn(&dyn Any) -> Held + Send + Sync>;

impl<T: Send + Sync + 'static> Live<T> {
    /// Begins with `value`.
    pub fn new(value: T) -> Live<T> {
        Live {
            signal: hold(Box::new(value)),
            of: PhantomData,
        }
    }

    /// Reads the value, and follows it.
    pub fn with<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(open(&**read(self.signal)))
    }

    /// Reads the value as it is now, not followed.
    pub fn with_untracked<R>(self, look: impl FnOnce(&T) -> R) -> R {
        look(open(&**read_untracked(self.signal)))
    }

    /// Sets the value. Where the view that it belonged to is gone, nothing happens.
    pub fn set(self, value: T) {
        put(self.signal, Box::new(value));
    }

    /// Changes the value. Where the view that it belonged to is gone, nothing happens.
    pub fn update(self, change: impl FnOnce(&mut T)) {
        if let Some(mut held) = write(&self.signal) {
            change(open_mut(&mut **held));
        }
    }

    /// Follows the value without reading it.
    pub fn track(self) {
        follow(self.signal);
    }

    /// A projection of the value that a view follows.
    pub fn seen<P>(self, project: impl Fn(&T) -> P + Send + Sync + 'static) -> Seen<P>
    where
        P: PartialEq + Send + Sync + 'static,
    {
        Seen::of_memo(projected(
            self.signal,
            Box::new(move |value| Held::new(project(open(value)))),
        ))
    }
}

impl<T: Clone + Send + Sync + 'static> Live<T> {
    /// The value, followed.
    pub fn get(self) -> T {
        self.with(T::clone)
    }

    /// The value as it is now, not followed.
    pub fn get_untracked(self) -> T {
        self.with_untracked(T::clone)
    }

    /// The value as it is now, not followed; none where the view that it belonged to is gone.
    pub fn try_get_untracked(self) -> Option<T> {
        let held = try_read_untracked(self.signal)?;
        Some(open::<T>(&**held).clone())
    }
}

impl<T: Clone + PartialEq + Send + Sync + 'static> From<Live<T>> for Seen<T> {
    fn from(live: Live<T>) -> Seen<T> {
        live.seen(T::clone)
    }
}

/// The value inside; it was put there as a `T` by a [`Live<T>`], which alone holds the signal.
fn open<T: 'static>(value: &dyn Any) -> &T {
    match value.downcast_ref() {
        Some(value) => value,
        None => of_another_type(),
    }
}

fn open_mut<T: 'static>(value: &mut dyn Any) -> &mut T {
    match value.downcast_mut() {
        Some(value) => value,
        None => of_another_type(),
    }
}

// What follows is compiled once, and kept out of what calls it.

#[inline(never)]
fn hold(value: Value) -> Signal {
    RwSignal::new(value)
}

#[inline(never)]
fn read(signal: Signal) -> impl Deref<Target = Value> {
    signal.read()
}

#[inline(never)]
fn read_untracked(signal: Signal) -> impl Deref<Target = Value> {
    signal.read_untracked()
}

#[inline(never)]
fn try_read_untracked(signal: Signal) -> Option<impl Deref<Target = Value>> {
    signal.try_read_untracked()
}

#[inline(never)]
fn follow(signal: Signal) {
    signal.track();
}

#[inline(never)]
fn write(signal: &Signal) -> Option<impl DerefMut<Target = Value>> {
    signal.try_write()
}

#[inline(never)]
fn put(signal: Signal, value: Value) {
    if let Some(mut held) = write(&signal) {
        *held = value;
    }
}

#[inline(never)]
fn projected(signal: Signal, project: Project) -> Memo<Held> {
    memo(Box::new(move || project(&**read(signal))))
}

//! Views, memos and effects leave the signals they follow when their owner ends.
//!
//! A signal of Leptos (a *source* in its words) keeps everybody who ever followed it, also those that are gone: each change
//! of one that lives as long as the app (the model, the clock) would go through all that a floor ever showed, and the
//! memory of it would stay. So whoever follows says, when it is made, that it leaves its sources when its owner ends.

use leptos::prelude::*;
use leptos::reactive::graph::{AnySubscriber, Observer, Subscriber};

/// Has one that follows leave its sources when the owner it is made in ends, or begins again.
pub fn leave_with_owner(who: AnySubscriber) {
    on_cleanup(move || who.clear_sources(&who));
}

/// The same for the one that is computed just now, of those that the library makes.
pub fn leave_with_this() {
    if let Some(who) = Observer::get() {
        leave_with_owner(who);
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ui::live::Live;
    use crate::ui::seen::{Seen, whenever};
    use any_spawner::{CustomExecutor, Executor, PinnedFuture, PinnedLocalFuture};
    use std::sync::{Arc, Mutex, Once};
    use std::task::{Context, Waker};

    /// Goes on with a task as far as it comes at once; what it would do later is not looked at here.
    struct AtOnce;

    impl CustomExecutor for AtOnce {
        fn spawn(&self, _: PinnedFuture<()>) {}

        fn spawn_local(&self, mut task: PinnedLocalFuture<()>) {
            let _ = task.as_mut().poll(&mut Context::from_waker(Waker::noop()));
            // An effect lives as long as its task.
            std::mem::forget(task);
        }

        fn poll_local(&self) {}
    }

    /// Who followed, written down by what it computes.
    #[derive(Clone, Default)]
    struct Caught(Arc<Mutex<Option<AnySubscriber>>>);

    impl Caught {
        fn read(&self, live: Live<u8>) -> u8 {
            *self.0.lock().unwrap() = Observer::get();
            live.get()
        }
    }

    /// Whether one that is made in a view is told of a change while that view is there, and after it ended. It is kept
    /// alive meanwhile, so that a source which still had it would tell it.
    fn told<Made>(make: impl Fn(Live<u8>, Caught) -> Made) -> (bool, bool) {
        static TASKS: Once = Once::new();
        TASKS.call_once(|| Executor::init_custom_executor(AtOnce).unwrap());
        let app = Owner::new();
        app.with(|| {
            let live = Live::new(0);
            let caught = Caught::default();
            let view = Owner::new();
            let made = view.with(|| make(live, caught.clone()));
            let who = caught.0.lock().unwrap().clone().unwrap();
            let alive = who.1.upgrade().unwrap();
            live.set(1);
            let while_there = alive.update_if_necessary();
            view.cleanup();
            live.set(2);
            let after = alive.update_if_necessary();
            drop(made);
            (while_there, after)
        })
    }

    #[test]
    fn what_is_seen_is_computed_as_long_as_its_view_is_there() {
        let by_itself = told(|live, caught| {
            let seen = Seen::new(move || caught.read(live));
            seen.get_untracked()
        });
        assert_eq!(by_itself, (true, false));
        let projected = told(|live, caught| {
            let seen = live.seen(move |_| caught.read(live));
            seen.get_untracked()
        });
        assert_eq!(projected, (true, false));
    }

    #[test]
    fn what_is_done_whenever_ends_with_its_view() {
        let done = told(|live, caught| {
            whenever(move || {
                caught.read(live);
            });
        });
        assert_eq!(done, (true, false));
    }

    #[test]
    fn what_the_library_makes_ends_with_its_view() {
        let drawn = told(|live, caught| {
            RenderEffect::new(move |_| {
                leave_with_this();
                caught.read(live)
            })
        });
        assert_eq!(drawn, (true, false));
    }
}

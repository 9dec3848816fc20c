//! The clock that the floor is painted by, and the screen that stays on: both while a session runs.
//!
//! The clock paints only; no cue depends on it. Nothing on the floor changes between two seconds except what is counted
//! while a set is done by ear, so it looks once a second, on the second of what counts, and more often only then.

use super::model::Model;
use super::stanchion::{Stanchion, moment};
use crate::device::timer::{Timer, after};
use crate::device::wake::{Awake, Stay, keep_awake};
use crate::session::{Moment, Phase};
use crate::ui::seen::whenever;
use leptos::prelude::*;

/// How often it looks while a set is done by ear, in milliseconds: a count that is seen within 125 ms of what is heard
/// seems to come with it (ITU-R BT.1359-1).
const BY_EAR_MS: u32 = 50;

/// Milliseconds until the floor may look different; none where no session runs.
fn next_look_ms(model: &Model, now: &Moment) -> Option<u32> {
    let state = model.session.as_ref()?.state();
    let to_second = |ms: i64| u32::try_from((ms - 1).rem_euclid(1000) + 1).unwrap_or(1000);
    Some(match state.phase {
        Phase::Ended(_) => return None,
        Phase::Working { .. } => BY_EAR_MS,
        Phase::Resting(rest) if rest.held.is_none() => to_second(rest.left_ms(now).unwrap_or(1000)),
        _ => {
            let gone = i64::try_from(state.gone_ms(now)).unwrap_or(0);
            to_second(-gone)
        }
    })
}

/// Lets clock and wake lock follow the model.
pub fn run(app: Stanchion) {
    let timer: StoredValue<Option<Timer>, LocalStorage> = StoredValue::new_local(None);
    let awake: StoredValue<Option<Awake>, LocalStorage> = StoredValue::new_local(None);
    // What the next look depends on besides the time.
    let phase = app.of(|model| model.session.as_ref().map(|session| session.state().phase));
    whenever(move || {
        // Read, not only tracked: a memo that nobody has read yet follows nothing, and after a start amid a session the
        // clock would stand until the first tap.
        phase.with(|_| ());
        let now = app.now.get();
        let next = app.model.with_untracked(|model| next_look_ms(model, &now));
        timer.set_value(next.map(|ms| after(ms, move || app.now.set(moment()))));
    });
    let in_session = app.of(Model::any_in_session);
    whenever(move || {
        app.awake.set(Stay::default());
        let keep = || keep_awake(move |stay| app.awake.set(stay));
        awake.set_value(in_session.get().then(keep));
    });
}

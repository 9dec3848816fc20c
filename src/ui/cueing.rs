//! Cues follow the phase: when a set or a rest begins, its whole line of tones is handed to the audio clock at once.
//!
//! Beside it runs an agenda of what need not be exact: words and vibration. And the screen looks at the clock: where
//! the line and the clock on which the session counts have come apart (the device slept), it is laid again.

mod under_way;

use super::kit::{Hearing, loudness, settle_sound};
use super::stanchion::{Stanchion, moment};
use crate::cues::{Timeline, announcements, rest_timeline, sayings, set_timeline, tones};
use crate::device::agenda::Agenda;
use crate::device::events::{Listener, on_tap};
use crate::device::haptic::buzz;
use crate::device::painted::once_painted;
use crate::device::sound::{Playing, Sound};
use crate::device::speech::{hush, prime, say};
use crate::session::Moment;
use crate::ui::live::Live;
use crate::ui::seen::{Seen, whenever, whenever_after};
use crate::units::Seconds;
use leptos::prelude::*;
use under_way::{Sounding, next_said, sounding};

pub use crate::session::COUNT_IN_SECONDS;

/// How far a line may be from the clock before it is laid again: more than a call takes, less than a beat.
const APART_MS: f64 = 400.0;
/// How long a line may be unheard before the screen says so: an output needs a moment to wake.
const UNHEARD_MS: u64 = 600;
/// How late a word or a vibration may come.
const LATE_MS: f64 = 600.0;

/// On and off in milliseconds, at the end of a set and of a rest: told apart by touch.
const SET_END_BUZZ: [u32; 3] = [120, 80, 120];
const REST_END_BUZZ: [u32; 5] = [250, 120, 250, 120, 500];

/// A line under way.
struct Line {
    playing: Playing,
    since: Moment,
    length_ms: u64,
    /// Since when it is not heard, in milliseconds of the line.
    unheard_from: Option<u64>,
}

/// What is done on the agenda.
enum Item {
    Say(String),
    Buzz(&'static [u32]),
}

type Held<T> = StoredValue<Option<T>, LocalStorage>;

fn held<T: 'static>() -> Held<T> {
    StoredValue::new_local(None)
}

/// Lets sound, words and vibration follow the model.
pub fn run(app: Stanchion) {
    app.sound.with_value(settle_sound);
    let line: Held<Line> = held();
    let agenda: Held<Agenda<Item>> = held();
    // Counts how often the line was laid again because it had come apart from the clock.
    let relaid = Live::new(0_u32);
    let sounding = app.of(sounding);
    let next = app.of(next_said);

    whenever(move || {
        let hearing = app.hearing.get();
        sounding.with(|_| ());
        relaid.track();
        // What sounded stops at once.
        line.set_value(None);
        set_if_other(app.unheard, false);
        set_if_other(app.behind, 0);
        let begin = move || sounding.with_untracked(|sounding| lay(app, line, hearing, sounding));
        in_time(sounding, Box::new(begin));
    });
    whenever_after(move |before: Option<Sounding>| {
        let hearing = app.hearing.get();
        relaid.track();
        // The words change with the load; the line of tones must not be touched for that.
        let next = if hearing.next_said { next.get() } else { None };
        agenda.set_value(None);
        let now = sounding.get();
        if before.is_some_and(|before| before != now) {
            hush();
        }
        let begin = move || {
            let items = sounding.with_untracked(|now| items(hearing, now, next.as_deref()));
            let begun = (!items.is_empty()).then(|| Agenda::begin(items, LATE_MS, act));
            agenda.set_value(begun);
        };
        in_time(sounding, Box::new(begin));
        now
    });
    watch(app, line, relaid);
}

/// Begins what sounds. A set begins with a cue; a rest is silent at first, so the tap that began it is painted before.
/// What came in between, by another tap, then begins by itself.
fn in_time(sounding: Seen<Sounding>, begin: Box<dyn FnOnce()>) {
    let now = sounding.get_untracked();
    if !matches!(now, Sounding::Rest(..)) {
        return begin();
    }
    once_painted(move || {
        if sounding.with_untracked(|later| *later == now) {
            begin();
        }
    });
}

/// What looks at the line whenever the clock of the floor moves, and the tap that lets sound begin while a session runs.
fn watch(app: Stanchion, line: Held<Line>, relaid: Live<u32>) {
    whenever(move || {
        let now = app.now.get();
        look(app, line, relaid, now);
    });
    let tapped: Held<Listener> = held();
    let in_session = app.of(super::model::Model::in_session);
    whenever(move || {
        let on = in_session.get();
        tapped.set_value(on.then(|| {
            on_tap(move || {
                let hearing = app.hearing.get_untracked();
                if hearing.on {
                    app.sound.with_value(Sound::unlock);
                }
                if hearing.speaks() {
                    prime();
                }
            })
        }));
    });
}

fn timeline(hearing: Hearing, sounding: &Sounding) -> Option<(Timeline, Moment)> {
    match sounding {
        Sounding::Nothing => None,
        Sounding::Set(set, since) => Some((set_timeline(set, COUNT_IN_SECONDS), *since)),
        Sounding::Rest(length_ms, since) => {
            let seconds = whole_seconds(*length_ms);
            Some((rest_timeline(seconds, hearing.rest_half), *since))
        }
    }
}

fn whole_seconds(ms: u64) -> Seconds {
    Seconds::saturating(i64::try_from(ms / 1000).unwrap_or(0))
}

/// Lays the line that belongs to the phase. What lies before now was heard, or was missed: a
/// rest that ended meanwhile is not replayed.
fn lay(app: Stanchion, line: Held<Line>, hearing: Hearing, sounding: &Sounding) {
    if !hearing.on {
        return;
    }
    if let Some((timeline, since)) = timeline(hearing, sounding) {
        let from_ms = moment().since(&since) as f64;
        let tones = tones(&timeline, hearing.set);
        let playing = app.sound.with_value(|sound| sound.play(&tones, from_ms));
        line.set_value(Some(Line {
            playing,
            since,
            length_ms: u64::from(timeline.length_ms()),
            unheard_from: None,
        }));
    }
}

/// What is said and felt from now on.
fn items(hearing: Hearing, sounding: &Sounding, next: Option<&str>) -> Vec<(f64, Item)> {
    let Some((timeline, since)) = timeline(hearing, sounding) else {
        return Vec::new();
    };
    let (said, pattern): (_, &'static [u32]) = match sounding {
        Sounding::Rest(length_ms, _) => {
            let words = next.map(|next| announcements(whole_seconds(*length_ms), next));
            (words.unwrap_or_default(), &REST_END_BUZZ)
        }
        _ => (sayings(&timeline, hearing.aloud), &SET_END_BUZZ),
    };
    let now_ms = moment().since(&since) as f64;
    let words = said
        .into_iter()
        .map(|saying| (saying.at_ms, Item::Say(saying.words)));
    let end = (!timeline.is_open()).then(|| (timeline.length_ms(), Item::Buzz(pattern)));
    words
        .filter(|_| hearing.on)
        .chain(end)
        .map(|(at_ms, item)| (f64::from(at_ms) - now_ms, item))
        .filter(|(in_ms, _)| *in_ms >= -LATE_MS)
        .collect()
}

fn act(item: Item) {
    match item {
        Item::Say(words) => say(&words, loudness()),
        Item::Buzz(pattern) => buzz(pattern),
    }
}

/// Sees whether the line is where it should be and is heard.
fn look(app: Stanchion, line: Held<Line>, relaid: Live<u32>, now: Moment) {
    let mut apart = false;
    line.update_value(|line| {
        let Some(line) = line else { return };
        let at_ms = now.since(&line.since);
        let is_over = at_ms > line.length_ms;
        let by_line = line.playing.clock_ms();
        apart = !is_over && (at_ms as f64 - by_line).abs() > APART_MS;
        let heard = line.playing.is_heard();
        let behind = at_ms as f64 - line.playing.position_ms();
        set_if_other(
            app.behind,
            if heard {
                behind.clamp(0.0, 1000.0) as u32 / 10 * 10
            } else {
                0
            },
        );
        let unheard = !heard && !is_over;
        if !unheard {
            line.unheard_from = None;
        } else {
            app.sound.with_value(Sound::tend);
        }
        let from = *line.unheard_from.get_or_insert(at_ms);
        set_if_other(
            app.unheard,
            unheard && at_ms.saturating_sub(from) >= UNHEARD_MS,
        );
    });
    if apart {
        relaid.update(|times| *times += 1);
    }
}

/// Sets a signal that is followed only where its value is another one.
fn set_if_other<T: PartialEq + Send + Sync + 'static>(signal: Live<T>, value: T) {
    if signal.with_untracked(|before| *before != value) {
        signal.set(value);
    }
}

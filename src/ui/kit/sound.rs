//! What is heard: on or off, which sounds, how loud, beside the lifter's music or always, a voice; each with a test.

use super::hearing::{
    Hearing, keep, keep_mode, keep_volume, loudness, mode, number_of, settle, volume,
};
use crate::cues::{Aloud, SoundSet, demonstration, rest_timeline, tones};
use crate::device::events::Listener;
use crate::device::sound::{Mode, Playing, knows_modes};
use crate::device::speech::{can_speak, on_voices, say};
use crate::ui::live::Live;
use crate::ui::parts::{button, choices, dynamic, el, quiet, section, toggles_of};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::units::Seconds;
use crate::words::t;
use leptos::prelude::*;

/// Length of the rest whose end is tried.
const TRIED_REST_S: i64 = 4;

/// What is being tried; another trial stops it.
type Trial = StoredValue<Option<Playing>, LocalStorage>;

/// A box to tick.
pub fn tick_box(
    part: &'static str,
    words: &'static str,
    on: bool,
    ticked: impl Fn(bool) + Send + Sync + 'static,
) -> AnyView {
    tick_box_of(part, words, on, Callback::new(ticked))
}

fn tick_box_of(
    part: &'static str,
    words: &'static str,
    on: bool,
    ticked: Callback<bool>,
) -> AnyView {
    el("label")
        .class("check")
        .child(
            el("input")
                .set("type", "checkbox")
                .part(part)
                .checked(on)
                .on_change(move |event| ticked.run(event_target_checked(&event))),
        )
        .child(el("span").child(words))
        .view()
}

/// How loud.
fn loudness_field(app: Stanchion) -> AnyView {
    let keep = Callback::new(move |text: String| {
        keep_volume(&text);
        app.sound.with_value(settle);
    });
    el("label")
        .class("field")
        .child(el("span").child(t("how loud")))
        .child(
            el("input")
                .set("type", "range")
                .set("min", "0")
                .set("max", "100")
                .set("step", "5")
                .part("volume")
                .value(|| volume().to_string())
                .on_change(move |event| keep.run(event_target_value(&event))),
        )
        .view()
}

/// Changes what is to be heard, and keeps it.
fn change(app: Stanchion, with: impl FnOnce(&mut Hearing)) {
    app.hearing.update(with);
    keep(&app.hearing.get_untracked());
}

/// Plays what the chosen sounds say in a set.
fn try_set(app: Stanchion, trial: Trial) {
    let set = app.hearing.get_untracked().set;
    play(app, trial, &tones(&demonstration(), set));
}

fn play(app: Stanchion, trial: Trial, line: &[crate::cues::tone::Tone]) {
    app.sound.with_value(|sound| {
        sound.unlock();
        trial.set_value(Some(sound.play(line, 0.0)));
    });
}

/// Which sounds; a tap chooses and plays them.
fn sets(app: Stanchion, trial: Trial) -> Vec<AnyView> {
    let pressed = Seen::new(move || Some(number_of(&SoundSet::ALL, &app.hearing.get().set)));
    let labels = SoundSet::ALL.map(|set| (set.name().to_owned(), ""));
    let choose = move |n: i64| {
        if let Some(set) = SoundSet::ALL.get(n as usize) {
            change(app, |hearing| hearing.set = *set);
            try_set(app, trial);
        }
    };
    vec![
        choices(
            "choices three",
            t("Sounds"),
            toggles_of("sound-set", labels, pressed, choose),
        ),
        quiet(t(
            "A tap chooses and plays: one beat in, a slow rep, a fast one, the end of the set.",
        )),
    ]
}

/// Beside other sound, or always; a tap chooses and plays.
fn ways(app: Stanchion, trial: Trial) -> Vec<AnyView> {
    let way = Live::new(mode());
    let pressed = Seen::new(move || Some(i64::from(way.get() == Mode::Always)));
    let labels = [
        (
            t("beside your music").to_owned(),
            t("it plays on; a phone switched to silent stays silent"),
        ),
        (
            t("always").to_owned(),
            t("sounds on a silent phone too; other music stops"),
        ),
    ];
    let choose = move |n: i64| {
        let mode = if n == 1 { Mode::Always } else { Mode::Beside };
        way.set(mode);
        keep_mode(mode);
        app.sound.with_value(settle);
        try_set(app, trial);
    };
    let mut inside = vec![choices(
        "choices two",
        t("Beside other sound"),
        toggles_of("sound-way", labels, pressed, choose),
    )];
    if !knows_modes() {
        inside.push(quiet(t(
            "This browser mixes all sound by itself and passes this choice over.",
        )));
    }
    inside
}

/// The voice: what it counts and whether it says what comes next, where this phone has one.
fn voice(app: Stanchion) -> AnyView {
    let able = Live::new(can_speak());
    let found: StoredValue<Option<Listener>, LocalStorage> =
        StoredValue::new_local(on_voices(move || able.set(can_speak())));
    on_cleanup(move || found.set_value(None));
    dynamic(move || {
        let inside = if able.get() {
            speaks(app)
        } else {
            vec![quiet(t(
                "The app cannot speak here: the browser knows no English voice on this phone. Voices \
                 that speak over the network are not used.",
            ))]
        };
        el("div").part("voice").child(inside).view()
    })
}

fn speaks(app: Stanchion) -> Vec<AnyView> {
    let pressed = Seen::new(move || Some(number_of(&Aloud::ALL, &app.hearing.get().aloud)));
    let labels = [
        (t("no voice").to_owned(), ""),
        (t("counts reps aloud").to_owned(), ""),
        (t("counts seconds aloud").to_owned(), ""),
    ];
    let choose = move |n: i64| {
        if let Some(aloud) = Aloud::ALL.get(n as usize) {
            change(app, |hearing| hearing.aloud = *aloud);
            let words = match aloud {
                Aloud::Nothing => return,
                Aloud::Reps => "1",
                Aloud::Seconds => "1, 2, 3",
            };
            say(words, loudness());
        }
    };
    let next = app.hearing.get_untracked().next_said;
    vec![
        choices(
            "choices words",
            t("Voice"),
            toggles_of("speech", labels, pressed, choose),
        ),
        tick_box(
            "speech-next",
            t("A rest says the next load and reps"),
            next,
            move |on| {
                change(app, |hearing| hearing.next_said = on);
                if on {
                    say(t("next: 62.5 kilograms, 5 to 7 reps"), loudness());
                }
            },
        ),
    ]
}

/// The settings of sound.
pub fn sound_settings(app: Stanchion) -> AnyView {
    let trial: Trial = StoredValue::new_local(None);
    let try_rest = move || {
        let hearing = app.hearing.get_untracked();
        let rest = rest_timeline(Seconds::saturating(TRIED_REST_S), false);
        play(app, trial, &tones(&rest, hearing.set));
    };
    let chosen = app.hearing.get_untracked();
    let mut inside = vec![tick_box(
        "sound-on",
        t("Cues sound"),
        chosen.on,
        move |on| {
            change(app, |hearing| hearing.on = on);
        },
    )];
    inside.push(quiet(t(
        "A set that is begun by ear is counted in, and tones lead each phase of a rep: nobody has to look at the screen.",
    )));
    inside.extend(sets(app, trial));
    inside.push(loudness_field(app));
    inside.extend(ways(app, trial));
    inside.extend([
        tick_box(
            "rest-half",
            t("Mark the middle of a rest"),
            chosen.rest_half,
            move |on| change(app, |hearing| hearing.rest_half = on),
        ),
        button("wide", "sound-test", t("Test: the end of a rest"), try_rest),
        voice(app),
        quiet(t(
            "No page can ring once it is closed: leave this one open, the screen stays on.",
        )),
    ]);
    section(Some("sound"), t("Sound"), inside)
}

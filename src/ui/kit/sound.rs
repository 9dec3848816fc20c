//! Sound on or off, how loud, beside the lifter's music or always, and a test.

use crate::cues::{rest_timeline, tones};
use crate::device::prefs;
use crate::device::sound::{Mode, Playing, Sound};
use crate::ui::parts::{button, section};
use crate::ui::stanchion::Stanchion;
use crate::units::Seconds;
use leptos::prelude::*;

/// Preference: sound on or off.
const SOUND: &str = "sound";
/// Preference: volume, 0 to 100.
const VOLUME: &str = "volume";
/// Preference: sound always, whatever the silent switch says.
const ALWAYS: &str = "sound-always";

/// Whether cues sound.
pub fn sound_on() -> bool {
    prefs::get(SOUND).unwrap_or(true)
}

/// Hands the kept settings to the sound.
pub fn settle(sound: &Sound) {
    let volume: u8 = prefs::get(VOLUME).unwrap_or(80);
    sound.set_volume(f32::from(volume.min(100)) / 100.0);
    let always: bool = prefs::get(ALWAYS).unwrap_or(false);
    sound.set_mode(if always { Mode::Always } else { Mode::Beside });
}

/// A box to tick.
fn tick_box(
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
    view! {
        <label class="check">
            <input
                type="checkbox"
                data-part=part
                prop:checked=on
                on:change=move |event| ticked.run(event_target_checked(&event))
            />
            <span>{words}</span>
        </label>
    }
    .into_any()
}

/// How loud.
fn loudness(app: Stanchion) -> AnyView {
    let volume = prefs::get::<u8>(VOLUME).unwrap_or(80).to_string();
    let keep = move |text: String| {
        let value = text.parse::<u8>().unwrap_or(80).min(100);
        // What a preference cannot hold is chosen again next time; nothing else is lost.
        let _ = prefs::set(VOLUME, &value);
        app.sound.with_value(settle);
    };
    view! {
        <label class="field">
            <span>{"how loud"}</span>
            <input
                type="range"
                min="0"
                max="100"
                step="5"
                data-part="volume"
                prop:value=volume
                on:change=move |event| keep(event_target_value(&event))
            />
        </label>
    }
    .into_any()
}

/// The settings of sound.
pub fn sound_settings(app: Stanchion) -> AnyView {
    let test: StoredValue<Option<Playing>, LocalStorage> = StoredValue::new_local(None);
    let try_it = move || {
        app.sound.with_value(|sound| {
            sound.unlock();
            let line = tones(&rest_timeline(Seconds::saturating(4)));
            test.set_value(Some(sound.play(&line, 0.0)));
        });
    };
    // What a preference cannot hold is chosen again next time; nothing else is lost.
    let keep_on = move |on: bool| {
        app.cues_on.set(on);
        let _ = prefs::set(SOUND, &on);
    };
    let keep_always = move |always: bool| {
        let _ = prefs::set(ALWAYS, &always);
        app.sound.with_value(settle);
    };
    let always = prefs::get::<bool>(ALWAYS).unwrap_or(false);
    section(
        None,
        "Sound",
        vec![
            tick_box(
                "sound-on",
                "Cues sound",
                app.cues_on.get_untracked(),
                keep_on,
            ),
            loudness(app),
            tick_box(
                "sound-always",
                "Sound even when the phone is switched to silent; this stops other music",
                always,
                keep_always,
            ),
            button(
                "wide",
                "sound-test",
                "Test sound: the end of a rest",
                try_it,
            ),
        ],
    )
}

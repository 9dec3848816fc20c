//! Sound on or off, how loud, beside the lifter's music or always, and a test.

use crate::cues::{rest_timeline, tones};
use crate::device::prefs;
use crate::device::sound::{Mode, Playing, Sound};
use crate::ui::stanchion::stanchion;
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

/// The settings of sound.
#[component]
pub fn SoundSettings() -> impl IntoView {
    let app = stanchion();
    let on = RwSignal::new(sound_on());
    let always = RwSignal::new(prefs::get::<bool>(ALWAYS).unwrap_or(false));
    let volume = RwSignal::new(prefs::get::<u8>(VOLUME).unwrap_or(80));
    let test: StoredValue<Option<Playing>, LocalStorage> = StoredValue::new_local(None);
    // What a preference cannot hold is chosen again next time; nothing else is lost.
    let keep_volume = move |text: String| {
        let value = text.parse::<u8>().unwrap_or(80).min(100);
        volume.set(value);
        let _ = prefs::set(VOLUME, &value);
        app.sound.with_value(settle);
    };
    view! {
        <section class="group">
            <h2>"Sound"</h2>
            <label class="check">
                <input
                    type="checkbox"
                    data-part="sound-on"
                    prop:checked=move || on.get()
                    on:change=move |event| {
                        on.set(event_target_checked(&event));
                        let _ = prefs::set(SOUND, &on.get_untracked());
                    }
                />
                <span>"Cues sound"</span>
            </label>
            <label class="field">
                <span>"how loud"</span>
                <input
                    type="range"
                    min="0"
                    max="100"
                    step="5"
                    data-part="volume"
                    prop:value=move || volume.get().to_string()
                    on:change=move |event| keep_volume(event_target_value(&event))
                />
            </label>
            <label class="check">
                <input
                    type="checkbox"
                    data-part="sound-always"
                    prop:checked=move || always.get()
                    on:change=move |event| {
                        always.set(event_target_checked(&event));
                        let _ = prefs::set(ALWAYS, &always.get_untracked());
                        app.sound.with_value(settle);
                    }
                />
                <span>"Sound even when the phone is switched to silent; this stops other music"</span>
            </label>
            <button
                class="wide"
                data-part="sound-test"
                on:click=move |_| app.sound.with_value(|sound| {
                    sound.unlock();
                    let line = tones(&rest_timeline(Seconds::saturating(4)));
                    test.set_value(Some(sound.play(&line, 0.0)));
                })
            >
                "Test sound: the end of a rest"
            </button>
        </section>
    }
}

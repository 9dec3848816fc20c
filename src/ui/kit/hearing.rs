//! What is to be heard, kept as preferences of this phone.

use crate::cues::{Aloud, SoundSet};
use crate::device::prefs;
use crate::device::sound::{Mode, Sound};

/// Preference: sound on or off.
const SOUND: &str = "sound";
/// Preference: volume, 0 to 100.
const VOLUME: &str = "volume";
/// Preference: sound always, whatever the silent switch says.
const ALWAYS: &str = "sound-always";
/// Preference: which sounds, by number.
const SET: &str = "sound-set";
/// Preference: what is counted aloud, by number.
const SPEECH: &str = "speech";
/// Preference: what comes next is said during a rest.
const NEXT_SAID: &str = "speech-next";
/// Preference: the middle of a rest is marked.
const REST_HALF: &str = "rest-half";

/// Volume until another one is chosen.
const USUAL_VOLUME: u8 = 80;

/// What is to be heard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Hearing {
    /// Whether cues sound.
    pub on: bool,
    /// How they sound.
    pub set: SoundSet,
    /// Whether the middle of a rest is marked.
    pub rest_half: bool,
    /// What is counted aloud.
    pub aloud: Aloud,
    /// Whether a rest says what comes next.
    pub next_said: bool,
}

impl Hearing {
    /// Whether anything is to be said.
    pub fn speaks(&self) -> bool {
        self.on && (self.aloud != Aloud::Nothing || self.next_said)
    }
}

/// What was chosen; what was not is as usual.
pub fn hearing() -> Hearing {
    Hearing {
        on: prefs::get(SOUND).unwrap_or(true),
        set: of_number(&SoundSet::ALL, prefs::get(SET)),
        rest_half: prefs::get(REST_HALF).unwrap_or(false),
        aloud: of_number(&Aloud::ALL, prefs::get(SPEECH)),
        next_said: prefs::get(NEXT_SAID).unwrap_or(false),
    }
}

/// The one of that number; the usual one where there is none.
fn of_number<T: Copy + Default>(all: &[T], number: Option<u8>) -> T {
    let chosen = number.and_then(|number| all.get(usize::from(number)));
    chosen.copied().unwrap_or_default()
}

/// The number of one of them.
pub fn number_of<T: PartialEq>(all: &[T], one: &T) -> i64 {
    let at = all.iter().position(|other| other == one);
    at.map_or(0, |at| at as i64)
}

/// Keeps what was chosen. What a preference cannot hold is chosen again next time; nothing else is lost.
pub fn keep(hearing: &Hearing) {
    let _ = prefs::set(SOUND, &hearing.on);
    let _ = prefs::set(SET, &(number_of(&SoundSet::ALL, &hearing.set) as u8));
    let _ = prefs::set(REST_HALF, &hearing.rest_half);
    let _ = prefs::set(SPEECH, &(number_of(&Aloud::ALL, &hearing.aloud) as u8));
    let _ = prefs::set(NEXT_SAID, &hearing.next_said);
}

/// Volume, 0 to 100.
pub fn volume() -> u8 {
    prefs::get(VOLUME).unwrap_or(USUAL_VOLUME).min(100)
}

/// Volume from 0 to 1, as the device counts it.
pub fn loudness() -> f32 {
    f32::from(volume()) / 100.0
}

/// Keeps the volume.
pub fn keep_volume(typed: &str) {
    let volume = typed.parse::<u8>().unwrap_or(USUAL_VOLUME).min(100);
    // As in `keep`.
    let _ = prefs::set(VOLUME, &volume);
}

/// How the cues go with other sound.
pub fn mode() -> Mode {
    match prefs::get(ALWAYS) {
        Some(true) => Mode::Always,
        _ => Mode::Beside,
    }
}

/// Keeps how the cues go with other sound.
pub fn keep_mode(mode: Mode) {
    // As in `keep`.
    let _ = prefs::set(ALWAYS, &(mode == Mode::Always));
}

/// Hands the kept settings to the sound.
pub fn settle(sound: &Sound) {
    sound.set_volume(loudness());
    sound.set_mode(mode());
}

//! The keys of a headset, and the sound that brings them.

use super::super::keys::of_media;
use super::{Hands, Open};
use crate::device::media::MediaKeys;
use crate::device::prefs;
use crate::device::sound::Sound;
use leptos::prelude::*;

/// Preference: the keys of a headset are wanted.
const HEADSET: &str = "headset-keys";

impl Hands {
    /// Opens the sound and plays what brings the keys of a headset; both want a tap.
    pub(super) fn wake(self) {
        self.app.sound.with_value(Sound::unlock);
        self.media.with_value(|media| {
            if let Some(media) = media {
                media.play();
            }
        });
    }

    /// Whether the keys of a headset are wanted.
    pub fn wants_headset() -> bool {
        prefs::get(HEADSET).unwrap_or(false)
    }

    /// Takes the keys of a headset, or gives them back, as the setting has it. False where the browser has none.
    pub fn follow_headset(self) -> bool {
        if !Hands::wants_headset() {
            self.media.set_value(None);
            return true;
        }
        let keys = MediaKeys::claim(move |key| {
            // A panel over the pad keeps it as it is.
            if self.open.get_untracked() == Open::Nothing {
                self.wish(of_media(key));
            }
        });
        let there = keys.is_some();
        self.media.set_value(keys);
        there
    }

    /// Wants the keys of a headset, or not any more.
    pub fn want_headset(self, wanted: bool) -> bool {
        // What a preference cannot hold is chosen again next time; nothing else is lost.
        let _ = prefs::set(HEADSET, &wanted);
        self.follow_headset()
    }
}

//! The keys of a headset, which a phone gives to whoever plays media: play/pause, next, previous.
//!
//! Platforms hand these keys only to a page that plays an audio element of some seconds; sound on the audio clock is
//! not enough. So while they are wanted a silent recording is looped. It takes the phone's media session: other
//! players pause, which is why the lifter asks for it. iOS gives them to a page in front only.

use super::js;
use js_sys::{Array, Uint8Array};
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};

/// A key of a headset.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MediaKey {
    /// Play or pause.
    PlayPause,
    /// Next track.
    Next,
    /// Previous track.
    Previous,
}

/// The browser's names of the keys. Play and pause are two, of one button.
const ACTIONS: [(&str, MediaKey); 4] = [
    ("play", MediaKey::PlayPause),
    ("pause", MediaKey::PlayPause),
    ("nexttrack", MediaKey::Next),
    ("previoustrack", MediaKey::Previous),
];

/// Samples a second of the silence; the lowest that all browsers take.
const RATE: u32 = 8000;
/// Its length: Chromium takes what is shorter than five seconds for a mere sound.
const SECONDS: u32 = 8;

/// The keys of a headset while they are ours; dropping it gives them back.
#[must_use = "the keys are given back when it is dropped"]
pub struct MediaKeys {
    session: JsValue,
    audio: Option<JsValue>,
    /// The address of the silence.
    url: Option<String>,
    _called: Vec<Closure<dyn FnMut()>>,
}

impl MediaKeys {
    /// Asks for the keys; `f` is called with each that is pressed. None where the browser hands out none.
    pub fn claim(f: impl FnMut(MediaKey) + Clone + 'static) -> Option<MediaKeys> {
        let session = js::navigator("mediaSession")?;
        let called = ACTIONS
            .iter()
            .map(|&(action, key)| {
                let mut f = f.clone();
                let called = Closure::<dyn FnMut()>::new(move || f(key));
                let handler = called.as_ref().clone();
                // A browser that does not know the action throws; the others still work.
                let _ = js::call(&session, "setActionHandler", &[action.into(), handler]);
                called
            })
            .collect();
        let named = js::object(&[("title", "Stanchion".into())]);
        if let Some(metadata) = js::construct_with("MediaMetadata", &[named]) {
            // What the lock screen says; without it the key still works.
            let _ = js_sys::Reflect::set(&session, &"metadata".into(), &metadata);
        }
        let url = silence();
        let audio = url.as_ref().and_then(|url| {
            let audio = js::construct_with("Audio", &[url.into()])?;
            let _ = js_sys::Reflect::set(&audio, &"loop".into(), &JsValue::TRUE);
            Some(audio)
        });
        let keys = MediaKeys {
            session,
            audio,
            url,
            _called: called,
        };
        keys.play();
        Some(keys)
    }

    /// Plays the silence, without which no key comes. To be called in a tap, in every one: browsers allow it only there.
    pub fn play(&self) {
        let Some(audio) = &self.audio else { return };
        let stands = js::get(audio, "paused").is_none_or(|paused| paused.is_truthy());
        if stands && let Ok(promise) = js::call(audio, "play", &[]) {
            // Refused before the first tap; the next one asks again.
            let ignore = Closure::<dyn FnMut(JsValue)>::new(|_| {});
            let _ = js::call(&promise, "catch", &[ignore.as_ref().clone()]);
            ignore.forget();
        }
    }
}

impl Drop for MediaKeys {
    fn drop(&mut self) {
        for (action, _) in ACTIONS {
            let _ = js::call(
                &self.session,
                "setActionHandler",
                &[action.into(), JsValue::NULL],
            );
        }
        if let Some(audio) = &self.audio {
            let _ = js::call(audio, "pause", &[]);
        }
        if let Some(url) = &self.url {
            let _ = web_sys::Url::revoke_object_url(url);
        }
    }
}

/// The address of a recording of nothing.
fn silence() -> Option<String> {
    let bytes = wave();
    let parts = Array::of1(&Uint8Array::from(bytes.as_slice()).into());
    let kind = js::object(&[("type", "audio/wav".into())]);
    let blob = js::construct_with("Blob", &[parts.into(), kind])?;
    web_sys::Url::create_object_url_with_blob(blob.unchecked_ref()).ok()
}

/// Silence as a WAVE file: 8 bits, one channel (Microsoft and IBM, Multimedia Programming Interface, 1991).
fn wave() -> Vec<u8> {
    let samples = RATE * SECONDS;
    let mut bytes = Vec::with_capacity(44 + samples as usize);
    bytes.extend(b"RIFF");
    bytes.extend((36 + samples).to_le_bytes());
    bytes.extend(b"WAVEfmt ");
    bytes.extend(16_u32.to_le_bytes());
    // Uncompressed, one channel.
    bytes.extend([1, 0, 1, 0]);
    bytes.extend(RATE.to_le_bytes());
    bytes.extend(RATE.to_le_bytes());
    // One byte a frame, eight bits a sample, whose middle is 128.
    bytes.extend([1, 0, 8, 0]);
    bytes.extend(b"data");
    bytes.extend(samples.to_le_bytes());
    bytes.resize(44 + samples as usize, 128);
    bytes
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_silence_is_long_enough_to_count_as_media() {
        let bytes = wave();
        const { assert!(SECONDS > 5) };
        assert_eq!(bytes.len(), 44 + 64_000);
        assert_eq!(&bytes[..4], b"RIFF");
        assert!(bytes[44..].iter().all(|sample| *sample == 128));
    }
}

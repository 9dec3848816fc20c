//! The browser's voice, only where the phone itself speaks: another voice would send the words to someone's server.
//!
//! Speaking is asked for and forgotten. A voice that is slow, stuck or refused changes nothing else.

use super::events::{Listener, listen};
use super::js;
use crate::words::{Catalogue, spoken};
use js_sys::{Array, Reflect};
use std::cell::Cell;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::EventTarget;

/// A little faster than usual: a number has to be over before the next one.
const RATE: f64 = 1.15;

fn synthesis() -> Option<JsValue> {
    js::global("speechSynthesis")
}

/// The language that is spoken, as in BCP 47.
fn language() -> &'static str {
    spoken().map_or("en", Catalogue::language)
}

/// A voice of this phone that reads the language of what is said; the browser's own choice first.
fn voice(synthesis: &JsValue) -> Option<JsValue> {
    let voices: Array = js::call(synthesis, "getVoices", &[])
        .ok()?
        .dyn_into()
        .ok()?;
    let is = |voice: &JsValue, name: &str| js::get(voice, name).is_some_and(|is| is.is_truthy());
    let language = language();
    // Browsers write `de-DE`, `de_DE` or `de`.
    let reads = |voice: &JsValue| {
        js::get(voice, "lang")
            .and_then(|lang| lang.as_string())
            .is_some_and(|lang| {
                let first = lang.split(['-', '_']).next().unwrap_or_default();
                first.eq_ignore_ascii_case(language)
            })
    };
    let fitting = || {
        voices
            .iter()
            .filter(|voice| is(voice, "localService") && reads(voice))
    };
    fitting()
        .find(|voice| is(voice, "default"))
        .or_else(|| fitting().next())
}

/// Whether this phone can say something by itself. Browsers find their voices some time after the page was opened.
#[must_use]
pub fn can_speak() -> bool {
    synthesis().is_some_and(|synthesis| voice(&synthesis).is_some())
}

/// Calls `f` each time the browser has found voices; `None` where it will not say.
pub fn on_voices(mut f: impl FnMut() + 'static) -> Option<Listener> {
    let target: EventTarget = synthesis()?.dyn_into().ok()?;
    Some(listen(&target, "voiceschanged", move |_| f()))
}

/// Says it, at a volume of 0 to 1; what was being said is broken off. Does nothing where the phone cannot speak.
pub fn say(words: &str, volume: f32) {
    let Some(synthesis) = synthesis() else { return };
    let Some(voice) = voice(&synthesis) else {
        return;
    };
    let Some(utterance) = js::construct_with("SpeechSynthesisUtterance", &[words.into()]) else {
        return;
    };
    let lang = js::get(&voice, "lang").unwrap_or_else(|| language().into());
    for (name, value) in [
        ("voice", voice),
        ("lang", lang),
        ("rate", RATE.into()),
        ("volume", volume.clamp(0.0, 1.0).into()),
    ] {
        // A browser that refuses one of them speaks in its own way.
        let _ = Reflect::set(&utterance, &name.into(), &value);
    }
    cancel(&synthesis);
    SAID.set(true);
    // Refused means unsaid; the board shows it.
    let _ = js::call(&synthesis, "speak", &[utterance]);
}

thread_local! {
    static PRIMED: Cell<bool> = const { Cell::new(false) };
    /// Whether something was said since it was last broken off.
    static SAID: Cell<bool> = const { Cell::new(false) };
}

/// Says nothing, once a page, so that what is said later is allowed: some phones let a page speak only after it did in
/// a tap. To be called in one.
pub fn prime() {
    if can_speak() && !PRIMED.replace(true) {
        say("", 0.0);
    }
}

/// Breaks off what is being said and what waits to be. Where nothing was said it asks nothing of the browser, for which
/// even that is work.
pub fn hush() {
    if SAID.take()
        && let Some(synthesis) = synthesis()
    {
        cancel(&synthesis);
    }
}

fn cancel(synthesis: &JsValue) {
    // Nothing is being said where this fails.
    let _ = js::call(synthesis, "cancel", &[]);
}

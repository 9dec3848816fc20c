//! The sound output: one audio context, what state it is in, how late it is heard.

use super::{Mode, State};
use crate::device::events::{Listener, listen};
use crate::device::js;
use js_sys::Reflect;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::{AudioContext, BaseAudioContext};

/// An audio context that is listened to; closed when dropped.
pub(super) struct Output {
    context: AudioContext,
    _on_state: Listener,
}

impl Output {
    /// `None` where the browser has no Web Audio or refuses another context.
    pub(super) fn open(mut on_state: impl FnMut() + 'static) -> Option<Self> {
        let context: AudioContext = js::construct("AudioContext")?.unchecked_into();
        let on_state = listen(&context, "statechange", move |_| on_state());
        Some(Self {
            context,
            _on_state: on_state,
        })
    }

    pub(super) fn context(&self) -> &AudioContext {
        &self.context
    }

    pub(super) fn state(&self) -> State {
        state(&self.context)
    }

    /// Asks the browser to run it; the answer is a change of state, or nothing.
    pub(super) fn resume(&self) {
        settle(js::call(&self.context, "resume", &[]));
    }
}

impl Drop for Output {
    fn drop(&mut self) {
        settle(js::call(&self.context, "close", &[]));
    }
}

/// Lets a promise end as it will: a refusal shows in the state, and must not be reported as an
/// error that nobody handled.
fn settle(promise: Result<JsValue, JsValue>) {
    if let Ok(promise) = promise {
        spawn_local(async move {
            let _ = wasm_bindgen_futures::JsFuture::from(js_sys::Promise::resolve(&promise)).await;
        });
    }
}

/// Read by name: phones have a state, `interrupted`, that web-sys does not know.
pub(super) fn state(context: &BaseAudioContext) -> State {
    match js::get(context, "state")
        .and_then(|state| state.as_string())
        .as_deref()
    {
        Some("running") => State::Running,
        Some("interrupted") => State::Interrupted,
        _ => State::Locked,
    }
}

/// Milliseconds from the context's clock to the ear as far as the browser knows: small for a
/// loudspeaker, some 200 for wireless headphones. It changes with the device.
pub(super) fn latency_ms(context: &AudioContext) -> f64 {
    js::get(context, "outputLatency")
        .and_then(|latency| latency.as_f64())
        .filter(|latency| latency.is_finite())
        .map_or(0.0, |seconds| seconds.clamp(0.0, 1.0) * 1000.0)
}

/// Tells a phone that knows audio sessions how this sound goes with other sound.
pub(super) fn set_mode(mode: Mode) {
    if let Some(session) = js::navigator("audioSession") {
        let kind = match mode {
            Mode::Beside => "ambient",
            Mode::Always => "playback",
        };
        // A phone that refuses keeps its own way.
        let _ = Reflect::set(&session, &"type".into(), &kind.into());
    }
}

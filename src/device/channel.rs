//! Telling the other tabs of this page, where the browser can.

use super::events::{Listener, listen};
use super::js;
use wasm_bindgen::JsCast;
use wasm_bindgen::JsValue;
use web_sys::{BroadcastChannel, MessageEvent};

/// A line to the other tabs; closed when dropped. Without one, posting does nothing.
pub struct Channel {
    line: Option<(BroadcastChannel, Listener)>,
}

impl Channel {
    /// Joins the channel of this name; `on_text` is told what the others post, not what we post.
    pub fn open(name: &str, mut on_text: impl FnMut(String) + 'static) -> Self {
        let channel = js::global("BroadcastChannel").and_then(|_| BroadcastChannel::new(name).ok());
        let line = channel.map(|channel| {
            let listener = listen(&channel, "message", move |event| {
                let text = event
                    .dyn_ref::<MessageEvent>()
                    .and_then(|said| said.data().as_string());
                if let Some(text) = text {
                    on_text(text);
                }
            });
            (channel, listener)
        });
        Self { line }
    }

    /// Tells the other tabs.
    pub fn post(&self, text: &str) {
        if let Some((channel, _)) = &self.line {
            // It refuses only once closed, which it is not while `self` lives.
            let _ = channel.post_message(&JsValue::from_str(text));
        }
    }
}

impl Drop for Channel {
    fn drop(&mut self) {
        if let Some((channel, _)) = &self.line {
            channel.close();
        }
    }
}

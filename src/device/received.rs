//! What comes from outside: files that are opened with the app or sent to it by another one, and places that are opened while it
//! runs, as by a shortcut.

use super::{clock, js, place};
use js_sys::Array;
use wasm_bindgen::prelude::Closure;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::spawn_local;
use web_sys::File;

/// The cache in which the service worker leaves a file that another app sent, and its address there: see `assets/sw.js`.
pub(super) const CACHE: &str = "stanchion received";
const ADDRESS: &str = "./received";

/// What is told so soon is the launch of this page itself, which is where it led; some browsers tell it again after a reload.
const LAUNCH_MS: f64 = 1_000.0;

/// Calls `f` with each file that is opened with the app, and goes to each place that is, where the browser has such a way. It
/// lives as long as the page.
pub fn on_opened(f: impl Fn(File) + Clone + 'static) {
    let Some(queue) = js::global("launchQueue") else {
        return;
    };
    let began = clock::monotonic_ms();
    let consume = Closure::<dyn FnMut(JsValue)>::new(move |launch: JsValue| {
        // The manifest asks for the window that is there: the browser shows it, and leaves the way to the place to the app.
        let to = js::get(&launch, "targetURL").and_then(|to| to.as_string());
        if let Some((_, fragment)) = to.as_deref().and_then(|to| to.split_once('#'))
            && clock::monotonic_ms() - began > LAUNCH_MS
        {
            place::go_to(fragment);
        }
        let Some(files) = js::get(&launch, "files") else {
            return;
        };
        for handle in Array::from(&files).iter() {
            let f = f.clone();
            spawn_local(async move {
                let file = js::call_async(&handle, "getFile", &[]).await;
                // One that went away meanwhile was not opened.
                if let Ok(file) = file.and_then(JsCast::dyn_into::<File>) {
                    f(file);
                }
            });
        }
    });
    // Refused, nothing is ever opened so.
    let _ = js::call(&queue, "setConsumer", &[consume.into_js_value()]);
}

/// The file that another app sent, once; none where there is none.
pub async fn sent() -> Option<File> {
    let caches = js::global("caches")?;
    let there = js::call_async(&caches, "has", &[CACHE.into()]).await.ok()?;
    if !there.is_truthy() {
        return None;
    }
    let cache = js::call_async(&caches, "open", &[CACHE.into()])
        .await
        .ok()?;
    let answer = js::call_async(&cache, "match", &[ADDRESS.into()]).await;
    // Looked at once: it is not shown again at the next start.
    let _ = js::call_async(&caches, "delete", &[CACHE.into()]).await;
    let blob = js::call_async(&answer.ok()?, "blob", &[]).await.ok()?;
    let parts = Array::of1(&blob);
    File::new_with_blob_sequence(&parts, "the file that was sent").ok()
}

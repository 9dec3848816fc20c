//! The smallest Leptos app, one button, served by the same service worker: the floor under every start of Stanchion.

use leptos::prelude::*;

fn main() {
    let count = RwSignal::new(0);
    leptos::mount::mount_to_body(move || {
        view! { <button on:click=move |_| count.update(|count| *count += 1)>{count}</button> }
    });
    if let Some(window) = web_sys::window() {
        if let Some(performance) = window.performance() {
            // Without the mark the measurement says that it is missing.
            let _ = performance.mark("stanchion-ready");
        }
        // Its answer is waited for by the page that measures.
        let _ = window.navigator().service_worker().register("./sw.js");
    }
}

//! The service worker's registration, against one that the test plays.

use crate::help::{Patch, number, patch, run, text, turn, until};
use stanchion::device::worker::{Worker, register};
use std::cell::Cell;
use std::rc::Rc;
use wasm_bindgen_test::wasm_bindgen_test;

/// A browser whose workers the test moves on: `coming(state)` starts one, `move(state)` goes on.
fn container() -> Patch {
    patch(
        "window.said = []; window.looked = 0;
         const container = window.container = new EventTarget();
         const registration = new EventTarget();
         registration.update = async () => { window.looked++ };
         container.controller = null;
         container.register = async (...rest) => {
             window.registered = JSON.stringify(rest); return registration };
         window.coming = () => {
             const worker = window.worker = new EventTarget();
             worker.postMessage = word => window.said.push(JSON.stringify(word));
             registration.installing = worker;
             registration.dispatchEvent(new Event('updatefound')) };
         window.installed = () => {
             const worker = window.worker;
             registration.installing = null; registration.waiting = worker;
             worker.state = 'installed'; worker.dispatchEvent(new Event('statechange')) };
         shadow(navigator, 'serviceWorker', {value: container});",
    )
}

async fn registered() -> (Worker, Rc<Cell<u32>>) {
    run("window.registered = ''");
    let waits = Rc::new(Cell::new(0));
    let told = Rc::clone(&waits);
    let worker = register(move || told.set(told.get() + 1));
    until("it was registered", || !text("registered").is_empty()).await;
    turn().await;
    (worker, waits)
}

#[wasm_bindgen_test]
async fn it_is_registered_beside_the_page_past_every_cache() {
    let _container = container();
    let (worker, _) = registered().await;
    assert_eq!(
        text("registered"),
        r#"["./sw.js",{"updateViaCache":"none"}]"#
    );
    worker.check();
    until("an update was looked for", || number("looked") == 1.0).await;
}

#[wasm_bindgen_test]
async fn the_first_worker_is_no_update_and_the_next_waits_to_be_told() {
    let _container = container();
    let (worker, waits) = registered().await;
    run("coming(); installed()");
    assert_eq!(waits.get(), 0);
    // The page gets its first controller. Were this taken for an update, it would reload and the
    // test would never end.
    run("container.controller = {}; container.dispatchEvent(new Event('controllerchange'))");
    run("coming(); installed()");
    assert_eq!(waits.get(), 1);
    assert_eq!(text("said"), "");
    worker.take_over();
    assert_eq!(text("said"), r#"{"type":"take-over"}"#);
}

#[wasm_bindgen_test]
async fn an_update_that_waited_before_the_page_was_opened_is_told() {
    let _container = container();
    let (first, _) = registered().await;
    run("container.controller = {}; coming(); installed()");
    drop(first);
    let (_second, waits) = registered().await;
    until("it was told", || waits.get() == 1).await;
}

#[wasm_bindgen_test]
async fn without_workers_nothing_happens() {
    let _absent = patch("shadow(navigator, 'serviceWorker', {value: undefined});");
    let worker = register(|| panic!("there is no update"));
    turn().await;
    worker.check();
    worker.take_over();
    turn().await;
}

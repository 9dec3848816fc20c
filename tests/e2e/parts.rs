//! The modules that the app is cut into: the first screens wait for none of the later ones, the floor for no page of the
//! rest, and whoever wants one before it is there is told.

use super::browser::Browser;
use super::engine::{Engine, only_in};
use super::looks::picture;
use super::person::Person;
use super::server::{Server, dist};
use super::update::{copy, installed};
use super::whole_session::{begin, end_rest, log};
use serde_json::json;
use std::path::PathBuf;

/// The built app without its later modules, from one on.
fn without_parts(browser: &Browser, from: u32) -> PathBuf {
    let dist = dist();
    let folder = browser.folder().join(format!("without-{from}"));
    copy(&dist, &folder);
    let mut left_out = 0;
    for entry in std::fs::read_dir(&folder).expect("the copy can be read") {
        let path = entry.expect("an entry can be read").path();
        let name = path.file_name().expect("it has a name").to_string_lossy();
        let part = name
            .strip_suffix(".wasm")
            .and_then(|stem| stem.rsplit_once('_'));
        let part = part.and_then(|(_, number)| number.parse::<u32>().ok());
        if part.is_some_and(|part| part >= from) {
            std::fs::remove_file(&path).expect("the copy can be changed");
            left_out += 1;
        }
    }
    assert!(left_out > 0, "the build has such modules");
    folder
}

/// What was called before it was there: for each call, who called whom. `target/modules.txt` names them.
async fn waited(person: &Person) -> Vec<serde_json::Value> {
    let script = "return performance.getEntriesByName('stanchion-waited').map((it) => it.detail)";
    let calls = person.run(script).await;
    calls.as_array().cloned().unwrap_or_default()
}

#[tokio::test]
async fn whoever_comes_for_the_first_time_reads_before_the_rest_is_there() {
    let server = Server::start();
    let browser = Browser::start("parts-first");
    server.serve(without_parts(&browser, 1));
    let person = Person::open(&browser, &server).await;
    person.reads("caution", "Ask a physician first").await;
    person.see("welcome-open").await;
    person.tap("unit-lb").await;
    assert_eq!(waited(&person).await, [] as [serde_json::Value; 0]);
    person.close().await;
}

/// The smallest page that `boot.js` starts: nothing stands on it, and its app is one module. The yardstick of the start
/// (`tests/floor`) is built in this shape, by the measurements alone.
#[tokio::test]
async fn a_bare_page_with_one_module_starts_too() {
    let server = Server::start();
    let browser = Browser::start("parts-bare");
    let folder = browser.folder().join("bare");
    std::fs::create_dir_all(&folder).expect("a folder can be made");
    let boot = dist().join("boot.js");
    std::fs::copy(boot, folder.join("boot.js")).expect("the boot script can be copied");
    let page = "<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>Bare</title>\
                <script type=\"module\" src=\"./boot.js\" data-js=\"./app.js\" data-wasm=\"./app.wasm\"></script>\
                </head><body></body></html>";
    // As what wasm-bindgen makes: it takes the module and says when the app runs.
    let app = "export default async ({ module_or_path }) => {
                 const { exports } = await WebAssembly.instantiate(await module_or_path);
                 document.body.textContent = 'it runs';
                 return exports;
               };";
    // A module in which nothing is: its mark and its version.
    let module: &[u8] = b"\0asm\x01\0\0\0";
    for (name, bytes) in [
        ("index.html", page.as_bytes()),
        ("app.js", app.as_bytes()),
        ("app.wasm", module),
    ] {
        std::fs::write(folder.join(name), bytes).expect("the page can be written");
    }
    server.serve(folder);
    let person = Person::open(&browser, &server).await;
    person
        .until(
            "return document.body.innerText === 'it runs' && globalThis.stanchionWhole",
            "the bare app runs",
        )
        .await;
    person.close().await;
}

#[tokio::test]
async fn later_starts_and_the_floor_wait_for_no_page_of_the_rest() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("parts-floor");
    let person = Person::arrive(&browser, &server).await;
    installed(&person).await;
    // From now on the rest is not made ready.
    let never = "window.makeReady = WebAssembly.compile; WebAssembly.compile = () => new Promise(() => {});";
    person.before_the_app(never).await;
    person.reload().await;
    begin(&person, "Lower A").await;
    person.tap("reps-less").await;
    person.tap("reps-more").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    person.tap("rest-more").await;
    person.tap("undo-set").await;
    log(&person).await;
    end_rest(&person).await;
    person.all_is_saved().await;
    person.reload().await;
    log(&person).await;
    end_rest(&person).await;
    log(&person).await;
    assert_eq!(waited(&person).await, [] as [serde_json::Value; 0]);
    // What lies there opens when it is there.
    person.tap("more").await;
    let here = person
        .run("return !!document.querySelector('[data-part=\"more-panel\"]')")
        .await;
    assert_eq!(here, json!(false));
    person
        .run("WebAssembly.compile = makeReady; stanchionPart(0)")
        .await;
    person.tap("note").await;
    person.see("note-panel").await;
    assert_eq!(waited(&person).await, [] as [serde_json::Value; 0]);
    person.close().await;
}

#[tokio::test]
async fn a_place_that_is_not_there_yet_says_so_and_comes_with_the_network() {
    let server = Server::start();
    let browser = Browser::start("parts-late");
    server.serve(without_parts(&browser, 2));
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-open").await;
    person.see("choose").await;
    person.tap("go-ledger").await;
    person.reads("coming", "is being loaded").await;
    picture(&person, "coming").await;
    // The floor is there meanwhile.
    person.tap("go-floor").await;
    person.see("choose").await;
    person.tap("go-ledger").await;
    person.see("coming").await;
    server.serve(dist());
    person.run("dispatchEvent(new Event('online'))").await;
    person.reads("place", "Nothing yet").await;
    person.close().await;
}

#[tokio::test]
async fn what_could_not_be_had_is_asked_for_again() {
    let server = Server::start();
    let browser = Browser::start("parts-again");
    server.serve(without_parts(&browser, 2));
    let person = Person::open(&browser, &server).await;
    person.tap("welcome-open").await;
    person.see("choose").await;
    // From now on no answer comes to what is asked for.
    let never = "window.asks = window.fetch;
                 window.fetch = () => new Promise((_, fails) => { window.noAnswer = fails; });";
    person.run(never).await;
    person.tap("go-ledger").await;
    person.reads("coming", "is being loaded").await;
    person
        .until("return !!window.noAnswer", "the rest was asked for")
        .await;
    server.serve(dist());
    let fails = "window.fetch = window.asks; window.noAnswer(new TypeError('no network'));";
    person.run(fails).await;
    person.reads("place", "Nothing yet").await;
    person.close().await;
}

#[tokio::test]
async fn what_is_called_before_it_is_there_is_waited_for() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("parts-called");
    let client = browser.open().await;
    let person = Person { client };
    // The later modules are on their way for ever.
    let never = "const real = fetch;
        window.fetch = (what, ...more) =>
          /_[12].wasm$/.test(String(what.url ?? what)) ? new Promise(() => {}) : real(what, ...more);";
    person.before_the_app(never).await;
    person.client.goto(&server.url()).await.unwrap();
    person.tap("welcome-open").await;
    person.see("choose").await;
    begin(&person, "Lower A").await;
    log(&person).await;
    person.reads("saved", "saved").await;
    assert_eq!(waited(&person).await.len(), 1);
    person.close().await;
}

/// What the static shell does, as the style sheet has it: whether it waits, whether it takes room while it does, and whether
/// it does when it has waited. Its wait begins again for this and is held, so that no clock decides.
const SHELL: &str = "const shell = document.getElementById('shell');
    const waits = getComputedStyle(shell).animationName !== 'none';
    if (!waits) return { waits, before: shell.offsetHeight > 0, after: true };
    shell.style.animation = 'none';
    shell.offsetHeight;
    shell.style.animation = '';
    const wait = document.getAnimations().find((it) => it.effect.target === shell);
    wait.pause();
    const before = shell.offsetHeight > 0;
    wait.finish();
    return { waits, before, after: shell.offsetHeight > 0 };";

#[tokio::test]
async fn the_shell_is_there_at_once_the_first_time_and_waits_in_a_later_start() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let server = Server::start();
    let browser = Browser::start("parts-shell");
    let person = Person {
        client: browser.open().await,
    };
    // The app is on its way for ever.
    let never = "WebAssembly.compileStreaming = () => new Promise(() => {});";
    let script = person.before_the_app(never).await;
    person.client.goto(&server.url()).await.unwrap();
    let shown = "return document.getElementById('shell').classList.contains('now')";
    person.until(shown, "the shell is shown at once").await;
    let shell = person.run(SHELL).await;
    assert_eq!(
        shell,
        json!({ "waits": false, "before": true, "after": true })
    );
    // What the browser does in its own time waits for the first screen.
    let addresses =
        "return [...document.querySelectorAll('link[data-later]')].map((it) => it.rel).sort()";
    assert_eq!(person.run(addresses).await, json!(["icon", "manifest"]));
    person
        .devtools("Page.removeScriptToEvaluateOnNewDocument", script)
        .await;
    person.client.refresh().await.unwrap();
    person.tap("welcome-open").await;
    person.see("choose").await;
    let manifest = "return document.querySelector('link[rel=manifest]').href.endsWith('/manifest.webmanifest')";
    assert_eq!(person.run(manifest).await, json!(true));
    installed(&person).await;
    person.before_the_app(never).await;
    person.client.refresh().await.unwrap();
    person
        .until(
            "return document.readyState === 'complete'",
            "the page is there",
        )
        .await;
    let shell = person.run(SHELL).await;
    assert_eq!(
        shell,
        json!({ "waits": true, "before": false, "after": true })
    );
    assert_eq!(
        person
            .run("return document.getElementById('shell-word').innerText")
            .await,
        json!("Opening the log.")
    );
    person.close().await;
}

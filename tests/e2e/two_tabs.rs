//! Two tabs: one writes, the other follows what it writes and can take over; nothing is lost on the way.

use super::browser::Browser;
use super::disk::rows;
use super::engine::{Engine, only_in};
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest};
use fantoccini::wd::WindowHandle;

/// Turns to a new tab that shows nothing yet; the windows of the tab before and of this one.
async fn in_a_new_tab(person: &Person) -> (WindowHandle, WindowHandle) {
    let first = person.client.window().await.unwrap();
    let second = person.client.new_window(true).await.unwrap().handle;
    person
        .client
        .switch_to_window(second.clone())
        .await
        .unwrap();
    (first, second)
}

/// Logs a set in one tab and opens a second one, which follows and is in front; the windows of both.
async fn a_set_and_a_second_tab(
    browser: &Browser,
    server: &Server,
) -> (Person, WindowHandle, WindowHandle) {
    let person = Person::arrive(browser, server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;
    let (first, second) = in_a_new_tab(&person).await;
    person.client.goto(&server.url()).await.unwrap();
    person.reads("follows", "in use in another tab").await;
    (person, first, second)
}

#[tokio::test]
async fn the_second_tab_follows_and_takes_over() {
    let server = Server::start();
    let browser = Browser::start("tabs");
    let (person, first, second) = a_set_and_a_second_tab(&browser, &server).await;
    person.reads("logged", "logged 6 reps at 15 kg").await;
    // Here one can look, not log.
    person.tap("undo-set").await;
    person.reads("notice", "Another tab or window").await;
    person.tap("notice-close").await;

    person.client.switch_to_window(first.clone()).await.unwrap();
    end_rest(&person).await;
    person.tap("reps-less").await;
    person.reads("log", "5").await;
    person.client.switch_to_window(second).await.unwrap();
    person.reads("log", "5").await;

    person.tap("take-over").await;
    person.gone("follows").await;
    person.tap("log").await;
    person.reads("logged", "logged 5 reps at 15 kg").await;
    person.client.switch_to_window(first).await.unwrap();
    person.reads("follows", "in use in another tab").await;
    person.reads("logged", "logged 5 reps at 15 kg").await;
    person.close().await;
}

#[tokio::test]
async fn the_first_visit_in_a_second_tab_opens_nothing_that_could_not_be_kept() {
    let server = Server::start();
    let browser = Browser::start("tabs-welcome");
    let client = browser.open().await;
    let person = Person { client };
    person.client.goto(&server.url()).await.unwrap();
    person.see("welcome-open").await;
    let (first, _) = in_a_new_tab(&person).await;
    person.client.goto(&server.url()).await.unwrap();
    person.reads("follows", "in use in another tab").await;
    person.gone("welcome-open").await;

    person.tap("take-over").await;
    person.tap("welcome-open").await;
    person.see("choose").await;
    person.client.switch_to_window(first).await.unwrap();
    person.see("choose").await;
    person.reads("follows", "in use in another tab").await;
    person.close().await;
}

/// Taps of each of the two tabs.
const TAPS: usize = 200;

/// Taps before the other tab takes over.
const TURN: usize = 10;

/// Taps one rep more or less, so many times, as fast as the page takes them; each must be taken. The page gets its turn by
/// messages: the clock of a tab that is not in front is slow.
async fn tap_reps(person: &Person, times: usize) {
    let script = format!(
        "return (async () => {{
           const figure = () => document.querySelector('[data-part=\"log\"]').innerText;
           const {{ port1: here, port2: there }} = new MessageChannel();
           const turn = () => new Promise((go) => {{
             here.onmessage = go;
             there.postMessage('');
           }});
           let taken = 0;
           for (let n = 0; n < {times}; n += 1) {{
             const before = figure();
             document.querySelector(`[data-part=\"reps-${{n % 2 ? 'more' : 'less'}}\"]`).click();
             await turn();
             await turn();
             taken += figure() === before ? 0 : 1;
           }}
           return taken;
         }})()"
    );
    assert_eq!(person.run(&script).await, serde_json::json!(times));
}

/// Two tabs tap in turn, and each takes over while the other may still be writing: all events are there, and both
/// tabs, a third start and the events show the same.
async fn tabs_in_turn(name: &str, prepare: Option<&str>) {
    let server = Server::start();
    let browser = Browser::start(name);
    let client = browser.open().await;
    let person = Person { client };
    let before_each_page = async |person: &Person| {
        if let Some(source) = prepare {
            person.before_the_app(source).await;
        }
    };
    before_each_page(&person).await;
    person.client.goto(&server.url()).await.unwrap();
    person.tap("welcome-open").await;
    person.see("choose").await;
    begin(&person, "Lower A").await;
    person.see("log").await;
    let (first, second) = in_a_new_tab(&person).await;
    before_each_page(&person).await;
    person.client.goto(&server.url()).await.unwrap();
    person.see("follows").await;

    for turn in 0..2 * TAPS / TURN {
        let window = if turn % 2 == 0 { &first } else { &second };
        person
            .client
            .switch_to_window(window.clone())
            .await
            .unwrap();
        if turn > 0 {
            person.tap("take-over").await;
            person.gone("follows").await;
        }
        // Nothing is waited for at the end of a turn.
        tap_reps(&person, TURN).await;
    }

    for window in [&first, &second] {
        person
            .client
            .switch_to_window((*window).clone())
            .await
            .unwrap();
        let saved = "return document.querySelector('[data-unsaved]') === null";
        person.until(saved, "everything is on disk").await;
    }
    let events = rows(&person, "events").await;
    assert_eq!(events.len(), 1 + 2 * TAPS);
    person.reload().await;
    person.see("log").await;
    // As many more as less: the figure is what it was.
    person.reads("log", "6").await;
    person.close().await;
}

#[tokio::test]
async fn taps_in_two_tabs_in_turn_lose_nothing() {
    tabs_in_turn("tabs-turn", None).await;
}

#[tokio::test]
async fn taps_in_two_tabs_in_turn_lose_nothing_in_a_browser_without_locks() {
    if !only_in(
        &[Engine::Chromium],
        "a script before the app comes by Chromium's devtools",
    ) {
        return;
    }
    let without = "Object.defineProperty(Navigator.prototype, 'locks', { value: undefined });";
    tabs_in_turn("tabs-no-locks", Some(without)).await;
}

#[tokio::test]
async fn what_one_tab_erases_is_erased_for_all_and_all_begin_anew() {
    let server = Server::start();
    let browser = Browser::start("tabs-erase");
    let (person, first, second) = a_set_and_a_second_tab(&browser, &server).await;

    person.client.switch_to_window(first).await.unwrap();
    person.run("location.hash = '/kit'").await;
    person.tap("erase").await;
    person
        .reads("erase-goes", "0 sessions, the session under way, 2 sheets")
        .await;
    person.tap("erase-decline").await;
    person.tap("erase-sure").await;
    person.see("welcome").await;
    person.client.close_window().await.unwrap();

    // The tab that had the store open begins again, and what is logged there is kept.
    person.client.switch_to_window(second).await.unwrap();
    person.see("welcome").await;
    person.client.goto(&server.url()).await.unwrap();
    person.tap("welcome-open").await;
    begin(&person, "Upper B").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;
    person.reload().await;
    person.reads("sheet-name", "Upper B").await;
    assert_eq!(rows(&person, "people").await, vec![]);
    person.close().await;
}

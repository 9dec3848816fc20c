//! No network: the host is stopped, the page is reloaded, the session is finished.

use super::browser::Browser;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end, end_rest, log_all};

#[tokio::test]
async fn with_the_host_stopped_the_page_loads_and_the_session_is_finished() {
    let mut server = Server::start();
    let browser = Browser::start("offline");
    let person = Person::arrive(&browser, &server).await;
    person
        .until(
            "return navigator.serviceWorker.controller !== null \
             || (navigator.serviceWorker.getRegistration().then(r => window.ready = !!r?.active), window.ready === true)",
            "everything is kept for use without a network",
        )
        .await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;

    server.stop();
    person.reload().await;
    person.reads("logged", "logged 6 reps at 15 kg").await;
    end_rest(&person).await;
    assert_eq!(log_all(&person).await, 17);
    end(&person).await;
    person.reads("session", "18 sets").await;
    person.close().await;
}

#[tokio::test]
async fn nothing_is_asked_of_any_other_host() {
    let server = Server::start();
    let browser = Browser::start("origin");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;
    let others = person
        .run(
            "return performance.getEntriesByType('resource').map(e => e.name)
                .filter(name => new URL(name).origin !== location.origin)",
        )
        .await;
    assert_eq!(others, serde_json::json!([]));
    person.close().await;
}

//! Two tabs: one writes, the other follows what it writes and can take over; nothing is lost on the way.

use super::browser::Browser;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, end_rest};

#[tokio::test]
async fn the_second_tab_follows_and_takes_over() {
    let server = Server::start();
    let browser = Browser::start("tabs");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    person.tap("log").await;
    person.reads("saved", "saved").await;
    let first = person.client.window().await.unwrap();

    let second = person.client.new_window(true).await.unwrap().handle;
    person
        .client
        .switch_to_window(second.clone())
        .await
        .unwrap();
    person.client.goto(&server.url()).await.unwrap();
    person.reads("follows", "in use in another tab").await;
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

//! The licences of what the app is made of go with it.

use super::browser::Browser;
use super::looks::picture;
use super::person::Person;
use super::server::Server;

#[tokio::test]
async fn the_licences_of_what_it_is_made_of_are_a_tap_away() {
    let server = Server::start();
    let browser = Browser::start("licences");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.reads("licences", "licences").await;
    person
        .run("document.querySelector('[data-part=\"licences\"]').scrollIntoView({block: 'center'})")
        .await;
    picture(&person, "licences").await;
    let text = person
        .run("return fetch(document.querySelector('[data-part=\"licences\"]').href).then((answer) => answer.text())")
        .await;
    let text = text.as_str().expect("it is text");
    for part in [
        "\nleptos 0.8.",
        "\nserde 1.",
        "\nRust standard library (",
        "Permission is hereby granted",
    ] {
        assert!(text.contains(part), "{part}");
    }
    person.close().await;
}

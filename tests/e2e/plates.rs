//! The plates on the floor and in Kit: the change line follows the plan, a load that cannot be made is told with the
//! nearest ones, collars count, bands have an order.

use super::browser::Browser;
use super::looks::picture;
use super::person::Person;
use super::server::Server;
use super::whole_session::{begin, do_first, end_rest, log};

#[tokio::test]
async fn the_change_line_follows_the_plan_and_a_load_out_of_the_kit_is_told() {
    let server = Server::start();
    let browser = Browser::start("plates");
    let person = Person::arrive(&browser, &server).await;
    begin(&person, "Lower A").await;
    do_first(&person, 2).await;
    person.reads("exercise", "Front squat").await;
    person.reads("change", "1.25 a side").await;
    // The change is there during the rest already.
    for step in [
        "off 1.25, on 5 + 2.5 each side",
        "+5 + 1.25 each side",
        "off 1.25 + 5 + 2.5, on 15 each side",
    ] {
        log(&person).await;
        person.see("rest").await;
        person.reads("change", step).await;
        end_rest(&person).await;
        person.reads("change", step).await;
    }
    person.reads("main", "60").await;

    person.tap("load").await;
    person.type_into("load-typed", "61").await;
    person
        .reads("load-refused", "61 kg can't be loaded: 60 or 62.5 kg")
        .await;
    picture(&person, "load-refused").await;
    // A load that is offered is taken by one tap, and the panel goes.
    person.tap("load-above").await;
    person.gone("load-panel").await;
    person.reads("main", "62.5").await;
    person.tap("load").await;
    person.type_into("load-typed", "61").await;
    person.tap("load-anyway").await;
    person.gone("load-panel").await;
    person.reads("main", "61").await;
    // With borrowed plates nobody knows what lies where.
    assert!(!person.has("change").await);
    person.close().await;
}

#[tokio::test]
async fn kit_weighs_collars_with_their_bar_and_keeps_the_order_of_bands() {
    let server = Server::start();
    let browser = Browser::start("gear");
    let person = Person::arrive(&browser, &server).await;
    person.tap("go-kit").await;
    person.tap("bar-new").await;
    for (part, text) in [
        ("bar-name", "short bar"),
        ("bar-mass", "15"),
        ("bar-collars", "0.6"),
    ] {
        person.type_into(part, text).await;
    }
    person.tap("bar-add").await;
    person
        .reads("bars", "short bar · 15 kg + collars 0.6 kg")
        .await;
    // A pair more of plates that are there is one more, not one.
    person.tap("plate-new").await;
    person.type_into("plate-mass", "20").await;
    person.type_into("plate-pairs", "1").await;
    person.tap("plate-add").await;
    person.reads("plates", "20 kg · 3 pairs").await;
    person
        .tap_css("button[aria-label=\"move down light band\"]")
        .await;
    let order =
        "return [...document.querySelectorAll('[data-part=\"bands\"] .kit-row > span:first-child')]
                 .map((row) => row.innerText).join() === 'middle band,light band,strong band'";
    person.until(order, "the light band is second").await;
    // What is taken away comes back where it was.
    person
        .tap_css("button[aria-label=\"remove light band\"]")
        .await;
    person.reads("thing-gone", "Removed: light band.").await;
    let without = order.replace("middle band,light band,", "middle band,");
    person.until(&without, "the light band is away").await;
    person.tap("thing-back").await;
    person.gone("thing-gone").await;
    person.until(order, "the light band is back").await;
    picture(&person, "kit-bands").await;
    person.reload().await;
    person.until(order, "the order is kept").await;
    person.close().await;
}

//! What of an element follows, and what ends with it: `src/ui/parts/element.rs`.

use crate::help::{turn as one_round, until};
use crate::stage::{Stage, hand_on, shows};
use leptos::prelude::*;
use stanchion::ui::{Live, el};
use std::sync::Arc;
use std::sync::atomic::{AtomicUsize, Ordering};
use wasm_bindgen::JsCast;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{HtmlInputElement, HtmlSelectElement};

#[wasm_bindgen_test]
async fn attributes_and_texts_follow_what_they_read() {
    let n = Live::new(1);
    let stage = Stage::of(move || {
        el("p")
            .follow(
                "aria-pressed",
                move || if n.get() == 1 { "false" } else { "true" },
            )
            .follow("hidden", move || n.get() == 2)
            .says(move || format!("{} left", n.get()))
            .text(n.seen(|n| format!(" of {n}")))
            .text(" · fixed")
            .view()
    });
    let before = stage.find("p");
    shows(&stage, "<p aria-pressed=\"false\">1 left of 1 · fixed</p>").await;
    n.set(2);
    shows(
        &stage,
        "<p aria-pressed=\"true\" hidden=\"\">2 left of 2 · fixed</p>",
    )
    .await;
    n.set(3);
    shows(&stage, "<p aria-pressed=\"true\">3 left of 3 · fixed</p>").await;
    assert!(stage.find("p") == before, "the element stays");
}

#[wasm_bindgen_test]
async fn a_field_follows_its_value_and_keeps_what_was_typed_when_it_is_drawn_anew() {
    let n = Live::new(1);
    let value = Live::new("60".to_owned());
    let stage = Stage::following(n, move |n| {
        el("input")
            .class(format!("turn-{n}"))
            .value(move || value.get())
            .view()
    });
    let field: HtmlInputElement = stage.find("input").unchecked_into();
    until("it has its value", || field.value() == "60").await;
    value.set("62.5".to_owned());
    until("it follows", || field.value() == "62.5").await;
    field.set_value("65");
    n.set(2);
    until("it is drawn anew", || field.class_name() == "turn-2").await;
    assert_eq!(field.value(), "65");
    value.set("70".to_owned());
    until("it still follows", || field.value() == "70").await;
}

#[wasm_bindgen_test]
async fn what_is_chosen_in_a_list_is_set_once_its_choices_are_there_and_a_box_is_ticked() {
    let stage = Stage::of(|| {
        let choices = ["a", "b", "c"].map(|name| el("option").set("value", name).view());
        let list = el("select").value(|| "b".to_owned());
        el("p")
            .child(list.child(choices.into_iter().collect::<Vec<_>>()))
            .child(
                el("input")
                    .set("type", "checkbox")
                    .set("id", "on")
                    .checked(true),
            )
            .child(
                el("input")
                    .set("type", "checkbox")
                    .set("id", "off")
                    .checked(false),
            )
            .view()
    });
    let list: HtmlSelectElement = stage.find("select").unchecked_into();
    until("it is chosen", || list.value() == "b").await;
    let ticked = |css| {
        let field: HtmlInputElement = stage.find(css).unchecked_into();
        field.checked()
    };
    until("it is ticked", || ticked("#on")).await;
    assert!(!ticked("#off"));
}

#[wasm_bindgen_test]
async fn a_listener_is_the_newest_and_ends_with_the_element() {
    // Each time it is laid it hears for another digit: 1, 10, 100.
    let all = Arc::new(AtomicUsize::new(0));
    let told = Arc::clone(&all);
    let heard = || all.load(Ordering::Relaxed);
    let turn = Live::new(0);
    let mut stage = Stage::following(turn, move |n| {
        let told = Arc::clone(&told);
        let tag = if n < 2 { "button" } else { "p" };
        el(tag)
            .set("name", n.to_string())
            .on("click", move |_| {
                told.fetch_add(10_usize.pow(n.into()), Ordering::Relaxed);
            })
            .view()
    });
    let first = stage.find("button");
    hand_on(&first).click();
    assert_eq!(heard(), 1);
    turn.set(1);
    until("it is drawn anew", || {
        first.get_attribute("name").as_deref() == Some("1")
    })
    .await;
    hand_on(&first).click();
    assert_eq!(heard(), 11, "the listener of before is gone");
    turn.set(2);
    until("another stands in its place", || !first.is_connected()).await;
    hand_on(&first).click();
    assert_eq!(heard(), 11, "one that is gone hears nothing");
    let second = stage.find("p");
    hand_on(&second).click();
    assert_eq!(heard(), 111);
    stage.clear();
    hand_on(&second).click();
    assert_eq!(heard(), 111, "nor does one whose view has ended");
}

#[wasm_bindgen_test]
fn a_tap_is_told() {
    let tapped = Live::new(0);
    let stage = Stage::of(move || {
        let tapped = Callback::new(move |()| tapped.update(|taps| *taps += 1));
        el("button")
            .on_tap(tapped)
            .child(el("b").child("here"))
            .view()
    });
    hand_on(&stage.find("b")).click();
    assert_eq!(tapped.get_untracked(), 1);
}

#[wasm_bindgen_test]
async fn what_follows_ends_with_the_element() {
    let asked = [0; 4].map(|_| Arc::new(AtomicUsize::new(0)));
    let counts = asked.clone();
    let source = Live::new(0);
    let turn = Live::new(1);
    let mut stage = Stage::following(turn, move |n| {
        let count = |at: usize| {
            let count = Arc::clone(&counts[at]);
            move || {
                count.fetch_add(1, Ordering::Relaxed);
                source.get().to_string()
            }
        };
        match n {
            1 => el("p")
                .follow("title", count(0))
                .says(count(1))
                .child(el("input").value(count(2)))
                .view(),
            _ => el("b").follow("title", count(3)).view(),
        }
    });
    let of = |at: usize| asked[at].load(Ordering::Relaxed);
    assert_eq!([of(0), of(1), of(2), of(3)], [1, 1, 1, 0]);
    source.set(1);
    until("all follow", || [of(0), of(1), of(2)] == [2; 3]).await;
    turn.set(2);
    until("another stands in its place", || of(3) == 1).await;
    source.set(2);
    until("the new one follows", || of(3) == 2).await;
    assert_eq!(
        [of(0), of(1), of(2)],
        [2; 3],
        "those of before are not asked"
    );
    stage.clear();
    source.set(3);
    // What would be told is told within a few rounds: the one before was.
    for _ in 0..10 {
        one_round().await;
    }
    assert_eq!(of(3), 2);
}

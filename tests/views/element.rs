//! An element of the page as it is drawn, and redrawn: `src/ui/parts/element.rs`.

use crate::help::until;
use crate::stage::{Stage, hand_on, has_focus, scrolled, shows};
use leptos::prelude::*;
use stanchion::ui::{Live, el, svg};
use wasm_bindgen::JsCast;
use wasm_bindgen_test::wasm_bindgen_test;
use web_sys::{Element, HtmlInputElement};

#[wasm_bindgen_test]
fn it_has_what_it_was_told() {
    let stage = Stage::of(|| {
        el("p")
            .class("quiet")
            .part("sum")
            .set("lang", "de".to_owned())
            .set("inert", true)
            .set("hidden", false)
            .set("title", None::<String>)
            .child("3 ")
            .child(el("b").text("sets"))
            .child(None::<AnyView>)
            .says(|| " of 4".to_owned())
            .view()
    });
    assert_eq!(
        stage.drawn(),
        "<p class=\"quiet\" data-part=\"sum\" lang=\"de\" inert=\"\">3 <b>sets</b> of 4</p>"
    );
}

#[wasm_bindgen_test]
fn a_property_of_the_style_is_set_in_the_page_and_svg_is_drawn() {
    let stage = Stage::of(|| {
        el("i")
            .style("display", "block".to_owned())
            .style("width", "12px".to_owned())
            .child(svg("svg").child(svg("path").set("d", "M0 0h9")))
            .view()
    });
    assert_eq!(hand_on(&stage.find("i")).offset_width(), 12);
    for name in ["svg", "path"] {
        let space = stage.find(name).namespace_uri();
        assert_eq!(space.as_deref(), Some("http://www.w3.org/2000/svg"));
    }
}

/// A field of that class with these words before it.
fn field(class: String, words: &'static str) -> AnyView {
    el("div")
        .class(class)
        .child(el("span").child(words))
        .child(el("input").set("name", words))
        .view()
}

#[wasm_bindgen_test]
async fn drawn_anew_with_the_same_names_it_is_the_same_element() {
    let turn = Live::new(1);
    let stage = Stage::following(turn, |n| {
        field(format!("turn-{n}"), if n == 1 { "reps" } else { "load" })
    });
    let before = stage.find("div");
    let typed = stage.find("input");
    hand_on(&typed).focus().unwrap();
    typed.unchecked_ref::<HtmlInputElement>().set_value("82.5");

    turn.set(2);
    shows(
        &stage,
        "<div class=\"turn-2\"><span>load</span><input name=\"load\"></div>",
    )
    .await;
    assert!(stage.find("div") == before && stage.find("input") == typed);
    assert!(has_focus(&typed), "the keyboard stays where it was");
    assert_eq!(typed.unchecked_ref::<HtmlInputElement>().value(), "82.5");
}

#[wasm_bindgen_test]
async fn drawn_anew_it_stays_where_it_was_scrolled_to() {
    let turn = Live::new(1);
    let stage = Stage::following(turn, |n| {
        el("div")
            .set("id", "scrolled")
            .style("height", "50px".to_owned())
            .style("overflow", "auto".to_owned())
            .child(
                el("p")
                    .style("height", format!("{}00px", n + 3))
                    .child(n.to_string()),
            )
            .view()
    });
    stage.find("#scrolled").set_scroll_top(120);
    turn.set(2);
    until("the second is shown", || {
        stage.find("p").inner_html() == "2"
    })
    .await;
    assert_eq!(hand_on(&stage.find("p")).offset_height(), 500);
    assert!((scrolled("#scrolled") - 120.0).abs() < 1.0);
}

/// What is laid at `n`, between two that stay.
type Lay = fn(u8) -> AnyView;

/// Lays one, then the other in its place; whether it was the same element.
async fn is_the_same(lay: Lay) -> bool {
    let turn = Live::new(1);
    let stage = Stage::of(move || {
        el("main")
            .child(el("hr"))
            .child((move || lay(turn.get())).into_any())
            .child(el("hr"))
            .view()
    });
    let middle = |stage: &Stage| -> Element {
        stage
            .find("hr")
            .next_element_sibling()
            .expect("it is between both")
    };
    let before = middle(&stage);
    assert_eq!(before.inner_html(), "1");
    hand_on(&before).focus().unwrap();
    let had = has_focus(&before);
    turn.set(2);
    until("the second is shown", || middle(&stage).inner_html() == "2").await;
    let after = middle(&stage);
    let same = before == after;
    // The one that goes leaves nothing, and the other stands between the same two.
    assert_eq!(stage.find("main").child_element_count(), 3);
    assert_eq!(before.is_connected(), same);
    assert_eq!(has_focus(&after), same && had);
    same
}

#[wasm_bindgen_test]
async fn what_has_another_tag_or_other_names_takes_its_place() {
    assert!(is_the_same(|n| el("button").set("name", "a").child(n.to_string()).view()).await);
    let others: [(&str, Lay); 7] = [
        ("another tag", |n| {
            el(if n == 1 { "button" } else { "p" })
                .set("name", "a")
                .child(n.to_string())
                .view()
        }),
        ("another name", |n| {
            el("button")
                .set(if n == 1 { "name" } else { "title" }, "a")
                .child(n.to_string())
                .view()
        }),
        ("a name more", |n| {
            let one = el("button").set("name", "a");
            let all = if n == 1 { one } else { one.set("title", "b") };
            all.child(n.to_string()).view()
        }),
        ("a name less", |n| {
            let one = el("button").set("name", "a");
            let all = if n == 2 { one } else { one.set("title", "b") };
            all.child(n.to_string()).view()
        }),
        ("another order", |n| {
            let names = if n == 1 {
                ["name", "title"]
            } else {
                ["title", "name"]
            };
            let one = el("button").set(names[0], "a").set(names[1], "a");
            one.child(n.to_string()).view()
        }),
        ("one that follows where one stayed", |n| {
            let one = el("button");
            let one = match n {
                1 => one.set("name", "a"),
                _ => one.follow("name", || "a"),
            };
            one.child(n.to_string()).view()
        }),
        ("a listener where an attribute was", |n| {
            let one = el("button");
            let one = match n {
                1 => one.set("click", "a"),
                _ => one.on("click", |_| {}),
            };
            one.child(n.to_string()).view()
        }),
    ];
    for (what, lay) in others {
        assert!(!is_the_same(lay).await, "{what}");
    }
}

#[wasm_bindgen_test]
async fn drawn_anew_it_has_more_or_fewer_inside() {
    let turn = Live::new(1);
    let stage = Stage::following(turn, |n| {
        let all = (0..n).map(|at| el("b").child(at.to_string()).view());
        el("p").child(all.collect::<Vec<_>>()).view()
    });
    let first = stage.find("b");
    turn.set(3);
    shows(&stage, "<p><b>0</b><b>1</b><b>2</b></p>").await;
    turn.set(1);
    shows(&stage, "<p><b>0</b></p>").await;
    assert!(stage.find("b") == first);
}

#[wasm_bindgen_test]
async fn nothing_keeps_its_place() {
    let turn = Live::new(1);
    let stage = Stage::following(turn, |n| {
        let there = (n == 2).then(|| el("b").child("now").view());
        el("p").child(there).child(el("input")).view()
    });
    let behind = stage.find("input");
    hand_on(&behind).focus().unwrap();
    turn.set(2);
    shows(&stage, "<p><b>now</b><input></p>").await;
    assert!(stage.find("input") == behind && has_focus(&behind));
    turn.set(1);
    shows(&stage, "<p><input></p>").await;
    assert!(stage.find("input") == behind && has_focus(&behind));
}

#[wasm_bindgen_test]
async fn an_attribute_that_is_left_out_is_taken_off() {
    let turn = Live::new(1);
    let stage = Stage::following(turn, |n| {
        el("p")
            .set("inert", n == 1)
            .set("title", (n == 1).then_some("a"))
            .set("lang", if n == 1 { "en" } else { "de" })
            .view()
    });
    shows(&stage, "<p inert=\"\" title=\"a\" lang=\"en\"></p>").await;
    turn.set(2);
    shows(&stage, "<p lang=\"de\"></p>").await;
    turn.set(1);
    // In the order in which they were set.
    shows(&stage, "<p lang=\"en\" inert=\"\" title=\"a\"></p>").await;
}

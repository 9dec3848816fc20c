//! What the words of a line mean: they are those of the notation, in every language the same.

use crate::ui::parts::{el, list};
use crate::words::t;
use leptos::prelude::*;

/// Parts of lines, each with its meaning.
fn meanings() -> [(&'static str, &'static str); 17] {
    [
        ("3 × 5–7", t("sets × reps; 30 s and 20 m in place of reps")),
        ("1 × 12+", t("as many as there are, 12 or more")),
        ("@ 2, 2, 1", t("reps in reserve, set by set")),
        ("to failure", t("until no clean rep is left")),
        ("ramp", t("ramp-up sets, at shares of the work load")),
        ("rising, falling", t("load from set to set, up or down")),
        (
            "back-off",
            t("lighter sets after the heaviest, at a share of it"),
        ),
        (
            "drops 2 to 80 %",
            t("without rest goes on twice, with 80 % each time"),
        ),
        (
            "in 4 pause 15 s",
            t("a set in four portions with pauses between"),
        ),
        (
            "tempo 3/1/1/0",
            t("seconds down, pause, up, pause; X is as fast as possible"),
        ),
        (
            "hold → 6 at 4/0/2/0 → 8 partials",
            t("hold, whole reps, then partials, without rest"),
        ),
        ("each side", t("first one side, then the other")),
        ("one side holds", t("one side holds while the other works")),
        (
            "rest 2:30 then 2:00",
            t("rest from set to set, then after the last one"),
        ),
        (
            "between 30 s",
            t("rest from one exercise of a pair to the other"),
        ),
        ("power, strength, hypertrophy, pump", t("what it is for")),
        ("! …, \"…\"", t("a caution; a cue")),
    ]
}

/// The words of a line with their meanings, folded.
pub fn meanings_view() -> AnyView {
    let meanings = meanings().into_iter().map(|(word, meaning)| {
        let said = el("span").class("quiet").child(meaning);
        let word = el("code").set("lang", "en").child(word);
        vec![word.view(), " ".into_any(), said.view()].into_any()
    });
    el("details")
        .class("adder")
        .part("meanings")
        .child(el("summary").child(t("What the words mean")))
        .child(list("examples", None, meanings.collect()))
        .view()
}

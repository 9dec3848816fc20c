//! Tempo and rest of one line of sets where they differ from the block's.

use super::block::{first_tempo, phases, step_rest, step_tempo};
use super::hand::{At, Hand};
use super::sets::{sets_at, with_sets};
use crate::ui::parts::h2;
use crate::units::Seconds;
use crate::words::t;
use leptos::prelude::*;

/// Tempo and rest of these sets where they differ from the block's.
pub fn own(hand: Hand, at: At) -> AnyView {
    let tempo = hand.pick(
        at,
        "line-tempo-has",
        t("tempo of these sets"),
        &[t("tempo of the block"), t("a tempo of their own")],
        |block, at| Some(i64::from(sets_at(block, at)?.tempo.is_some())),
        |block, at, n| {
            let first = block.tempo.unwrap_or_else(|| first_tempo(block.role));
            with_sets(block, at, |sets| {
                sets.tempo = (n == 1).then(|| sets.tempo.unwrap_or(first));
            });
        },
    );
    let digits = hand.only_while(
        at,
        |block, at| sets_at(block, at).is_some_and(|sets| sets.tempo.is_some()),
        |hand, at| {
            hand.spin(
                at,
                "line-tempo",
                phases(),
                |block, at| {
                    let tempo = sets_at(block, at).and_then(|sets| sets.tempo);
                    tempo
                        .map(|tempo| tempo.digits()[at.item].to_string())
                        .unwrap_or_default()
                },
                |block, at, by| {
                    with_sets(block, at, |sets| {
                        sets.tempo = sets.tempo.map(|tempo| step_tempo(tempo, at.item, by));
                    })
                },
            )
        },
    );
    let rest = hand.pick(
        at,
        "line-rest-has",
        t("rest of these sets"),
        &[t("rest of the block"), t("a rest of their own")],
        |block, at| Some(i64::from(sets_at(block, at)?.rest.is_some())),
        |block, at, n| {
            let first = block.rest;
            with_sets(block, at, |sets| {
                sets.rest = (n == 1).then(|| sets.rest.unwrap_or(first));
            });
        },
    );
    let length = hand.only_while(
        at,
        |block, at| sets_at(block, at).is_some_and(|sets| sets.rest.is_some()),
        |hand, at| {
            hand.step(
                at,
                "line-rest",
                t("rest after each"),
                |block, at| {
                    let rest = sets_at(block, at).and_then(|sets| sets.rest);
                    rest.map(Seconds::clock).unwrap_or_default()
                },
                |block, at, by| {
                    with_sets(block, at, |sets| {
                        sets.rest = sets.rest.map(|rest| step_rest(rest, by));
                    })
                },
            )
        },
    );
    vec![h2(t("Tempo and rest")), tempo, digits, rest, length].into_any()
}

//! The keys that work on the floor, and whether those of a headset do.

use super::hands::Hands;
use super::keys::listed;
use crate::ui::live::Live;
use crate::ui::parts::{button, dynamic, el, panel, quiet};
use crate::words::t;
use leptos::prelude::*;

/// The list of the keys.
pub fn keys_panel(hands: Hands, close: Callback<()>) -> AnyView {
    let wanted = Live::new(Hands::wants_headset());
    let refused = Live::new(false);
    let turn = move || {
        let now = !wanted.get_untracked();
        wanted.set(now);
        refused.set(!hands.want_headset(now));
    };
    let rows: Vec<AnyView> = listed()
        .into_iter()
        .map(|(keys, does)| {
            vec![el("dt").child(keys).view(), el("dd").child(does).view()].into_any()
        })
        .collect();
    let headset = dynamic(move || {
        let label = if wanted.get() {
            t("Headset buttons: on")
        } else {
            t("Headset buttons: off")
        };
        button("wide", "headset", label, turn)
    });
    let said = dynamic(move || {
        quiet(if refused.get() {
            t("This browser hands out no headset buttons.")
        } else {
            t(
                "Next logs or begins, play and pause do what B does, previous takes back. While this is on, other players pause.",
            )
        })
    });
    panel(
        "keys-panel",
        t("Keys"),
        close,
        vec![
            quiet(t("A keyboard or a page-turner does all that the pad does.")),
            el("dl").class("keys").part("keys-list").child(rows).view(),
            headset,
            said,
        ],
    )
}

//! The pad when nothing is left to do: it ends the session, by two taps.

use super::hands::Hands;
use super::pad::{face, frame, main_button, row};
use super::screen::Open;
use crate::ui::parts::{button, dynamic};
use crate::words::t;
use leptos::prelude::*;

/// The pad when nothing is left to do.
pub fn done_pad(hands: Hands) -> AnyView {
    let inside = dynamic(move || {
        let (figure, word) = if hands.ending.get() {
            (t("Close it?"), t("tap again: yes, the session is over"))
        } else {
            (t("End"), t("tap to close the session"))
        };
        face(figure.to_owned(), true, word.to_owned())
    });
    frame(
        t("End"),
        vec![main_button(hands, "end", None, inside)],
        row(vec![
            button("", "undo-set", t("undo set"), move || hands.undo_set()),
            button("", "amend", t("change set"), move || {
                hands.open.set(Open::Amend)
            }),
            button("", "more", t("more"), move || hands.open.set(Open::More)),
        ]),
    )
}

//! The pad when nothing is left to do: it ends the session.

use super::pad::{LastTap, face, frame};
use super::screen::Open;
use crate::session::What;
use crate::ui::parts::{button, tap};
use crate::ui::stanchion::Stanchion;
use leptos::prelude::*;

/// The pad when nothing is left to do.
pub fn done_pad(app: Stanchion, open: RwSignal<Open>, tapped: LastTap) -> AnyView {
    let end = Callback::new(move |()| {
        if tapped.counts() {
            app.act(What::Ended);
        }
    });
    let inside = face(
        "End".to_owned(),
        true,
        "tap to close the session".to_owned(),
    );
    frame(
        "End",
        vec![tap("pad-main", "end", None, inside, end)],
        vec![
            button("", "undo-set", "undo set", move || app.undo_set()),
            button("", "amend", "change set", move || open.set(Open::Amend)),
            button("", "more", "more", move || open.set(Open::More)),
        ],
    )
}

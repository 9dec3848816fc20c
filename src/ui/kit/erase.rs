//! Removing all sessions, and erasing everything: in steps, with what goes, an export first.

use crate::ui::away::{Farewell, erase_everything, farewell, remove_all};
use crate::ui::parts::{button, counted, quiet, section, sure_button, text, when};
use crate::ui::stanchion::Stanchion;
use leptos::prelude::*;

/// The way to remove and to erase.
pub fn erase(app: Stanchion) -> AnyView {
    let open = RwSignal::new(false);
    let sessions = app.of(|model| model.sessions);
    let some = Signal::derive(move || sessions.get() > 0);
    let goes = text(move || {
        format!(
            "{} and what the next loads learn from them. Sheets, exercises, kit and settings stay.",
            counted(sessions.get(), "session")
        )
    });
    let all = Callback::new(move |()| remove_all(app));
    section(
        None,
        "Remove",
        vec![
            when(some, move || {
                vec![
                    quiet(goes),
                    sure_button(
                        "sessions-remove",
                        "Remove all sessions",
                        "Yes, remove all sessions",
                        all,
                    ),
                ]
                .into_any()
            }),
            button("wide", "erase", "Erase everything", move || open.set(true)),
            when(open, move || steps(app, open)),
        ],
    )
}

fn steps(app: Stanchion, open: RwSignal<bool>) -> AnyView {
    let (sessions, sheets, others) = app.model.with_untracked(|model| {
        let others = model.people.here().count().saturating_sub(1);
        (model.sessions, model.sheets.len(), others)
    });
    let others = match others {
        0 => String::new(),
        1 => ", all of the other lifter on this phone too".to_owned(),
        others => format!(", all of the {others} other lifters on this phone too"),
    };
    farewell(
        app,
        "erase-panel",
        Farewell {
            title: "Erase everything",
            goes: format!(
                "What goes: {}, {}, exercises of your own, programmes, kit, body mass, settings{others}, and the app \
                 as this browser stored it. It cannot be undone. Without a network Stanchion cannot be opened again \
                 afterwards. {}",
                counted(sessions, "session"),
                counted(sheets, "sheet"),
                if others.is_empty() {
                    ""
                } else {
                    "The export here is yours alone: change over to each of the others and export there first."
                },
            ),
            of: None,
            sure: "Erase everything now",
            act: Callback::new(move |()| erase_everything(app)),
            close: Callback::new(move |()| open.set(false)),
        },
    )
}

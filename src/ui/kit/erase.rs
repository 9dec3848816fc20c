//! Removing all sessions, and erasing everything: in steps, with what goes, an export first.

use crate::say;
use crate::ui::away::{Farewell, erase_everything, farewell, remove_all};
use crate::ui::live::Live;
use crate::ui::parts::{button, quiet, section, sure_button, text, when};
use crate::ui::seen::Seen;
use crate::ui::stanchion::Stanchion;
use crate::words::{many, t};
use leptos::prelude::*;

/// The way to remove and to erase.
pub fn erase(app: Stanchion) -> AnyView {
    let open = Live::new(false);
    let sessions = app.of(|model| model.sessions);
    let some = Seen::new(move || sessions.get() > 0);
    let goes = text(move || {
        many(
            sessions.get(),
            "{n} session and what the next loads learn from them. Sheets, exercises, kit and settings stay.",
            "{n} sessions and what the next loads learn from them. Sheets, exercises, kit and settings stay.",
        )
    });
    let all = Callback::new(move |()| remove_all(app));
    section(
        None,
        t("Remove"),
        vec![
            when(some, move || {
                vec![
                    quiet(goes),
                    sure_button(
                        "sessions-remove",
                        t("Remove all sessions"),
                        t("Yes, remove all sessions"),
                        all,
                    ),
                ]
                .into_any()
            }),
            button("wide", "erase", t("Erase everything"), move || {
                open.set(true)
            }),
            when(open, move || steps(app, open)),
        ],
    )
}

fn steps(app: Stanchion, open: Live<bool>) -> AnyView {
    let (sessions, under_way, sheets, others) = app.model.with_untracked(|model| {
        let others = model.people.here().count().saturating_sub(1);
        let under_way = model.any_in_session();
        (model.sessions, under_way, model.sheets.len(), others)
    });
    let mut sessions = many(sessions, "{n} session", "{n} sessions");
    if under_way {
        sessions += t(", the session under way");
    }
    let others = match others {
        0 => String::new(),
        1 => t(", all of the other lifter on this phone too").to_owned(),
        others => say!(
            ", all of the {others} other lifters on this phone too",
            others
        ),
    };
    farewell(
        app,
        "erase-panel",
        Farewell {
            title: t("Erase everything"),
            goes: say!(
                "What goes: {sessions}, {sheets}, exercises of your own, programmes, kit, body mass, settings{others}, and \
                 the app as this browser stored it. It cannot be undone. Without a network Stanchion cannot be opened again \
                 afterwards. {alone}",
                sessions,
                sheets = many(sheets, "{n} sheet", "{n} sheets"),
                others,
                alone = if others.is_empty() {
                    ""
                } else {
                    t(
                        "The export here is yours alone: change over to each of the others and export there first.",
                    )
                }
            ),
            of: None,
            sure: t("Erase everything now"),
            act: Callback::new(move |()| erase_everything(app)),
            close: Callback::new(move |()| open.set(false)),
        },
    )
}

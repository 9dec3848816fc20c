//! Removing all sessions, and erasing everything: in steps, with what goes, an export first.

use crate::ui::away::{Form, erase_everything, export, remove_all};
use crate::ui::parts::{
    button, counted, dynamic, line, panel, quiet, section, sure_button, text, when,
};
use crate::ui::stanchion::Stanchion;
use leptos::prelude::*;

/// How far the panel has come.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Step {
    /// It is not open.
    Closed,
    /// What goes is told, an export is offered.
    Told,
    /// The export was made.
    Exported,
    /// It was declined.
    Declined,
}

/// The way to remove and to erase.
pub fn erase(app: Stanchion) -> AnyView {
    let step = RwSignal::new(Step::Closed);
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
            button("wide", "erase", "Erase everything", move || {
                step.set(Step::Told);
            }),
            dynamic(move || match step.get() {
                Step::Closed => ().into_any(),
                told => steps(app, told, step),
            }),
        ],
    )
}

fn steps(app: Stanchion, now: Step, step: RwSignal<Step>) -> AnyView {
    let close = Callback::new(move |()| step.set(Step::Closed));
    let (sessions, sheets) = app
        .model
        .with_untracked(|model| (model.sessions, model.sheets.len()));
    let mut inside = vec![
        line(
            "",
            "erase-goes",
            format!(
                "What goes: {}, {}, exercises of your own, programmes, kit, body mass, settings, and the app as this \
                 browser stored it.",
                counted(sessions, "session"),
                counted(sheets, "sheet"),
            ),
        ),
        quiet(
            "It cannot be undone. Without a network Stanchion cannot be opened again afterwards.",
        ),
    ];
    match now {
        Step::Closed | Step::Told => inside.extend([
            button(
                "wide strong",
                "erase-export",
                "Export everything first",
                move || {
                    export(app, Form::Everything, move || step.set(Step::Exported));
                },
            ),
            button("wide", "erase-decline", "I need no export", move || {
                step.set(Step::Declined);
            }),
        ]),
        Step::Exported | Step::Declined => {
            let said = if now == Step::Exported {
                "Exported. Look whether the file is where you keep it."
            } else {
                "Without an export."
            };
            inside.extend([
                quiet(said),
                button(
                    "wide strong",
                    "erase-sure",
                    "Erase everything now",
                    move || {
                        erase_everything(app);
                    },
                ),
            ]);
        }
    }
    inside.push(button(
        "wide",
        "erase-leave",
        "Leave all as it is",
        move || close.run(()),
    ));
    panel("erase-panel", "Erase everything", close, inside)
}

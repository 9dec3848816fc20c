//! What cannot be undone, or not for long: in steps, with what goes, an export first.

use super::export::{Form, export_of};
use crate::ui::live::Live;
use crate::ui::parts::{button, dynamic, line, panel, quiet};
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// How far the panel has come.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Step {
    /// What goes is told, an export is offered.
    Told,
    /// The export was made.
    Exported,
    /// It was declined.
    Declined,
}

/// What goes, and how.
#[derive(Clone)]
pub struct Farewell {
    /// Its title.
    pub title: &'static str,
    /// What goes, in words.
    pub goes: String,
    /// The database that is exported first; none for the one in use.
    pub of: Option<String>,
    /// The last button.
    pub sure: &'static str,
    /// What it does.
    pub act: Callback<()>,
    /// Puts the panel away.
    pub close: Callback<()>,
}

/// The panel with the steps.
pub fn farewell(app: Stanchion, part: &'static str, farewell: Farewell) -> AnyView {
    let step = Live::new(Step::Told);
    let Farewell {
        title,
        goes,
        of,
        sure,
        act,
        close,
    } = farewell;
    let steps = dynamic(move || match step.get() {
        Step::Told => told(app, of.clone(), step),
        Step::Exported => last(
            t("Exported. Look whether the file is where you keep it."),
            sure,
            act,
        ),
        Step::Declined => last(t("Without an export."), sure, act),
    });
    let leave = move || close.run(());
    let inside = vec![
        line("", "erase-goes", goes),
        steps,
        button("wide", "erase-leave", t("Leave all as it is"), leave),
    ];
    panel(part, title, close, inside)
}

fn told(app: Stanchion, of: Option<String>, step: Live<Step>) -> AnyView {
    let done = move || step.set(Step::Exported);
    let export = move || export_of(app, of.clone(), Form::Everything, done);
    let decline = move || step.set(Step::Declined);
    vec![
        button(
            "wide strong",
            "erase-export",
            t("Export everything first"),
            export,
        ),
        button("wide", "erase-decline", t("I need no export"), decline),
    ]
    .into_any()
}

fn last(said: &'static str, sure: &'static str, act: Callback<()>) -> AnyView {
    let act = move || act.run(());
    vec![quiet(said), button("wide strong", "erase-sure", sure, act)].into_any()
}

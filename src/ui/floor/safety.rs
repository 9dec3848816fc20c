//! What is asked before the first set of an exercise that goes to failure under a load.

use super::hands::Hands;
use super::screen::Open;
use crate::device::prefs;
use crate::session::Board;
use crate::ui::live::Live;
use crate::ui::parts::{button, panel, words};
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// Preference: the exercises for which it was answered, by their names on the board. Lost, it is asked again.
const ANSWERED: &str = "to-failure";

fn answered(app: Stanchion) -> Vec<String> {
    let key = app.model.with_untracked(|model| model.pref(ANSWERED));
    prefs::get(&key).unwrap_or_default()
}

/// Whether to ask before the set of that board.
pub fn asks(app: Stanchion, board: &Board) -> bool {
    board.falls && !answered(app).contains(&board.exercise)
}

/// The question. Put away without an answer, it comes again with the next such set.
pub fn safety_panel(hands: Hands, close: Callback<()>) -> AnyView {
    let app = hands.app;
    let answer = move || {
        let exercise = hands
            .board
            .with_untracked(|board| board.as_ref().map(|board| board.exercise.clone()));
        let key = app.model.with_untracked(|model| model.pref(ANSWERED));
        let mut all = answered(app);
        all.extend(exercise);
        // What a preference cannot hold is asked again next time.
        let _ = prefs::set(&key, &all);
        close.run(());
    };
    let inside = vec![
        words(
            "caution",
            t(
                "This set ends when the next rep could not be done well, with a load that can come down on you. Set safety \
                 bars, or have someone spot you who knows how. Without either stop two reps before.",
            ),
        ),
        button("wide", "safety-bars", t("Safety bars are set"), answer),
        button("wide", "safety-spotter", t("Someone spots me"), answer),
        button(
            "wide",
            "safety-down",
            t("I can put it down at any time"),
            answer,
        ),
        words(
            "quiet",
            t(
                "Asked once for each exercise. Qualified coaches and the rules of your place come first.",
            ),
        ),
    ];
    panel("safety-panel", t("To failure"), close, inside)
}

/// Opens the question where it is due; whether it did.
pub fn ask(app: Stanchion, board: Option<&Board>, open: Live<Open>) {
    let free = open.get_untracked() == Open::Nothing;
    if free && board.is_some_and(|board| asks(app, board)) {
        open.set(Open::Safety);
    }
}

//! What is asked before the first set of an exercise that goes to failure under a load.

use super::hands::Hands;
use super::screen::Open;
use crate::device::prefs;
use crate::session::Board;
use crate::sheet::ExerciseId;
use crate::strength::Above;
use crate::ui::parts::{button, panel, words};
use crate::ui::stanchion::Stanchion;
use crate::words::t;
use leptos::prelude::*;

/// Preference: the ids of the exercises for which it was answered. Lost, it is asked again.
const ANSWERED: &str = "to-failure";

/// The exercises for which it was answered, read where it is first asked for: most sessions never ask.
#[derive(Clone, Copy)]
pub struct Answered(StoredValue<Option<Vec<ExerciseId>>>);

impl Answered {
    /// Nothing is read yet.
    pub fn unread() -> Answered {
        Answered(StoredValue::new(None))
    }

    /// Goes on with the exercises that were answered.
    fn with<T>(self, app: Stanchion, go_on: impl FnOnce(&mut Vec<ExerciseId>) -> T) -> Option<T> {
        self.0.try_update_value(|known| {
            let read = || prefs::get(&key(app)).unwrap_or_default();
            go_on(known.get_or_insert_with(read))
        })
    }
}

fn key(app: Stanchion) -> String {
    app.model.with_untracked(|model| model.pref(ANSWERED))
}

/// Whether to ask before the set of that board.
fn asks(hands: Hands, board: &Board) -> bool {
    let known = |all: &mut Vec<ExerciseId>| all.contains(&board.exercise_id);
    board.falls.is_some() && hands.answered.with(hands.app, known) == Some(false)
}

/// The question. Put away without an answer, it comes again with the next such set.
pub fn safety_panel(hands: Hands, close: Callback<()>) -> AnyView {
    let answer = move || {
        let exercise = hands
            .board
            .with_untracked(|board| board.as_ref().map(|board| board.exercise_id.clone()));
        hands.answered.with(hands.app, |all| {
            all.extend(exercise);
            // What a preference cannot hold is asked again next time.
            let _ = prefs::set(&key(hands.app), all);
        });
        close.run(());
    };
    let falls = hands
        .board
        .with_untracked(|board| board.as_ref().and_then(|board| board.falls));
    // Safety bars catch no dumbbells.
    let bars = falls != Some(Above::Weights);
    let asked = if bars {
        t(
            "This set ends when the next rep could not be done well, with a load that can come down on you. Set safety \
             bars, or have someone spot you who knows how. Without either stop two reps before.",
        )
    } else {
        t(
            "This set ends when the next rep could not be done well, with weights above you. Have someone spot you who \
             knows how, or put them down in time: never drop them from above the chest or head. Alone stop two reps before.",
        )
    };
    let set = bars.then(|| button("wide", "safety-bars", t("Safety bars are set"), answer));
    let mut inside = vec![words("caution", asked)];
    inside.extend(set);
    inside.extend([
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
    ]);
    panel("safety-panel", t("To failure"), close, inside)
}

/// Opens the question where it is due, once for each set; says whether it did.
pub fn ask(hands: Hands, board: Option<&Board>) -> bool {
    let free = hands.open.get_untracked() == Open::Nothing;
    let due = board.filter(|board| {
        free && hands.safety_asked.get_value() != Some(board.key) && asks(hands, board)
    });
    if let Some(board) = due {
        hands.safety_asked.set_value(Some(board.key));
        hands.open.set(Open::Safety);
    }
    due.is_some()
}

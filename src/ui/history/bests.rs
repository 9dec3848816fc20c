//! The bests of an exercise in lines, each with its day.

use crate::ledger::{BestSet, Bests, When};
use crate::say;
use crate::session::{Amount, Done};
use crate::sheet::{ExerciseId, LoadBasis, moved_words};
use crate::strength::maximum_said;
use crate::ui::floor::logged_line;
use crate::ui::model::Model;
use crate::ui::parts::{list, section};
use crate::units::day;
use crate::words::t;
use leptos::prelude::*;

/// The bests of an exercise as lines; none while it was never done.
pub fn best_lines(model: &Model, id: &ExerciseId) -> Vec<String> {
    let bests = model.summaries.get(id).map(|summary| &summary.bests);
    bests.map_or_else(Vec::new, |bests| lines(model, bests))
}

fn lines(model: &Model, bests: &Bests) -> Vec<String> {
    // What is moved is named where the exercise is done in several ways.
    let mut others = bests.ways.iter().skip(1);
    let several = others.any(|way| way.moved != bests.ways[0].moved);
    let named = |moved: &str, line: String| match moved_words(moved) {
        words if several && !words.is_empty() => format!("{words}, {line}"),
        _ => line,
    };
    let unit = model.unit();
    let on = |when: &When| day(when.at);
    let set = |what: &str, basis: &LoadBasis, best: &BestSet| {
        let done = Done {
            load: basis.has_load().then_some(best.load),
            amount: Amount::Reps(best.reps),
            reserve: None,
        };
        let said = logged_line(&done, basis, unit);
        format!("{what}: {said}, {}", on(&best.when))
    };
    let mut lines = Vec::new();
    for way in &bests.ways {
        // Rising in reps, falling in load.
        let (Some(hardest), Some(longest)) = (way.sets.first(), way.sets.last()) else {
            continue;
        };
        if way.basis.has_load() {
            let line = set(t("hardest"), &way.basis, hardest);
            lines.push(named(&way.moved, line));
        }
        if longest.reps != hardest.reps || !way.basis.has_load() {
            let line = set(t("most reps"), &way.basis, longest);
            lines.push(named(&way.moved, line));
        }
    }
    let highest = bests.highest.iter();
    let by_own = highest.filter(|highest| highest.curve == model.curve());
    lines.extend(by_own.map(|highest| {
        let on = on(&highest.when);
        let line = say!(
            "last estimated maximum by a session alone that was a best: {load}, {on}; no session since was above it by more than noise",
            load = maximum_said(highest.shown.e1rm, unit),
            on
        );
        named(&highest.moved, line)
    }));
    lines.extend(bests.volume.map(|most| {
        let on = on(&most.when);
        say!(
            "most volume load in a session: {load}, {on}",
            load = most.volume.shown(unit),
            on
        )
    }));
    lines
}

/// The section of them; nothing where there are none.
pub fn bests(lines: Vec<String>) -> AnyView {
    if lines.is_empty() {
        return ().into_any();
    }
    let lines = lines.into_iter().map(IntoAny::into_any).collect();
    section(
        None,
        t("Bests"),
        vec![list("moved", Some("exercise-bests"), lines)],
    )
}

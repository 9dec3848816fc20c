//! The bests of an exercise in lines, each with its day.

use crate::ledger::{BestSet, Bests, Much, Way, When};
use crate::say;
use crate::session::{Amount, Done};
use crate::sheet::{ExerciseId, LoadBasis, moved_part, moved_words};
use crate::ui::floor::logged_line;
use crate::ui::model::Model;
use crate::ui::parts::{list, section};
use crate::units::{Unit, day};
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
    let several = others.any(|way| moved_part(&way.moved) != moved_part(&bests.ways[0].moved));
    let named = |moved: &str, line: String| match moved_words(moved) {
        words if several && !words.is_empty() => format!("{words}, {line}"),
        _ => line,
    };
    let unit = model.unit();
    let on = |when: &When| day(when.at);
    let set = |what: &str, basis: &LoadBasis, best: &BestSet| {
        let said = best_set(basis, best, unit);
        format!("{what}: {said}, {}", on(&best.when))
    };
    let mut lines = Vec::new();
    for way in &bests.ways {
        // Rising in how much was done, falling in load.
        let (Some(hardest), Some(longest)) = (way.sets.first(), way.sets.last()) else {
            continue;
        };
        let moved = moved_part(&way.moved);
        let (heavy, long) = named_by(longest.much);
        if way.basis.has_load() {
            let line = set(heavy, &way.basis, hardest);
            lines.push(named(moved, line));
        }
        if longest.much != hardest.much || !way.basis.has_load() {
            let line = set(long, &way.basis, longest);
            lines.push(named(moved, line));
        }
        lines.extend(at_others(way, unit).map(|line| named(moved, line)));
    }
    let highest = bests.highest.iter();
    let by_own = highest.filter(|highest| highest.curve == model.curve());
    lines.extend(by_own.map(|highest| {
        let e1rm = highest.shown.e1rm.to_unit(unit).round(1);
        let on = on(&highest.when);
        let line = say!(
            "last estimated maximum that was a best: {load}, {on}; no session since was above it by more than noise",
            load = e1rm.shown(unit),
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

/// What the two ends of a way are called: the hardest load, and the most that was done.
fn named_by(much: Much) -> (&'static str, &'static str) {
    match much {
        Much::Reps(_) | Much::Staged(_) => (t("hardest"), t("most reps")),
        Much::Held(_) => (t("hardest"), t("longest")),
        Much::Carried(_) => (t("hardest"), t("farthest")),
    }
}

/// A set with its load, or with its band.
fn best_set(basis: &LoadBasis, best: &BestSet, unit: Unit) -> String {
    match best.much {
        Much::Reps(reps) if basis.has_load() => {
            let done = Done {
                load: Some(best.load),
                amount: Amount::Reps(reps),
                reserve: None,
            };
            logged_line(&done, basis, unit)
        }
        much => much.said_at(basis, best.load, unit),
    }
}

/// Of a hold or a carry what is the most at each load between both ends, in one line.
fn at_others(way: &Way, unit: Unit) -> Option<String> {
    let between = way.sets.get(1..way.sets.len().checked_sub(1)?)?;
    let stretched = |set: &&BestSet| matches!(set.much, Much::Held(_) | Much::Carried(_));
    let said = between.iter().filter(stretched);
    let said: Vec<String> = said.map(|set| best_set(&way.basis, set, unit)).collect();
    (!said.is_empty()).then(|| say!("between them: {sets}", sets = said.join("; ")))
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

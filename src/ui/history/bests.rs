//! The bests of an exercise in lines, each with its day.

use crate::ledger::{BestSet, Bests, Much, Way, When};
use crate::say;
use crate::session::{Amount, Done};
use crate::sheet::{ExerciseId, LoadBasis, moved_part, moved_words};
use crate::strength::maximum_said;
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
    let mut lines = Vec::new();
    for way in &bests.ways {
        let of_way = way_lines(way, unit).into_iter();
        lines.extend(of_way.map(|line| named(moved_part(&way.moved), line)));
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

/// The hardest set of a way and the one in which the most was done, and what stands between them.
fn way_lines(way: &Way, unit: Unit) -> Vec<String> {
    // Rising in how much was done, falling in load.
    let (Some(hardest), Some(longest)) = (way.sets.first(), way.sets.last()) else {
        return Vec::new();
    };
    let set = |what: &str, best: &BestSet| {
        let said = best_set(&way.basis, best, unit);
        format!("{what}: {said}, {}", on(&best.when))
    };
    let (heavy, long) = named_by(longest.much);
    let mut lines = Vec::new();
    if way.basis.has_load() {
        lines.push(set(heavy, hardest));
    }
    if longest.much != hardest.much || !way.basis.has_load() {
        lines.push(set(long, longest));
    }
    lines.extend(at_others(way, unit));
    lines
}

fn on(when: &When) -> String {
    day(when.at)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::{Metres, Reps, Seconds};

    fn said(basis: LoadBasis, sets: &[(&str, Much)]) -> Vec<String> {
        let when = When {
            session: uuid::Uuid::from_u128(1),
            at: "2026-03-02T18:00:00+01:00".parse().unwrap(),
        };
        let sets = sets.iter().map(|(load, much)| BestSet {
            load: load.parse().unwrap(),
            much: *much,
            when,
        });
        let way = Way {
            moved: String::new(),
            basis,
            sets: sets.collect(),
        };
        let lines = way_lines(&way, Unit::Kg).into_iter();
        let ending = format!(", {}", on(&when));
        lines.map(|line| line.replace(&ending, "")).collect()
    }

    #[test]
    fn each_kind_of_set_has_lines_of_its_own() {
        let held = |seconds| Much::Held(Seconds::saturating(seconds));
        let carried = |metres| Much::Carried(Metres::saturating(metres));
        let reps = |n| Much::Reps(Reps::saturating(n));
        assert_eq!(
            said(LoadBasis::Unloaded, &[("0 kg", held(45))]),
            ["longest: 45 s"]
        );
        assert_eq!(
            said(
                LoadBasis::External,
                &[
                    ("28 kg", carried(20)),
                    ("24 kg", carried(30)),
                    ("20 kg", carried(40))
                ]
            ),
            [
                "hardest: 20 m at 28 kg",
                "farthest: 40 m at 20 kg",
                "between them: 30 m at 24 kg"
            ]
        );
        assert_eq!(
            said(
                LoadBasis::BodyMassMinus,
                &[("10 kg", held(15)), ("20 kg", held(40))]
            ),
            [
                "hardest: 15 s with 10 kg of assistance",
                "longest: 40 s with 20 kg of assistance"
            ]
        );
        let band = LoadBasis::Band(crate::sheet::Line::new("green").unwrap());
        assert_eq!(
            said(band, &[("0 kg", reps(12))]),
            ["most reps: 12 reps, band: green"]
        );
        assert_eq!(
            said(LoadBasis::External, &[("80 kg", reps(5))]),
            ["hardest: 5 reps at 80 kg"]
        );
    }
}

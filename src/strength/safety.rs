//! When a load asks for a word of caution.

use super::above::{Above, above, is_held};
use super::history::Performance;
use crate::sheet::{Block, Equipment, LoadBasis, Pattern, SetKind};
use crate::units::Load;
use crate::words::t;
use rust_decimal::Decimal;

/// A load above this multiple of the best so far is a jump.
///
/// The usual step is 2–10 % (American College of Sports Medicine position stand, Ratamess et al. 2009, Med Sci Sports
/// Exerc 41(3):687–708).
pub(super) const JUMP: Decimal = Decimal::from_parts(110, 0, 0, false, 2);

/// True when `load` is more than 10 % above the heaviest load done so far.
///
/// Without an earlier load, or from no load at all, there is no share to speak of and the answer is no. Not meant for
/// loads that assist.
#[must_use]
pub fn jump_caution(previous_best: Option<Load>, load: Load) -> bool {
    previous_best.is_some_and(|best| !best.is_zero() && load.kg() > best.kg() * JUMP)
}

/// What is said of a jump of that block.
#[must_use]
pub fn jump_words(block: &Block) -> &'static str {
    if above(block) == Some(Above::Bar) {
        t(
            "More than 10 % above what you have done here lately. Warm up to it, use safety bars or a spotter, and stop when technique goes.",
        )
    } else {
        t(
            "More than 10 % above what you have done here lately. Warm up to it, keep a rep in reserve, and stop when technique goes.",
        )
    }
}

/// The same where no rep was done lately under the same prescription, and the load proposed is the measure.
#[must_use]
pub fn first_jump_words(block: &Block) -> &'static str {
    if above(block) == Some(Above::Bar) {
        t(
            "More than 10 % above the load proposed, and no rep was done like this lately. Warm up to it, use safety bars or a spotter, and stop when technique goes.",
        )
    } else {
        t(
            "More than 10 % above the load proposed, and no rep was done like this lately. Warm up to it, keep a rep in reserve, and stop when technique goes.",
        )
    }
}

/// What is asked of an assistance that is the body mass or more, so that nothing would be left to move: most likely a slip. None
/// where the body mass is not known.
#[must_use]
pub fn assistance_caution(
    basis: &LoadBasis,
    load: Option<Load>,
    body_mass: Option<Load>,
) -> Option<&'static str> {
    let whole = basis.assists() && load? >= body_mass?;
    whole.then(|| {
        t("This assistance is your body mass or more, and leaves nothing to move: is the load right?")
    })
}

/// How many sessions count as lately (common practice, no source).
pub(super) const LATELY: usize = 6;

/// The hardest load done lately under that prescription, newest last; a set in which no rep was done counts not.
///
/// `shape` is that of [`Block::shape`], `assists` says that harder is less.
#[must_use]
pub fn best_lately(history: &[Performance], shape: &str, assists: bool) -> Option<Load> {
    let alike = history.iter().rev().filter(|other| other.shape == shape);
    let (mut later, mut sessions): (Option<&Performance>, _) = (None, 0);
    let loads = alike
        .take_while(|performance| {
            let later = later.replace(performance);
            if later.is_none_or(|later| !later.is_of_one_session(performance)) {
                sessions += 1;
            }
            sessions <= LATELY
        })
        .flat_map(|performance| &performance.sets)
        .filter(|set| set.reps.get() > 0 || set.low.get() == 0)
        .filter_map(|set| set.load);
    if assists { loads.min() } else { loads.max() }
}

/// True when what is moved with `load` is more than 10 % above what was moved with `best`, the hardest so far.
///
/// Of loads added to the body, or assisting it, the whole counts where the body mass is known; else the added load
/// alone, and of an assistance nothing can be said.
#[must_use]
pub fn jumps(
    basis: &LoadBasis,
    best: Option<Load>,
    load: Option<Load>,
    body_mass: Option<Load>,
) -> bool {
    let moved = |load: Load| match (basis, body_mass) {
        (LoadBasis::BodyMassPlus, Some(body)) => Some(body.plus(load)),
        (LoadBasis::BodyMassMinus, Some(body)) => Some(body.minus(load)),
        (LoadBasis::BodyMassShare(share), Some(body)) => {
            Some(body.times(share.factor()).plus(load))
        }
        (LoadBasis::BodyMassMinus | LoadBasis::Band(_) | LoadBasis::Unloaded, _) => None,
        (LoadBasis::External | LoadBasis::BodyMassPlus | LoadBasis::BodyMassShare(_), _) => {
            Some(load)
        }
    };
    load.and_then(moved)
        .is_some_and(|load| jump_caution(best.and_then(moved), load))
}

/// The usual cautions for a set, in words: to failure, and for hinges, bent-over rows and bars over the lifter whose sheet
/// says nothing.
///
/// Common practice, no source; physicians, qualified coaches and local rules come first.
#[must_use]
pub fn cautions(block: &Block, kind: &SetKind) -> Vec<&'static str> {
    let mut cautions = Vec::new();
    if matches!(kind, SetKind::ToFailure) {
        cautions.push(failure_words(block));
    }
    let bent_over = match block.exercise.pattern {
        Pattern::Hinge => true,
        Pattern::PullAcross => {
            !matches!(block.exercise.equipment, Equipment::Stack | Equipment::Band)
        }
        _ => false,
    };
    if bent_over && block.cautions.is_empty() {
        cautions.push(t(
            "Brace, keep the trunk angle; when it drifts, take load off.",
        ));
    }
    let under_a_bar = matches!(block.exercise.pattern, Pattern::Squat | Pattern::PushAcross)
        && block.exercise.equipment == Equipment::Barbell;
    // To failure safety bars are named above.
    if under_a_bar && block.cautions.is_empty() && cautions.is_empty() {
        cautions.push(t(
            "The bar is over you: safety bars or a spotter, or stop well before failure.",
        ));
    }
    cautions
}

/// What is said of a set to failure.
fn failure_words(block: &Block) -> &'static str {
    match above(block) {
        Some(Above::Bar) => t(
            "To technical failure: safety bars or a spotter; stop when the next rep would not be clean.",
        ),
        Some(Above::Weights) => {
            t("To technical failure: a spotter, or stop while you can still put the weights down.")
        }
        None if is_held(block) => t(
            "To technical failure: stop when the next rep would not be clean, and put the load down.",
        ),
        None => t("To technical failure: stop when the next rep would not be clean."),
    }
}

/// What can come down on the lifter in a set to failure; none in any other set, and where nothing is above.
#[must_use]
pub fn may_fall(block: &Block, kind: &SetKind) -> Option<Above> {
    above(block).filter(|_| matches!(kind, SetKind::ToFailure))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::strength::propose::tests::block;

    fn of(pattern: &str, equipment: &str) -> Block {
        let exercise = serde_json::json!({"id": "some", "name": "Some", "pattern": pattern, "equipment": equipment});
        block(serde_json::json!({"exercise": exercise}))
    }

    /// Common practice, no source.
    #[test]
    fn hinges_and_bent_over_rows_are_told_to_brace() {
        let said = |pattern, equipment| cautions(&of(pattern, equipment), &SetKind::Work);
        for (pattern, equipment) in [
            ("hinge", "barbell"),
            ("hinge", "stack"),
            ("pull_across", "barbell"),
            ("pull_across", "dumbbell"),
        ] {
            let said = said(pattern, equipment);
            assert_eq!(said.len(), 1, "{pattern} {equipment}");
            assert!(said[0].starts_with("Brace"), "{pattern} {equipment}");
        }
        for (pattern, equipment) in [
            ("pull_across", "stack"),
            ("pull_across", "band"),
            ("squat", "dumbbell"),
            ("push_across", "stack"),
            ("push_upward", "dumbbell"),
        ] {
            assert!(said(pattern, equipment).is_empty(), "{pattern} {equipment}");
        }
    }

    /// Common practice, no source.
    #[test]
    fn under_a_bar_safety_bars_are_named_once() {
        for pattern in ["squat", "push_across"] {
            let block = of(pattern, "barbell");
            for kind in [SetKind::Work, SetKind::ToFailure] {
                let said = cautions(&block, &kind);
                assert_eq!(said.len(), 1, "{pattern} {kind:?}");
                assert!(said[0].contains("safety bars or a spotter"), "{said:?}");
            }
        }
    }

    #[test]
    fn a_sheet_that_cautions_itself_is_not_talked_over_but_for_failure() {
        let mut hinge = of("hinge", "barbell");
        hinge.cautions = vec![crate::sheet::Line::new("Flat back.").unwrap()];
        assert!(cautions(&hinge, &SetKind::Work).is_empty());
        let said = cautions(&hinge, &SetKind::ToFailure);
        assert_eq!(said.len(), 1);
        assert!(said[0].ends_with("put the load down."), "{said:?}");
    }

    #[test]
    fn a_jump_names_safety_bars_only_under_a_bar() {
        for (pattern, equipment, bars) in [
            ("squat", "barbell", true),
            ("push_across", "barbell", true),
            ("pull_across", "dumbbell", false),
            ("push_across", "dumbbell", false),
            ("single_joint", "dumbbell", false),
            ("hinge", "barbell", false),
        ] {
            let block = of(pattern, equipment);
            for said in [jump_words(&block), first_jump_words(&block)] {
                let named = said.contains("safety bars or a spotter");
                assert_eq!(named, bars, "{pattern} {equipment}");
                assert!(said.ends_with("stop when technique goes."), "{said}");
            }
        }
    }

    #[test]
    fn safety_bars_are_for_what_can_fall() {
        let said = |changes| cautions(&block(changes), &SetKind::ToFailure);
        let bar = said(serde_json::json!({}));
        assert!(bar[0].contains("safety bars or a spotter"), "{bar:?}");
        // A push-up falls on nobody.
        // A raise is put down.
        let raise = said(serde_json::json!({
            "exercise": {"id": "lateral-raise", "name": "Lateral raise", "pattern": "single_joint", "equipment": "dumbbell"},
        }));
        assert!(raise[0].ends_with("put the load down."), "{raise:?}");
        // A spotter helps with dumbbells above the face, bars do not.
        let press = said(serde_json::json!({
            "exercise": {"id": "dumbbell-bench-press", "name": "Dumbbell bench press", "pattern": "push_across", "equipment": "dumbbell"},
        }));
        assert!(press[0].contains("a spotter, or stop"), "{press:?}");
        let body = said(serde_json::json!({
            "basis": {"body_mass_share": "64 %"},
            "exercise": {"id": "push-up", "name": "Push-up", "pattern": "push_across", "equipment": "body"},
        }));
        let only = ["To technical failure: stop when the next rep would not be clean."];
        assert_eq!(body, only);
    }

    #[test]
    fn an_assistance_that_leaves_nothing_to_move_is_asked_about() {
        let said = |basis: LoadBasis, load: u16, body: Option<u16>| {
            let body = body.map(Load::whole_kg);
            assistance_caution(&basis, Some(Load::whole_kg(load)), body).is_some()
        };
        assert!(said(LoadBasis::BodyMassMinus, 200, Some(78)));
        assert!(said(LoadBasis::BodyMassMinus, 78, Some(78)));
        assert!(!said(LoadBasis::BodyMassMinus, 77, Some(78)));
        assert!(!said(LoadBasis::BodyMassMinus, 200, None));
        assert!(!said(LoadBasis::BodyMassPlus, 200, Some(78)));
    }

    #[test]
    fn only_more_than_a_tenth_is_a_jump() {
        let best = Some(Load::whole_kg(100));
        assert!(!jump_caution(best, Load::whole_kg(110)));
        assert!(jump_caution(best, "110.01 kg".parse().unwrap()));
        assert!(!jump_caution(None, Load::whole_kg(110)));
        assert!(!jump_caution(Some(Load::ZERO), Load::whole_kg(5)));
    }
}

//! The rule by which the work load of a block moves from session to session, with its settings.

use super::hand::{At, Hand};
use super::policy::{read_step, step_typed};
use super::sets::step_share;
use crate::say;
use crate::sheet::{Block, Progression, Reach, Step};
use crate::strength::{Training, usual_steps};
use crate::ui::model::Model;
use crate::ui::parts::{Mode, quiet, text};
use crate::units::{Rir, Share};
use crate::words::{decimal, t};
use leptos::prelude::*;
use std::mem::discriminant;

/// The rules in the order of the choices, with settings of common practice, no source, and this step up. A new one is
/// offered once it stands here.
fn rules(up: Step) -> [Progression; 6] {
    [
        Progression::Double {
            reach: Reach::AllSets,
            up,
            down: Step::Smallest,
        },
        Progression::TwoForTwo { up },
        Progression::Fixed { up },
        Progression::ShareOfE1rm {
            share: Share::percent(80),
        },
        Progression::ByReserve {
            aim: Rir::saturating(2),
            step: up,
        },
        Progression::AsWritten,
    ]
}

/// The rule and its settings; without a figure of load no rule moves anything.
pub fn progression(hand: Hand) -> AnyView {
    hand.depends(
        At::default(),
        |block, _| block.basis.has_load().to_string(),
        |hand, at| match hand.now(at, |block, _| Some(block.basis.has_load())) {
            Some(true) => rule(hand, at),
            _ => quiet(t(
                "As written: there is no figure of load to move. Where there is a range, do more reps inside it; at its top take a harder band or a harder form yourself. Common practice, no source.",
            )),
        },
    )
}

fn rule(hand: Hand, at: At) -> AnyView {
    let chosen = hand.pick(
        at,
        "rule",
        t("rule for the next time"),
        &rules(Step::default()).each_ref().map(Progression::name),
        rule_of,
        set_rule,
    );
    let inside = hand.depends(at, |block, at| format!("{:?}", rule_of(block, at)), of_rule);
    vec![chosen, inside].into_any()
}

fn rule_of(block: &Block, _: At) -> Option<i64> {
    let same = |rule: &Progression| discriminant(rule) == discriminant(&block.progression);
    let place = rules(Step::default()).iter().position(same)?;
    i64::try_from(place).ok()
}

/// Another rule; a step that was set stays.
fn set_rule(block: &mut Block, at: At, n: i64) {
    if rule_of(block, at) == Some(n) {
        return;
    }
    let [up, _] = block.progression.steps();
    let place = usize::try_from(n).ok();
    if let Some(rule) = place.and_then(|n| rules(up.unwrap_or_default()).into_iter().nth(n)) {
        block.progression = rule;
    }
}

fn set_up(block: &mut Block, to: Step) {
    match &mut block.progression {
        Progression::Double { up, .. }
        | Progression::TwoForTwo { up }
        | Progression::Fixed { up } => *up = to,
        Progression::ByReserve { step, .. } => *step = to,
        Progression::ShareOfE1rm { .. } | Progression::AsWritten => {}
    }
}

/// The field of the step up.
fn step_up(hand: Hand, at: At) -> AnyView {
    let field = hand.typed(
        at,
        "rule-up",
        Mode::Decimal,
        t("step; empty for the kit's smallest"),
        |block, _| {
            let [up, _] = block.progression.steps();
            up.map(step_typed).unwrap_or_default()
        },
        |block, _, typed, unit| {
            set_up(block, read_step(typed, unit)?);
            Ok(())
        },
    );
    vec![field, usual_line(hand)].into_any()
}

/// What step up is usual for the exercise and for how trained the lifter is in it.
fn usual_line(hand: Hand) -> AnyView {
    let app = hand.app;
    let unit = app.of(Model::unit);
    quiet(text(move || {
        let Some(block) = hand.it.get() else {
            return String::new();
        };
        let training = app
            .model
            .with(|model| Training::of(model.history(&block.exercise.id)));
        let [least, most] = usual_steps(block.exercise.pattern, training, unit.get());
        let (least, most) = (least.figure(unit.get()), most.shown(unit.get()));
        say!(
            "Usual here: {least}–{most} (NSCA), and no more than 10 % of the load (ACSM).",
            least,
            most,
        )
    }))
}

fn of_rule(hand: Hand, at: At) -> AnyView {
    let rule = hand.now(at, |block, _| Some(block.progression.clone()));
    match rule {
        Some(Progression::Double { .. }) => double(hand, at),
        Some(Progression::TwoForTwo { .. }) => vec![
            quiet(t("Two reps over the goal in the last set, in two sessions running at one load: a step up (Baechle & Earle).")),
            step_up(hand, at),
        ]
        .into_any(),
        Some(Progression::Fixed { .. }) => vec![
            quiet(t("Every rep done: a step up. Common practice, no source.")),
            step_up(hand, at),
        ]
        .into_any(),
        Some(Progression::ShareOfE1rm { .. }) => hand.step(
            at,
            "rule-share",
            t("of the estimated maximum"),
            |block, _| match &block.progression {
                Progression::ShareOfE1rm { share } => decimal(&share.to_string()),
                _ => String::new(),
            },
            |block, _, by| {
                if let Progression::ShareOfE1rm { share } = &mut block.progression {
                    *share = step_share(*share, by);
                }
            },
        ),
        Some(Progression::ByReserve { .. }) => vec![
            hand.step(
                at,
                "rule-aim",
                t("reps left in the last set"),
                |block, _| match &block.progression {
                    Progression::ByReserve { aim, .. } => aim.to_string(),
                    _ => String::new(),
                },
                |block, _, by| {
                    if let Progression::ByReserve { aim, .. } = &mut block.progression {
                        *aim = Rir::saturating(i64::from(*aim) + by);
                    }
                },
            ),
            step_up(hand, at),
        ]
        .into_any(),
        Some(Progression::AsWritten) | None => quiet(t("The load stays what is written until you change it.")),
    }
}

fn double(hand: Hand, at: At) -> AnyView {
    vec![
        quiet(t("Reps rise inside the range; at its top the load rises, below its bottom it falls. Common practice, no source.")),
        hand.pick(
            at,
            "rule-reach",
            t("which sets must reach the top"),
            &[t("every work set"), t("the last one")],
            |block, _| match &block.progression {
                Progression::Double { reach, .. } => Some(i64::from(*reach == Reach::LastSet)),
                _ => None,
            },
            |block, _, n| {
                if let Progression::Double { reach, .. } = &mut block.progression {
                    *reach = if n == 1 { Reach::LastSet } else { Reach::AllSets };
                }
            },
        ),
        step_up(hand, at),
        hand.typed(
            at,
            "rule-down",
            Mode::Decimal,
            t("step down; empty for the kit's smallest"),
            |block, _| match &block.progression {
                Progression::Double { down, .. } => step_typed(*down),
                _ => String::new(),
            },
            |block, _, typed, unit| {
                let to = read_step(typed, unit)?;
                if let Progression::Double { down, .. } = &mut block.progression {
                    *down = to;
                }
                Ok(())
            },
        ),
    ]
    .into_any()
}

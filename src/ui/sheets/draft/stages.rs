//! The stages of a set, done one after the other without rest.

use super::block::{first_tempo, phases, step_tempo};
use super::hand::{At, Hand};
use super::reps::{reps, reps_at};
use super::sets::with_sets;
use super::target::{step_hold, target_at};
use crate::say;
use crate::sheet::{Block, Stage, Target};
use crate::ui::parts::{button, el, quiet};
use crate::units::Seconds;
use crate::words::{t, t_in};
use leptos::prelude::*;

/// Most stages in a set.
const STAGES_MOST: usize = 8;

fn stage_at(block: &Block, at: At) -> Option<Stage> {
    match target_at(block, at)? {
        Target::Stages(stages) => stages.get(at.item).copied(),
        _ => None,
    }
}

fn stage_kind(block: &Block, at: At) -> Option<i64> {
    Some(match stage_at(block, at)? {
        Stage::Hold { .. } => 0,
        Stage::Reps { .. } => 1,
        Stage::Partials { .. } => 2,
    })
}

fn with_stages(block: &mut Block, at: At, change: impl FnOnce(&mut Vec<Stage>)) {
    with_sets(block, at, |sets| {
        if let Target::Stages(stages) = &mut sets.target {
            change(stages);
        }
    });
}

fn set_stage_kind(block: &mut Block, at: At, n: i64) {
    if stage_kind(block, at) == Some(n) {
        return;
    }
    let reps = reps_at(block, at).unwrap_or(block.role.usual().reps);
    let tempo = block.tempo.unwrap_or_else(|| first_tempo(block.role));
    with_stages(block, at, |stages| {
        if let Some(stage) = stages.get_mut(at.item) {
            *stage = match n {
                0 => Stage::Hold {
                    seconds: Seconds::saturating(10),
                },
                1 => Stage::Reps { reps, tempo },
                _ => Stage::Partials { reps },
            };
        }
    });
}

fn stage_count(block: &Block, at: At) -> Option<usize> {
    match target_at(block, at)? {
        Target::Stages(stages) => Some(stages.len()),
        _ => None,
    }
}

/// The stages in order.
pub fn stages(hand: Hand, at: At) -> AnyView {
    let list = hand.depends(
        at,
        |block, at| format!("{:?}", stage_count(block, at)),
        |hand, at| {
            let count = hand.now(at, stage_count).unwrap_or_default();
            let stages: Vec<AnyView> = (0..count)
                .map(|item| stage(hand, at.item(item), count))
                .collect();
            stages.into_any()
        },
    );
    let add = button("wide", "stage-add", t("One stage more"), move || {
        hand.change(&mut |block| {
            with_stages(block, at, |stages| {
                if let Some(last) = stages
                    .last()
                    .copied()
                    .filter(|_| stages.len() < STAGES_MOST)
                {
                    stages.push(last);
                }
            })
        });
    });
    vec![list, add].into_any()
}

fn stage(hand: Hand, at: At, count: usize) -> AnyView {
    let number = at.item + 1;
    let kind = hand.pick(
        at,
        "stage",
        t("stage"),
        &[t("hold"), t("reps"), t("partials")],
        stage_kind,
        set_stage_kind,
    );
    let inside = hand.depends(
        at,
        |block, at| format!("{:?}", stage_kind(block, at)),
        of_stage,
    );
    let earlier = (at.item > 0).then(|| {
        button("small", "stage-up", t_in("order", "Earlier"), move || {
            hand.change(&mut |block| {
                with_stages(block, at, |stages| stages.swap(at.item, at.item - 1))
            });
        })
    });
    let off = (count > 1).then(|| {
        button("small", "stage-remove", t("Remove"), move || {
            hand.change(&mut |block| {
                with_stages(block, at, |stages| {
                    stages.remove(at.item);
                })
            });
        })
    });
    el("div")
        .class("stage")
        .set("role", "group")
        .set("aria-label", say!("stage {number}", number))
        .child(quiet(say!(
            "stage {number} of {count}, without rest between",
            number,
            count
        )))
        .child(kind)
        .child(inside)
        .child(el("div").class("arrange").child(earlier).child(off))
        .view()
}

fn of_stage(hand: Hand, at: At) -> AnyView {
    let kind = hand.now(at, stage_kind);
    match kind {
        Some(0) => hand.step(
            at,
            "stage-hold",
            t("hold for"),
            |block, at| match stage_at(block, at) {
                Some(Stage::Hold { seconds }) => seconds.clock(),
                _ => String::new(),
            },
            |block, at, by| {
                with_stages(block, at, |stages| {
                    if let Some(Stage::Hold { seconds }) = stages.get_mut(at.item) {
                        *seconds = step_hold(*seconds, by);
                    }
                })
            },
        ),
        Some(1) => vec![reps(hand, at), stage_tempo(hand, at)].into_any(),
        Some(_) => reps(hand, at),
        None => ().into_any(),
    }
}

/// The tempo of a stage. A place names stage and digit in one number: the stage times four, and the digit.
fn stage_tempo(hand: Hand, at: At) -> AnyView {
    fn split(at: At) -> (At, usize) {
        (at.item(at.item / 4), at.item % 4)
    }
    let columns: Vec<AnyView> = phases()
        .into_iter()
        .enumerate()
        .map(|(digit, name)| {
            hand.column(
                at.item(at.item * 4 + digit),
                "stage-tempo",
                name,
                |block, at| {
                    let (at, digit) = split(at);
                    match stage_at(block, at) {
                        Some(Stage::Reps { tempo, .. }) => tempo.digits()[digit].to_string(),
                        _ => String::new(),
                    }
                },
                |block, at, by| {
                    let (at, digit) = split(at);
                    with_stages(block, at, |stages| {
                        if let Some(Stage::Reps { tempo, .. }) = stages.get_mut(at.item) {
                            *tempo = step_tempo(*tempo, digit, by);
                        }
                    });
                },
            )
        })
        .collect();
    el("div").class("spin").child(columns).view()
}

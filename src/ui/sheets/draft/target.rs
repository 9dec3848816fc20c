//! What each set of a line asks for: reps, a time, a distance, or stages one after the other.

use super::block::first_tempo;
use super::hand::{At, Hand};
use super::reps::reps;
use super::sets::{sets_at, with_sets};
use super::stages::stages;
use crate::sheet::{Block, SetKind, Stage, Target};
use crate::units::{Metres, Seconds};
use crate::words::t;
use leptos::prelude::*;

/// What a set asks for.
pub fn target(hand: Hand, at: At) -> AnyView {
    let form = hand.pick(
        at,
        "target",
        t("what is counted"),
        &[t("reps"), t("time"), t("distance"), t("stages")],
        form_of,
        set_form,
    );
    let inside = hand.depends(at, |block, at| format!("{:?}", form_of(block, at)), of_form);
    vec![form, inside].into_any()
}

/// What the sets of the line that is meant ask for.
pub fn target_at(block: &Block, at: At) -> Option<&Target> {
    Some(&sets_at(block, at)?.target)
}

fn form_of(block: &Block, at: At) -> Option<i64> {
    Some(match target_at(block, at)? {
        Target::Reps(_) => 0,
        Target::Timed(_) => 1,
        Target::Distance(_) => 2,
        Target::Stages(_) => 3,
    })
}

/// Another form, beginning with figures of common practice, no source. A drop set or cluster stays counted in reps.
fn set_form(block: &mut Block, at: At, n: i64) {
    if form_of(block, at) == Some(n) {
        return;
    }
    let usual = block.role.usual().reps;
    let tempo = block.tempo.unwrap_or_else(|| first_tempo(block.role));
    with_sets(block, at, |sets| {
        let reps = sets.target.plain_reps().unwrap_or(usual);
        sets.target = match n {
            0 => Target::Reps(reps),
            1 => Target::Timed(Seconds::saturating(30)),
            2 => Target::Distance(Metres::saturating(20)),
            _ => Target::Stages(vec![
                Stage::Hold {
                    seconds: Seconds::saturating(10),
                },
                Stage::Reps { reps, tempo },
            ]),
        };
        if n != 0 && matches!(sets.kind, SetKind::Drop { .. } | SetKind::Cluster { .. }) {
            sets.kind = SetKind::Work;
        }
    });
}

fn of_form(hand: Hand, at: At) -> AnyView {
    let form = hand.now(at, form_of);
    match form {
        Some(0) => reps(hand, at),
        Some(1) => hand.step(
            at,
            "target-time",
            t("how long"),
            |block, at| match target_at(block, at) {
                Some(Target::Timed(seconds)) => seconds.clock(),
                _ => String::new(),
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    if let Target::Timed(seconds) = &mut sets.target {
                        *seconds = step_hold(*seconds, by);
                    }
                })
            },
        ),
        Some(2) => hand.step(
            at,
            "target-distance",
            t("how far"),
            |block, at| match target_at(block, at) {
                Some(Target::Distance(metres)) => format!("{metres} m"),
                _ => String::new(),
            },
            |block, at, by| {
                with_sets(block, at, |sets| {
                    if let Target::Distance(metres) = &mut sets.target {
                        *metres = Metres::saturating((i64::from(*metres) / 5 + by) * 5);
                    }
                })
            },
        ),
        Some(_) => stages(hand, at),
        None => ().into_any(),
    }
}

/// A hold stepped by five seconds, never to nothing.
pub fn step_hold(seconds: Seconds, by: i64) -> Seconds {
    Seconds::saturating(((i64::from(seconds) / 5 + by) * 5).max(5))
}

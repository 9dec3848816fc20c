//! Repetitions: of a set, or of one of its stages. The smaller number always comes first.

use super::hand::{At, Hand};
use super::sets::with_sets;
use super::target::target_at;
use crate::sheet::{Block, RepTarget, Stage, Target};
use crate::units::Reps;
use crate::words::{t, t_in};
use leptos::prelude::*;

/// The repetitions that are meant.
pub fn reps_at(block: &Block, at: At) -> Option<RepTarget> {
    match target_at(block, at)? {
        Target::Reps(reps) => Some(*reps),
        Target::Stages(stages) => match stages.get(at.item)? {
            Stage::Reps { reps, .. } | Stage::Partials { reps } => Some(*reps),
            Stage::Hold { .. } => None,
        },
        Target::Timed(_) | Target::Distance(_) => None,
    }
}

fn set_reps(block: &mut Block, at: At, to: RepTarget) {
    with_sets(block, at, |sets| match &mut sets.target {
        Target::Reps(reps) => *reps = to,
        Target::Stages(stages) => {
            if let Some(Stage::Reps { reps, .. } | Stage::Partials { reps }) =
                stages.get_mut(at.item)
            {
                *reps = to;
            }
        }
        Target::Timed(_) | Target::Distance(_) => {}
    });
}

/// From `low` to `top`, or so many and more: whatever is asked, the smaller number comes first.
fn reps_of(form: i64, low: i64, top: i64) -> Option<RepTarget> {
    let n = |n: i64| Reps::saturating(n.max(1));
    match form {
        0 => RepTarget::fixed(n(top)),
        1 => RepTarget::range(n(low), n(top.max(low.max(1) + 1))),
        _ => RepTarget::at_least(n(low)),
    }
    .ok()
}

fn reps_form(block: &Block, at: At) -> Option<i64> {
    Some(match reps_at(block, at)? {
        RepTarget::Fixed(_) => 0,
        RepTarget::Range(..) => 1,
        RepTarget::AtLeast(_) => 2,
    })
}

fn set_reps_form(block: &mut Block, at: At, form: i64) {
    let Some(reps) = reps_at(block, at) else {
        return;
    };
    let (low, top) = (i64::from(reps.low()), i64::from(reps.top()));
    let top = if form == 1 { top.max(low + 2) } else { top };
    if let Some(to) = reps_of(form, low, top) {
        set_reps(block, at, to);
    }
}

/// Steps the smaller number; the larger one makes room.
fn step_low(block: &mut Block, at: At, by: i64) {
    let (Some(reps), Some(form)) = (reps_at(block, at), reps_form(block, at)) else {
        return;
    };
    let low = i64::from(reps.low()) + by;
    let top = i64::from(reps.top());
    let top = if form == 1 {
        top.max(low + 1)
    } else {
        top + by
    };
    if let Some(to) = reps_of(form, low, top) {
        set_reps(block, at, to);
    }
}

/// Steps the larger number; the smaller one makes room.
fn step_top(block: &mut Block, at: At, by: i64) {
    let (Some(reps), Some(form)) = (reps_at(block, at), reps_form(block, at)) else {
        return;
    };
    let top = (i64::from(reps.top()) + by).max(2);
    let low = i64::from(reps.low()).min(top - 1);
    if let Some(to) = reps_of(form, low, top) {
        set_reps(block, at, to);
    }
}

/// Repetitions with their form.
pub fn reps(hand: Hand, at: At) -> AnyView {
    let form = hand.pick(
        at,
        "reps-form",
        t("reps"),
        &[t("exactly"), t("from–to"), t("and more")],
        reps_form,
        set_reps_form,
    );
    let figures = hand.depends(
        at,
        |block, at| format!("{:?}", reps_form(block, at)),
        |hand, at| {
            let ranged = hand.now(at, reps_form) == Some(1);
            let low = hand.step(
                at,
                "reps-low",
                if ranged {
                    t_in("reps", "from")
                } else {
                    t("reps")
                },
                |block, at| {
                    reps_at(block, at)
                        .map(|reps| reps.low().to_string())
                        .unwrap_or_default()
                },
                step_low,
            );
            if !ranged {
                return low;
            }
            let top = hand.step(
                at,
                "reps-top",
                t_in("reps", "to"),
                |block, at| {
                    reps_at(block, at)
                        .map(|reps| reps.top().to_string())
                        .unwrap_or_default()
                },
                step_top,
            );
            vec![low, top].into_any()
        },
    );
    vec![form, figures].into_any()
}

//! A first time at this way of doing an exercise that is known: other reps, another tempo. The estimate says where to begin
//! (common practice, no source; the share of the maximum is that of the lifter's curve).

use super::because::Because;
use super::curves::Curve;
use super::guided::aim;
use super::ladder::Ladder;
use super::level::Strength;
use super::propose::Today;
use super::rules::{NO_BREAK_DAYS, days_between};
use crate::sheet::{Block, LoadBasis, LoadPolicy, Progression, SetKind, Sets};
use crate::units::{Load, Reps, Rir, Share};
use rust_decimal::Decimal;

/// The work load by the estimate from what was done otherwise with the same sides and equipment, or that estimate's share where the
/// rule is one. None where nothing feeds an estimate, where the body is moved too, after a break, for sets without plain
/// reps and for more reps than the curve holds for.
pub(super) fn from_estimate(block: &Block, today: &Today<'_>) -> Option<Because> {
    if block.basis != LoadBasis::External {
        return None;
    }
    let load = block.load_shape();
    let known = today.history.iter();
    let known = known.filter(|done| done.shape.starts_with(&load));
    let known = Strength::of(known, today.curve)?;
    // A first time after a break begins light, as the usual next time gets lighter. What was done since and says nothing of
    // strength is no reason to trust what was known long ago.
    if !(0..=NO_BREAK_DAYS).contains(&days_between(known.at(), today.now)) {
        return None;
    }
    let e1rm = known.e1rm().middle;
    let ladder = |wanted| Ladder::new(block, today.kit, Some(wanted));
    if let Progression::ShareOfE1rm { share } = block.progression {
        let wanted = e1rm.times(share.factor());
        let to = ladder(wanted).fit(wanted)?;
        return Some(Because::ShareOfE1rm { share, e1rm, to });
    }
    let work = block.sets.iter().find(|sets| sets.kind.is_work())?;
    let (reps, reserve, share) = asked(block, work, today.curve)?;
    let wanted = e1rm.times(share.factor());
    let ladder = ladder(wanted);
    let (below, to) = rising(work, ladder.fit(wanted)?, &ladder);
    Some(Because::FromEstimate {
        reps,
        reserve,
        share,
        e1rm,
        below,
        to,
    })
}

/// The most reps that a work set asks for, the reps to be left, and the share of the maximum that goes with both.
fn asked(block: &Block, work: &Sets, curve: Curve) -> Option<(Reps, Rir, Share)> {
    if !matches!(work.kind, SetKind::Work | SetKind::ToFailure) {
        return None;
    }
    let (reps, reserve) = (work.target.plain_reps()?.top(), aim(block));
    let all = Reps::saturating(i64::from(reps.get()) + i64::from(reserve.get()));
    // To a tenth of a percent, on the safe side.
    let percent = curve.share(all).ok()? * Decimal::ONE_HUNDRED;
    Some((reps, reserve, Share::new(percent.trunc_with_scale(1)).ok()?))
}

/// Where loads rise from set to set the last one is to be as heavy as that: how many steps below it the first one is, as
/// far as the kit goes, and its load.
fn rising(work: &Sets, last: Load, ladder: &Ladder) -> (u8, Load) {
    let step = match &work.load {
        LoadPolicy::Rising(step) | LoadPolicy::RisingByOutcome { planned: step, .. } => *step,
        _ => return (0, last),
    };
    let (mut below, mut to) = (0, last);
    for _ in 1..work.count {
        let Some(easier) = ladder.step(to, step, false) else {
            break;
        };
        (below, to) = (below + 1, easier);
    }
    (below, to)
}

#[cfg(test)]
#[path = "from_estimate_tests.rs"]
mod tests;

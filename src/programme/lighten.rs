//! A sheet and its proposals made light.

use super::light::LightWeek;
use crate::kit::Kit;
use crate::sheet::{Block, LoadPolicy, Sets, Sheet};
use crate::strength::{Proposal, lighten_loads, lighten_proposal};
use crate::units::Share;
use rust_decimal::Decimal;
use rust_decimal::prelude::{RoundingStrategy, ToPrimitive};

/// `sheet` and what was proposed for it, as a light week has it: fewer work sets, the last ones taken away first, at
/// least one left; less load, proposed and listed, always one that `kit` can make and never harder than usual; and no
/// step up by outcome, as light sets would always earn one. Ramp-ups, rests and targets stay.
#[must_use]
pub fn lighten(
    sheet: &Sheet,
    proposals: &[Proposal],
    light: &LightWeek,
    kit: &Kit,
) -> (Sheet, Vec<Proposal>) {
    let proposals = proposals
        .iter()
        .map(|usual| match sheet.block(usual.block) {
            Some(block) => lighten_proposal(block, usual, light.load(), kit),
            None => usual.clone(),
        });
    let proposals = proposals.collect();
    let mut sheet = sheet.clone();
    for group in &mut sheet.groups {
        for block in group.blocks_mut() {
            lighten_block(block, light, kit);
        }
    }
    (sheet, proposals)
}

fn lighten_block(block: &mut Block, light: &LightWeek, kit: &Kit) {
    let policies: Vec<LoadPolicy> = block
        .sets
        .iter()
        .map(|sets| policy(block, &sets.load, light.load(), kit))
        .collect();
    for (sets, policy) in block.sets.iter_mut().zip(policies) {
        sets.load = policy;
    }
    let mut left = work_sets(block, light.sets());
    block.sets.retain_mut(|sets: &mut Sets| {
        if !sets.kind.is_work() {
            return true;
        }
        sets.count = sets.count.min(left);
        left -= sets.count;
        sets.count > 0
    });
}

/// How many work sets are left: rounded to the nearest, halves up, at least one.
fn work_sets(block: &Block, share: Share) -> u8 {
    let work = block.sets.iter().filter(|sets| sets.kind.is_work());
    let all: u32 = work.map(|sets| u32::from(sets.count)).sum();
    let left = (Decimal::from(all) * share.factor())
        .round_dp_with_strategy(0, RoundingStrategy::MidpointAwayFromZero);
    left.to_u8().unwrap_or(u8::MAX).max(1)
}

fn policy(block: &Block, usual: &LoadPolicy, share: Share, kit: &Kit) -> LoadPolicy {
    match usual {
        LoadPolicy::List(loads) => LoadPolicy::List(lighten_loads(block, loads, share, kit)),
        LoadPolicy::ShareOfE1rm(of) => LoadPolicy::ShareOfE1rm(share_of(*of, share)),
        LoadPolicy::RisingByOutcome { planned, .. } => LoadPolicy::Rising(*planned),
        LoadPolicy::Same
        | LoadPolicy::Rising(_)
        | LoadPolicy::Falling(_)
        | LoadPolicy::ShareOfTop(_) => usual.clone(),
    }
}

/// A share of a share, down to two decimals; what falls out of the range stays as it was.
fn share_of(whole: Share, share: Share) -> Share {
    let percent = (whole.in_percent() * share.factor()).trunc_with_scale(2);
    Share::new(percent).unwrap_or(whole)
}

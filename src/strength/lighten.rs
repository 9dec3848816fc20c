//! Lighter loads for a planned light week: common practice, no source.

use super::because::{Because, Proposal};
use super::ladder::Ladder;
use crate::kit::Kit;
use crate::sheet::{Block, Step};
use crate::units::{Load, Share};

/// The proposal of a light week: `share` of the usual one, nearest below, always a load that `kit` can make and never
/// harder than usual. Assistance is not shared out but taken a step up, as less of it would be harder. `share` is at
/// most 100 %; where there is no load, or it is the first time and light by itself, the usual proposal stays.
#[must_use]
pub fn lighten_proposal(block: &Block, usual: &Proposal, share: Share, kit: &Kit) -> Proposal {
    let begins = matches!(usual.because, Because::GuidedStart { .. });
    let Some(load) = usual.load.filter(|_| !begins) else {
        return usual.clone();
    };
    let to = lighter(&Ladder::new(block, kit, Some(load)), load, share);
    Proposal {
        block: usual.block,
        load: Some(to),
        because: Because::LightWeek {
            share,
            usual: load,
            to,
        },
    }
}

/// The listed loads of a block in a light week, each by the rule of [`lighten_proposal`].
#[must_use]
pub fn lighten_loads(block: &Block, listed: &[Load], share: Share, kit: &Kit) -> Vec<Load> {
    let each = listed.iter().map(|&load| {
        let ladder = Ladder::new(block, kit, Some(load));
        match ladder.keep(load) {
            Some(usual) => lighter(&ladder, usual, share),
            // The kit makes nothing of it, usual or light: the floor will say so.
            None => load,
        }
    });
    each.collect()
}

/// A load no harder than `usual`, one that can be made.
fn lighter(ladder: &Ladder, usual: Load, share: Share) -> Load {
    if share >= Share::percent(100) {
        return usual;
    }
    let to = if ladder.assists() {
        ladder.step(usual, Step::Smallest, false)
    } else {
        let wanted = usual.times(share.factor());
        ladder.fit(wanted).or_else(|| ladder.easiest_above(wanted))
    };
    to.filter(|&to| !ladder.is_harder(to, usual))
        .unwrap_or(usual)
}

#[cfg(test)]
#[path = "lighten_tests.rs"]
mod tests;

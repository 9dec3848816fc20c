//! A share of the estimated one-repetition maximum.

use super::super::because::{Because, Wish};
use super::super::ladder::Ladder;
use super::Seen;
use crate::sheet::Step;
use crate::units::{Load, Share};

/// The share of the estimate, nearest below; without an estimate the same load. Where not even one rep was done at a load,
/// the maximum lies below it: then the share of that.
pub(in super::super) fn share_of_e1rm(
    seen: &Seen<'_>,
    share: Share,
    e1rm: Option<Load>,
    ladder: &Ladder,
) -> Because {
    let Some(e1rm) = e1rm else {
        let above = seen.not_one_rep().filter(|_| !ladder.assists());
        if let Some(wanted) = above.map(|above| above.times(share.factor())) {
            match ladder.fit(wanted) {
                None => return ladder.out_of_kit(wanted),
                Some(to) if ladder.is_harder(seen.at, to) => {
                    let moved = ladder.eased(seen.at, to);
                    return Because::NoEstimate { moved };
                }
                Some(_) => {}
            }
        }
        return ladder.because(seen.at, Wish::Same, Step::Smallest, |moved| {
            Because::NoEstimate { moved }
        });
    };
    let wanted = e1rm.times(share.factor());
    match ladder.fit(wanted) {
        Some(to) => Because::ShareOfE1rm { share, e1rm, to },
        None => ladder.out_of_kit(wanted),
    }
}

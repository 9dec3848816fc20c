//! A share of the estimated one-repetition maximum.

use super::super::because::{Because, Wish};
use super::super::ladder::Ladder;
use super::Seen;
use crate::sheet::Step;
use crate::units::{Load, Share};

/// The share of the estimate, nearest below; without an estimate the same load.
pub(in super::super) fn share_of_e1rm(
    seen: &Seen<'_>,
    share: Share,
    e1rm: Option<Load>,
    ladder: &Ladder,
) -> Because {
    let Some(e1rm) = e1rm else {
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

//! A share of the estimated one-repetition maximum.

use super::super::because::Because;
use super::super::ladder::Ladder;
use super::super::maximum::{Lack, Maximum, Taken, WithBody};
use super::super::moved::Wish;
use super::Seen;
use crate::sheet::{LoadBasis, Step};
use crate::units::Share;

/// The share of the estimate, nearest on the safe side; without an estimate, or without the body mass where the body is
/// moved, the same load. Where not even one rep was done at a load, the maximum lies below it: then the share of that.
pub(in super::super) fn share_of_e1rm(
    seen: &Seen<'_>,
    share: Share,
    maximum: &Maximum,
    basis: &LoadBasis,
    ladder: &Ladder,
) -> Because {
    let lack = match maximum.take(basis, share) {
        Ok(Taken::Alone(e1rm)) => {
            let wanted = e1rm.times(share.factor());
            return match ladder.fit(wanted) {
                Some(to) => Because::ShareOfE1rm { share, e1rm, to },
                None => ladder.out_of_kit(wanted),
            };
        }
        Ok(Taken::WithBody(taken)) => {
            return match ladder.fit(taken.to) {
                Some(to) => Because::ShareWithBody(WithBody { to, ..taken }),
                None => ladder.out_of_kit(taken.to),
            };
        }
        Err(lack) => lack,
    };
    let because = |moved| match lack {
        Lack::BodyMass => Because::BodyMassUnknown { moved },
        Lack::Estimate => Because::NoEstimate { moved },
    };
    if let Some(above) = seen.not_one_rep(ladder) {
        let wanted = maximum.share_of(basis, above, share);
        match ladder.fit(wanted) {
            None => return ladder.out_of_kit(wanted),
            Some(to) if ladder.is_harder(seen.at, to) => return because(ladder.eased(seen.at, to)),
            Some(_) => {}
        }
    }
    ladder.because(seen.at, Wish::Same, Step::Smallest, because)
}

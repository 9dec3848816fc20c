//! A share of the maximum while nothing tells the maximum.

use super::maximum::{Taken, WithBody};
use super::set_because::{SetBecause, ShareOf};
use super::set_load::SetToLoad;
use crate::sheet::{LoadPolicy, PlannedSet};
use crate::units::{Load, Share};

impl SetToLoad<'_> {
    /// A share of the estimated maximum. Where there is none, the line that the work load is meant for has that load; any
    /// other line has the same share of it: the whole may be what was just done for fewer reps, and a share of a work load
    /// is less than that of the maximum, so on the safe side (common practice, no source).
    pub(super) fn of_maximum_or_instead(&self, set: &PlannedSet, share: Share) -> SetBecause {
        let first = self.block.sets.iter().position(|sets| sets.kind.is_work());
        match self.of_maximum(share) {
            because @ (SetBecause::NoEstimate { .. } | SetBecause::BodyMassUnknown { .. })
                if first != Some(usize::from(set.key.line)) =>
            {
                self.instead(share).unwrap_or(because)
            }
            because => because,
        }
    }

    /// At most all of the hardest load of the lines that are no shares themselves, else of the work load.
    fn instead(&self, share: Share) -> Option<SetBecause> {
        let is_share = |load: &LoadPolicy| {
            matches!(load, LoadPolicy::ShareOfTop(_) | LoadPolicy::ShareOfE1rm(_))
        };
        let done = self.top_of(|sets| !is_share(&sets.load));
        let whole = done.or(self.base)?;
        let of = |work_load, top| if done.is_some() { top } else { work_load };
        let share = self.of_light(share, whole).min(Share::percent(100));
        let basis = &self.block.basis;
        let moved = self.maximum.of_moved(basis, whole);
        Some(match moved.take(basis, share) {
            Ok(Taken::Alone(_)) => {
                let of = of(ShareOf::InsteadOfE1rm, ShareOf::InsteadOfE1rmTop);
                self.share(of, share, whole)
            }
            Ok(Taken::WithBody(taken)) => match self.with_body(taken) {
                SetBecause::ShareWithBody(WithBody { to, .. }) if to == whole => match done {
                    Some(_) => SetBecause::NoEstimateAgain { to },
                    None => SetBecause::NoEstimate { to },
                },
                SetBecause::ShareWithBody(WithBody { to, .. }) => {
                    SetBecause::InsteadWithBody { share, whole, to }
                }
                out => out,
            },
            // The board asks for the body mass itself.
            Err(_) => self.share(of(ShareOf::Base, ShareOf::Top), share, whole),
        })
    }

    /// The share of that whole. A light week took off the share as well as off the work load, as only one of both is asked: where
    /// the whole is light already, the share is as usual.
    fn of_light(&self, share: Share, whole: Load) -> Share {
        let harder = |base| self.ladder.is_harder(whole, base);
        match self.light {
            Some(light) if !self.base.is_some_and(harder) => {
                let usual = (share.in_percent() / light.factor()).round_dp(1);
                Share::new(usual).unwrap_or(share)
            }
            _ => share,
        }
    }
}

#[cfg(test)]
#[path = "instead_tests.rs"]
mod tests;

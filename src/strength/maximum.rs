//! A share of the estimated maximum, and what it leaves to write where the body is moved too.

use super::system::system_load;
use crate::sheet::LoadBasis;
use crate::units::{Load, Share};
use serde::{Deserialize, Serialize};

/// The estimate that a share is taken of, and the body that may be part of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Maximum {
    /// The estimated one-repetition maximum of all that is moved; none where nothing feeds the estimate.
    pub e1rm: Option<Load>,
    /// Body mass of the day, where it is known.
    pub body_mass: Option<Load>,
}

/// The body mass is not known.
impl From<Option<Load>> for Maximum {
    fn from(e1rm: Option<Load>) -> Maximum {
        Maximum {
            e1rm,
            body_mass: None,
        }
    }
}

/// A share of the maximum where the body is part of what is moved, and the load that is written for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WithBody {
    /// The share.
    pub share: Share,
    /// The estimated one-repetition maximum, the body in it.
    pub e1rm: Load,
    /// What the body counts for today: its mass, or the share of it that is moved.
    pub body: Load,
    /// True when the load assists.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub assists: bool,
    /// The load, one that the kit can make. It moves no more in all than the share, but where that is less than the body alone
    /// (with nothing added), or where the kit makes nothing as light.
    pub to: Load,
}

impl WithBody {
    /// What is to be moved in all.
    pub(super) fn moved(&self) -> Load {
        self.e1rm.times(self.share.factor())
    }

    /// The load that is written for it, never below zero: what is left for it beside the body, or what assists.
    pub(super) fn wanted(&self) -> Load {
        if self.assists {
            self.body.minus(self.moved())
        } else {
            self.moved().minus(self.body)
        }
    }
}

/// What is missing for a share.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Lack {
    /// The body mass.
    BodyMass,
    /// An estimate.
    Estimate,
}

/// What a share of the maximum comes to, before the kit is asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Taken {
    /// Of a load that is moved alone: that maximum.
    Alone(Load),
    /// Of body and load together; its load is the wanted one.
    WithBody(WithBody),
}

impl Maximum {
    /// The share of the maximum on that basis.
    pub(super) fn take(&self, basis: &LoadBasis, share: Share) -> Result<Taken, Lack> {
        let body = self.body(basis)?;
        let e1rm = self.e1rm.ok_or(Lack::Estimate)?;
        let Some(body) = body else {
            return Ok(Taken::Alone(e1rm));
        };
        let mut taken = WithBody {
            share,
            e1rm,
            body,
            assists: basis.assists(),
            to: Load::ZERO,
        };
        taken.to = taken.wanted();
        Ok(Taken::WithBody(taken))
    }

    /// The load that is written where a share of what `load` moves is wanted; of a body mass that is not known, the share
    /// of the written load alone.
    pub(super) fn share_of(&self, basis: &LoadBasis, load: Load, share: Share) -> Load {
        match self.of_moved(basis, load).take(basis, share) {
            Ok(Taken::WithBody(taken)) => taken.to,
            _ if basis.assists() => load,
            _ => load.times(share.factor()),
        }
    }

    /// What `load` moves in all, in place of a maximum.
    pub(super) fn of_moved(&self, basis: &LoadBasis, load: Load) -> Maximum {
        Maximum {
            e1rm: system_load(basis, Some(load), self.body_mass).ok(),
            body_mass: self.body_mass,
        }
    }

    /// What the body counts for; none where a load is moved alone.
    fn body(&self, basis: &LoadBasis) -> Result<Option<Load>, Lack> {
        if *basis == LoadBasis::External {
            return Ok(None);
        }
        let body = system_load(basis, None, self.body_mass);
        body.map(Some).map_err(|_| Lack::BodyMass)
    }
}

#[cfg(test)]
#[path = "maximum_tests.rs"]
mod tests;

//! How a block is loaded: what the load is added to, how it runs from set to set, and how large a step is.

use super::text::Line;
use crate::say;
use crate::units::{Load, Share, Unit};
use crate::words::{small, t};
use serde::{Deserialize, Serialize};

/// What the written load means together with the body.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LoadBasis {
    /// The load alone is moved.
    External,
    /// Body mass and the load on top.
    BodyMassPlus,
    /// Body mass less the load, which assists.
    BodyMassMinus,
    /// A share of the body mass is moved (push-ups), the load on top.
    BodyMassShare(Share),
    /// An elastic band, told apart by its label.
    Band(Line),
    /// No load.
    Unloaded,
}

impl LoadBasis {
    /// True when a figure of load belongs to a set.
    #[must_use]
    pub fn has_load(&self) -> bool {
        !matches!(self, LoadBasis::Band(_) | LoadBasis::Unloaded)
    }

    /// True when there is something to choose for a set: a load or a band.
    #[must_use]
    pub fn is_loaded(&self) -> bool {
        !matches!(self, LoadBasis::Unloaded)
    }

    /// True when more of the written load makes the set easier.
    #[must_use]
    pub fn assists(&self) -> bool {
        matches!(self, LoadBasis::BodyMassMinus)
    }

    /// What a load of zero is called, where the body is moved with it: a figure would say that nothing is lifted.
    #[must_use]
    pub fn nothing(&self) -> Option<&'static str> {
        match self {
            LoadBasis::BodyMassPlus | LoadBasis::BodyMassShare(_) => Some(t("nothing added")),
            LoadBasis::BodyMassMinus => Some(t("no assistance")),
            LoadBasis::External | LoadBasis::Band(_) | LoadBasis::Unloaded => None,
        }
    }

    /// The band in words. One that nobody named is just a band: its label would say the same twice.
    #[must_use]
    pub fn band(&self) -> Option<String> {
        let LoadBasis::Band(label) = self else {
            return None;
        };
        Some(if is_any_band(label) {
            t("a band").to_owned()
        } else {
            say!("band: {label}", label)
        })
    }

    /// A load that was written so, or its unit alone, with what it does to the body: "5 kg added".
    #[must_use]
    pub fn does(&self, load: String) -> String {
        match self {
            LoadBasis::BodyMassPlus | LoadBasis::BodyMassShare(_) => say!("{load} added", load),
            LoadBasis::BodyMassMinus => say!("{load} assistance", load),
            LoadBasis::External | LoadBasis::Band(_) | LoadBasis::Unloaded => load,
        }
    }

    /// A load in words, in the unit on display, with what it does to the body.
    #[must_use]
    pub fn told(&self, load: Load, unit: Unit) -> String {
        match self.nothing().filter(|_| load.is_zero()) {
            Some(nothing) => nothing.to_owned(),
            None => self.does(load.shown(unit)),
        }
    }

    /// A load in words, in the unit on display.
    #[must_use]
    pub fn shown(&self, load: Load, unit: Unit) -> String {
        match self.nothing().filter(|_| load.is_zero()) {
            Some(nothing) => nothing.to_owned(),
            None => load.shown(unit),
        }
    }
}

/// True for the label of a band that nobody named.
#[must_use]
pub fn is_any_band(label: &Line) -> bool {
    let label = small(label.as_str());
    label == "band" || label == small(t("band"))
}

/// True where both labels are of one band: `light` is `light band` too.
#[must_use]
pub fn is_same_band(one: &Line, other: &Line) -> bool {
    let plain = |label: &Line| {
        let label = small(label.as_str());
        label.trim_end_matches(" band").to_owned()
    };
    plain(one) == plain(other)
}

/// A step of load.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Step {
    /// The next load that this kit can make.
    #[default]
    Smallest,
    /// By this much, or the nearest that the kit can make.
    By(Load),
}

/// How the load runs over the sets of one line of a prescription.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum LoadPolicy {
    /// Every set the work load.
    #[default]
    Same,
    /// From the work load up, a step a set.
    Rising(Step),
    /// From the work load down, a step a set.
    Falling(Step),
    /// These loads in order; the last one stays when there are more sets.
    List(Vec<Load>),
    /// Shares of the heaviest load done so far in the block, in order; the last one stays.
    ShareOfTop(Vec<Share>),
    /// A share of the estimated one-repetition maximum.
    ShareOfE1rm(Share),
    /// The next set's load follows from the last one: top of the range reached, `large`; within it, `planned`;
    /// below it, the same again.
    RisingByOutcome {
        /// Step after a set inside the range.
        #[serde(default)]
        planned: Step,
        /// Step after a set at the top of the range.
        large: Step,
    },
}

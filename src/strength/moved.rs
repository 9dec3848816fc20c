//! From which load to which a rule went, and what stood in its way, as data.

use crate::sheet::Equipment;
use crate::units::{Load, Reps};
use serde::{Deserialize, Serialize};

/// Which way a rule wants the work load to go.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Wish {
    /// A step harder: more load, or less assistance.
    Harder,
    /// The same again.
    Same,
    /// A step easier: less load, or more assistance.
    Easier,
}

/// What a step up of a rule ran into.
///
/// A step up is 2–10 % of the load (American College of Sports Medicine position stand, Ratamess et al. 2009, Med Sci
/// Sports Exerc 41(3):687–708).
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Bound {
    /// The step asked for was larger: cut to what the kit makes up to 10 %.
    Tenth,
    /// The kit's smallest step is larger than 10 %: it is taken, and wants caution.
    KitStep,
}

/// From which load to which.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Moved {
    /// Work load of last time.
    pub at: Load,
    /// Load that is proposed, one that the kit can make. Equal to `at` against the wish where the kit ends.
    pub to: Load,
    /// Which way the rule wanted to go.
    pub wish: Wish,
    /// What the load is made of.
    pub on: Equipment,
    /// True when the load assists, so that harder is less of it.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub assists: bool,
    /// The step that the sheet names, where the load went by it; none for the kit's smallest step and for one that was cut.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub named: Option<Load>,
    /// What the step up ran into, if anything.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bound: Option<Bound>,
    /// The least and the most that was lifted in the sets which the reason names, where that is not `at` throughout.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub span: Option<[Load; 2]>,
}

impl Moved {
    /// Of sets that were done with loads from the least to the most of these.
    #[must_use]
    pub fn over(self, span: [Load; 2]) -> Moved {
        Moved {
            span: (span != [self.at; 2]).then_some(span),
            ..self
        }
    }
}

/// The worst work set of a session in which the bottom of the range was missed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Missed {
    /// Its load.
    pub at: Load,
    /// Its fewest repetitions.
    pub reps: Reps,
    /// How many were asked for at least.
    pub low: Reps,
}

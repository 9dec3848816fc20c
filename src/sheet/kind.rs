//! The lines of a block's prescription: a number of sets of one kind.

use super::loads::LoadPolicy;
use super::target::{RepTarget, STAGES_MAX, Target};
use super::tempo::Tempo;
use crate::say;
use crate::units::{Reps, Rir, Seconds, Share};
use crate::words::{later, t};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Most sets in one line of a prescription.
pub const LINE_SETS_MAX: u8 = 20;

/// What kind of set.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum SetKind {
    /// Lighter sets on the way to the work load, each a share of it.
    RampUp {
        /// Shares of the work load in order; the last one stays when there are more sets.
        shares: Vec<Share>,
    },
    /// A work set.
    Work,
    /// A lighter set after the heaviest: a share of the heaviest load done.
    BackOff {
        /// Share of the block's heaviest load.
        share: Share,
    },
    /// A set carried on at once with less load, a number of times.
    Drop {
        /// How many drops follow, 1 to 5.
        drops: u8,
        /// What each drop leaves of the load before.
        keep: Share,
    },
    /// A set in small portions with short pauses inside.
    Cluster {
        /// Portions, 2 to 10; the target's reps are those of one portion.
        portions: u8,
        /// Pause between portions.
        pause: Seconds,
    },
    /// To technical failure: until the next rep could not be done well.
    ToFailure,
}

impl SetKind {
    /// True for sets that count as work: all but ramp-ups.
    #[must_use]
    pub fn is_work(&self) -> bool {
        !matches!(self, SetKind::RampUp { .. })
    }

    /// The reps that the whole set asks for: of a cluster those of all its portions.
    #[must_use]
    pub fn whole(&self, asked: RepTarget) -> RepTarget {
        let SetKind::Cluster { portions, .. } = self else {
            return asked;
        };
        let all = |reps: Reps| Reps::saturating(i64::from(reps.get()) * i64::from(*portions));
        match asked {
            RepTarget::Fixed(n) => RepTarget::Fixed(all(n)),
            RepTarget::Range(low, high) => RepTarget::Range(all(low), all(high)),
            RepTarget::AtLeast(n) => RepTarget::AtLeast(all(n)),
        }
    }

    /// Whether a set goes on until no rep more can be done: to failure, or so many and more where none is to be left.
    #[must_use]
    pub fn goes_to_limit(&self, target: &Target, reserve: Option<Rir>) -> bool {
        let open = matches!(target, Target::Reps(RepTarget::AtLeast(_)));
        let to_zero = reserve.is_none_or(|reserve| reserve.get() == 0);
        open && to_zero || *self == SetKind::ToFailure
    }

    /// The name on screen.
    #[must_use]
    pub fn name(&self) -> &'static str {
        t(self.word())
    }

    /// The word that programs read, the same in every language.
    #[must_use]
    pub fn word(&self) -> &'static str {
        later(match self {
            SetKind::RampUp { .. } => "ramp-up",
            SetKind::Work => "work set",
            SetKind::BackOff { .. } => "back-off",
            SetKind::Drop { .. } => "drop set",
            SetKind::Cluster { .. } => "cluster",
            SetKind::ToFailure => "to failure",
        })
    }
}

/// One line of a prescription: so many sets of a kind.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields, try_from = "SetsForm")]
pub struct Sets {
    /// Kind of the sets.
    pub kind: SetKind,
    /// How many, 1 to 20.
    pub count: u8,
    /// What each asks for.
    pub target: Target,
    /// Reps in reserve aimed at, set by set; the last one stays. Empty: not prescribed.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub reserve: Vec<Rir>,
    /// How the load runs.
    #[serde(default)]
    pub load: LoadPolicy,
    /// Tempo of these sets where it differs from the block's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tempo: Option<Tempo>,
    /// Rest after each of these sets where it differs from the block's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rest: Option<Seconds>,
}

/// The file's form of [`Sets`], before its counts are checked.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct SetsForm {
    kind: SetKind,
    count: u32,
    target: Target,
    #[serde(default)]
    reserve: Vec<Rir>,
    #[serde(default)]
    load: LoadPolicy,
    #[serde(default)]
    tempo: Option<Tempo>,
    #[serde(default)]
    rest: Option<Seconds>,
}

/// Why a line of sets does not hold together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnfitSets {
    /// A number or the length of a list is outside its range.
    Count {
        /// What is counted, in words.
        what: &'static str,
        /// How many were given.
        given: usize,
        /// Fewest allowed.
        least: usize,
        /// Most allowed.
        most: usize,
    },
    /// A drop set or a cluster that is not counted in reps.
    NotCounted,
}

impl fmt::Display for UnfitSets {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitSets::Count {
                what,
                given,
                least,
                most,
            } => f.write_str(&say!(
                "{what} must be {least} to {most}, not {given}",
                what,
                least,
                most,
                given
            )),
            UnfitSets::NotCounted => f.write_str(t("a drop set or a cluster is counted in reps")),
        }
    }
}

impl std::error::Error for UnfitSets {}

impl TryFrom<SetsForm> for Sets {
    type Error = UnfitSets;

    fn try_from(form: SetsForm) -> Result<Sets, UnfitSets> {
        let sets = Sets {
            kind: form.kind,
            // What is beyond the type is beyond the range too; the refusal below names the count as it was given.
            count: u8::try_from(form.count).unwrap_or(u8::MAX),
            target: form.target,
            reserve: form.reserve,
            load: form.load,
            tempo: form.tempo,
            rest: form.rest,
        };
        sets.check_as(form.count as usize)?;
        Ok(sets)
    }
}

impl Sets {
    /// Checks that the line holds together.
    ///
    /// # Errors
    /// [`UnfitSets`]: a count out of its range, or a drop set or cluster that is not counted in reps.
    pub fn check(&self) -> Result<(), UnfitSets> {
        self.check_as(usize::from(self.count))
    }

    fn check_as(&self, count: usize) -> Result<(), UnfitSets> {
        let most = usize::from(LINE_SETS_MAX);
        let between = |what, given: usize, least: usize, most: usize| {
            if (least..=most).contains(&given) {
                Ok(())
            } else {
                Err(UnfitSets::Count {
                    what,
                    given,
                    least,
                    most,
                })
            }
        };
        between(t("the count of sets"), count, 1, most)?;
        match &self.kind {
            SetKind::RampUp { shares } => {
                between(t("the number of ramp-up shares"), shares.len(), 1, most)?;
            }
            SetKind::Drop { drops, .. } => {
                between(t("the number of drops"), usize::from(*drops), 1, 5)?;
            }
            SetKind::Cluster { portions, .. } => {
                between(t("the number of portions"), usize::from(*portions), 2, 10)?;
            }
            SetKind::Work | SetKind::BackOff { .. } | SetKind::ToFailure => {}
        }
        match &self.load {
            LoadPolicy::List(loads) => {
                between(t("the number of listed loads"), loads.len(), 1, most)?
            }
            LoadPolicy::ShareOfTop(shares) => {
                between(t("the number of listed shares"), shares.len(), 1, most)?;
            }
            _ => {}
        }
        between(
            t("the number of listed reserves"),
            self.reserve.len(),
            0,
            most,
        )?;
        let counted = matches!(self.target, Target::Reps(_));
        if matches!(self.kind, SetKind::Cluster { .. } | SetKind::Drop { .. }) && !counted {
            return Err(UnfitSets::NotCounted);
        }
        if let Target::Stages(stages) = &self.target {
            between(t("the number of stages"), stages.len(), 1, STAGES_MAX)?;
        }
        Ok(())
    }

    /// Reps in reserve aimed at in the `index`th set of this line.
    #[must_use]
    pub fn reserve_of(&self, index: usize) -> Option<Rir> {
        self.reserve.get(index).or(self.reserve.last()).copied()
    }

    /// Reps offered at the tap: of a cluster the sum of its portions.
    #[must_use]
    pub fn offered_reps(&self) -> Option<Reps> {
        let one = self.target.offered_reps()?;
        match self.kind {
            SetKind::Cluster { portions, .. } => {
                Some(Reps::saturating(i64::from(one.get()) * i64::from(portions)))
            }
            _ => Some(one),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ten_thousand_sets_are_refused_with_the_limit() {
        let text = r#"{"kind":"work","count":10000,"target":{"reps":5}}"#;
        let error = serde_json::from_str::<Sets>(text).unwrap_err().to_string();
        assert!(error.contains("must be 1 to 20, not 10000"), "{error}");
    }

    #[test]
    fn the_last_reserve_stays() {
        let text = r#"{"kind":"work","count":3,"target":{"reps":5},"reserve":[2,1]}"#;
        let sets: Sets = serde_json::from_str(text).unwrap();
        let got: Vec<_> = (0..3).map(|i| sets.reserve_of(i).unwrap().get()).collect();
        assert_eq!(got, [2, 1, 1]);
    }
}

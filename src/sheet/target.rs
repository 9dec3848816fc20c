//! What a set asks for: repetitions, a time, a distance, or stages done without rest between them.

use super::tempo::Tempo;
use crate::say;
use crate::units::{Metres, Reps, Seconds, clock};
use crate::words::{many, t};
use serde::de::{Deserializer, Error, MapAccess, Visitor};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Most stages in one set.
pub const STAGES_MAX: usize = 8;

/// How many repetitions.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(into = "RepTargetForm")]
pub enum RepTarget {
    /// Exactly so many.
    Fixed(Reps),
    /// From the first to the second, the first being smaller.
    Range(Reps, Reps),
    /// So many and then as many as possible.
    AtLeast(Reps),
}

/// The file's form of a [`RepTarget`]: 5, or {from, to}, or {least}.
#[derive(Serialize)]
#[serde(untagged)]
enum RepTargetForm {
    Fixed(Reps),
    Range { from: Reps, to: Reps },
    AtLeast { least: Reps },
}

/// Why repetitions could not be prescribed so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum UnfitReps {
    /// Zero repetitions prescribed.
    None,
    /// The range is upside down or has no width.
    UpsideDown {
        /// Its first number.
        from: Reps,
        /// Its second number.
        to: Reps,
    },
}

impl fmt::Display for UnfitReps {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitReps::None => f.write_str(t("a set asks for at least 1 rep")),
            UnfitReps::UpsideDown { from, to } => f.write_str(&say!(
                "the range {from}–{to} does not rise: the smaller number comes first",
                from,
                to
            )),
        }
    }
}

impl std::error::Error for UnfitReps {}

impl RepTarget {
    /// Exactly `n`.
    ///
    /// # Errors
    /// [`UnfitReps::None`] for 0.
    pub fn fixed(n: Reps) -> Result<RepTarget, UnfitReps> {
        if n.get() == 0 {
            Err(UnfitReps::None)
        } else {
            Ok(RepTarget::Fixed(n))
        }
    }

    /// From `low` to `high`.
    ///
    /// # Errors
    /// [`UnfitReps`] when `low` is 0 or not below `high`.
    pub fn range(low: Reps, high: Reps) -> Result<RepTarget, UnfitReps> {
        if low.get() == 0 {
            Err(UnfitReps::None)
        } else if low >= high {
            Err(UnfitReps::UpsideDown {
                from: low,
                to: high,
            })
        } else {
            Ok(RepTarget::Range(low, high))
        }
    }

    /// `n` or more.
    ///
    /// # Errors
    /// [`UnfitReps::None`] for 0.
    pub fn at_least(n: Reps) -> Result<RepTarget, UnfitReps> {
        if n.get() == 0 {
            Err(UnfitReps::None)
        } else {
            Ok(RepTarget::AtLeast(n))
        }
    }

    /// The fewest that meet the target.
    #[must_use]
    pub fn low(self) -> Reps {
        match self {
            RepTarget::Fixed(n) | RepTarget::Range(n, _) | RepTarget::AtLeast(n) => n,
        }
    }

    /// The number that is cued and offered at the tap: the top of a range.
    #[must_use]
    pub fn top(self) -> Reps {
        match self {
            RepTarget::Fixed(n) | RepTarget::Range(_, n) | RepTarget::AtLeast(n) => n,
        }
    }
}

impl fmt::Display for RepTarget {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            RepTarget::Fixed(n) => n.fmt(f),
            RepTarget::Range(low, high) => write!(f, "{low}–{high}"),
            RepTarget::AtLeast(n) => write!(f, "{n}+"),
        }
    }
}

impl From<RepTarget> for RepTargetForm {
    fn from(target: RepTarget) -> RepTargetForm {
        match target {
            RepTarget::Fixed(n) => RepTargetForm::Fixed(n),
            RepTarget::Range(from, to) => RepTargetForm::Range { from, to },
            RepTarget::AtLeast(least) => RepTargetForm::AtLeast { least },
        }
    }
}

/// What a file may say, in words.
fn forms() -> &'static str {
    t("a number of reps like 5, or {\"from\": 5, \"to\": 7}, or {\"least\": 8}")
}

/// Reads the file's form, without trying one after the other: so an error keeps its place and its reason.
struct RepTargetVisitor;

impl<'de> Visitor<'de> for RepTargetVisitor {
    type Value = RepTarget;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(forms())
    }

    fn visit_i64<E: Error>(self, n: i64) -> Result<RepTarget, E> {
        let reps = Reps::new(n).map_err(E::custom)?;
        RepTarget::fixed(reps).map_err(E::custom)
    }

    fn visit_u64<E: Error>(self, n: u64) -> Result<RepTarget, E> {
        // What is beyond an i64 is far out of range, and so is its largest number.
        self.visit_i64(i64::try_from(n).unwrap_or(i64::MAX))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<RepTarget, A::Error> {
        const NAMES: &[&str] = &["from", "to", "least"];
        let mut given = [None; 3];
        while let Some(name) = map.next_key::<String>()? {
            match NAMES.iter().position(|known| *known == name) {
                Some(field) if given[field].is_some() => {
                    return Err(A::Error::duplicate_field(NAMES[field]));
                }
                Some(field) => given[field] = Some(map.next_value::<Reps>()?),
                None => return Err(A::Error::unknown_field(&name, NAMES)),
            }
        }
        match given {
            [Some(from), Some(to), None] => RepTarget::range(from, to),
            [None, None, Some(least)] => RepTarget::at_least(least),
            _ => return Err(A::Error::custom(say!("expected {what}", what = forms()))),
        }
        .map_err(A::Error::custom)
    }
}

impl<'de> Deserialize<'de> for RepTarget {
    fn deserialize<D: Deserializer<'de>>(source: D) -> Result<RepTarget, D::Error> {
        source.deserialize_any(RepTargetVisitor)
    }
}

/// One part of a set that is done in parts without rest.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Stage {
    /// Hold still.
    Hold {
        /// How long.
        seconds: Seconds,
    },
    /// Full repetitions at a tempo of their own.
    Reps {
        /// How many.
        reps: RepTarget,
        /// How fast.
        tempo: Tempo,
    },
    /// Partial repetitions, short of the full way.
    Partials {
        /// How many.
        reps: RepTarget,
    },
}

impl Stage {
    /// The stage in words for the screen; written out by `Display` it is as a sheet as text has it.
    #[must_use]
    pub fn said(&self) -> String {
        match self {
            Stage::Hold { seconds } => say!("hold {seconds} s", seconds),
            Stage::Reps { reps, tempo } => say!("{reps} at {tempo}", reps, tempo),
            Stage::Partials {
                reps: RepTarget::Fixed(reps),
            } => many(usize::from(reps.get()), "{n} partial", "{n} partials"),
            Stage::Partials { reps } => say!("{reps} partials", reps),
        }
    }
}

impl fmt::Display for Stage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Stage::Hold { seconds } => write!(f, "hold {seconds} s"),
            Stage::Reps { reps, tempo } => write!(f, "{reps} at {tempo}"),
            Stage::Partials { reps } => write!(f, "{reps} partials"),
        }
    }
}

/// What one set asks for.
#[derive(Debug, Clone, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Target {
    /// Repetitions at the block's tempo.
    Reps(RepTarget),
    /// A length of time, under load.
    Timed(Seconds),
    /// A way to carry or push.
    Distance(Metres),
    /// Stages in this order, without rest between them: 1 to 8.
    Stages(#[serde(deserialize_with = "stages")] Vec<Stage>),
}

fn stages<'de, D: serde::Deserializer<'de>>(source: D) -> Result<Vec<Stage>, D::Error> {
    let stages = Vec::<Stage>::deserialize(source)?;
    if (1..=STAGES_MAX).contains(&stages.len()) {
        Ok(stages)
    } else {
        Err(serde::de::Error::custom(say!(
            "a staged set has 1 to {most} stages, not {given}",
            most = STAGES_MAX,
            given = stages.len(),
        )))
    }
}

impl Target {
    /// What it asks for in words for the screen.
    #[must_use]
    pub fn said(&self) -> String {
        match self {
            Target::Stages(stages) => {
                let said: Vec<String> = stages.iter().map(Stage::said).collect();
                said.join(" → ")
            }
            _ => self.to_string(),
        }
    }

    /// The repetitions offered at the tap: of a staged set those of its last stage with any, else none.
    #[must_use]
    pub fn offered_reps(&self) -> Option<Reps> {
        match self {
            Target::Reps(reps) => Some(reps.top()),
            Target::Timed(_) | Target::Distance(_) => None,
            Target::Stages(stages) => stages.iter().rev().find_map(|stage| match stage {
                Stage::Reps { reps, .. } | Stage::Partials { reps } => Some(reps.top()),
                Stage::Hold { .. } => None,
            }),
        }
    }

    /// The plain repetition target, when that is all the set asks for.
    #[must_use]
    pub fn plain_reps(&self) -> Option<RepTarget> {
        match self {
            Target::Reps(reps) => Some(*reps),
            _ => None,
        }
    }
}

impl fmt::Display for Target {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Target::Reps(reps) => reps.fmt(f),
            Target::Timed(seconds) => f.write_str(&clock(i64::from(seconds.get()))),
            Target::Distance(metres) => write!(f, "{metres} m"),
            Target::Stages(stages) => {
                for (i, stage) in stages.iter().enumerate() {
                    if i > 0 {
                        f.write_str(" → ")?;
                    }
                    stage.fmt(f)?;
                }
                Ok(())
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn reps(n: i64) -> Reps {
        Reps::new(n).unwrap()
    }

    #[test]
    fn a_range_must_rise() {
        assert!(RepTarget::range(reps(7), reps(5)).is_err());
        assert!(RepTarget::range(reps(5), reps(5)).is_err());
        let error = serde_json::from_str::<RepTarget>(r#"{"from":7,"to":5}"#).unwrap_err();
        assert!(error.to_string().contains("7–5 does not rise"), "{error}");
    }

    #[test]
    fn each_form_of_reps_survives_the_file() {
        for text in ["5", r#"{"from":5,"to":7}"#, r#"{"least":8}"#] {
            let target: RepTarget = serde_json::from_str(text).unwrap();
            assert_eq!(serde_json::to_string(&target).unwrap(), text);
        }
    }

    #[test]
    fn a_staged_set_needs_a_stage() {
        assert!(serde_json::from_str::<Target>(r#"{"stages":[]}"#).is_err());
    }

    #[test]
    fn what_a_staged_set_offers_is_its_last_count() {
        let text = r#"{"stages":[{"hold":{"seconds":10}},{"reps":{"reps":6,"tempo":"4/0/2/0"}},{"partials":{"reps":8}}]}"#;
        let target: Target = serde_json::from_str(text).unwrap();
        assert_eq!(target.offered_reps(), Some(reps(8)));
        assert_eq!(target.to_string(), "hold 10 s → 6 at 4/0/2/0 → 8 partials");
    }
}

//! Why a set says nothing about strength, as data with its words.

use crate::units::Reps;
use serde::{Deserialize, Serialize};
use std::fmt;

/// Why a set does not feed the estimate.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum Unfed {
    /// A lighter set on the way to the work load.
    RampUp,
    /// A lighter set after the heaviest.
    BackOff,
    /// A drop set: its reps follow one on the other without rest.
    Drop,
    /// Portions with pauses inside: more reps than in one go.
    Cluster,
    /// Done in stages, with holds or partial reps among them.
    Staged,
    /// For a time.
    Timed,
    /// For a distance.
    Distance,
    /// Done in a light week, which was meant to be easy.
    LightWeek,
    /// No plain work set; an older row does not say more.
    NotPlain,
    /// Nothing is moved that could be weighed.
    NoLoad,
    /// A band: what it pulls is not known.
    Band,
    /// The body is moved and its mass on the day is not known.
    BodyMassUnknown,
    /// What the load is added to is not known, in a row of an older version.
    BasisUnknown,
    /// More reps, with the reserve, than the curve holds for: burn-outs among them.
    OffTheCurve {
        /// So many.
        reps: Reps,
    },
}

impl fmt::Display for Unfed {
    /// A sentence for the ledger.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("not in the estimate: ")?;
        match self {
            Unfed::RampUp => f.write_str("a ramp-up set"),
            Unfed::BackOff => f.write_str("a back-off set"),
            Unfed::Drop => f.write_str("a drop set, one load after the other without rest"),
            Unfed::Cluster => f.write_str("a cluster, with pauses inside"),
            Unfed::Staged => f.write_str("a set in stages"),
            Unfed::Timed => f.write_str("a set for a time"),
            Unfed::Distance => f.write_str("a set for a distance"),
            Unfed::LightWeek => f.write_str("done in a light week"),
            Unfed::NotPlain => f.write_str("no plain work set"),
            Unfed::NoLoad => f.write_str("no load that could be weighed"),
            Unfed::Band => f.write_str("what a band pulls is not known"),
            Unfed::BodyMassUnknown => {
                f.write_str("the body mass of that day is not known; say yours in Kit")
            }
            Unfed::BasisUnknown => f.write_str("kept by an older version without its load basis"),
            Unfed::OffTheCurve { reps } => {
                write!(f, "{reps} reps with the reserve, the curve ends before")
            }
        }
    }
}

//! Why a set says nothing about strength, as data with its words.

use crate::say;
use crate::words::t;
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
}

impl fmt::Display for Unfed {
    /// A sentence for the ledger.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let why = t(match self {
            Unfed::RampUp => "a ramp-up set",
            Unfed::BackOff => "a back-off set",
            Unfed::Drop => "a drop set, one load after the other without rest",
            Unfed::Cluster => "a cluster, with pauses inside",
            Unfed::Staged => "a set in stages",
            Unfed::Timed => "a set for a time",
            Unfed::Distance => "a set for a distance",
            Unfed::LightWeek => "done in a light week",
            Unfed::NoLoad => "no load that could be weighed",
            Unfed::Band => "what a band pulls is not known",
            Unfed::BodyMassUnknown => "the body mass of that day is not known; say yours in Kit",
            Unfed::BasisUnknown => "kept by an older version without its load basis",
            Unfed::NotPlain => "no plain work set",
        });
        f.write_str(&say!("not in the estimate: {why}", why))
    }
}

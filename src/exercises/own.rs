//! An exercise of the lifter's own, or a listed one under another name: history goes by the id, so it stays.

use super::muscle::{Muscle, Muscles};
use crate::say;
use crate::sheet::{Equipment, Exercise, ExerciseId, Line, LoadBasis, Pattern, SideMode};
use crate::words::t;
use chrono::{DateTime, FixedOffset};
use serde::{Deserialize, Serialize};
use std::fmt;
use uuid::Uuid;

/// Most caution lines of an exercise: as many as a block holds.
pub const CAUTIONS_MAX: usize = 20;

/// What is known of an exercise of one's own, as written at one time. With the id of a listed exercise it stands in
/// for that one.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct OwnExercise {
    /// Lasting id: history goes by it.
    pub id: ExerciseId,
    /// This version, UUIDv7; the newest of an id counts.
    pub version: Uuid,
    /// When this version was written.
    pub written: DateTime<FixedOffset>,
    /// Name on screen.
    pub name: Line,
    /// The movement pattern.
    pub pattern: Pattern,
    /// What the load is made of.
    pub equipment: Equipment,
    /// The muscles that do most of the work.
    #[serde(skip_serializing_if = "Muscles::is_empty")]
    pub main: Muscles,
    /// The muscles that help or hold; none that is main.
    #[serde(skip_serializing_if = "Muscles::is_empty")]
    pub also: Muscles,
    /// What the load usually means together with the body.
    pub basis: LoadBasis,
    /// How the sides usually share a set.
    pub sides: SideMode,
    /// Caution lines for a new block.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<Line>,
}

/// Why an exercise does not hold together.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum UnfitExercise {
    /// A muscle is said to do most of the work and to help.
    MainAndAlso(Muscle),
    /// So many caution lines.
    Cautions(usize),
}

impl fmt::Display for UnfitExercise {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            UnfitExercise::MainAndAlso(muscle) => f.write_str(&say!(
                "{muscle} cannot be both a main muscle and one that helps: remove it from one list",
                muscle = muscle.name()
            )),
            UnfitExercise::Cautions(given) => f.write_str(&say!(
                "there are {given} caution lines, at most {most} are allowed",
                given,
                most = CAUTIONS_MAX
            )),
        }
    }
}

impl std::error::Error for UnfitExercise {}

impl OwnExercise {
    /// Checks that it holds together.
    ///
    /// # Errors
    /// [`UnfitExercise`].
    pub fn check(&self) -> Result<(), UnfitExercise> {
        if let Some(muscle) = self.main.and(self.also).iter().next() {
            Err(UnfitExercise::MainAndAlso(muscle))
        } else if self.cautions.len() > CAUTIONS_MAX {
            Err(UnfitExercise::Cautions(self.cautions.len()))
        } else {
            Ok(())
        }
    }

    /// The exercise as a block names it.
    #[must_use]
    pub fn exercise(&self) -> Exercise {
        Exercise {
            id: self.id.clone(),
            name: self.name.clone(),
            pattern: self.pattern,
            equipment: self.equipment,
        }
    }
}

/// The file's form of one's own exercise, written or removed. One struct: so an error keeps its place in the file.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExerciseForm {
    pub id: ExerciseId,
    pub version: Uuid,
    pub written: DateTime<FixedOffset>,
    removed: Option<bool>,
    name: Option<Line>,
    pattern: Option<Pattern>,
    equipment: Option<Equipment>,
    main: Option<Muscles>,
    also: Option<Muscles>,
    basis: Option<LoadBasis>,
    sides: Option<SideMode>,
    cautions: Option<Vec<Line>>,
}

impl ExerciseForm {
    /// True for the note that it was removed.
    pub fn is_removed(&self) -> bool {
        self.removed == Some(true)
    }

    /// True when nothing of a written exercise is in it.
    pub fn is_bare(&self) -> bool {
        self.name.is_none()
            && self.pattern.is_none()
            && self.equipment.is_none()
            && self.main.is_none()
            && self.also.is_none()
            && self.basis.is_none()
            && self.sides.is_none()
            && self.cautions.is_none()
    }
}

impl TryFrom<ExerciseForm> for OwnExercise {
    type Error = String;

    fn try_from(form: ExerciseForm) -> Result<OwnExercise, String> {
        let own = OwnExercise {
            id: form.id,
            version: form.version,
            written: form.written,
            name: form.name.ok_or(t("the exercise needs a name"))?,
            pattern: form.pattern.ok_or(t("the exercise needs a pattern"))?,
            equipment: form.equipment.ok_or(t("the exercise needs equipment"))?,
            main: form.main.unwrap_or_default(),
            also: form.also.unwrap_or_default(),
            basis: form
                .basis
                .ok_or(t("the exercise needs a basis of its load"))?,
            sides: form.sides.unwrap_or_default(),
            cautions: form.cautions.unwrap_or_default(),
        };
        own.check().map_err(|error| error.to_string())?;
        Ok(own)
    }
}

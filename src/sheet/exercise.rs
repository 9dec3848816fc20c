//! An exercise: its lasting id, name, movement pattern and equipment.

use super::loads::LoadBasis;
use super::text::Line;
use crate::say;
use crate::words::{small, t, t_in};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Longest exercise id, in characters.
const ID_CHARS_MAX: usize = 64;
/// Most characters of an id made from a name, before its number.
const NAME_CHARS_MAX: usize = 50;

/// What identifies an exercise for ever, whatever it is called: 1 to 64 of a–z, 0–9 and hyphens.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct ExerciseId(String);

/// Why an exercise id could not be taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnfitId(String);

impl fmt::Display for UnfitId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&say!(
            "“{given}” is no exercise id: use 1 to {most} of a–z, 0–9 and hyphens",
            given = self.0,
            most = ID_CHARS_MAX,
        ))
    }
}

impl std::error::Error for UnfitId {}

impl ExerciseId {
    /// Checks length and letters.
    ///
    /// # Errors
    /// [`UnfitId`].
    pub fn new(text: &str) -> Result<ExerciseId, UnfitId> {
        let fits = (1..=ID_CHARS_MAX).contains(&text.len())
            && text
                .bytes()
                .all(|b| b.is_ascii_lowercase() || b.is_ascii_digit() || b == b'-');
        if fits {
            Ok(ExerciseId(text.to_owned()))
        } else {
            Err(UnfitId(text.chars().take(ID_CHARS_MAX).collect()))
        }
    }

    /// The id of an exercise that is known by its name only: small letters, digits and hyphens; with a number made
    /// from the whole name where letters were lost, so that names in other scripts stay apart. One name always gives
    /// one id, so what was written in a line and is described later keeps its history.
    ///
    /// # Panics
    /// Never: what is made is at most 59 letters, digits and hyphens.
    #[must_use]
    pub fn of_name(name: &str) -> ExerciseId {
        let lower = small(name);
        let mut id = String::new();
        let mut lost = false;
        for c in lower.chars() {
            if c.is_ascii_alphanumeric() {
                if id.len() < NAME_CHARS_MAX {
                    id.push(c);
                } else {
                    lost = true;
                }
            } else {
                lost |= !c.is_ascii();
                if !id.is_empty() && !id.ends_with('-') && id.len() < NAME_CHARS_MAX {
                    id.push('-');
                }
            }
        }
        let mut id = id.trim_end_matches('-').to_owned();
        if lost || id.is_empty() {
            // FNV-1a, 32 bits (Fowler, Noll, Vo): short and the same on every machine.
            let hash = lower.bytes().fold(0x811c_9dc5_u32, |hash, byte| {
                (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193)
            });
            id = format!("{id}-{hash:08x}")
                .trim_start_matches('-')
                .to_owned();
        }
        ExerciseId::new(&id).expect("letters, digits and hyphens, at most 59")
    }

    /// The id as text.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }
}

impl fmt::Display for ExerciseId {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl TryFrom<String> for ExerciseId {
    type Error = UnfitId;
    fn try_from(text: String) -> Result<ExerciseId, UnfitId> {
        ExerciseId::new(&text)
    }
}

impl From<ExerciseId> for String {
    fn from(id: ExerciseId) -> String {
        id.0
    }
}

/// The movement pattern, in the trade's words.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Pattern {
    /// Knee-dominant: squats, split squats, step-ups.
    Squat,
    /// Hip-dominant: deadlifts, good mornings, swings.
    Hinge,
    /// Horizontal push.
    PushAcross,
    /// Vertical push.
    PushUpward,
    /// Horizontal pull, bent-over rows among them.
    PullAcross,
    /// Vertical pull.
    PullDownward,
    /// Loaded carries.
    Carry,
    /// Jumps, throws, cleans and snatches.
    Explosive,
    /// Trunk.
    Trunk,
    /// One joint: curls, extensions, raises.
    SingleJoint,
}

impl Pattern {
    /// The name on screen.
    #[must_use]
    pub fn name(self) -> &'static str {
        t(match self {
            Pattern::Squat => "squat",
            Pattern::Hinge => "hinge",
            Pattern::PushAcross => "push across",
            Pattern::PushUpward => "push upward",
            Pattern::PullAcross => "pull across",
            Pattern::PullDownward => "pull downward",
            Pattern::Carry => "carry",
            Pattern::Explosive => "explosive",
            Pattern::Trunk => "trunk",
            Pattern::SingleJoint => "single joint",
        })
    }

    /// True for patterns of the lower body, whose usual steps are larger.
    #[must_use]
    pub fn is_lower_body(self) -> bool {
        matches!(self, Pattern::Squat | Pattern::Hinge)
    }
}

/// What the load is made of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Equipment {
    /// A bar of the kit with pairs of plates.
    Barbell,
    /// Fixed dumbbells or kettlebells of the kit; the load is that of one.
    Dumbbell,
    /// Loadable dumbbell handles; the load is that of one.
    Handle,
    /// A weight stack.
    Stack,
    /// An elastic band.
    Band,
    /// The body, with or without added load.
    Body,
    /// Anything else: any load that is written or chosen; steps lead to multiples of the kit's smallest one.
    Other,
}

impl Equipment {
    /// What it is loaded as: the load of a handle means what that of a dumbbell does.
    #[must_use]
    pub fn loaded_as(self) -> Equipment {
        match self {
            Equipment::Handle => Equipment::Dumbbell,
            other => other,
        }
    }

    /// True for what is lifted itself: a bar, dumbbells, handles. Only by a pulley can it take load off the body.
    #[must_use]
    pub fn is_lifted(self) -> bool {
        matches!(
            self,
            Equipment::Barbell | Equipment::Dumbbell | Equipment::Handle
        )
    }

    /// The name on screen, the only one. What a line calls it is for programs too, and the same in every language.
    #[must_use]
    pub fn name(self) -> &'static str {
        t_in(
            "equipment",
            match self {
                Equipment::Barbell => "barbell",
                Equipment::Dumbbell => "dumbbell or kettlebell",
                Equipment::Handle => "loadable handle",
                Equipment::Stack => "weight stack",
                Equipment::Band => "band",
                Equipment::Body => "own body",
                Equipment::Other => "other",
            },
        )
    }
}

/// An exercise as a block names it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Exercise {
    /// Lasting id: history goes by it.
    pub id: ExerciseId,
    /// Name on screen.
    pub name: Line,
    /// Movement pattern.
    pub pattern: Pattern,
    /// What the load is made of.
    pub equipment: Equipment,
}

/// An exercise that is known by a name, and what its load usually means together with the body.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Named {
    /// The exercise as a block names it.
    pub exercise: Exercise,
    /// The usual basis of its load.
    pub basis: LoadBasis,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_id_is_plain_letters() {
        assert!(ExerciseId::new("front-squat").is_ok());
        for text in ["", "Front", "a b", "ü", &"x".repeat(65)] {
            assert!(ExerciseId::new(text).is_err(), "{text}");
        }
    }
}

//! The words of a warning about the order: its reason in one sentence, and where that is from.

use super::Catalogue;
use super::order_check::{Stage, shared};
use crate::sheet::{Block, OrderWarning, Sheet, WarningKind};

impl OrderWarning {
    /// The reason in one sentence, with the names of both exercises; empty when `sheet` lacks one of the blocks.
    #[must_use]
    pub fn said(&self, sheet: &Sheet, exercises: &Catalogue) -> String {
        let (Some(earlier), Some(later)) = (sheet.block(self.earlier), sheet.block(self.later))
        else {
            return String::new();
        };
        let (first, then) = (&earlier.exercise.name, &later.exercise.name);
        match self.kind {
            WarningKind::Role => format!(
                "{then} ({}) comes after {first} ({}): fast work goes first, then heavy, then lighter, then burn-outs.",
                stage(later),
                stage(earlier)
            ),
            WarningKind::Grip => {
                format!(
                    "{first} tires the grip that {then} hangs by: the hands may give out first."
                )
            }
            WarningKind::LowerBack => format!(
                "{first} tires the lower back, which has to hold in {then}: do {then} while it is fresh."
            ),
            WarningKind::SameMuscle => format!(
                "{first} tires what {then} works most ({}): the heavier work would get less.",
                shared(earlier, later, exercises).unwrap_or("the same muscle")
            ),
        }
    }

    /// Where the reason is from.
    #[must_use]
    pub fn source(&self) -> &'static str {
        match self.kind {
            WarningKind::Role => {
                "NSCA guidance on exercise order: power, other multi-joint, assistance work (from memory)"
            }
            WarningKind::SameMuscle => {
                "ACSM position stand 2009: large muscles before small, several joints before one (from memory)"
            }
            WarningKind::Grip | WarningKind::LowerBack => "common practice, no source",
        }
    }
}

fn stage(block: &Block) -> &'static str {
    match Stage::of(block) {
        Stage::Fast => "power",
        Stage::Heavy => "heavy",
        Stage::Lighter => "muscle-building",
        Stage::BurnOut => "burn-out",
    }
}

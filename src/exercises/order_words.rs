//! The words of a warning about the order: its reason in one sentence, and where that is from.

use super::Catalogue;
use super::order_check::{Stage, shared};
use crate::say;
use crate::sheet::{Block, OrderWarning, Sheet, WarningKind};
use crate::words::t;

impl OrderWarning {
    /// The reason in one sentence, with the names of both exercises; empty when `sheet` lacks one of the blocks.
    #[must_use]
    pub fn said(&self, sheet: &Sheet, exercises: &Catalogue) -> String {
        let (Some(earlier), Some(later)) = (sheet.block(self.earlier), sheet.block(self.later))
        else {
            return String::new();
        };
        let name = |block: &Block| block.exercise.said();
        let (first, then) = (name(earlier), name(later));
        match self.kind {
            WarningKind::Role => say!(
                "{then} ({stage}) comes after {first} ({stage_first}): fast work goes first, then heavy, then lighter, then burn-outs.",
                then,
                stage = stage(later),
                first,
                stage_first = stage(earlier)
            ),
            WarningKind::Grip => say!(
                "{first} tires the grip that {then} hangs by: the hands may give out first.",
                first,
                then
            ),
            WarningKind::LowerBack => say!(
                "{first} tires the lower back, which has to hold in {then}: the other way round it is fresh.",
                first,
                then
            ),
            WarningKind::SameMuscle => say!(
                "{first} tires what {then} works most ({muscle}): the heavier work would get less.",
                first,
                then,
                muscle = shared(earlier, later, exercises).unwrap_or_else(|| t("the same muscle"))
            ),
        }
    }

    /// Where the reason is from.
    #[must_use]
    pub fn source(&self) -> &'static str {
        t(match self.kind {
            WarningKind::Role => {
                "NSCA guidance on exercise order: power, other multi-joint, assistance work (from memory)"
            }
            WarningKind::SameMuscle => {
                "ACSM position stand 2009: large muscles before small, several joints before one (from memory)"
            }
            WarningKind::Grip | WarningKind::LowerBack => "common practice, no source",
        })
    }
}

fn stage(block: &Block) -> &'static str {
    t(match Stage::of(block) {
        Stage::Fast => "power",
        Stage::Heavy => "heavy",
        Stage::Lighter => "muscle-building",
        Stage::BurnOut => "burn-out",
    })
}

//! What an exercise takes in the hands, and what its load is together with the body.

use crate::kit::Kit;
use crate::sheet::{Equipment, Line, LoadBasis};
use crate::units::Share;
use crate::words::later;

/// What is taken. Finer than [`Equipment`]: a loadable handle stands in for a dumbbell, not for a kettlebell.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Means {
    Barbell,
    /// One dumbbell, or any one weight.
    Single,
    /// Two dumbbells alike.
    Pair,
    Kettlebell,
    Stack,
    Band,
    Body,
    Other,
}

impl Means {
    /// The equipment where the kit has everything.
    pub(super) fn equipment(self) -> Equipment {
        match self {
            Means::Barbell => Equipment::Barbell,
            Means::Single | Means::Pair | Means::Kettlebell => Equipment::Dumbbell,
            Means::Stack => Equipment::Stack,
            Means::Band => Equipment::Band,
            Means::Body => Equipment::Body,
            Means::Other => Equipment::Other,
        }
    }

    /// The equipment that stands for it in `kit`: handles where there are no dumbbells. A kit does not say what it
    /// has of other things, so they always pass.
    pub(super) fn in_kit(self, kit: &Kit) -> Option<Equipment> {
        let listed = self.equipment();
        let by_handle = match self {
            Means::Single => handles(kit) >= 1,
            Means::Pair => handles(kit) >= 2,
            _ => false,
        };
        if has(kit, listed) {
            Some(listed)
        } else {
            by_handle.then_some(Equipment::Handle)
        }
    }

    /// Words that find it, in English: all that it can be done with.
    pub(super) fn words(self) -> &'static str {
        later(match self {
            Means::Barbell => "barbell bar",
            Means::Single | Means::Pair => "dumbbell kettlebell handle",
            Means::Kettlebell => "kettlebell dumbbell",
            Means::Stack => "stack cable machine pulley",
            Means::Band => "band",
            Means::Body => "own body bodyweight",
            Means::Other => "other",
        })
    }
}

fn handles(kit: &Kit) -> u8 {
    let handles = kit.parts().handles.as_ref();
    handles.map_or(0, |handle| handle.count)
}

/// True when `kit` has some of it, or does not list such things.
fn has(kit: &Kit, equipment: Equipment) -> bool {
    let parts = kit.parts();
    match equipment {
        Equipment::Barbell => !parts.bars.is_empty(),
        Equipment::Dumbbell => !parts.dumbbells.is_empty(),
        Equipment::Handle => handles(kit) > 0,
        Equipment::Stack => !parts.stacks.is_empty(),
        Equipment::Band => !parts.bands.is_empty(),
        Equipment::Body | Equipment::Other => true,
    }
}

/// What stands for `equipment` in `kit`, for an exercise that does not say how many it takes: one handle will do where
/// there are no dumbbells.
pub(super) fn stands_for(equipment: Equipment, kit: &Kit) -> Option<Equipment> {
    let by_handle = equipment == Equipment::Dumbbell && handles(kit) > 0;
    if has(kit, equipment) {
        Some(equipment)
    } else {
        by_handle.then_some(Equipment::Handle)
    }
}

/// Words that find `equipment`, in English.
pub(super) fn equipment_words(equipment: Equipment) -> &'static str {
    match equipment {
        Equipment::Barbell => Means::Barbell.words(),
        Equipment::Dumbbell => Means::Pair.words(),
        Equipment::Handle => later("handle dumbbell"),
        Equipment::Stack => Means::Stack.words(),
        Equipment::Band => Means::Band.words(),
        Equipment::Body => Means::Body.words(),
        Equipment::Other => Means::Other.words(),
    }
}

/// What is moved. Shares of body mass: Ebben et al. 2011, J Strength Cond Res 25(10):2891–2894, peak force under the
/// hands; feet on a box from memory. Exercises whose share nobody named here have [`Moved::Nothing`].
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Moved {
    /// The load alone.
    External,
    /// The whole body and the load (pull-up, chin-up, dip: Johnson et al. 2009, J Strength Cond Res 23(3):1022–1028;
    /// others common practice, no source).
    WholeBody,
    /// The whole body less the load.
    Assisted,
    /// 0.64 of the body.
    PushUp,
    /// 0.49 of the body.
    KneePushUp,
    /// 0.41 of the body, hands 61 cm up.
    HandsUp,
    /// 0.74 of the body, feet 61 cm up: from memory.
    FeetUp,
    /// A band that resists.
    Band,
    /// A band that takes some of the body off.
    BandHelp,
    /// No figure of load.
    Nothing,
}

impl Moved {
    pub(super) fn basis(self) -> LoadBasis {
        let share = |percent| LoadBasis::BodyMassShare(Share::percent(percent));
        match self {
            Moved::External => LoadBasis::External,
            Moved::WholeBody => LoadBasis::BodyMassPlus,
            Moved::Assisted => LoadBasis::BodyMassMinus,
            Moved::PushUp => share(64),
            Moved::KneePushUp => share(49),
            Moved::HandsUp => share(41),
            Moved::FeetUp => share(74),
            Moved::Band | Moved::BandHelp => {
                LoadBasis::Band(Line::new("band").expect("a written line is fit"))
            }
            Moved::Nothing => LoadBasis::Unloaded,
        }
    }
}

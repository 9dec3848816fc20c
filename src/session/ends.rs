//! How a set ends in the lifter's hands, which is when it is logged.

use crate::sheet::{Block, Equipment, Pattern};

/// What is done with the load when a set is over.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ends {
    /// It goes back to the rack.
    Racked,
    /// It is put down.
    PutDown,
    /// There is nothing to put away: a body, a band, a stack. So it is where both may be: a clean is put down, a push
    /// press racked.
    Done,
}

impl Ends {
    /// How the sets of a block end. A bar that was pushed or squatted with came from the rack; any other weight in the hands
    /// comes from the ground or a stand.
    #[must_use]
    pub fn of(block: &Block) -> Ends {
        let racked = matches!(
            block.exercise.pattern,
            Pattern::Squat | Pattern::PushAcross | Pattern::PushUpward
        );
        match block.exercise.equipment {
            _ if !block.basis.has_load() => Ends::Done,
            Equipment::Barbell if racked => Ends::Racked,
            Equipment::Barbell if block.exercise.pattern == Pattern::Explosive => Ends::Done,
            equipment if equipment.is_lifted() => Ends::PutDown,
            _ => Ends::Done,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sheet::{Line, LoadBasis, tests::block};

    #[test]
    fn what_is_said_fits_what_is_in_the_hands() {
        let ends = |equipment, pattern, basis| {
            let mut block = block(r#"[{"kind":"work","count":1,"target":{"reps":5}}]"#);
            block.exercise.equipment = equipment;
            block.exercise.pattern = pattern;
            block.basis = basis;
            Ends::of(&block)
        };
        use Equipment::{Band, Barbell, Body, Dumbbell, Handle, Other, Stack};
        use LoadBasis::{BodyMassPlus, External, Unloaded};
        for pattern in [Pattern::Squat, Pattern::PushAcross, Pattern::PushUpward] {
            assert_eq!(ends(Barbell, pattern, External), Ends::Racked);
            assert_eq!(ends(Dumbbell, pattern, External), Ends::PutDown);
        }
        for pattern in [Pattern::Hinge, Pattern::PullAcross, Pattern::Carry] {
            assert_eq!(ends(Barbell, pattern, External), Ends::PutDown);
        }
        assert_eq!(ends(Barbell, Pattern::Explosive, External), Ends::Done);
        assert_eq!(ends(Handle, Pattern::SingleJoint, External), Ends::PutDown);
        assert_eq!(ends(Stack, Pattern::PullAcross, External), Ends::Done);
        assert_eq!(ends(Other, Pattern::Squat, External), Ends::Done);
        assert_eq!(ends(Body, Pattern::Trunk, Unloaded), Ends::Done);
        assert_eq!(ends(Body, Pattern::PullDownward, BodyMassPlus), Ends::Done);
        let band = LoadBasis::Band(Line::new("light").unwrap());
        assert_eq!(ends(Band, Pattern::PullAcross, band), Ends::Done);
    }
}

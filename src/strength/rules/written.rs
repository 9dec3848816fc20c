//! The load as the sheet has it.

use super::super::because::Because;
use super::super::ladder::Ladder;
use crate::units::Load;

/// The sheet's load, nearest on the safe side.
pub(in super::super) fn as_written(wanted: Load, ladder: &Ladder) -> Because {
    match ladder.keep(wanted) {
        Some(to) => Because::AsWritten { wanted, to },
        None => ladder.out_of_kit(wanted),
    }
}

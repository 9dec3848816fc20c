//! The exercise that a line names, as the list alone knows it and a first kit has it.

use stanchion::exercises::Catalogue;
use stanchion::kit::Kit;
use stanchion::sheet::Named;
use stanchion::units::Unit;

pub fn named(name: &str) -> Option<Named> {
    Catalogue::default().named(name, &Kit::starter(Unit::Kg))
}

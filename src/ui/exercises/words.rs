//! What is said of an exercise, in words.

use crate::exercises::Muscles;
use crate::sheet::{LoadBasis, SideMode};

pub use crate::quick::{EQUIPMENT, PATTERNS};

/// Side modes and their words.
pub const SIDES: [(SideMode, &str); 3] = [
    (SideMode::Both, "both together"),
    (SideMode::EachInTurn, "each in turn"),
    (SideMode::OneHolds, "one holds"),
];

/// The word for a value of such a list.
pub fn word<T: PartialEq>(list: &[(T, &'static str)], value: &T) -> &'static str {
    let found = list.iter().find(|(other, _)| other == value);
    found.map_or("", |(_, word)| word)
}

/// What the load means together with the body.
pub fn basis(basis: &LoadBasis) -> String {
    match basis {
        LoadBasis::External => "the load alone".to_owned(),
        LoadBasis::BodyMassPlus => "body mass and more".to_owned(),
        LoadBasis::BodyMassMinus => "body mass less assistance".to_owned(),
        LoadBasis::BodyMassShare(share) => format!("{share} of body mass"),
        LoadBasis::Band(label) => format!("band: {label}"),
        LoadBasis::Unloaded => "no load".to_owned(),
    }
}

/// Muscles in a row; none said where there are none.
pub fn muscle_names(muscles: Muscles) -> String {
    let names: Vec<&str> = muscles.iter().map(|muscle| muscle.name()).collect();
    if names.is_empty() {
        "none said".to_owned()
    } else {
        names.join(", ")
    }
}

//! What is said of an exercise, in words.

use crate::exercises::{Muscle, Muscles};
use crate::say;
use crate::sheet::{LoadBasis, SideMode};
use crate::words::{decimal, t};

pub use crate::quick::{EQUIPMENT, PATTERNS};

/// Side modes.
pub const SIDES: [SideMode; 3] = [SideMode::Both, SideMode::EachInTurn, SideMode::OneHolds];

/// The word for a side mode.
pub fn sides(sides: SideMode) -> &'static str {
    t(match sides {
        SideMode::Both => "both together",
        SideMode::EachInTurn => "each in turn",
        SideMode::OneHolds => "one holds",
    })
}

/// What the load means together with the body.
pub fn basis(basis: &LoadBasis) -> String {
    match basis {
        LoadBasis::External => t("the load alone").to_owned(),
        LoadBasis::BodyMassPlus => t("body mass and more").to_owned(),
        LoadBasis::BodyMassMinus => t("body mass less assistance").to_owned(),
        LoadBasis::BodyMassShare(share) => {
            say!("{share} of body mass", share = decimal(&share.to_string()))
        }
        LoadBasis::Band(_) => basis.band().unwrap_or_default(),
        LoadBasis::Unloaded => t("no load").to_owned(),
    }
}

/// Muscles in a row; none said where there are none.
pub fn muscle_names(muscles: Muscles) -> String {
    let names: Vec<&str> = muscles.iter().map(Muscle::name).collect();
    if names.is_empty() {
        t("none said").to_owned()
    } else {
        names.join(", ")
    }
}

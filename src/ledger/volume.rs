//! Volume load: repetitions times load, summed over the sets of a session.

use super::record::{DoneLine, SessionRecord};
use crate::say;
use crate::sheet::{Block, LoadBasis};
use crate::units::{KG_PER_LB, Load, Unit, plain_decimal};
use crate::words::{decimal, grouped};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// A sum of repetitions times kilograms, exact, 0 or more. Written `1800 kg`.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default, Serialize, Deserialize,
)]
#[serde(try_from = "String", into = "String")]
pub struct VolumeLoad(Decimal);

/// A text that is no volume load.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnfitVolume(String);

impl fmt::Display for UnfitVolume {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&say!(
            "“{given}” is no volume load: write it like 1800 kg",
            given = self.0
        ))
    }
}

impl std::error::Error for UnfitVolume {}

impl VolumeLoad {
    /// The sum in kilograms.
    #[must_use]
    pub fn kg(self) -> Decimal {
        self.0
    }

    /// For a program to read, whatever the language: `1812.5 kg`.
    #[must_use]
    pub fn plain(self) -> String {
        format!("{} kg", self.0)
    }

    /// Number and unit for the screen, to the whole unit.
    #[must_use]
    pub fn shown(self, unit: Unit) -> String {
        let whole = self.in_unit(unit).round().to_string();
        format!("{} {unit}", grouped(&whole))
    }

    /// The sum in whole units.
    #[must_use]
    pub fn whole(self, unit: Unit) -> i64 {
        let whole = self.in_unit(unit).round();
        i64::try_from(whole).unwrap_or(i64::MAX)
    }

    fn in_unit(self, unit: Unit) -> Decimal {
        match unit {
            Unit::Kg => self.0,
            Unit::Lb => self.0 / KG_PER_LB,
        }
    }

    /// This sum and another.
    #[must_use]
    pub fn plus(self, other: VolumeLoad) -> VolumeLoad {
        VolumeLoad((self.0 + other.0).normalize())
    }

    pub(super) fn add(&mut self, more: Decimal) {
        self.0 = (self.0 + more).normalize();
    }
}

impl fmt::Display for VolumeLoad {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&decimal(&self.plain()))
    }
}

impl FromStr for VolumeLoad {
    type Err = UnfitVolume;

    fn from_str(text: &str) -> Result<VolumeLoad, UnfitVolume> {
        let refusal = || UnfitVolume(text.chars().take(40).collect());
        let number = text.strip_suffix(" kg").ok_or_else(refusal)?;
        match plain_decimal(number) {
            Some(kg) if !kg.is_sign_negative() => Ok(VolumeLoad(kg.normalize())),
            _ => Err(refusal()),
        }
    }
}

impl TryFrom<String> for VolumeLoad {
    type Error = UnfitVolume;
    fn try_from(text: String) -> Result<VolumeLoad, UnfitVolume> {
        text.parse()
    }
}

impl From<VolumeLoad> for String {
    fn from(volume: VolumeLoad) -> String {
        volume.plain()
    }
}

/// The volume load of a session, work and ramp-up apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Volume {
    /// Of all sets but ramp-ups.
    pub work: VolumeLoad,
    /// Of ramp-up sets.
    pub ramp_up: VolumeLoad,
    /// Sets with full repetitions whose load is not known in kilograms, because no load was logged or the body mass is
    /// not known. They are in neither sum.
    pub unknown: usize,
}

impl Volume {
    /// The volume load of a session: Σ repetitions × load (Essentials of Strength Training and Conditioning).
    ///
    /// What counts as a repetition and as load:
    /// - full repetitions only; partials, holds, carries and timed sets add nothing;
    /// - where the sides work apart, both sides: twice the repetitions logged, or those of each side where
    ///   they differ;
    /// - the load that is moved with the body: body mass + load, body mass − assistance (never below zero), or the
    ///   prescribed share of the body mass + load;
    /// - the load as written: that of one dumbbell, where two are held;
    /// - bands and unloaded sets add nothing and are not unknown.
    #[must_use]
    pub fn of(record: &SessionRecord) -> Volume {
        Volume::of_lines(record.lines(), record.body_mass)
    }

    /// The volume load of some sets, counted as [`Volume::of`] says.
    pub(super) fn of_lines<'a>(
        lines: impl Iterator<Item = (&'a Block, &'a DoneLine)>,
        body_mass: Option<Load>,
    ) -> Volume {
        let mut volume = Volume::default();
        for (block, line) in lines {
            let reps = repetitions(block, line);
            if reps == 0 || !block.basis.has_load() {
                continue;
            }
            match system_kg(&block.basis, line.load, body_mass) {
                None => volume.unknown += 1,
                Some(kg) if line.kind.is_work() => volume.work.add(kg * Decimal::from(reps)),
                Some(kg) => volume.ramp_up.add(kg * Decimal::from(reps)),
            }
        }
        volume
    }
}

/// Full repetitions of a set, both sides.
fn repetitions(block: &Block, line: &DoneLine) -> u32 {
    line.amount.reps_of_sides(block.sides.rounds())
}

/// Kilograms that are moved in one repetition; none when they are not known.
fn system_kg(basis: &LoadBasis, load: Option<Load>, body_mass: Option<Load>) -> Option<Decimal> {
    // With the body alone, no load logged means none added.
    let extra = load.map_or(Decimal::ZERO, Load::kg);
    let body = body_mass.map(Load::kg);
    match basis {
        LoadBasis::External => load.map(Load::kg),
        LoadBasis::BodyMassPlus => Some(body? + extra),
        LoadBasis::BodyMassMinus => Some((body? - extra).max(Decimal::ZERO)),
        LoadBasis::BodyMassShare(share) => Some(body? * share.factor() + extra),
        LoadBasis::Band(_) | LoadBasis::Unloaded => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Share;

    fn kg(n: u16) -> Option<Load> {
        Some(Load::whole_kg(n))
    }

    #[test]
    fn the_load_moved_takes_the_body_in() {
        let moved = |basis, load, body| system_kg(&basis, load, body).map(|kg| kg.normalize());
        assert_eq!(moved(LoadBasis::External, kg(60), None), Some(60.into()));
        assert_eq!(moved(LoadBasis::External, None, kg(80)), None);
        assert_eq!(moved(LoadBasis::BodyMassPlus, kg(10), None), None);
        assert_eq!(
            moved(LoadBasis::BodyMassPlus, None, kg(80)),
            Some(80.into())
        );
        assert_eq!(
            moved(LoadBasis::BodyMassMinus, kg(90), kg(80)),
            Some(0.into())
        );
        assert_eq!(
            moved(LoadBasis::BodyMassShare(Share::percent(64)), kg(5), kg(80)),
            Some("56.2".parse().unwrap())
        );
    }

    #[test]
    fn a_volume_load_is_read_as_written() {
        let volume: VolumeLoad = "1800.5 kg".parse().unwrap();
        assert_eq!(volume.to_string(), "1800.5 kg");
        for text in ["1800", "-1 kg", "many kg"] {
            assert!(text.parse::<VolumeLoad>().is_err(), "{text}");
        }
    }
}

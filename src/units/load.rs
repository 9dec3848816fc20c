//! A load: an exact decimal in the unit it was typed in. Never a float.

use super::plain_decimal;
use crate::say;
use crate::words::{decimal, t};
use rust_decimal::{Decimal, RoundingStrategy};
use serde::{Deserialize, Serialize};
use std::cmp::Ordering;
use std::fmt;
use std::str::FromStr;

/// One international avoirdupois pound in kilograms, exactly: 0.453 592 37.
///
/// Agreement of 1 July 1959; NIST Special Publication 811.
pub const KG_PER_LB: Decimal = Decimal::from_parts(45_359_237, 0, 0, false, 8);

/// Largest load, in kilograms. Above any bar that has been lifted, below any slip of the thumb.
pub const LOAD_KG_MAX: Decimal = Decimal::from_parts(2000, 0, 0, false, 0);

/// Digits after the point that a typed load may have; 2.5 lb as kilograms (1.133980925) still fits.
const DECIMALS_MAX: u32 = 9;

/// The unit of a load.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, Default, PartialOrd, Ord, Serialize, Deserialize,
)]
#[serde(rename_all = "lowercase")]
pub enum Unit {
    /// Kilogram.
    #[default]
    Kg,
    /// International avoirdupois pound, exactly 0.453 592 37 kg.
    Lb,
}

impl Unit {
    /// The sign that is written behind a load.
    #[must_use]
    pub fn sign(self) -> &'static str {
        match self {
            Unit::Kg => "kg",
            Unit::Lb => "lb",
        }
    }
}

impl fmt::Display for Unit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.sign())
    }
}

/// A load or a body mass: 0 to 2,000 kg, in the unit it was typed in.
///
/// Two loads are equal when they are the same mass: 20 kg = 20.0 kg, and 45 lb = 20.41165665 kg.
#[derive(Debug, Clone, Copy, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Load {
    amount: Decimal,
    unit: Unit,
}

/// Why a load could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LoadError {
    /// Not a decimal number.
    NotANumber(String),
    /// No unit, or none of kg and lb.
    UnknownUnit(String),
    /// Below zero.
    Negative(String),
    /// Above 2,000 kg.
    TooHeavy(String),
    /// More than nine digits after the point.
    TooFine(String),
}

impl fmt::Display for LoadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LoadError::NotANumber(s) if s.is_empty() => {
                f.write_str(t("a number is missing: write one like 82.5"))
            }
            LoadError::NotANumber(s) => f.write_str(&say!(
                "“{given}” is no plain number: write one like 82.5",
                given = s
            )),
            LoadError::UnknownUnit(s) => f.write_str(&say!(
                "“{given}” has no known unit: write kg or lb behind the number",
                given = s
            )),
            LoadError::Negative(s) => f.write_str(&say!(
                "{load} is below zero: a load is 0 to 2000 kg (4409 lb)",
                load = s
            )),
            LoadError::TooHeavy(s) => f.write_str(&say!(
                "{load} is too heavy: a load is 0 to 2000 kg (4409 lb)",
                load = s
            )),
            LoadError::TooFine(s) => f.write_str(&say!(
                "{load} has more than {most} digits after the point",
                load = s,
                most = DECIMALS_MAX
            )),
        }
    }
}

impl std::error::Error for LoadError {}

impl Load {
    /// No load, in kilograms.
    pub const ZERO: Load = Load {
        amount: Decimal::ZERO,
        unit: Unit::Kg,
    };

    /// A load of `amount` in `unit`.
    ///
    /// # Errors
    /// [`LoadError`] when it is negative, above 2,000 kg or finer than nine decimals.
    pub fn new(amount: Decimal, unit: Unit) -> Result<Load, LoadError> {
        let amount = amount.normalize();
        let said = || decimal(&format!("{amount} {unit}"));
        if amount.is_sign_negative() && !amount.is_zero() {
            return Err(LoadError::Negative(said()));
        }
        if amount.scale() > DECIMALS_MAX {
            return Err(LoadError::TooFine(said()));
        }
        let load = Load { amount, unit };
        // Compare before multiplying: a very long number must not overflow.
        if amount > Decimal::from(10_000) || load.kg() > LOAD_KG_MAX {
            return Err(LoadError::TooHeavy(said()));
        }
        Ok(load)
    }

    /// Whole kilograms, for values known when the program is written.
    ///
    /// # Panics
    /// When above 2,000.
    #[must_use]
    pub fn whole_kg(kg: u16) -> Load {
        Load::new(Decimal::from(kg), Unit::Kg).expect("a written load is in range")
    }

    /// Reads a number as typed, with a point or a comma: in the unit that stands behind it, as in a field that shows a
    /// load, else in `unit`.
    ///
    /// # Errors
    /// [`LoadError`], which says what is allowed.
    pub fn parse_in(text: &str, unit: Unit) -> Result<Load, LoadError> {
        let small = text.trim().to_ascii_lowercase();
        let written = [("kg", Unit::Kg), ("lbs", Unit::Lb), ("lb", Unit::Lb)];
        let number = written
            .into_iter()
            .find_map(|(sign, unit)| Some((small.strip_suffix(sign)?, unit)));
        match number {
            // Of a sign alone all of it is said.
            Some((number, unit)) if !number.trim().is_empty() => Load::bare(number, unit),
            _ => Load::bare(text, unit),
        }
    }

    /// Reads a bare number in `unit`.
    fn bare(text: &str, unit: Unit) -> Result<Load, LoadError> {
        let text = text.trim();
        let plain = text.replace(',', ".").replace('−', "-");
        // Nobody types a load of more digits, nor its plus.
        let fits = plain.len() <= 20 && !plain.starts_with('+');
        match plain_decimal(&plain) {
            Some(amount) if fits => Load::new(amount, unit),
            _ => Err(LoadError::NotANumber(text.chars().take(40).collect())),
        }
    }

    /// The number as typed.
    #[must_use]
    pub fn amount(self) -> Decimal {
        self.amount
    }

    /// The unit it was typed in.
    #[must_use]
    pub fn unit(self) -> Unit {
        self.unit
    }

    /// The mass in kilograms, exactly.
    #[must_use]
    pub fn kg(self) -> Decimal {
        match self.unit {
            Unit::Kg => self.amount,
            Unit::Lb => (self.amount * KG_PER_LB).normalize(),
        }
    }

    /// The number in `unit`: exact from pounds to kilograms, to 28 digits the other way.
    #[must_use]
    pub fn amount_in(self, unit: Unit) -> Decimal {
        match (self.unit, unit) {
            (a, b) if a == b => self.amount,
            (_, Unit::Kg) => self.kg(),
            (_, Unit::Lb) => self.amount / KG_PER_LB,
        }
    }

    /// The same load written in `unit`, rounded to nine decimals where the other unit has no end of digits.
    #[must_use]
    pub fn to_unit(self, unit: Unit) -> Load {
        Load {
            amount: self.amount_in(unit).round_dp(DECIMALS_MAX).normalize(),
            unit,
        }
    }

    /// The sum, in the unit of `self`, at most 2,000 kg.
    #[must_use]
    pub fn plus(self, other: Load) -> Load {
        let sum = self.amount + other.amount_in(self.unit);
        Load::new(sum.round_dp(DECIMALS_MAX), self.unit).unwrap_or_else(|_| {
            Load {
                amount: LOAD_KG_MAX,
                unit: Unit::Kg,
            }
            .to_unit(self.unit)
        })
    }

    /// The difference, in the unit of `self`, never below zero.
    #[must_use]
    pub fn minus(self, other: Load) -> Load {
        let rest = (self.amount - other.amount_in(self.unit)).max(Decimal::ZERO);
        Load {
            amount: rest.round_dp(DECIMALS_MAX).normalize(),
            unit: self.unit,
        }
    }

    /// The load times a factor ≥ 0, at most 2,000 kg.
    #[must_use]
    pub fn times(self, factor: Decimal) -> Load {
        let product = self
            .amount
            .checked_mul(factor.max(Decimal::ZERO))
            .unwrap_or(LOAD_KG_MAX);
        Load::new(product.round_dp(DECIMALS_MAX), self.unit).unwrap_or_else(|_| {
            Load {
                amount: LOAD_KG_MAX,
                unit: Unit::Kg,
            }
            .to_unit(self.unit)
        })
    }

    /// Rounded to so many decimals of its unit, halves away from zero.
    #[must_use]
    pub fn round(self, decimals: u32) -> Load {
        let strategy = RoundingStrategy::MidpointAwayFromZero;
        let amount = self.amount.round_dp_with_strategy(decimals, strategy);
        Load {
            amount: amount.normalize(),
            unit: self.unit,
        }
    }

    /// True for no load at all.
    #[must_use]
    pub fn is_zero(self) -> bool {
        self.amount.is_zero()
    }

    /// The bare number in `unit`, to at most two decimals, for the screen.
    #[must_use]
    pub fn figure(self, unit: Unit) -> String {
        decimal(&self.amount_in(unit).round_dp(2).normalize().to_string())
    }

    /// Number and unit for a program to read, whatever the language: `82.5 kg`. What a person reads is the text of
    /// [`fmt::Display`].
    #[must_use]
    pub fn plain(self) -> String {
        format!("{} {}", self.amount, self.unit)
    }

    /// Number and unit for the screen, to at most two decimals.
    #[must_use]
    pub fn shown(self, unit: Unit) -> String {
        format!("{} {unit}", self.figure(unit))
    }
}

impl fmt::Display for Load {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&decimal(&self.plain()))
    }
}

impl FromStr for Load {
    type Err = LoadError;

    /// Reads `82.5 kg` or `45 lb`.
    fn from_str(text: &str) -> Result<Load, LoadError> {
        let text = text.trim();
        let (number, unit) = if let Some(number) = text.strip_suffix("kg") {
            (number, Unit::Kg)
        } else if let Some(number) = text.strip_suffix("lb") {
            (number, Unit::Lb)
        } else {
            return Err(LoadError::UnknownUnit(text.chars().take(40).collect()));
        };
        Load::bare(number, unit)
    }
}

impl TryFrom<String> for Load {
    type Error = LoadError;
    fn try_from(text: String) -> Result<Load, LoadError> {
        text.parse()
    }
}

impl From<Load> for String {
    fn from(load: Load) -> String {
        load.plain()
    }
}

impl PartialEq for Load {
    fn eq(&self, other: &Load) -> bool {
        self.kg() == other.kg()
    }
}

impl Eq for Load {}

impl std::hash::Hash for Load {
    fn hash<H: std::hash::Hasher>(&self, state: &mut H) {
        self.kg().normalize().hash(state);
    }
}

impl PartialOrd for Load {
    fn partial_cmp(&self, other: &Load) -> Option<Ordering> {
        Some(self.cmp(other))
    }
}

impl Ord for Load {
    fn cmp(&self, other: &Load) -> Ordering {
        self.kg().cmp(&other.kg())
    }
}

#[cfg(test)]
#[path = "load_tests.rs"]
mod tests;

//! A measure of one's own: a girth, a length, a percentage; an exact decimal in the unit it was typed in.

use super::plain_decimal;
use crate::say;
use crate::words::decimal;
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// Largest measure, in its own unit.
const MOST: i64 = 500;

/// Most digits after the point.
const DECIMALS: u32 = 2;

/// The unit of a measure. None is turned into another: a measure keeps its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum MeasureUnit {
    /// Centimetre.
    Cm,
    /// Inch.
    Inch,
    /// Percent.
    Percent,
}

impl MeasureUnit {
    /// All of them.
    pub const ALL: [MeasureUnit; 3] = [MeasureUnit::Cm, MeasureUnit::Inch, MeasureUnit::Percent];

    /// The sign that is written behind a measure.
    #[must_use]
    pub fn sign(self) -> &'static str {
        match self {
            MeasureUnit::Cm => "cm",
            MeasureUnit::Inch => "in",
            MeasureUnit::Percent => "%",
        }
    }
}

/// A measure: above 0 to 500 of its unit, at most two digits after the point. Written `84.5 cm`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Measure {
    amount: Decimal,
    unit: MeasureUnit,
}

/// A text that is no measure.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnfitMeasure(String);

impl fmt::Display for UnfitMeasure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&say!(
            "“{given}” is no measure: write a number above 0 and up to {most} like 84.5, at most {digits} digits after the point, in cm, in or %",
            given = self.0,
            most = MOST,
            digits = DECIMALS
        ))
    }
}

impl std::error::Error for UnfitMeasure {}

impl Measure {
    /// Reads a bare number as typed, with a point or a comma.
    ///
    /// # Errors
    /// [`UnfitMeasure`], which says what is allowed.
    pub fn parse_in(text: &str, unit: MeasureUnit) -> Result<Measure, UnfitMeasure> {
        let refusal = || UnfitMeasure(text.trim().chars().take(40).collect());
        let plain = text.trim().replace(',', ".");
        let fits = plain.len() <= 12 && plain.chars().all(|c| c.is_ascii_digit() || c == '.');
        let amount = plain_decimal(&plain).ok_or_else(refusal)?;
        let amount = amount.normalize();
        let in_range = !amount.is_zero() && amount <= Decimal::from(MOST);
        if fits && in_range && amount.scale() <= DECIMALS {
            Ok(Measure { amount, unit })
        } else {
            Err(refusal())
        }
    }

    /// The number.
    #[must_use]
    pub fn amount(self) -> Decimal {
        self.amount
    }

    /// Number and unit for a program to read, whatever the language: `84.5 cm`. What a person reads is the text of
    /// [`fmt::Display`].
    #[must_use]
    pub fn plain(self) -> String {
        format!("{} {}", self.amount, self.unit.sign())
    }

    /// Its unit.
    #[must_use]
    pub fn unit(self) -> MeasureUnit {
        self.unit
    }
}

impl fmt::Display for Measure {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&decimal(&self.plain()))
    }
}

impl FromStr for Measure {
    type Err = UnfitMeasure;

    /// Reads `84.5 cm`.
    fn from_str(text: &str) -> Result<Measure, UnfitMeasure> {
        let refusal = || UnfitMeasure(text.chars().take(40).collect());
        let (number, sign) = text.split_once(' ').ok_or_else(refusal)?;
        let (whole, parts) = number.split_once('.').unwrap_or((number, "0"));
        let digits = |text: &str| !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
        let no_zeros_in_front = whole == "0" || !whole.starts_with('0');
        let fine = parts.len() <= DECIMALS as usize;
        if !(digits(whole) && digits(parts) && no_zeros_in_front && fine) {
            return Err(refusal());
        }
        let unit = MeasureUnit::ALL
            .into_iter()
            .find(|unit| unit.sign() == sign);
        Measure::parse_in(number, unit.ok_or_else(refusal)?)
    }
}

impl TryFrom<String> for Measure {
    type Error = UnfitMeasure;
    fn try_from(text: String) -> Result<Measure, UnfitMeasure> {
        text.parse()
    }
}

impl From<Measure> for String {
    fn from(measure: Measure) -> String {
        measure.plain()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_measure_is_read_and_written_as_typed() {
        let measure = Measure::parse_in(" 84,50 ", MeasureUnit::Cm).unwrap();
        assert_eq!(measure.to_string(), "84.5 cm");
        assert_eq!("84.5 cm".parse(), Ok(measure));
        assert_eq!(
            "18.25 %".parse::<Measure>().unwrap().unit(),
            MeasureUnit::Percent
        );
        for text in [
            "0 cm", "501 cm", "1.234 cm", "84", "84 m", "-3 cm", "1e2 cm", "84  cm", "084 cm",
            "84, cm", "84. cm",
        ] {
            assert!(text.parse::<Measure>().is_err(), "{text}");
        }
    }
}

//! Temperature and humidity as they are typed.

use crate::say;
use crate::words::{decimal, quoted};
use serde::{Deserialize, Serialize};
use std::fmt;

/// The scale that a temperature was typed in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scale {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
}

impl Scale {
    /// Its symbol.
    #[must_use]
    pub fn symbol(self) -> &'static str {
        match self {
            Scale::Celsius => "°C",
            Scale::Fahrenheit => "°F",
        }
    }

    /// The lowest and the highest whole degrees that can be typed: 0 to 60 °C. Below there is no heat to speak of.
    fn range(self) -> (i16, i16) {
        match self {
            Scale::Celsius => (0, 60),
            Scale::Fahrenheit => (32, 140),
        }
    }
}

/// A temperature as it was typed, in tenths of a degree: 0 to 60 °C or 32 to 140 °F. Kept as `35 °C`, `88.5 °F`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Temperature {
    tenths: i16,
    scale: Scale,
}

impl Temperature {
    /// Checks the range of a temperature in tenths of a degree.
    ///
    /// # Errors
    /// [`AirError::Temperature`] outside it.
    pub fn new(tenths: i16, scale: Scale) -> Result<Temperature, AirError> {
        let (least, most) = scale.range();
        if (least * 10..=most * 10).contains(&tenths) {
            Ok(Temperature { tenths, scale })
        } else {
            Err(AirError::Temperature {
                given: decimal(&degrees(tenths)),
                scale,
            })
        }
    }

    /// Reads degrees as typed, with at most one decimal behind a point or a comma.
    ///
    /// # Errors
    /// [`AirError::Temperature`] when it is no such number or out of range.
    pub fn parse(text: &str, scale: Scale) -> Result<Temperature, AirError> {
        let text = text.trim();
        let wrong = || AirError::Temperature {
            given: quoted(text),
            scale,
        };
        let (whole, tenth) = text.split_once(['.', ',']).unwrap_or((text, "0"));
        let digits = |part: &str, most: usize| {
            (1..=most).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_digit())
        };
        if !digits(whole, 3) || !digits(tenth, 1) {
            return Err(wrong());
        }
        let tenths: i16 = format!("{whole}{tenth}").parse().map_err(|_| wrong())?;
        Temperature::new(tenths, scale)
    }

    /// The scale it was typed in.
    #[must_use]
    pub fn scale(self) -> Scale {
        self.scale
    }

    /// For a program to read, whatever the language: `88.5 °F`.
    fn plain(self) -> String {
        format!("{} {}", degrees(self.tenths), self.scale.symbol())
    }

    /// The bare number of degrees, as a field shows it.
    #[must_use]
    pub fn figure(self) -> String {
        decimal(&degrees(self.tenths))
    }

    /// In degrees Fahrenheit. No load depends on it, so a float will do.
    pub(super) fn fahrenheit(self) -> f64 {
        let degrees = f64::from(self.tenths) / 10.0;
        match self.scale {
            Scale::Celsius => degrees * 1.8 + 32.0,
            Scale::Fahrenheit => degrees,
        }
    }
}

/// Tenths of a degree as a number.
fn degrees(tenths: i16) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let (whole, rest) = (tenths.unsigned_abs() / 10, tenths.unsigned_abs() % 10);
    match rest {
        0 => format!("{sign}{whole}"),
        _ => format!("{sign}{whole}.{rest}"),
    }
}

impl fmt::Display for Temperature {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&decimal(&self.plain()))
    }
}

impl From<Temperature> for String {
    fn from(temperature: Temperature) -> String {
        temperature.plain()
    }
}

impl TryFrom<String> for Temperature {
    type Error = AirError;
    fn try_from(text: String) -> Result<Temperature, AirError> {
        [Scale::Celsius, Scale::Fahrenheit]
            .into_iter()
            .find_map(|scale| {
                let figure = text.strip_suffix(scale.symbol())?;
                let read = Temperature::parse(figure, scale).ok()?;
                // One form only, so that what is written back is what was read.
                (read.plain() == text).then_some(read)
            })
            .ok_or(AirError::Kept { given: text })
    }
}

/// Relative humidity in whole percent, 0 to 100.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "i64", into = "i64")]
pub struct Humidity(u8);

impl Humidity {
    /// Reads whole percent as typed, with or without the sign.
    ///
    /// # Errors
    /// [`AirError::Humidity`] when it is no whole number or outside 0 to 100.
    pub fn parse(text: &str) -> Result<Humidity, AirError> {
        let text = text.trim();
        let figure = text.strip_suffix('%').unwrap_or(text).trim_end();
        let number = figure.parse::<i64>().map_err(|_| AirError::Humidity {
            given: quoted(text),
        })?;
        Humidity::try_from(number)
    }

    /// Percent.
    #[must_use]
    pub fn get(self) -> u8 {
        self.0
    }
}

impl TryFrom<i64> for Humidity {
    type Error = AirError;
    fn try_from(percent: i64) -> Result<Humidity, AirError> {
        match u8::try_from(percent) {
            Ok(percent) if percent <= 100 => Ok(Humidity(percent)),
            _ => Err(AirError::Humidity {
                given: percent.to_string(),
            }),
        }
    }
}

impl From<Humidity> for i64 {
    fn from(humidity: Humidity) -> i64 {
        i64::from(humidity.0)
    }
}

/// The air: what a thermometer and a hygrometer in the shade read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Air {
    /// Temperature.
    pub temperature: Temperature,
    /// Relative humidity.
    pub humidity: Humidity,
}

/// What is wrong with what was typed or kept.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AirError {
    /// No temperature, or one out of range.
    Temperature {
        /// What was given.
        given: String,
        /// The scale asked for.
        scale: Scale,
    },
    /// No humidity, or one out of range.
    Humidity {
        /// What was given.
        given: String,
    },
    /// A temperature in a file that is not written as one.
    Kept {
        /// What was given.
        given: String,
    },
}

impl fmt::Display for AirError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            AirError::Temperature { given, scale } => {
                let (least, most) = scale.range();
                let symbol = scale.symbol();
                f.write_str(&say!(
                    "the temperature must be from {least} to {most} {symbol}, with at most one decimal, not {given}",
                    least, most, symbol, given
                ))
            }
            AirError::Humidity { given } => f.write_str(&say!(
                "the humidity must be a whole number from 0 to 100 percent, not {given}", given
            )),
            AirError::Kept { given } => f.write_str(&say!(
                "a temperature is written like “35 °C” or “88.5 °F”, from 0 to 60 °C or 32 to 140 °F, not “{given}”", given
            )),
        }
    }
}

impl std::error::Error for AirError {}

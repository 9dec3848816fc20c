//! A share in percent, exact: of a work load, of a top set, of an e1RM, of a body mass.

use super::{OutOfRange, plain_decimal};
use crate::words::{decimal, quoted, t};
use rust_decimal::Decimal;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// A share of something in percent, 1 to 200 with at most two decimals. Written `80 %`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Share(Decimal);

impl Share {
    /// A share of `percent`.
    ///
    /// # Errors
    /// [`OutOfRange`] outside 1 to 200 or with more than two decimals.
    pub fn new(percent: Decimal) -> Result<Share, OutOfRange> {
        let percent = percent.normalize();
        let fits = percent >= Decimal::ONE && percent <= Decimal::from(200) && percent.scale() <= 2;
        if fits {
            Ok(Share(percent))
        } else {
            Err(Share::refusal(percent.to_string()))
        }
    }

    /// Whole percents known when the program is written.
    ///
    /// # Panics
    /// Outside 1 to 200.
    #[must_use]
    pub fn percent(percent: u8) -> Share {
        Share::new(Decimal::from(percent)).expect("a written share is in range")
    }

    /// The share as a factor: 80 % is 0.8.
    #[must_use]
    pub fn factor(self) -> Decimal {
        self.0 / Decimal::ONE_HUNDRED
    }

    /// The share in percent.
    #[must_use]
    pub fn in_percent(self) -> Decimal {
        self.0
    }

    /// For a program to read, whatever the language: `62.5 %`. What a person reads is the text of [`fmt::Display`].
    #[must_use]
    pub fn plain(self) -> String {
        format!("{} %", self.0)
    }

    fn refusal(given: String) -> OutOfRange {
        OutOfRange {
            what: t("a share in percent"),
            given,
            least: 1,
            most: 200,
        }
    }
}

impl fmt::Display for Share {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&decimal(&self.plain()))
    }
}

impl FromStr for Share {
    type Err = OutOfRange;

    /// Reads `80 %` or `80%`, with a point or a comma.
    fn from_str(text: &str) -> Result<Share, OutOfRange> {
        let refusal = || Share::refusal(quoted(&text.chars().take(40).collect::<String>()));
        let number = text.trim().strip_suffix('%').ok_or_else(refusal)?.trim();
        if number.len() > 10 {
            return Err(refusal());
        }
        plain_decimal(&number.replace(',', "."))
            .ok_or_else(refusal)
            .and_then(Share::new)
    }
}

impl TryFrom<String> for Share {
    type Error = OutOfRange;
    fn try_from(text: String) -> Result<Share, OutOfRange> {
        if text.contains(',') {
            return Err(Share::refusal(quoted(&text)));
        }
        text.parse()
    }
}

impl From<Share> for String {
    fn from(share: Share) -> String {
        share.plain()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_share_is_read_and_written_in_percent() {
        let share: Share = "62.5%".parse().unwrap();
        assert_eq!(share.to_string(), "62.5 %");
        assert_eq!(share.factor(), Decimal::new(625, 3));
        assert_eq!("62,5 %".parse(), Ok(share));
        assert!(Share::try_from("62,5 %".to_owned()).is_err());
        assert!("0 %".parse::<Share>().is_err());
        assert!("80".parse::<Share>().is_err());
        assert!("80.0000000 %".parse::<Share>().is_ok());
        assert!("80.00000000 %".parse::<Share>().is_err());
        assert!("201 %".parse::<Share>().is_err());
    }
}

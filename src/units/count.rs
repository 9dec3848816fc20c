//! Whole-number quantities, each with its range: reps, seconds, metres, reserve and exertion.

use super::OutOfRange;
use crate::words::{quoted, t};
use serde::{Deserialize, Serialize};
use std::fmt;

/// Makes a whole-number newtype whose every value is in range.
macro_rules! counted {
    ($(#[$doc:meta])* $name:ident($int:ty), $what:expr, $least:literal ..= $most:literal) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
        #[serde(try_from = "i64", into = "i64")]
        pub struct $name($int);

        impl $name {
            /// The smallest value.
            pub const MIN: Self = Self($least);
            /// The largest value.
            pub const MAX: Self = Self($most);

            /// Checks the range.
            ///
            /// # Errors
            /// [`OutOfRange`] with the range, when `value` is outside it.
            pub fn new(value: i64) -> Result<Self, OutOfRange> {
                if ($least..=$most).contains(&value) {
                    // The range fits the type, so the cast loses nothing.
                    Ok(Self(value as $int))
                } else {
                    Err(OutOfRange { what: $what, given: value.to_string(), least: $least, most: $most })
                }
            }

            /// The nearest value in range.
            #[must_use]
            pub fn saturating(value: i64) -> Self {
                Self(value.clamp($least, $most) as $int)
            }

            /// Reads a whole number as typed.
            ///
            /// # Errors
            /// [`OutOfRange`] when it is no whole number or outside the range.
            pub fn parse(text: &str) -> Result<Self, OutOfRange> {
                text.trim()
                    .parse::<i64>()
                    .map_err(|_| OutOfRange {
                        what: $what,
                        given: quoted(text.trim()),
                        least: $least,
                        most: $most,
                    })
                    .and_then(Self::new)
            }

            /// The bare number.
            #[must_use]
            pub fn get(self) -> $int {
                self.0
            }
        }

        impl TryFrom<i64> for $name {
            type Error = OutOfRange;
            fn try_from(value: i64) -> Result<Self, OutOfRange> {
                Self::new(value)
            }
        }

        impl From<$name> for i64 {
            fn from(value: $name) -> i64 {
                i64::from(value.0)
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                self.0.fmt(f)
            }
        }
    };
}

counted!(
    /// Repetitions of one set, 0 (a set tried and missed) to 500.
    Reps(u16), t("reps"), 0..=500
);
counted!(
    /// A length of time in whole seconds, 0 to 3,600 (one hour).
    Seconds(u16), t("seconds"), 0..=3600
);
counted!(
    /// A distance in whole metres, 1 to 10,000.
    Metres(u16), t("metres"), 1..=10_000
);
counted!(
    /// Repetitions in reserve: how many more could have been done, 0 to 10.
    ///
    /// RIR = 10 − RPE for whole numbers (Zourdos et al. 2016, J Strength Cond Res 30(1):267–275).
    Rir(u8), t("reps in reserve"), 0..=10
);
counted!(
    /// Session rating of perceived exertion on the CR-10 scale, 0 (rest) to 10 (maximal).
    ///
    /// Foster et al. 2001, J Strength Cond Res 15(1):109–115. Not the same scale as reps in reserve.
    Rpe(u8), t("session RPE"), 0..=10
);

impl Seconds {
    /// As milliseconds.
    #[must_use]
    pub fn millis(self) -> u32 {
        u32::from(self.0) * 1000
    }

    /// As a clock reading, `m:ss`.
    #[must_use]
    pub fn clock(self) -> String {
        clock(i64::from(self.0))
    }
}

/// Whole seconds as a clock reading: `m:ss`, from one hour `h:mm:ss`.
#[must_use]
pub fn clock(seconds: i64) -> String {
    let sign = if seconds < 0 { "−" } else { "" };
    let s = seconds.unsigned_abs();
    if s >= 3600 {
        format!("{sign}{}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60)
    } else {
        format!("{sign}{}:{:02}", s / 60, s % 60)
    }
}

/// Whole minutes that were trained: `45 min`, from one hour `9 h 05 min`.
#[must_use]
pub fn minutes_said(minutes: u32) -> String {
    if minutes >= 60 {
        format!("{} h {:02} min", minutes / 60, minutes % 60)
    } else {
        format!("{minutes} min")
    }
}

/// Seconds that are still to come, or are too many, in whole minutes, rounded up. All such figures are rounded this one
/// way, or what is predicted, what is planned and what is over would not add up.
#[must_use]
pub const fn minutes_up(seconds: u64) -> u64 {
    seconds.div_ceil(60)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn minutes_are_said_in_one_form() {
        let said = [0, 30, 59, 60, 65, 559].map(minutes_said);
        assert_eq!(
            said,
            [
                "0 min",
                "30 min",
                "59 min",
                "1 h 00 min",
                "1 h 05 min",
                "9 h 19 min"
            ]
        );
    }

    #[test]
    fn a_value_outside_its_range_is_refused_with_the_range() {
        let error = Reps::new(501).unwrap_err();
        assert_eq!(
            error.to_string(),
            "reps must be a number from 0 to 500, not 501"
        );
        assert!(Seconds::new(-1).is_err());
        assert!(
            Reps::parse("twelve")
                .unwrap_err()
                .to_string()
                .contains("“twelve”")
        );
        assert_eq!(Reps::parse(" 12 ").unwrap().get(), 12);
    }

    #[test]
    fn a_clock_reading_has_two_digits_of_seconds() {
        assert_eq!(clock(0), "0:00");
        assert_eq!(clock(150), "2:30");
        assert_eq!(clock(3605), "1:00:05");
        assert_eq!(clock(-5), "−0:05");
    }
}

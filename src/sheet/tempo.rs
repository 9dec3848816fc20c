//! Tempo in four digits: eccentric, pause, concentric, pause; each 0–20 seconds or X, as fast as possible.

use crate::say;
use serde::{Deserialize, Serialize};
use std::fmt;
use std::str::FromStr;

/// Longest phase, in seconds.
pub const PHASE_SECONDS_MAX: u8 = 20;

/// One digit of a tempo.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Digit {
    /// That many seconds, 0 to 20.
    Seconds(u8),
    /// As fast as possible, with control.
    Fast,
}

impl Digit {
    /// Seconds that the digit takes on the clock: X counts as one second.
    ///
    /// Common practice, no source: an explosive phase is heard as a single "go" and lasts about a second with the
    /// return to the start.
    #[must_use]
    pub fn seconds(self) -> u8 {
        match self {
            Digit::Seconds(s) => s,
            Digit::Fast => 1,
        }
    }
}

impl fmt::Display for Digit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Digit::Seconds(s) => s.fmt(f),
            Digit::Fast => f.write_str("X"),
        }
    }
}

/// How a repetition is timed. Written `3/1/X/0`.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Tempo {
    /// Lowering, lengthening.
    pub eccentric: Digit,
    /// Pause where the muscle is long.
    pub stretch: Digit,
    /// Lifting, shortening.
    pub concentric: Digit,
    /// Pause where the muscle is short.
    pub squeeze: Digit,
}

/// Why a tempo could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct UnfitTempo(String);

impl fmt::Display for UnfitTempo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&say!(
            "“{given}” is no tempo: write four parts like 3/1/X/0, each 0 to {most} seconds or X, not all 0",
            given = self.0,
            most = PHASE_SECONDS_MAX,
        ))
    }
}

impl std::error::Error for UnfitTempo {}

impl Tempo {
    /// The four digits in the order they are written.
    #[must_use]
    pub fn digits(self) -> [Digit; 4] {
        [self.eccentric, self.stretch, self.concentric, self.squeeze]
    }

    /// Seconds that one repetition takes: the sum of the digits, X as one second.
    #[must_use]
    pub fn rep_seconds(self) -> u32 {
        self.digits().iter().map(|d| u32::from(d.seconds())).sum()
    }
}

impl fmt::Display for Tempo {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [a, b, c, d] = self.digits();
        write!(f, "{a}/{b}/{c}/{d}")
    }
}

impl FromStr for Tempo {
    type Err = UnfitTempo;

    fn from_str(text: &str) -> Result<Tempo, UnfitTempo> {
        let refusal = || UnfitTempo(text.chars().take(40).collect());
        let digits = text
            .trim()
            .split('/')
            .map(|part| match part.trim() {
                "X" | "x" => Ok(Digit::Fast),
                number => match number.parse::<u8>() {
                    Ok(s) if s <= PHASE_SECONDS_MAX => Ok(Digit::Seconds(s)),
                    _ => Err(refusal()),
                },
            })
            .collect::<Result<Vec<_>, _>>()?;
        let [eccentric, stretch, concentric, squeeze] = digits[..] else {
            return Err(refusal());
        };
        let tempo = Tempo {
            eccentric,
            stretch,
            concentric,
            squeeze,
        };
        if tempo.rep_seconds() == 0 {
            Err(refusal())
        } else {
            Ok(tempo)
        }
    }
}

impl TryFrom<String> for Tempo {
    type Error = UnfitTempo;
    fn try_from(text: String) -> Result<Tempo, UnfitTempo> {
        text.parse()
    }
}

impl From<Tempo> for String {
    fn from(tempo: Tempo) -> String {
        tempo.to_string()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_tempo_is_read_and_written_in_four_parts() {
        for text in ["3/1/1/0", "4/0/X/1", "20/20/20/20"] {
            assert_eq!(text.parse::<Tempo>().unwrap().to_string(), text);
        }
        assert_eq!("3/1/x/0".parse::<Tempo>().unwrap().concentric, Digit::Fast);
    }

    #[test]
    fn what_is_no_tempo_is_refused() {
        for text in [
            "900/0/1/0",
            "21/0/1/0",
            "3/1/1",
            "3/1/1/0/0",
            "0/0/0/0",
            "",
            "a/b/c/d",
            "-1/0/1/0",
        ] {
            let error = text.parse::<Tempo>().unwrap_err().to_string();
            assert!(error.contains("3/1/X/0"), "{error}");
        }
    }
}

//! Versions of the file format.
//!
//! There is one so far. When a second comes: add a variant here, give it a form of its own beside
//! [`super::file`], and let [`super::read::read`] turn the older form into the newer one; the golden file of each
//! version stays in the tests for ever.

use super::read::ReadError;

/// A version of the file format that this program reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum FormatVersion {
    /// The first.
    V1 = 1,
}

impl FormatVersion {
    /// The version that is written.
    pub const CURRENT: FormatVersion = FormatVersion::V1;

    /// The number in the file.
    #[must_use]
    pub fn number(self) -> u64 {
        self as u64
    }
}

impl TryFrom<u64> for FormatVersion {
    type Error = ReadError;

    fn try_from(number: u64) -> Result<FormatVersion, ReadError> {
        match number {
            1 => Ok(FormatVersion::V1),
            0 => Err(ReadError::NoVersion),
            found => Err(ReadError::Newer {
                found,
                known: FormatVersion::CURRENT.number(),
            }),
        }
    }
}

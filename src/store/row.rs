//! How a record is kept in the database: a line with its own checksum, so that damage is seen and never shown as data.

use crate::crc::crc32;
use crate::say;
use crate::words::t;
use std::fmt;

/// The form of a row: `1`, a space, eight hexadecimal digits of CRC-32, a space, the JSON text.
const FORM: &str = "1";
/// Hexadecimal digits of the checksum.
const DIGITS: usize = 8;
/// Bytes of a row before its JSON text.
pub(super) const HEAD: usize = FORM.len() + DIGITS + 2;

/// Why a row cannot be opened. The row itself is to be set aside and offered for download as it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum RowError {
    /// It does not have the form of a row.
    NotARow,
    /// A newer version of the program wrote it.
    Newer {
        /// The form that it names.
        form: String,
    },
    /// The text is not the one that was written.
    Damaged {
        /// The checksum kept with it.
        kept: String,
        /// The checksum of the text as it is.
        found: String,
    },
}

impl fmt::Display for RowError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            RowError::NotARow => f.write_str(t("this is no record of Stanchion; it was set aside")),
            RowError::Newer { form } => f.write_str(&say!("this record has the form {form}, and this version knows form {known} only: update the app", form, known = FORM)),
            RowError::Damaged { kept, found } => f.write_str(&say!("this record was damaged (checksum {found}, written with {kept}); it was set aside", found, kept)),
        }
    }
}

impl std::error::Error for RowError {}

/// The row of a JSON text: `1 <crc32> <json>`, the CRC-32 (IEEE 802.3) of its UTF-8 bytes in eight lower-case digits.
#[must_use]
pub fn seal(json: &str) -> String {
    let mut row = String::with_capacity(HEAD + json.len());
    row.push_str(json);
    seal_whole(row)
}

/// The same of a text that is not needed any more: with room for `HEAD` bytes more it stays where it is.
#[must_use]
pub fn seal_whole(mut json: String) -> String {
    let head = format!("{FORM} {} ", checksum(&json));
    json.insert_str(0, &head);
    json
}

/// The JSON text of a row.
///
/// # Errors
/// [`RowError`] when it is no row, of a newer form, or not the text that was sealed.
pub fn open(row: &str) -> Result<&str, RowError> {
    let (form, rest) = row.split_once(' ').ok_or(RowError::NotARow)?;
    if form != FORM {
        let number =
            !form.is_empty() && form.len() <= 3 && form.bytes().all(|b| b.is_ascii_digit());
        return Err(if number {
            RowError::Newer {
                form: form.to_owned(),
            }
        } else {
            RowError::NotARow
        });
    }
    let (kept, json) = rest.split_once(' ').ok_or(RowError::NotARow)?;
    if kept.len() != DIGITS {
        return Err(RowError::NotARow);
    }
    let found = checksum(json);
    if kept == found {
        Ok(json)
    } else {
        Err(RowError::Damaged {
            kept: kept.to_owned(),
            found,
        })
    }
}

fn checksum(text: &str) -> String {
    format!("{:08x}", crc32(text.as_bytes()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_checksum_is_the_published_one() {
        // The check value of CRC-32/ISO-HDLC over "123456789" is cbf43926 (Williams 1993, A Painless Guide to CRC
        // Error Detection Algorithms; from memory).
        assert_eq!(seal("123456789"), "1 cbf43926 123456789");
    }

    #[test]
    fn what_is_no_row_says_so() {
        assert_eq!(open(""), Err(RowError::NotARow));
        assert_eq!(open("{}"), Err(RowError::NotARow));
        assert_eq!(open("1 cbf4392 123456789"), Err(RowError::NotARow));
        assert!(
            open("2 cbf43926 123456789")
                .unwrap_err()
                .to_string()
                .contains("update the app")
        );
    }
}

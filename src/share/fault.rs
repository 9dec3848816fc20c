//! Why a link could not be opened, or made: what is wrong and what to do.

use super::{CODE_CHARS_MAX, UNPACKED_BYTES_MAX};
use std::fmt;

/// Why a link could not be opened. Nothing of it is kept then.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum LinkFault {
    /// What stands there was not made by this program.
    NotOurs,
    /// It is ours, and a part of it is missing or changed.
    Broken,
    /// It was made by a newer program.
    Newer,
    /// It is longer than a link can be, or unpacks to more than a sheet can be.
    TooLarge,
    /// It is packed, and there is nothing here that unpacks it.
    NoUnpacking,
    /// It came whole, but what it holds is no sheet.
    Unreadable {
        /// What is wrong with it.
        why: String,
    },
}

impl fmt::Display for LinkFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LinkFault::NotOurs => f.write_str(
                "This is no link to a sheet of Stanchion. Ask for the link again, or for the sheet as a file.",
            ),
            LinkFault::Broken => f.write_str(
                "This link is broken: a part of it was lost or changed on the way. Copy the whole link again, or \
                 ask for the sheet as a file.",
            ),
            LinkFault::Newer => f.write_str(
                "This link was made by a newer Stanchion. Update the app, then open the link again.",
            ),
            LinkFault::TooLarge => write!(
                f,
                "This link is too large: up to {CODE_CHARS_MAX} characters and {} KiB unpacked can be read. Ask for \
                 the sheet as a file.",
                UNPACKED_BYTES_MAX / 1024
            ),
            LinkFault::NoUnpacking => f.write_str(
                "This browser is too old to unpack the link. Update the browser, or ask for the sheet as a file.",
            ),
            LinkFault::Unreadable { why } => write!(
                f,
                "The link came whole, but its sheet cannot be read: {why}. Ask for the sheet as a file."
            ),
        }
    }
}

impl std::error::Error for LinkFault {}

/// A sheet that does not fit where it should go.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TooLong {
    /// Into a link of [`CODE_CHARS_MAX`].
    Link,
    /// Into a QR code.
    Qr {
        /// Its bytes.
        bytes: usize,
        /// Most that fit.
        most: usize,
    },
}

impl fmt::Display for TooLong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            TooLong::Link => write!(
                f,
                "This sheet is too long for a link of {CODE_CHARS_MAX} characters: send it as a file."
            ),
            TooLong::Qr { bytes, most } => write!(
                f,
                "Too long for a QR code: the link has {bytes} bytes, {most} fit. Use the link or the file."
            ),
        }
    }
}

impl std::error::Error for TooLong {}

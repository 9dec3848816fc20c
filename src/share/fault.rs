//! Why a link could not be opened, or made: what is wrong and what to do.

use super::{CODE_CHARS_MAX, UNPACKED_BYTES_MAX};
use crate::say;
use crate::words::t;
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
            LinkFault::NotOurs => f.write_str(t("This is no link to a sheet of Stanchion. Ask for the link again, or for the sheet as a file.")),
            LinkFault::Broken => f.write_str(t("This link is broken: a part of it was lost or changed on the way. Copy the whole link again, or \
                 ask for the sheet as a file.")),
            LinkFault::Newer => f.write_str(t("This link was made by a newer Stanchion. Update the app, then open the link again.")),
            LinkFault::TooLarge => f.write_str(&say!("This link is too large: up to {most} characters and {kib} KiB unpacked can be read. Ask for \
                 the sheet as a file.", most = CODE_CHARS_MAX, kib = UNPACKED_BYTES_MAX / 1024)),
            LinkFault::NoUnpacking => f.write_str(t("This browser is too old to unpack the link. Update the browser, or ask for the sheet as a file.")),
            LinkFault::Unreadable { why } => f.write_str(&say!("The link came whole, but its sheet cannot be read: {why}. Ask for the sheet as a file.", why)),
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
            TooLong::Link => f.write_str(&say!("This sheet is too long for a link of {most} characters: send it as a file.", most = CODE_CHARS_MAX)),
            TooLong::Qr { bytes, most } => f.write_str(&say!("Too long for a QR code: the link has {bytes} bytes, {most} fit. Use the link or the file.", bytes, most)),
        }
    }
}

impl std::error::Error for TooLong {}

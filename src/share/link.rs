//! The code of a link: a parcel in an envelope that shows what it is and whether it came whole.

use super::bare::become_version;
use super::base64url::{decode, encode};
use super::fault::{LinkFault, TooLong};
use super::parcel::{Kind, Parcel, from_json, from_lines};
use super::{CODE_CHARS_MAX, LINK_MARK, UNPACKED_BYTES_MAX};
use crate::crc::crc32;
use crate::sheet::Sheet;

/// The version of the envelope and of what the lines in it mean.
const VERSION: u8 = 1;
/// Versions that may come. What names a higher one is none of ours.
const VERSIONS_MAX: u8 = 31;
/// In the flags: the text is packed.
const PACKED: u8 = 1;
/// In the flags: the text is JSON, and there is no head.
const JSON: u8 = 2;
/// In the flags: cautions are left out that the list of exercises has, and their sum stands before the text: see
/// [`Parcel::without_cautions`].
const BARE: u8 = 4;
/// Bytes of the checksum.
const CHECKSUM: usize = 4;

impl Parcel {
    /// The code of a link: the text packed as the caller did it, by raw DEFLATE (RFC 1951), or plain.
    ///
    /// The checksum is over the bytes as they are sent, so that damage is seen before anything is unpacked; CRC-32
    /// finds every change within 32 neighbouring bits.
    ///
    /// # Errors
    /// [`TooLong::Link`] above [`CODE_CHARS_MAX`].
    pub fn seal(&self, packed: Option<&[u8]>) -> Result<String, TooLong> {
        let mut flags = if packed.is_some() { PACKED } else { 0 };
        if self.kind == Kind::Json {
            flags |= JSON;
        }
        if self.cautions.is_some() {
            flags |= BARE;
        }
        let mut bytes = vec![VERSION, flags];
        bytes.extend_from_slice(&self.head);
        bytes.extend(self.cautions.into_iter().flatten());
        bytes.extend_from_slice(packed.unwrap_or(self.text().as_bytes()));
        let checksum = crc32(&bytes);
        bytes.extend_from_slice(&checksum.to_be_bytes());
        let code = encode(&bytes);
        if code.len() > CODE_CHARS_MAX || self.text().len() > UNPACKED_BYTES_MAX {
            return Err(TooLong::Link);
        }
        Ok(code)
    }
}

/// The link that a code makes with the address of the app.
#[must_use]
pub fn link(address: &str, code: &str) -> String {
    let address = address.split('#').next().unwrap_or(address);
    format!("{address}{LINK_MARK}{code}")
}

/// A code whose envelope was opened; what is in it came whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Sealed {
    kind: Kind,
    packed: bool,
    /// The sum of the cautions where some were left out.
    cautions: Option<[u8; 2]>,
    /// Head and text, the text packed or plain; between them the sum.
    bytes: Vec<u8>,
    /// Where the text begins.
    text: usize,
}

/// Opens the envelope of a code.
///
/// # Errors
/// [`LinkFault`]: not ours, broken, newer, or too large.
pub fn unseal(code: &str) -> Result<Sealed, LinkFault> {
    // A link in a sentence often comes with the full stop behind it.
    let code = code.trim_matches(|c: char| !c.is_ascii_alphanumeric() && !"-_".contains(c));
    if code.len() > CODE_CHARS_MAX {
        return Err(LinkFault::TooLarge);
    }
    // The first letters tell the version, though the rest be damaged.
    let start = code.get(..4).and_then(decode).ok_or(LinkFault::NotOurs)?;
    match start[0] {
        VERSION => {}
        newer if newer > VERSION && newer <= VERSIONS_MAX => return Err(LinkFault::Newer),
        _ => return Err(LinkFault::NotOurs),
    }
    let mut bytes = decode(code).ok_or(LinkFault::Broken)?;
    let end = bytes.len().checked_sub(CHECKSUM).ok_or(LinkFault::Broken)?;
    let checksum = bytes.split_off(end);
    if end < 2 || checksum != crc32(&bytes).to_be_bytes() {
        return Err(LinkFault::Broken);
    }
    let flags = bytes[1];
    if flags & !(PACKED | JSON | BARE) != 0 {
        return Err(LinkFault::Newer);
    }
    let kind = if flags & JSON == 0 {
        Kind::Lines
    } else {
        Kind::Json
    };
    bytes.drain(..2);
    let head = match kind {
        Kind::Json => 0,
        Kind::Lines => {
            let (_, rest) = super::head::Head::read(&bytes).ok_or(LinkFault::Broken)?;
            bytes.len() - rest.len()
        }
    };
    let cautions = if flags & BARE == 0 {
        None
    } else {
        let sum = bytes[head..].first_chunk().ok_or(LinkFault::Broken)?;
        Some(*sum)
    };
    Ok(Sealed {
        kind,
        packed: flags & PACKED != 0,
        text: head + cautions.map_or(0, |sum| sum.len()),
        cautions,
        bytes,
    })
}

impl Sealed {
    /// The sheet with the cautions that were left out of it, where any were: `give` gives them back. Where they are not word
    /// for word the writer's, as those of a newer list, it is another version of the sheet.
    #[must_use]
    pub fn with_cautions(&self, mut sheet: Sheet, give: impl FnOnce(&mut Sheet)) -> Sheet {
        if let Some(sum) = self.cautions {
            give(&mut sheet);
            become_version(&mut sheet, sum);
        }
        sheet
    }

    /// The packed text, to be unpacked to at most [`UNPACKED_BYTES_MAX`]; none where it is plain.
    #[must_use]
    pub fn packed(&self) -> Option<&[u8]> {
        self.packed.then(|| &self.bytes[self.text..])
    }

    /// The sheet; `unpacked` is what came of [`Sealed::packed`].
    ///
    /// # Errors
    /// [`LinkFault`]: it was not unpacked, is too large, or is no sheet.
    pub fn sheet(&self, unpacked: Option<&[u8]>) -> Result<Sheet, LinkFault> {
        let text = match (self.packed, unpacked) {
            (false, _) => &self.bytes[self.text..],
            (true, Some(unpacked)) => unpacked,
            (true, None) => return Err(LinkFault::NoUnpacking),
        };
        if text.len() > UNPACKED_BYTES_MAX {
            return Err(LinkFault::TooLarge);
        }
        let text = std::str::from_utf8(text).map_err(|_| LinkFault::Broken)?;
        match self.kind {
            Kind::Json => from_json(text),
            Kind::Lines => from_lines(&self.bytes[..self.text], text).map(|(sheet, _)| sheet),
        }
    }
}

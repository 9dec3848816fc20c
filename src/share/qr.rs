//! A link as a QR code (ISO/IEC 18004): its modules, and the path that draws them.

use super::fault::TooLong;
use qrcodegen::{QrCode, QrCodeEcc, QrSegment, Version};
use std::fmt::Write;

/// The largest version, 137 × 137 modules: on a narrow screen each is two pixels, which a phone held close still reads
/// (common practice, no source). The sheets of the start fit with an address of their host before them.
const VERSION_MAX: u8 = 30;
/// Bytes that a code of that version holds at the lowest error correction (ISO/IEC 18004, table 7).
pub const QR_BYTES_MAX: usize = 1732;
/// White modules around the code (ISO/IEC 18004, 5.3.8).
const QUIET: i32 = 4;

/// A QR code.
#[derive(Clone, PartialEq, Eq)]
pub struct Qr {
    code: QrCode,
}

/// The QR code of a text, in bytes.
///
/// # Errors
/// [`TooLong::Qr`] above [`QR_BYTES_MAX`].
pub fn qr(text: &str) -> Result<Qr, TooLong> {
    let bytes = text.as_bytes();
    let code = QrCode::encode_segments_advanced(
        &[QrSegment::make_bytes(bytes)],
        QrCodeEcc::Low,
        Version::MIN,
        Version::new(VERSION_MAX),
        None,
        false,
    );
    match code {
        Ok(code) => Ok(Qr { code }),
        Err(_) => Err(TooLong::Qr {
            bytes: bytes.len(),
            most: QR_BYTES_MAX,
        }),
    }
}

impl Qr {
    /// Modules along one side, the quiet zone on both sides among them.
    #[must_use]
    pub fn side(&self) -> usize {
        (self.code.size() + 2 * QUIET) as usize
    }

    /// Whether the module is dark; counted from the outer corner of the quiet zone.
    #[must_use]
    pub fn is_dark(&self, x: usize, y: usize) -> bool {
        // A place outside of the code is light.
        self.code.get_module(x as i32 - QUIET, y as i32 - QUIET)
    }

    /// The dark modules as the path of an SVG whose units are modules: one stroke of boxes a run.
    #[must_use]
    pub fn path(&self) -> String {
        let mut path = String::new();
        for y in 0..self.side() {
            let mut x = 0;
            while x < self.side() {
                let run = (x..self.side()).take_while(|x| self.is_dark(*x, y)).count();
                if run > 0 {
                    // Writing to a string cannot fail.
                    let _ = write!(path, "M{x} {y}h{run}v1h-{run}z");
                }
                x += run + 1;
            }
        }
        path
    }
}

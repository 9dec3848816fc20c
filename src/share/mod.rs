//! A sheet on its way to another phone without a server: as a link that carries the whole of it, as a QR code of that
//! link, or as a file that holds it alone.
//!
//! The form of the link is in `docs/link.md`. Packing and unpacking by DEFLATE is the shell's: the browser has it.

mod bare;
mod base64url;
mod fault;
mod file;
mod head;
mod link;
mod parcel;
mod qr;
mod short;

pub use bare::{has_start_loads, without_mark, without_start_loads};
pub use fault::{LinkFault, TooLong};
pub use file::{file_name, sheet_file, single_sheet};
pub use link::{Sealed, link, unseal};
pub use parcel::Parcel;
pub use qr::{QR_BYTES_MAX, Qr, qr};

/// Longest code of a link, in characters: 16 KiB.
pub const CODE_CHARS_MAX: usize = 16 * 1024;
/// Most bytes that a code may unpack to: 256 KiB.
pub const UNPACKED_BYTES_MAX: usize = 256 * 1024;
/// What stands in a link between the address of the app and the code.
pub const LINK_MARK: &str = "#/s/";

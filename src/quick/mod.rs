//! The quick line: one line of text makes a block, many lines make a sheet, and both are printed back the same.
//!
//! The grammar is in `docs/quick-line.md`; a test reads its examples.

mod cursor;
mod defaults;
mod fault;
mod head;
mod load;
mod options;
mod print;
mod print_sets;
mod print_sheet;
mod sets;
mod settings;
mod sheet;
mod target;
mod written;

pub use defaults::{default_rest, default_role, named_exercise};
pub use fault::Unread;
pub use head::{EQUIPMENT, PATTERNS};
pub use print::print_block;
pub use print_sheet::print_sheet;
pub use sheet::{parse_sheet, revise_sheet};
pub use written::{Mark, Written, parse_block};

/// What is known of an exercise by its name; the case of letters does not matter.
pub type Known<'a> = &'a dyn Fn(&str) -> Option<crate::sheet::Named>;

/// Longest text, in bytes.
pub const TEXT_BYTES_MAX: usize = 64 * 1024;
/// Most lines of a text.
pub const TEXT_LINES_MAX: usize = 400;

//! JSON, read and written by one small reader and one small writer.
//!
//! Why not a crate: the program carries the code of every kept type once per reader and once per writer that it is
//! instantiated with, and a general reader brings branches for every shape that any format might have. Here one
//! reader serves files and rows, tells the exact place of whatever is wrong, and never calls what JSON cannot give.
//! Tests compare it with `serde_json`, text by text.

mod cursor;
mod fault;
mod plain;
mod pretty;
mod read;
mod slice;
mod write;

pub use cursor::Cursor;
pub use fault::{Fault, Misread};
pub use pretty::pretty;
pub use read::parse;
pub use write::text;

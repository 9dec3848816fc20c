//! The demo: the two sheets of a boathouse, in a file like any other.

use super::archive::Archive;
use super::read::read;

/// The file.
const BOATHOUSE: &str = include_str!("../../assets/demo/boathouse.json");

/// The two demo sheets. Their ids and versions never change, so adding them twice adds nothing, and a version that
/// the lifter writes is newer.
///
/// # Panics
/// Never: the file is part of the program, and a test reads it.
#[must_use]
pub fn demo() -> Archive {
    read(BOATHOUSE).expect("the demo file is read by a test")
}

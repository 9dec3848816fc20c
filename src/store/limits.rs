//! How much a file and the store may hold: every limit of size in one place.
//!
//! They are set so that the log of a hundred years fits: four sessions a week are some 20,800. `tests/hundred_years.rs`
//! writes such a file, measures it and reads it back.

/// Largest file that is read, in bytes: 512 MiB.
pub const FILE_BYTES_MAX: u64 = 512 * MIB;
/// Most sessions in a file, removed ones and those that stayed each.
pub const SESSIONS_MAX: usize = 25_000;
/// Most versions of sheets in a file.
pub const SHEETS_MAX: usize = 100_000;
/// Most versions of one's own exercises in a file.
pub const EXERCISES_MAX: usize = 100_000;
/// Most versions of programmes in a file.
pub const PROGRAMMES_MAX: usize = 100_000;
/// Most kit records in a file.
pub const KITS_MAX: usize = 100_000;
/// Most lifter records in a file.
pub const LIFTERS_MAX: usize = 100_000;
/// Most body masses in a file: one a day for a hundred years are 36,525.
pub const BODY_MASSES_MAX: usize = 40_000;
/// Most versions of entries of the body in a file: measures of one's own, and corrections.
pub const BODY_MAX: usize = 40_000;

/// Bytes of a MiB.
pub(super) const MIB: u64 = 1024 * 1024;

//! Times of the core: the plate plan beside brute force and a general solver, and the proposals of a whole sheet.
//!
//! `cargo xtask measure` runs this and takes the medians. Every answer is held against the others before it is timed.

#[path = "plates.rs"]
mod plates;
#[path = "sheet.rs"]
mod sheet;
#[path = "../common/stacks.rs"]
mod stacks;

use criterion::{criterion_group, criterion_main};

criterion_group!(core, plates::plan, sheet::propose_sheet);
criterion_main!(core);

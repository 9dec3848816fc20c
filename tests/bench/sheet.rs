//! The proposals of a whole sheet, over summaries as the app keeps them.

use criterion::Criterion;

/// Later.
pub fn propose_sheet(_: &mut Criterion) {}

//! Times of the core.

fn main() {}

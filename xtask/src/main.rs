//! The project's only tool: set-up, serve, test, dist, measure.
fn main() {}

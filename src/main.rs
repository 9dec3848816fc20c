//! Mounts the app, nothing else.
fn main() {}

//! Command line of skinspan.
fn main() {}

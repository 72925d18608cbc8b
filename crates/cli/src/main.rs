//! Stand-in.
fn main() {}

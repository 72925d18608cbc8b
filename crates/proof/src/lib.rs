//! Checkers' tools. A checker recomputes what is printed from the printed data
//! alone; this room never depends on `craft`, the makers' tools.

pub mod laid;
mod verdict;

pub use laid::{Laid, LaidImage, LaidPage, LaidText, Mark};
pub use verdict::Proof;

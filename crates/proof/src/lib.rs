//! Checkers' tools. A checker recomputes what is printed from the printed data
//! alone; this room never depends on `craft`, the makers' tools.

pub mod arrangement;
pub mod duplex;
pub mod inside;
pub mod isbn;
pub mod laid;
pub mod letters;
pub mod meaning;
pub mod numbers;
pub mod spelling;
pub mod symbol;
mod verdict;

pub use laid::{Laid, LaidImage, LaidPage, LaidText, Mark};
pub use letters::Found;
pub use verdict::Proof;

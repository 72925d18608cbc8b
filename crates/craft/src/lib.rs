//! Makers' tools: seeded dice, letter grids, mixed orders.
//! Pure; never used by a checker.

pub mod dice;
pub mod hide;
pub mod lines;
pub mod mix;

pub use dice::Dice;
pub use hide::{Field, Hidden};

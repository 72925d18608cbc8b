//! Makers' tools: seeded dice and, later, letter grids, spanning trees, decks.
//! Pure; never used by a checker.

pub mod dice;
pub use dice::Dice;

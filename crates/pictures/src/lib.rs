//! Computations on artwork.

pub mod hand;

//! Computations on artwork.

pub mod hand;
pub mod outline;

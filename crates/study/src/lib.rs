//! The folder format of a study: read it, validate it, write single fields back.
//! The only room that knows the author's files.

pub mod model;
pub use model::*;

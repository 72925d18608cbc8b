//! The only room that knows the order of the steps: from a study to proved, printed files.

pub mod build;
pub mod cache;
pub mod defaults;
pub mod files;
mod gather;
pub mod job;
pub mod kept;
mod lexicon;
pub mod making;
pub mod plan;
pub mod todo;
mod wanting;

pub use build::{Printed, Proved, prove};
pub use cache::Cache;
pub use lexicon::lexicon;
pub use making::Outcome;
pub use plan::{Plan, Planned, plan};
pub use press::Paper;

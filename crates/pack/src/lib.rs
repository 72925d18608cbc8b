//! The only room that knows the order of the steps: from a study to proved, printed files.
#![allow(clippy::disallowed_methods)] // writes files, keeps the cache, and reports how long steps took

pub mod build;
pub mod cache;
pub mod defaults;
pub mod files;
mod gather;
pub mod job;
pub mod kept;
mod lexicon;
pub mod making;
mod pick;
pub mod plan;
pub mod run;
pub mod todo;
mod wanting;

pub use build::{Printed, Proved, prove};
pub use cache::Cache;
pub use job::Copy;
pub use lexicon::lexicon;
pub use making::Outcome;
pub use plan::{Plan, Planned, plan};
pub use press::Paper;
pub use run::{Built, Checked, OneSheet, Request, Written, build, check, one_sheet, pick};

//! The folder format of a study: read it, validate it, write single fields back.
//! The only room that knows the author's files.
//!
//! Data flows one way: [`Files`] (bytes by path) → [`read_files`] → [`Read`]
//! (the validated [`Study`], every finding, and the [`Lines`] that turn a place
//! into a line when a finding is shown). Nothing here writes while it reads;
//! [`mint_ids`], [`write_field`], [`append_row`] and [`new_study`] are the only
//! functions that touch the disk with a pen.

mod csv_text;
mod facts;
mod fields;
mod files;
mod ids;
mod isbn;
mod lines;
mod lists;
mod markdown;
mod mint;
pub mod model;
mod names;
mod new;
mod pictures;
mod read;
mod show;
mod toml_text;
mod write;

pub use facts::{Agreement, agreement};
pub use files::{Blob, Files};
pub use isbn::{IsbnFault, isbn_fault};
pub use lines::{Lines, Spot, line_of};
pub use mint::{mint_ids, mint_ids_with};
pub use model::*;
pub use names::{nearest, normal};
pub use new::new_study;
pub use read::{Read, read, read_files};
pub use show::show;
pub use write::{append_row, remove_row, source_of, write_field};

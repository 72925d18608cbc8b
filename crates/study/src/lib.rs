//! The folder format of a study: read it, validate it, write single fields back.
//! The only room that knows the author's files.
//!
//! Data flows one way: [`Files`] (bytes by path) → [`read_files`] → [`Read`]
//! (the validated [`Study`], every finding, and the [`Lines`] that turn a place
//! into a line when a finding is shown). Nothing here writes while it reads;
//! [`mint_ids`], [`write_field`], [`append_row`] and [`new_study`] are the only
//! functions that touch the disk with a pen.
//!
//! Fields of places, which findings carry and `write_field` takes (lists count from 1):
//!
//! | file | field |
//! |---|---|
//! | `study.toml`, `part.toml`, `pictures/x.toml` | the path of the setting: `title`, `page-set/lesson/2/level` |
//! | any `.md` | `front/…` for its settings: `front/title`, `front/subject/2/name` |
//! | a lesson | `opening`, `reading`, `more` (whole), `reading/3` (block), `reading/2/1` (item of a list), `reading/title` |
//! | a lesson | `activity/1/intro/1`, `activity/1/steps/2`, `activity/1/table/2/1` (row, cell), `activity/1/answer/1` |
//! | other texts | `text` (whole), `text/2` (block) |
//! | a list | `limpet/meaning`: the row's key cell, up to 40 letters, then the column; a second row of that key is `limpet~2` |
//! | any file | `line 12`, where no field can be named |
#![allow(clippy::disallowed_methods)] // this room reads and writes the author's folder
#![allow(clippy::result_large_err)] // a finding is rare and made for a person, never in a loop that has to be fast

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

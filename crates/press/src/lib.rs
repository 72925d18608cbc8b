//! The press: lays made and proved sheets out on paper, checks the pages, and writes PDF and PNG.
//!
//! The only crate that uses the typesetting library. All that it needs comes in as values (a
//! [`Job`]); it reads neither disk nor clock. [`lay`] typesets a whole file, [`lay_one`] one
//! sheet; a [`Desk`] keeps what does not change between edits. The [`Pressed`] pages can be
//! looked at in plain numbers ([`Pressed::laid`]), checked ([`Pressed::findings`]) and written
//! ([`Pressed::pdf`], [`Pressed::png`]).

mod check;
mod desk;
mod drawn;
mod fault;
mod fonts;
mod ink;
mod job;
mod letters;
mod look;
mod paths;
mod pdf;
mod pressed;
mod room;
mod spot;
mod templates;
mod walk;
mod world;

pub use desk::Desk;
pub use job::{Document, Job, KindIn, Paper, PictureIn, SheetIn};
pub use look::Look;
pub use pressed::{Pressed, forget, lay, lay_one};

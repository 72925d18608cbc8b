//! Markdown as data: lines and blocks of words with their places; never markup.

mod inline;
mod sections;
mod walk;

pub(crate) use inline::link_refused;
pub(crate) use sections::{Activities, Body, lesson, plain};
pub(crate) use walk::Walk;

use crate::model::Said;
use crate::read::Cx;
use findings::Place;
use pulldown_cmark::Options;

/// Stands for a line end inside a cell, so that no line can begin a block. Private use, never printed.
const LINE_END: char = '\u{E000}';
/// Stands before a cell's first letter for the same reason.
const START: char = '\u{E001}';

/// What the reader recognises, so that what cannot be printed is noticed rather than printed raw.
fn options() -> Options {
    Options::ENABLE_TABLES
        | Options::ENABLE_FOOTNOTES
        | Options::ENABLE_STRIKETHROUGH
        | Options::ENABLE_TASKLISTS
}

/// Reads one line of words: a title, a cell. Line ends inside it stay line ends.
pub(crate) fn line(words: &str, at: &Place, cx: &mut Cx) -> Said {
    let one: String = words
        .trim()
        .replace("\r\n", "\n")
        .chars()
        .filter(|c| !matches!(*c, LINE_END | START))
        .map(|c| if matches!(c, '\n' | '\r') { LINE_END } else { c })
        .collect();
    let guarded = format!("{START}{one}");
    let mut walk = Walk::new(&guarded, 0, false);
    Said { at: at.clone(), spans: walk.only_line(at, cx) }
}

//! The author's lists: tables with a header line, one row an entry.

mod books;
mod facts;
mod questions;
mod rows;
mod simple;
mod words;

pub(crate) use facts::{facts, facts_ahead};
pub(crate) use rows::keys;

use crate::files::Files;
use crate::model::Study;
use crate::read::Cx;

/// One list of the format.
#[derive(Debug)]
pub(crate) struct List {
    /// Its file.
    pub file: &'static str,
    /// Its columns in their usual order.
    pub columns: &'static [&'static str],
    /// Columns that must be there and filled in.
    pub required: &'static [&'static str],
    /// Column whose cell names a row in places.
    pub key: &'static str,
}

pub(crate) const FACTS: List = List {
    file: "facts.csv",
    columns: &[
        "id",
        "statement",
        "value",
        "unit",
        "source",
        "publisher",
        "year",
        "address",
        "note",
    ],
    required: &["id", "statement"],
    key: "id",
};
pub(crate) const WORDS: List = List {
    file: "words.csv",
    columns: &["word", "meaning", "where", "picture", "puzzle"],
    required: &["word"],
    key: "word",
};
pub(crate) const QUESTIONS: List = List {
    file: "questions.csv",
    columns: &[
        "id", "where", "for", "question", "answer", "also", "low", "high", "unit", "lines", "fact",
        "band",
    ],
    required: &["question"],
    key: "id",
};
pub(crate) const BOOKS: List = List {
    file: "books.csv",
    columns: &["title", "author", "publisher", "year", "isbn", "ages", "where", "when", "note"],
    required: &["title", "author"],
    key: "title",
};
pub(crate) const LINKS: List = List {
    file: "links.csv",
    columns: &["title", "institution", "address", "where", "when", "note"],
    required: &["title", "address"],
    key: "title",
};
pub(crate) const RESOURCES: List = List {
    file: "resources.csv",
    columns: &["form", "title", "by", "when", "note", "where"],
    required: &["form", "title"],
    key: "title",
};
pub(crate) const HUNT: List = List {
    file: "hunt.csv",
    columns: &["item", "picture", "where", "hint", "safe"],
    required: &["item"],
    key: "item",
};
pub(crate) const PROMPTS: List = List {
    file: "prompts.csv",
    columns: &["prompt", "for", "where"],
    required: &["prompt"],
    key: "prompt",
};
pub(crate) const FIGURES: List = List {
    file: "figures.csv",
    columns: &["sentence", "figure", "why", "where"],
    required: &["sentence", "figure"],
    key: "sentence",
};

/// All lists of the format.
pub(crate) const LISTS: &[List] =
    &[BOOKS, FACTS, FIGURES, HUNT, LINKS, PROMPTS, QUESTIONS, RESOURCES, WORDS];

/// Reads every list but the facts, which texts need earlier.
pub(crate) fn read(files: &Files, study: &mut Study, cx: &mut Cx) {
    study.words = words::all(files, cx);
    study.questions = questions::all(files, cx);
    study.books = books::books(files, cx);
    study.links = books::links(files, cx);
    study.resources = simple::resources(files, cx);
    study.hunt = simple::hunt(files, cx);
    study.prompts = simple::prompts(files, cx);
    study.figures = simple::figures(files, cx);
}

//! Page sets: which kinds of sheet an owner gets, and how an owner changes its set.

use super::{Band, Said};
use findings::Place;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// The kinds that the study, each part, lesson and subject get.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct PageSet {
    /// Sheets of the study that print first.
    pub front: Vec<Entry>,
    /// Sheets of each part.
    pub part: Vec<Entry>,
    /// Sheets of each lesson.
    pub lesson: Vec<Entry>,
    /// Sheets of each subject.
    pub subject: Vec<Entry>,
    /// Sheets of the study that print last.
    pub back: Vec<Entry>,
}

/// One entry of a page set.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Entry {
    /// A sheet, or a count of them.
    Sheet(Wanted),
    /// One of these, chosen by the owner's id.
    OneOf(Vec<Wanted>),
    /// The sheets of the lesson's subjects stand here.
    Subjects,
}

/// A wanted sheet as the author wrote it; names of kinds and options are checked by the plan.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Wanted {
    /// Kind, e.g. `word-search`.
    pub kind: String,
    /// How many of it.
    pub count: u32,
    /// Own ordinal name instead of `a`.
    pub name: Option<String>,
    /// Everything else the author set, `band`, `level`, `print`, `title`, `again` included.
    pub options: Options,
    /// Where it is written.
    pub at: Place,
}

/// Option values by name.
pub type Options = BTreeMap<String, Value>;

/// A value of an option.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(untagged)]
pub enum Value {
    /// Yes or no.
    Flag(bool),
    /// A whole number.
    Number(i64),
    /// Words.
    Text(String),
    /// A list.
    List(Vec<Value>),
}

/// Where a sheet prints; never part of its identity.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PrintAt {
    /// In its place.
    Here,
    /// At the end of its part.
    PartEnd,
    /// At the back of the study.
    Back,
}

/// How a part, lesson or subject changes its page set.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Changes {
    /// Instead of the set above.
    pub set: Option<Vec<Entry>>,
    /// Besides it.
    pub add: Vec<Entry>,
    /// Less these kinds.
    pub leave_out: Vec<Said>,
    /// Options by kind (`word-search`) or by kind and ordinal name (`word-search-b`).
    pub options: BTreeMap<String, Options>,
    /// Band for all its sheets.
    pub band: Option<Band>,
    /// A part's set for each of its lessons, instead of the study's.
    pub lesson: Option<Vec<Entry>>,
    /// A part's or lesson's set for each subject below it, instead of the study's.
    pub subject: Option<Vec<Entry>>,
    /// Where the changes are written, e.g. `parts/middle/homeward.md#pages`.
    pub at: Place,
}

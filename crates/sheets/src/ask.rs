//! What a kind is told when it is asked for a sheet.

use crate::lexicon::Lexicon;
use serde::{Deserialize, Serialize};
use study::{Band, Options, Study, Value};

/// Everything a kind may look at to work out its Needs.
#[derive(Debug, Clone, Copy)]
pub struct Ask<'a> {
    /// The whole validated study.
    pub study: &'a Study,
    /// Whose sheet it is.
    pub owner: Owner,
    /// Sheet id: owner's id, kind, ordinal name.
    pub sheet: &'a str,
    /// Options, already checked against the schema; `band` and `level` stand in their own fields.
    pub options: &'a Options,
    /// Age band.
    pub band: Band,
    /// Level 1 to 3 within the band.
    pub level: u8,
    /// Language of the fixed words.
    pub language: &'a str,
    /// Space to fill.
    pub room: Room,
    /// Dictionary, when the program was built with one.
    pub lexicon: &'a Lexicon,
    /// The study's other sheets; empty for kinds that do not gather.
    pub gathered: &'a Gathered,
}

/// Whose sheet it is, by index into the study.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Owner {
    /// The study itself.
    Study,
    /// A part.
    Part(usize),
    /// A lesson.
    Lesson(usize),
    /// A subject of a lesson: lesson index, subject index.
    Subject(usize, usize),
}

/// The area that a sheet may fill, common to both papers, µm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Room {
    /// Name; `plain` or `large`.
    pub large_print: bool,
    /// Width of the whole field, µm.
    pub field_w: u32,
    /// Height of the body between head and foot, µm.
    pub body_h: u32,
    /// Width of the main column, µm.
    pub main_w: u32,
    /// Width of body without side column, µm.
    pub full_w: u32,
}

impl Room {
    /// Ordinary print: a field of 197 × 260 mm, a body 210 mm high between head and foot.
    pub const PLAIN: Room = Room {
        large_print: false,
        field_w: 197_000,
        body_h: 210_000,
        main_w: 132_000,
        full_w: 183_000,
    };
}

/// The study's sheets in printing order, for kinds that gather.
#[derive(Debug, Clone, Default, PartialEq, Serialize, Deserialize)]
pub struct Gathered {
    /// One entry a sheet.
    pub entries: Vec<Entry>,
}

/// A sheet as seen by a kind that gathers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// Sheet id; `see(id)` in a template prints its page.
    pub id: String,
    /// Kind.
    pub kind: String,
    /// Title as printed.
    pub title: String,
    /// Plain name of the kind in the study's language.
    pub what: String,
    /// Sign.
    pub sign: String,
    /// Index of its lesson.
    pub lesson: Option<usize>,
    /// Index of its part.
    pub part: Option<usize>,
    /// Owner.
    pub owner: Owner,
    /// Its number in the key, when it has answers.
    pub key_number: Option<u32>,
    /// Its key as JSON, when it has answers.
    pub key: Option<serde_json::Value>,
    /// Names of the pictures it shows.
    pub pictures: Vec<String>,
    /// Ids of the facts it uses.
    pub facts: Vec<String>,
    /// True when it is printed on card and cut (for the print guide).
    pub card: bool,
    /// True when it could not be made and a page says what is wanted.
    pub wanting: bool,
}

impl Ask<'_> {
    /// Place of the sheet in a count by its ordinal name: `a` is 0, `b` is 1; an own name is 0.
    pub fn nth(&self) -> usize {
        match self.sheet.rsplit('.').next().unwrap_or_default().as_bytes() {
            [letter @ b'a'..=b'z'] => usize::from(letter - b'a'),
            _ => 0,
        }
    }

    /// A whole-number option.
    pub fn number(&self, name: &str) -> Option<i64> {
        match self.options.get(name) {
            Some(Value::Number(n)) => Some(*n),
            _ => None,
        }
    }

    /// A text option.
    pub fn text(&self, name: &str) -> Option<&str> {
        match self.options.get(name) {
            Some(Value::Text(t)) => Some(t),
            _ => None,
        }
    }

    /// A yes-or-no option.
    pub fn flag(&self, name: &str) -> Option<bool> {
        match self.options.get(name) {
            Some(Value::Flag(f)) => Some(*f),
            _ => None,
        }
    }

    /// An option that is a list of texts.
    pub fn texts(&self, name: &str) -> Option<Vec<&str>> {
        match self.options.get(name) {
            Some(Value::List(v)) => Some(
                v.iter()
                    .filter_map(|v| if let Value::Text(t) = v { Some(t.as_str()) } else { None })
                    .collect(),
            ),
            _ => None,
        }
    }
}

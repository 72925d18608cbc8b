//! The validated study: types that cannot be wrong, with the place of every text kept.

mod lesson;
mod lists;
mod pageset;
mod picture;
mod text;

pub use lesson::{Activity, ActivityForm, CompareRow, Compared, Lesson, Reading, Subject};
pub use lists::{
    Book, Figure, FigureOfSpeech, HuntItem, Link, Prompt, PromptFor, Question, QuestionFor, Range,
    Resource, ResourceForm, Word,
};
pub use pageset::{Changes, Entry, Options, PageSet, PrintAt, Value, Wanted};
pub use picture::{Landmark, MayBeSold, Picture, PictureForm};
pub(crate) use text::plain_into;
pub use text::{Block, Said, Span, Text};

use findings::Place;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// An age band; type sizes, leading and the amount of work on a page follow it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Band {
    /// Ages 3 to 6.
    #[serde(rename = "3-6")]
    A,
    /// Ages 7 to 9.
    #[serde(rename = "7-9")]
    B,
    /// Ages 10 to 12.
    #[serde(rename = "10-12")]
    C,
    /// Ages 13 to 18.
    #[serde(rename = "13-18")]
    D,
}

impl Band {
    /// All bands, youngest first.
    pub const ALL: [Band; 4] = [Band::A, Band::B, Band::C, Band::D];

    /// As the author writes it: `3-6`, `7-9`, `10-12`, `13-18`.
    pub fn name(self) -> &'static str {
        match self {
            Band::A => "3-6",
            Band::B => "7-9",
            Band::C => "10-12",
            Band::D => "13-18",
        }
    }

    /// The band the author wrote, if it is one.
    pub fn parse(written: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|b| b.name() == written.trim().replace('–', "-"))
    }

    /// Youngest and oldest age in years.
    pub fn ages(self) -> Ages {
        match self {
            Band::A => Ages { from: 3, to: 6 },
            Band::B => Ages { from: 7, to: 9 },
            Band::C => Ages { from: 10, to: 12 },
            Band::D => Ages { from: 13, to: 18 },
        }
    }
}

/// A range of ages in years, both ends included.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Ages {
    /// Youngest age, in years.
    pub from: u8,
    /// Oldest age, in years.
    pub to: u8,
}

/// A calendar date without a time zone, as the study gives it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Date {
    /// Year, e.g. 2026.
    pub year: i32,
    /// Month 1 to 12.
    pub month: u8,
    /// Day 1 to 31.
    pub day: u8,
}

/// The whole product on one theme.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Study {
    /// Minted once, stored in `study.toml`.
    pub id: String,
    /// Title, also the PDF's.
    pub title: Said,
    /// One line under the title.
    pub subtitle: Option<Said>,
    /// The author's name.
    pub author: Option<Said>,
    /// The press's name.
    pub press: Option<Said>,
    /// BCP 47 language code, e.g. `en`.
    pub language: String,
    /// The published version, e.g. `1.0`.
    pub issue: String,
    /// Date printed and stored in the PDFs.
    pub date: Option<Date>,
    /// Ages it is for.
    pub ages: Ages,
    /// Name of the look, e.g. `strand`.
    pub look: String,
    /// Picture on the cover, by name.
    pub cover: Option<String>,
    /// Terms of use.
    pub terms: Option<Said>,
    /// Thanks.
    pub thanks: Option<Said>,
    /// Names of the inquiry notebook's boxes.
    pub inquiry_boxes: Vec<Said>,
    /// Optional text after the contents.
    pub introduction: Option<Text>,
    /// The page set, or none when the program should choose.
    pub page_set: Option<PageSet>,
    /// Lessons and parts in the order of teaching.
    pub order: Vec<Step>,
    /// All parts.
    pub parts: Vec<Part>,
    /// All lessons, in the order of teaching; the number on the page is the index plus one.
    pub lessons: Vec<Lesson>,
    /// Biographies, in order of file name.
    pub people: Vec<Person>,
    /// Facts by id.
    pub facts: BTreeMap<String, Fact>,
    /// `words.csv`, in file order.
    pub words: Vec<Word>,
    /// `questions.csv`, in file order.
    pub questions: Vec<Question>,
    /// `books.csv`.
    pub books: Vec<Book>,
    /// `links.csv`.
    pub links: Vec<Link>,
    /// `resources.csv`.
    pub resources: Vec<Resource>,
    /// `hunt.csv`.
    pub hunt: Vec<HuntItem>,
    /// `prompts.csv`.
    pub prompts: Vec<Prompt>,
    /// `figures.csv`.
    pub figures: Vec<FigureOfSpeech>,
    /// Pictures by name.
    pub pictures: BTreeMap<String, Picture>,
    /// Kept sheets: sheet id to the stored JSON.
    pub kept: BTreeMap<String, String>,
}

/// One step of the study's order, by index.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum Step {
    /// A lesson that stands directly in the study.
    Lesson(usize),
    /// A part with its lessons.
    Part(usize),
}

/// A branch of the theme.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Part {
    /// Minted once.
    pub id: String,
    /// Folder name.
    pub name: String,
    /// Title.
    pub title: Said,
    /// Big question of the part.
    pub question: Option<Said>,
    /// Picture by name.
    pub picture: Option<String>,
    /// Indices into `Study::lessons`, in order.
    pub lessons: Vec<usize>,
    /// Its changes to the page set.
    pub pages: Changes,
    /// The part's file.
    pub place: Place,
}

/// A biography.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Person {
    /// Minted once.
    pub id: String,
    /// File name without its ending.
    pub stem: String,
    /// Name.
    pub name: Said,
    /// Year of birth as written.
    pub born: Option<Said>,
    /// Year of death as written.
    pub died: Option<Said>,
    /// Known for.
    pub known_for: Option<Said>,
    /// Picture by name.
    pub picture: Option<String>,
    /// Lessons, parts or subjects it goes with.
    pub wherever: Vec<String>,
    /// Facts whose sources are named.
    pub facts: Vec<String>,
    /// Timeline: year, what.
    pub timeline: Vec<(Said, Said)>,
    /// Questions with answers.
    pub questions: Vec<(Said, Said)>,
    /// The text.
    pub text: Text,
    /// Band.
    pub band: Option<Band>,
    /// The person's file.
    pub place: Place,
}

/// A statement with its value, unit and source.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fact {
    /// Chosen by the author, e.g. `limpet-age`.
    pub id: String,
    /// The statement in the author's words.
    pub statement: Said,
    /// The value as printed, e.g. `about 20`.
    pub value: String,
    /// Unit as printed, e.g. `years`.
    pub unit: String,
    /// Title of the source; empty when wanted.
    pub source: String,
    /// Who published it.
    pub publisher: String,
    /// Year as written.
    pub year: String,
    /// Address, if on line.
    pub address: String,
    /// The row.
    pub place: Place,
}

//! The validated study: types that cannot be wrong, with the place of every text kept.

mod lists;
mod pageset;
mod text;

pub use lists::{Book, Figure, FigureOfSpeech, HuntItem, Link, Prompt, PromptFor, Question, QuestionFor, Range, Resource, ResourceForm, Word};
pub use pageset::{Changes, Entry, Options, PageSet, PrintAt, Value, Wanted};
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

/// One step of teaching.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Lesson {
    /// Minted once.
    pub id: String,
    /// File name without its ending.
    pub name: String,
    /// Title.
    pub title: Said,
    /// Big question.
    pub question: Option<Said>,
    /// Index of its part, if it stands in one.
    pub part: Option<usize>,
    /// Ages, the study's when the lesson gives none.
    pub ages: Ages,
    /// Band of its sheets unless a page set says otherwise.
    pub band: Band,
    /// Picture by name.
    pub picture: Option<String>,
    /// Caption of the picture.
    pub caption: Option<Said>,
    /// What to have ready.
    pub ready: Vec<Said>,
    /// Facts whose sources are named besides those used.
    pub sources: Vec<String>,
    /// Subjects; at least one (a lesson without any gets itself as its subject).
    pub subjects: Vec<Subject>,
    /// `## Opening`.
    pub opening: Option<Text>,
    /// Readings by band; the one of the lesson's own file stands first.
    pub readings: Vec<Reading>,
    /// `## One thing more`.
    pub more: Option<Text>,
    /// Activities.
    pub activities: Vec<Activity>,
    /// Rows of the compare sheet.
    pub compare: Vec<CompareRow>,
    /// Its changes to the page set.
    pub pages: Changes,
    /// The lesson's file.
    pub place: Place,
}

/// One thing a lesson looks at.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Subject {
    /// Minted once.
    pub id: String,
    /// Name used in the `where` columns.
    pub name: String,
    /// Title, e.g. "The common limpet".
    pub title: Said,
    /// Picture by name.
    pub picture: Option<String>,
    /// Its changes to the page set.
    pub pages: Changes,
    /// Where it is written.
    pub place: Place,
}

/// A text to read at one band.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Reading {
    /// Band it is written for.
    pub band: Band,
    /// Title.
    pub title: Said,
    /// The text.
    pub text: Text,
}

/// What an activity is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum ActivityForm {
    /// Try and see.
    Experiment,
    /// Make something that stands.
    Building,
    /// Go somewhere.
    Outing,
    /// Cook or bake.
    Kitchen,
    /// A sensory tray.
    Tray,
}

/// Something to do.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Activity {
    /// Title.
    pub title: Said,
    /// What it is.
    pub form: ActivityForm,
    /// Time it takes, in minutes.
    pub minutes: Option<u32>,
    /// Caution tags.
    pub tags: Vec<String>,
    /// Band, the lesson's when it gives none.
    pub band: Option<Band>,
    /// Picture by name.
    pub picture: Option<String>,
    /// Why we do it.
    pub intro: Text,
    /// Supplies ("Have ready").
    pub supplies: Vec<Said>,
    /// Steps in order.
    pub steps: Vec<Said>,
    /// Tray: base.
    pub base: Vec<Said>,
    /// Tray: fillers.
    pub fillers: Vec<Said>,
    /// Tray: tools.
    pub tools: Vec<Said>,
    /// Tray: opening idea.
    pub idea: Option<Text>,
    /// Recording table: header and rows, empty cells to fill in.
    pub table: Vec<Vec<Said>>,
    /// For the key.
    pub answer: Option<Text>,
    /// Things to talk about while doing it.
    pub ask: Vec<Said>,
    /// Where it is written.
    pub place: Place,
}

/// A row of the compare sheet.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct CompareRow {
    /// What is compared.
    pub aspect: Said,
    /// What they share, or what each has.
    pub what: Compared,
}

/// Alike or different.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Compared {
    /// True of both.
    Both(Said),
    /// First subject's, second subject's.
    Each(Said, Said),
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

/// May a picture be sold as part of a study?
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum MayBeSold {
    /// Yes.
    Yes,
    /// No.
    No,
    /// Ask first.
    Ask,
}

/// How a picture's file is coded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum PictureForm {
    /// Vector.
    Svg,
    /// Bitmap.
    Png,
    /// Bitmap.
    Jpeg,
}

/// Artwork with its alt text, rights record, points and named pieces.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Picture {
    /// File name without its ending.
    pub name: String,
    /// How it is coded.
    pub form: PictureForm,
    /// The file's bytes as they go to the press: SVG cleaned, bitmaps without EXIF.
    #[serde(skip)]
    pub bytes: std::sync::Arc<[u8]>,
    /// Hash of the bytes, lower-case hexadecimal.
    pub hash: String,
    /// Width in pixels or SVG user units.
    pub width: u32,
    /// Height in pixels or SVG user units.
    pub height: u32,
    /// Alt text, when written.
    pub alt: Option<Said>,
    /// Who made it.
    pub author: Option<String>,
    /// Licence.
    pub licence: Option<String>,
    /// Where it comes from.
    pub source: Option<String>,
    /// May it be sold?
    pub may_be_sold: Option<MayBeSold>,
    /// Named points in the picture's own units times 10 (tenths).
    pub points: Vec<Landmark>,
    /// Pieces: id in the SVG, plain name.
    pub pieces: Vec<(String, String)>,
    /// The picture's file.
    pub place: Place,
}

/// A named point on a picture.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Landmark {
    /// Name of the point.
    pub name: String,
    /// Tenths of the picture's own unit from its left edge.
    pub x: i32,
    /// Tenths of the picture's own unit from its top edge.
    pub y: i32,
    /// Id of the piece it lies on.
    pub piece: Option<String>,
}

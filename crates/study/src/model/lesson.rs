//! Lessons and what they hold: subjects, readings, activities, rows to compare.

use super::{Ages, Band, Changes, Said, Text};
use findings::Place;
use serde::{Deserialize, Serialize};

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

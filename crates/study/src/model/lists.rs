//! The author's lists: words, questions, books, links and the rest.

use super::{Band, Said};
use findings::Place;
use serde::{Deserialize, Serialize};

/// A word to know.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Word {
    /// The word as written, e.g. `home scar`.
    pub word: Said,
    /// Plain meaning.
    pub meaning: Option<Said>,
    /// Lessons, parts, subjects; empty for the whole study.
    pub wherever: Vec<String>,
    /// Picture by name.
    pub picture: Option<String>,
    /// May it stand in letter puzzles?
    pub puzzle: bool,
}

/// Whom a question is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum QuestionFor {
    /// Lines to write on.
    Write,
    /// Talk only.
    Talk,
    /// A stretch task.
    Teen,
    /// Something to talk about with a toddler.
    Toddler,
}

/// A range that is right, ends included, as the author wrote the numbers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Range {
    /// Lowest right answer.
    pub low: String,
    /// Highest right answer.
    pub high: String,
    /// Unit.
    pub unit: String,
}

/// A question with its model answer.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Question {
    /// Id chosen by the author, or made from its row.
    pub id: String,
    /// Lessons, parts, subjects.
    pub wherever: Vec<String>,
    /// Whom it is for.
    pub whom: QuestionFor,
    /// The question.
    pub question: Said,
    /// Model answer.
    pub answer: Option<Said>,
    /// Other right answers.
    pub also: Vec<Said>,
    /// A range that is right.
    pub range: Option<Range>,
    /// Lines to write on; the kind chooses when absent.
    pub lines: Option<u32>,
    /// Fact that the answer comes from.
    pub fact: Option<String>,
    /// Band, when it is for one only.
    pub band: Option<Band>,
}

/// A book.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Book {
    /// Title.
    pub title: Said,
    /// Author.
    pub author: Said,
    /// Publisher.
    pub publisher: String,
    /// Year as written.
    pub year: String,
    /// ISBN as written, check digit proved.
    pub isbn: Option<String>,
    /// Ages as written.
    pub ages: String,
    /// Lessons, parts, subjects; empty for the whole study.
    pub wherever: Vec<String>,
    /// When to use it.
    pub when: Option<Said>,
    /// Note.
    pub note: Option<Said>,
}

/// A page on line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Link {
    /// Title.
    pub title: Said,
    /// Institution.
    pub institution: Said,
    /// https address.
    pub address: String,
    /// Lessons, parts, subjects; empty for the whole study.
    pub wherever: Vec<String>,
    /// When to use it.
    pub when: Option<Said>,
    /// Note.
    pub note: Option<Said>,
    /// The row's address cell.
    pub place: Place,
}

/// What an optional extra is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum ResourceForm {
    /// To hear.
    Hear,
    /// To look at.
    Look,
    /// To make.
    Make,
    /// To visit.
    Visit,
    /// To play.
    Play,
}

/// An optional extra.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Resource {
    /// What it is.
    pub form: ResourceForm,
    /// Title.
    pub title: Said,
    /// Whose it is.
    pub by: Option<Said>,
    /// When to use it.
    pub when: Option<Said>,
    /// Note.
    pub note: Option<Said>,
    /// Lessons, parts, subjects; empty for the whole study.
    pub wherever: Vec<String>,
}

/// An item of the scavenger hunt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct HuntItem {
    /// What to find.
    pub item: Said,
    /// Picture by name.
    pub picture: Option<String>,
    /// Lessons, parts, subjects; empty for the whole study.
    pub wherever: Vec<String>,
    /// Where to look.
    pub hint: Option<Said>,
    /// What to do with it ("look, do not take").
    pub safe: Option<Said>,
}

/// Whom a writing prompt is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum PromptFor {
    /// Young children.
    Little,
    /// Children who write.
    Middle,
    /// Teens.
    Teen,
}

/// A writing prompt.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Prompt {
    /// The prompt.
    pub prompt: Said,
    /// Whom it is for.
    pub whom: PromptFor,
    /// Lessons, parts, subjects; empty for the whole study.
    pub wherever: Vec<String>,
}

/// A figure of speech.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Figure {
    /// Like or as.
    Simile,
    /// One thing called another.
    Metaphor,
    /// More than true.
    Hyperbole,
    /// A thing acts as a person.
    Personification,
}

/// A sentence with its figure of speech.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FigureOfSpeech {
    /// The sentence.
    pub sentence: Said,
    /// Its figure.
    pub figure: Figure,
    /// Why.
    pub why: Option<Said>,
    /// Lessons, parts, subjects; empty for the whole study.
    pub wherever: Vec<String>,
}

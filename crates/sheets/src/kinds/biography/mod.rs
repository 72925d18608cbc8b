//! Biography: one person's life on a page or two.
//!
//! # What it prints
//! The picture, the name with the years and what the person is known for, the text, a line of time down the shoulder,
//! questions with lines to write on, and the sources of the facts. The key has the answers.
//!
//! # What it needs
//! A file in `people/`: the one that the option `person` names, else the person whose `where` names the lesson (of a
//! count, the second sheet takes the second person). A name and a text at least.
//!
//! # How it is proved
//! Text, line of time and questions stand there as written, each question once with lines; the years run forwards and
//! lie within the life (the last may come after it: a book, an honour); the first and last year of the life agree with
//! `born` and `died`; every fact used has its source on the page, each source once; the key answers every numbered
//! question.
//!
//! # Limits
//! Years are read as the first whole number in what the author wrote; `about 1799` counts as 1799, and a year before
//! Christ is left alone.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::shared::{PictureRef, SourceLine};
use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::Needs;
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::{Said, Text};

/// The kind.
pub struct Biography;

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// The person's name.
    pub name: Said,
    /// Year of birth.
    pub born: Option<Said>,
    /// Year of death.
    pub died: Option<Said>,
    /// Known for.
    pub known_for: Option<Said>,
    /// Picture.
    pub picture: Option<PictureRef>,
    /// The text.
    pub text: Text,
    /// Line of time, first year first.
    pub timeline: Vec<Event>,
    /// Numbered questions.
    pub questions: Vec<Asked>,
    /// Sources of the facts.
    pub sources: Vec<SourceLine>,
}

/// An event on the line of time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Event {
    /// Year as written.
    pub year: Said,
    /// What happened.
    pub what: Said,
}

/// A question.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Asked {
    /// Number, from 1.
    pub n: u32,
    /// The question.
    pub question: Said,
    /// Lines to write on.
    pub lines: u32,
}

/// The answers.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    /// One entry a question.
    pub answers: Vec<Answer>,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answer {
    /// Number of the question.
    pub n: u32,
    /// The model answer.
    pub answer: Said,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for Biography {
    const ABOUT: About = About {
        id: "biography",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson, Scope::Subject],
        sign: Sign::Read,
        options: &[Opt { name: "person", kind: OptKind::Text }],
        page: include_str!("page.typ"),
        words: WORDS,
        doc: include_str!("mod.rs"),
        gathers: false,
    };
    type Needs = Needs;
    type Sheet = Sheet;
    type Key = Key;

    fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
        needs::needs(ask)
    }

    fn make(needs: &Needs, _dice: &mut Dice) -> Result<Sheet, Findings> {
        Ok(make::make(needs))
    }

    fn check(needs: &Needs, sheet: &Sheet) -> Proof {
        check::check(needs, sheet)
    }

    fn head(needs: &Needs, sheet: &Sheet) -> Head {
        Head {
            title: needs.title.clone(),
            lead: sheet.known_for.as_ref().map(Said::plain),
            pictures: sheet.picture.iter().map(|p| p.name.clone()).collect(),
            facts: needs.facts.iter().map(|f| f.id.clone()).collect(),
            ..Head::default()
        }
    }

    fn key(needs: &Needs, sheet: &Sheet) -> Option<Key> {
        let answers = check::answers(needs, sheet);
        (!answers.is_empty()).then_some(Key { answers })
    }
}

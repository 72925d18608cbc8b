//! Figures of speech: find them, sort them, write your own.
//!
//! # What it prints
//! Sentences from the study and a short reminder of each figure. At level 1 and 2 the child writes the letter of the
//! figure beside each sentence (at level 2 underlining the words that show it); at level 3 the numbers of the
//! sentences go into a table. Then comes a line or two for sentences of one's own. The key says why.
//!
//! # What it needs
//! Four rows or more of `figures.csv` for its owner, of two figures or more, two sentences at least of some figure.
//!
//! # How it is proved
//! Each printed sentence is one of the author's, word for word, and stands there once; the numbers run on; the
//! reminders are those of the figures on the page; neighbours do not stand grouped by figure; the key, worked out from
//! the printed sentences, names the author's figure for each. A simile without like or as, a metaphor with one, and a
//! figure that is missing are warned about.
//!
//! # Limits
//! Whether a sentence is a good example is the author's to judge; the signs of a simile are known for English only.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::shared::PictureRef;
use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::{Needs, Row};
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::{Figure, Said};

/// The kind.
pub struct FiguresOfSpeech;

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// How the child answers.
    pub task: Task,
    /// The figures on the page, in the order of their reminders.
    pub figures: Vec<Figure>,
    /// Numbered sentences.
    pub sentences: Vec<Sentence>,
    /// Figures of which the child writes a sentence; empty when the child may choose.
    pub own: Vec<Figure>,
    /// Lines to write on for each own sentence.
    pub lines: u32,
    /// The owner's picture, beside the reminders.
    pub picture: Option<PictureRef>,
}

/// How the child answers.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Task {
    /// Write the letter.
    Letter,
    /// Write the letter and underline the words that show it.
    Underline,
    /// Write the numbers of the sentences into a table.
    Sort,
}

/// A sentence with its number.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sentence {
    /// Number, from 1.
    pub n: u32,
    /// The sentence.
    pub sentence: Said,
}

/// The answers.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    /// One entry a sentence.
    pub answers: Vec<Answer>,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Answer {
    /// Number of the sentence.
    pub n: u32,
    /// Its figure.
    pub figure: Figure,
    /// Why.
    pub why: Option<Said>,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for FiguresOfSpeech {
    const ABOUT: About = About {
        id: "figures-of-speech",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson],
        sign: Sign::Write,
        options: &[Opt { name: "sentences", kind: OptKind::Number { min: 4, max: 16 } }],
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

    fn make(needs: &Needs, dice: &mut Dice) -> Result<Sheet, Findings> {
        Ok(make::make(needs, dice))
    }

    fn check(needs: &Needs, sheet: &Sheet) -> Proof {
        check::check(needs, sheet)
    }

    fn head(needs: &Needs, sheet: &Sheet) -> Head {
        let facts = sheet.sentences.iter().flat_map(|s| s.sentence.facts()).map(str::to_owned);
        Head {
            title: needs.title.clone(),
            lead: Some(needs.lead.clone()),
            name_line: true,
            pictures: sheet.picture.iter().map(|p| p.name.clone()).collect(),
            facts: facts.collect(),
            ..Head::default()
        }
    }

    fn key(needs: &Needs, sheet: &Sheet) -> Option<Key> {
        Some(Key { answers: check::answers(needs, sheet) })
    }
}

//! Questions about a lesson: to write, to talk about, a task for teens, one for toddlers.
//!
//! # What it prints
//! Numbered questions to write, each with lines by the band; then those to
//! talk about, a stretch task, and something to ask a toddler, without lines
//! unless the author wants them. No answer stands on the page.
//!
//! # What it needs
//! Rows of `questions.csv` that belong to the owner and are for every band or
//! for the sheet's.
//!
//! # How it is proved
//! Every question is printed once, with the next number; those to write have
//! at least the lines of their band; the key answers number by number with the
//! author's answer, every other right one, and the range, whose ends run
//! upwards; a number in the model answer lies within the range.
//!
//! # Limits
//! A model answer is the author's word; only its numbers are checked.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::about::{About, Opt, OptKind, Scope, Sign};
use crate::ask::Ask;
use crate::kind::{Head, Kind};
use crate::shared::SourceLine;
use craft::Dice;
use findings::Findings;
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::{QuestionFor, Range, Said};

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct Questions;

/// What the sheet is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title of the sheet.
    pub title: String,
    /// Questions in printing order, with their answers.
    pub asked: Vec<Asked>,
    /// Fewest lines under a question to write, at this band.
    pub least_lines: u32,
    /// Language of the study.
    pub language: String,
}

/// A question with its answers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Asked {
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
    /// Lines to write on.
    pub lines: u32,
    /// Fact that the answer comes from.
    pub fact: Option<String>,
    /// Its source.
    pub source: Option<SourceLine>,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Questions in order.
    pub items: Vec<Item>,
}

/// A printed question.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Item {
    /// Number on the page and in the key, from 1.
    pub n: usize,
    /// Whom it is for.
    pub whom: QuestionFor,
    /// The question.
    pub question: Said,
    /// Lines to write on; 0 for talking.
    pub lines: u32,
}

/// Answers.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Key {
    /// One a question that has any.
    pub answers: Vec<Answer>,
}

/// The answer to one question.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Answer {
    /// Number of the question.
    pub n: usize,
    /// Model answer.
    pub answer: Option<Said>,
    /// Other right answers.
    pub also: Vec<Said>,
    /// A range that is right.
    pub range: Option<Range>,
    /// Where the answer comes from.
    pub source: Option<SourceLine>,
}

impl Kind for Questions {
    const ABOUT: About = About {
        id: "questions",
        rev: 1,
        scopes: &[Scope::Lesson, Scope::Subject],
        sign: Sign::Write,
        options: &[Opt { name: "questions", kind: OptKind::Number { min: 1, max: 30 } }],
        page: include_str!("page.typ"),
        words: include_str!("words.toml"),
        doc: include_str!("mod.rs"),
        gathers: false,
    };
    type Needs = Needs;
    type Sheet = Sheet;
    type Key = Key;

    fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
        needs::needs(ask, Self::ABOUT.words)
    }

    fn make(needs: &Needs, _dice: &mut Dice) -> Result<Sheet, Findings> {
        Ok(make::make(needs))
    }

    fn check(needs: &Needs, sheet: &Sheet) -> Proof {
        check::check(needs, sheet)
    }

    fn head(needs: &Needs, sheet: &Sheet) -> Head {
        let in_questions = sheet.items.iter().flat_map(|i| i.question.facts());
        let in_answers = needs.asked.iter().filter_map(|a| a.fact.as_deref());
        Head {
            title: needs.title.clone(),
            name_line: sheet.items.iter().any(|i| i.lines > 0),
            facts: in_questions.chain(in_answers).map(str::to_owned).collect(),
            ..Head::default()
        }
    }

    fn key(needs: &Needs, sheet: &Sheet) -> Option<Key> {
        make::key(needs, sheet)
    }
}

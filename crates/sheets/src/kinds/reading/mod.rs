//! A text to read, with its picture, the words it explains, one thing more, and its sources.
//!
//! # What it prints
//! Title, picture with caption, and the text at the size of the sheet's band;
//! beside it a box with the words that stand bold in the text, an aside, and
//! the sources of the facts used. Long texts go on over further pages.
//!
//! # What it needs
//! A lesson with a reading; the one of the sheet's band is taken, else the
//! nearest band's. For the study: `introduction.md`. The option `picture` names
//! another picture than the lesson's.
//!
//! # How it is proved
//! Text and title are the author's; every bold word that has a meaning in
//! words.csv stands in the box, and nothing stands there that is not in the
//! text; words linked to a fact that has a number contradict it with none of
//! theirs; the sources of all facts used, and no others, are named.
//!
//! # Limits
//! Numbers written as words are understood in English only. Words that merely
//! rephrase a fact are not judged.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::about::{About, Opt, OptKind, Scope, Sign};
use crate::ask::Ask;
use crate::kind::{Head, Kind};
use crate::shared::{PictureRef, SourceLine};
use craft::Dice;
use findings::Findings;
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::{Said, Text};

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct Reading;

/// What the sheet is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title of the text.
    pub title: Said,
    /// The text.
    pub text: Text,
    /// Aside; empty when there is none.
    pub more: Text,
    /// Picture of the lesson.
    pub picture: Option<PictureRef>,
    /// Its caption.
    pub caption: Option<Said>,
    /// Words that stand bold in the text and have a meaning, in order of first use.
    pub terms: Vec<Term>,
    /// Bold words without a meaning in the list.
    pub unexplained: Vec<Said>,
    /// Facts used, and those that the lesson names besides.
    pub facts: Vec<Fact>,
    /// Language of the study.
    pub language: String,
}

/// A word with its meaning.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Term {
    /// The word.
    pub term: Said,
    /// What it means.
    pub meaning: Said,
    /// The word as it stands bold in the text, lower-case.
    pub bold: String,
}

/// A fact as far as the sheet needs it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Fact {
    /// Id.
    pub id: String,
    /// Value with its unit; empty when the fact has none.
    pub value: String,
    /// Statement, value and unit in one line.
    pub says: String,
    /// Source; none while it is still wanted.
    pub source: Option<SourceLine>,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Title of the text.
    pub title: Said,
    /// The text.
    pub text: Text,
    /// Picture.
    pub picture: Option<PictureRef>,
    /// Its caption.
    pub caption: Option<Said>,
    /// The words box.
    pub glossary: Vec<Term>,
    /// Aside.
    pub more: Text,
    /// Sources, each once.
    pub sources: Vec<SourceLine>,
}

impl Kind for Reading {
    const ABOUT: About = About {
        id: "reading",
        rev: 1,
        scopes: &[Scope::Study, Scope::Lesson],
        sign: Sign::Read,
        options: &[Opt { name: "picture", kind: OptKind::Text }],
        page: include_str!("page.typ"),
        words: include_str!("words.toml"),
        doc: include_str!("mod.rs"),
        gathers: false,
    };
    type Needs = Needs;
    type Sheet = Sheet;
    type Key = ();

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
        Head {
            title: sheet.title.plain(),
            pictures: sheet.picture.iter().map(|p| p.name.clone()).collect(),
            facts: needs.facts.iter().map(|f| f.id.clone()).collect(),
            ..Head::default()
        }
    }
}

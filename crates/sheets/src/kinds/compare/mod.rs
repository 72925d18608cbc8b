//! Compare: two subjects side by side, what is alike and what is different.
//!
//! # What it prints
//! The two pictures, then by level: (1) sentences to tick under the one, the other or both; (2) a table of what is
//! different, with one of the two sides given in each row, and of what is alike, with some rows given; (3) a table of
//! headings only, in which the child writes both sides and decides whether they are alike. The key is the full table.
//!
//! # What it needs
//! A lesson of two subjects with three `[[compare]]` rows or more, one of them at least a difference.
//!
//! # How it is proved
//! Every row of the author's stands on the page once; what is given is hers word for word; what is to be filled in is
//! empty and stands nowhere else on the page; at level 1 every sentence stands there once, mixed; both sides have
//! something to fill in; the key is worked out from the printed page.
//!
//! # Limits
//! Whether another answer is right too is for the adult to judge.

mod answers;
mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

pub use answers::{Key, Ticked};

use crate::shared::PictureRef;
use crate::{About, Ask, Head, Kind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::Needs;
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::Said;

/// The kind.
pub struct Compare;

/// One of the two subjects.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Side {
    /// Its title.
    pub title: Said,
    /// Its picture.
    pub picture: Option<PictureRef>,
}

/// Which of the two a sentence is true of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Which {
    /// The first subject.
    First,
    /// The second.
    Second,
    /// Both.
    Both,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Level: 1 tick, 2 fill the gaps, 3 fill everything.
    pub level: u8,
    /// First subject.
    pub first: Side,
    /// Second subject.
    pub second: Side,
    /// Rows of the table; empty at level 1.
    pub rows: Vec<Row>,
    /// Sentences to tick; empty at levels 2 and 3.
    pub sentences: Vec<Sentence>,
    /// Lines to write on in an empty cell.
    pub lines: u32,
}

/// A row of the table.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Row {
    /// What is compared.
    pub aspect: Said,
    /// Is it alike? None where the child decides.
    pub alike: Option<bool>,
    /// What is given of the first subject, or of both when alike; none = to be filled in.
    pub first: Option<Said>,
    /// What is given of the second subject.
    pub second: Option<Said>,
}

/// A sentence to tick.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sentence {
    /// Number, from 1.
    pub n: u32,
    /// What it is about.
    pub aspect: Said,
    /// What is said.
    pub what: Said,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for Compare {
    const ABOUT: About = About {
        id: "compare",
        rev: 1,
        scopes: &[Scope::Lesson],
        sign: Sign::Write,
        options: &[],
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
        let pictures = [&sheet.first, &sheet.second].into_iter().filter_map(|s| s.picture.as_ref());
        Head {
            title: needs.title.clone(),
            lead: Some(needs.lead.clone()),
            name_line: true,
            pictures: pictures.map(|p| p.name.clone()).collect(),
            facts: needs.facts(),
            ..Head::default()
        }
    }

    fn key(needs: &Needs, sheet: &Sheet) -> Option<Key> {
        Some(answers::answers(needs, sheet))
    }
}

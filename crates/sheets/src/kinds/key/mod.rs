//! The answers of all sheets, at the back.
//!
//! # What it prints
//! One entry a sheet that has answers, in order of its key number, under the
//! titles of the lessons: number, title, page, and the answers as the kind's
//! own template lays them; small grids are allowed here.
//!
//! # What it needs
//! Sheets with answers.
//!
//! # How it is proved
//! Key numbers run from 1 without a gap, in printing order; every sheet with
//! answers has one entry under its own title and lesson, with exactly the
//! answers that its kind gave after its own proof.
//!
//! # Limits
//! Whether an answer is right is the business of the sheet's own proof.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::about::{About, Scope, Sign};
use crate::ask::Ask;
use crate::kind::{Head, Kind};
use craft::Dice;
use findings::Findings;
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::Said;

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct AnswerKey;

/// What the key is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title of the sheet.
    pub title: String,
    /// One sentence under it.
    pub lead: Option<String>,
    /// Titles of all lessons.
    pub lessons: Vec<Said>,
    /// Titles of all parts.
    pub parts: Vec<Said>,
    /// Sheets with answers, in printing order.
    pub sheets: Vec<Entry>,
}

/// An entry of the key.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Entry {
    /// Sheet id; the template asks for its page.
    pub id: String,
    /// Number in the key, from 1; the sheet's foot names it.
    pub number: u32,
    /// Kind; its template lays the answers.
    pub kind: String,
    /// Plain name of the kind.
    pub what: String,
    /// Title of the sheet.
    pub title: String,
    /// Number of its lesson, from 1; none when it belongs to no single lesson.
    pub lesson: Option<usize>,
    /// Number of its part, from 1, when it belongs to a part but to no single lesson.
    pub part: Option<usize>,
    /// The answers.
    pub key: serde_json::Value,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Entries in order of key number; the template puts a lesson's or part's title over its first.
    pub entries: Vec<Entry>,
    /// Titles of all lessons.
    pub lessons: Vec<Said>,
    /// Titles of all parts.
    pub parts: Vec<Said>,
}

impl Kind for AnswerKey {
    const ABOUT: About = About {
        id: "key",
        rev: 1,
        scopes: &[Scope::Study],
        sign: Sign::Open,
        options: &[],
        page: include_str!("page.typ"),
        words: include_str!("words.toml"),
        doc: include_str!("mod.rs"),
        gathers: true,
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

    fn head(needs: &Needs, _sheet: &Sheet) -> Head {
        Head { title: needs.title.clone(), lead: needs.lead.clone(), ..Head::default() }
    }
}

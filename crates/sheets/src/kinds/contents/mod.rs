//! The contents: every sheet of the study with its page.
//!
//! # What it prints
//! For each lesson its title with the page where it opens, and below it a line
//! a sheet: page, sign, title. Parts stand as headings over their lessons;
//! sheets before the first lesson and after the last stand by themselves. With
//! `list = true` the same list is printed for people who have not bought the
//! study yet: it says so, and names each type of sheet. With `short = true` it
//! is a table on one page: lessons and parts with their first page and the
//! number of their sheets by sign.
//!
//! # What it needs
//! The list of all sheets.
//!
//! # How it is proved
//! Every sheet but the cover and the contents themselves is listed exactly
//! once, under its own title and sign, in printing order, under its own lesson
//! and part, whose numbers are counted again, as are the sheets by sign.
//!
//! # Limits
//! Page numbers are the typesetter's: the template asks for the page of each id.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::about::{About, Opt, OptKind, Scope, Sign};
use crate::ask::Ask;
use crate::kind::{Head, Kind};
use craft::Dice;
use findings::Findings;
use proof::Proof;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use study::Said;

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct Contents;

/// What the contents are made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title of the page.
    pub title: String,
    /// One sentence under the title.
    pub lead: Option<String>,
    /// For those who have not bought it yet.
    pub list: bool,
    /// Lessons with counts of sheets only.
    pub short: bool,
    /// Titles of all parts.
    pub parts: Vec<Said>,
    /// Titles of all lessons.
    pub lessons: Vec<Said>,
    /// The sheets to list, in printing order.
    pub sheets: Vec<Row>,
}

/// A sheet to list.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Row {
    /// Its line.
    pub line: Line,
    /// Index of its lesson.
    pub lesson: Option<usize>,
    /// Index of its part.
    pub part: Option<usize>,
    /// It opens its lesson.
    pub opens: bool,
}

/// A line of the contents.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Line {
    /// Sheet id; the template asks for its page.
    pub id: String,
    /// Sign.
    pub sign: String,
    /// Title as printed.
    pub title: String,
    /// Plain name of the kind.
    pub what: String,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// For those who have not bought it yet.
    pub list: bool,
    /// Lessons with counts of sheets only.
    pub short: bool,
    /// Groups in printing order.
    pub groups: Vec<Group>,
}

/// Lines under one heading.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Group {
    /// What stands over it.
    pub head: Heading,
    /// The part that begins with this group: its number from 1 and its title.
    pub part: Option<Numbered>,
    /// Its lines.
    pub lines: Vec<Line>,
    /// How many sheets of each sign it has, a lesson's opener among them.
    pub counts: BTreeMap<String, usize>,
}

/// The heading of a group.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "of", rename_all = "lowercase")]
pub enum Heading {
    /// Before the first lesson.
    Front,
    /// A lesson: number from 1, title, and the sheet that opens it.
    Lesson {
        /// Number from 1.
        n: usize,
        /// Title.
        title: Said,
        /// Sheet where it begins.
        id: String,
    },
    /// Sheets of a part that belong to no single lesson, or that print at its end.
    Part,
    /// After the last lesson.
    Back,
}

/// A number with a title.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Numbered {
    /// From 1.
    pub n: usize,
    /// Title.
    pub title: Said,
}

impl Kind for Contents {
    const ABOUT: About = About {
        id: "contents",
        rev: 2,
        scopes: &[Scope::Study],
        sign: Sign::Open,
        options: &[
            Opt { name: "list", kind: OptKind::Flag },
            Opt { name: "short", kind: OptKind::Flag },
        ],
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

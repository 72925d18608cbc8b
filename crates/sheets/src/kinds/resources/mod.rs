//! Resources: books to read, and things to hear, look at, make, visit and play.
//!
//! # What it prints
//! A section for each form that has rows, with a tick box, title, whose it is,
//! when to use it, a note, and the lesson it goes with. Books carry their ISBN;
//! pages on line carry address and code symbol.
//!
//! # What it needs
//! Rows of `books.csv`, `resources.csv` or `links.csv` that belong to the
//! owner. The study takes all books and resources, but only those pages on line
//! that belong to no single lesson, since the lessons' own stand on their openers.
//!
//! # How it is proved
//! Each row is printed once, under its form, with nothing lost or changed; the
//! check digit of each ISBN is worked out again (ISO 2108); each address is
//! https and each code symbol is read back by another library (ISO/IEC 18004).
//! On the laid-out page the symbols are measured, margins included.
//!
//! # Limits
//! Whether a book is still to be had, or a page still there, nobody can prove on paper.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::about::{About, Scope, Sign};
use crate::ask::Ask;
use crate::kind::{Head, Kind};
use craft::Dice;
use findings::{Findings, Place};
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};
use study::Said;

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct Resources;

/// What the sheet is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title of the sheet.
    pub title: String,
    /// One sentence under it.
    pub lead: Option<String>,
    /// All rows, in order of the files.
    pub rows: Vec<Row>,
    /// The caution about links, when there are any.
    pub caution: Option<String>,
}

/// Section of a row, in the order of printing.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Section {
    /// Books.
    Read,
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
    /// On line.
    Online,
}

/// One resource.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Row {
    /// Its section.
    pub section: Section,
    /// Title.
    pub title: Said,
    /// Author, maker or institution.
    pub by: Option<Said>,
    /// Publisher and year, as printed.
    pub published: Option<String>,
    /// ISBN as written.
    pub isbn: Option<String>,
    /// Ages as written.
    pub ages: Option<String>,
    /// When to use it.
    pub when: Option<Said>,
    /// Note.
    pub note: Option<Said>,
    /// Numbers of the lessons that it goes with, from 1; none when it goes with the whole owner.
    pub lessons: Vec<usize>,
    /// https address of a page on line.
    pub address: Option<String>,
    /// Code symbol of the address: rows of modules. Empty in the Needs.
    pub code: Vec<String>,
    /// Where it is written.
    pub at: Place,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Sections that have rows, in order.
    pub sections: Vec<Listed>,
    /// The caution about links.
    pub caution: Option<String>,
}

/// A section.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Listed {
    /// Which.
    pub section: Section,
    /// Its rows.
    pub rows: Vec<Row>,
}

impl Kind for Resources {
    const ABOUT: About = About {
        id: "resources",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson],
        sign: Sign::Open,
        options: &[],
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
        make::make(needs)
    }

    fn check(needs: &Needs, sheet: &Sheet) -> Proof {
        check::check(needs, sheet)
    }

    fn head(needs: &Needs, sheet: &Sheet) -> Head {
        let rows = sheet.sections.iter().flat_map(|s| &s.rows);
        let said = rows
            .flat_map(|r| [Some(&r.title), r.by.as_ref(), r.when.as_ref(), r.note.as_ref()])
            .flatten();
        Head {
            title: needs.title.clone(),
            lead: needs.lead.clone(),
            facts: said.flat_map(Said::facts).map(str::to_owned).collect(),
            ..Head::default()
        }
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

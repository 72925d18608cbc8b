//! The opening of a lesson: a page for the child, and a page to get ready from.
//!
//! # What it prints
//! First the lesson's number, its big question, a large picture, the opening
//! text and the lesson's sheets with their pages. Then, when there is anything
//! of it: the words to know with their meanings, what to have ready, books,
//! and pages on line as address and code symbol.
//!
//! # What it needs
//! A question or an opening text. Words, books and links come from the lists,
//! by the lesson's name or its subjects'.
//!
//! # How it is proved
//! Number and texts are compared with the lesson's; every sheet of the lesson
//! is listed once in printing order; each word stands with its own meaning;
//! each ISBN's check digit is worked out again (ISO 2108); each code symbol is
//! read back by another library and says exactly its address (ISO/IEC 18004).
//! On the laid-out page the modules of the symbols are measured: 0.5 mm or
//! more, with a margin of four of them (DENSO WAVE's advice).
//!
//! # Limits
//! At most eight words: those that stand bold in a reading come first.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::about::{About, Scope, Sign};
use crate::ask::Ask;
use crate::kind::{Head, Kind};
use crate::shared::PictureRef;
use craft::Dice;
use findings::{Findings, Place};
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};
use study::{Said, Text};

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct LessonOpener;

/// What the opener is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Number of the lesson, from 1.
    pub number: usize,
    /// Number of lessons in the study.
    pub of: usize,
    /// Title of the lesson.
    pub title: String,
    /// Big question.
    pub question: Option<Said>,
    /// Opening text.
    pub opening: Text,
    /// Picture of the lesson.
    pub picture: Option<PictureRef>,
    /// Words to know.
    pub words: Vec<Term>,
    /// What to have ready.
    pub ready: Vec<Said>,
    /// The lesson's other sheets, in printing order.
    pub sheets: Vec<Listed>,
    /// Books.
    pub books: Vec<Book>,
    /// Pages on line.
    pub links: Vec<Link>,
    /// The caution about links, when there are any.
    pub caution: Option<String>,
}

/// A word with its meaning.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Term {
    /// The word.
    pub term: Said,
    /// What it means.
    pub meaning: Said,
}

/// A sheet of the lesson; the template adds its page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Listed {
    /// Sheet id.
    pub id: String,
    /// Sign.
    pub sign: String,
    /// Title as printed.
    pub title: String,
    /// Plain name of the kind.
    pub what: String,
}

/// A book.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Book {
    /// Title.
    pub title: Said,
    /// Author.
    pub author: Said,
    /// ISBN as written.
    pub isbn: Option<String>,
    /// Ages as written.
    pub ages: Option<String>,
    /// When to use it.
    pub when: Option<Said>,
}

/// A page on line.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Link {
    /// Title.
    pub title: Said,
    /// Institution, when it is another than the title.
    pub institution: Option<Said>,
    /// https address.
    pub address: String,
    /// When to use it.
    pub when: Option<Said>,
    /// Code symbol: rows of modules, `1` dark. Empty in the Needs.
    pub code: Vec<String>,
    /// Where the address is written.
    pub at: Place,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Number of the lesson, from 1.
    pub number: usize,
    /// Number of lessons in the study.
    pub of: usize,
    /// Title of the lesson.
    pub title: String,
    /// Big question.
    pub question: Option<Said>,
    /// Opening text.
    pub opening: Text,
    /// Picture.
    pub picture: Option<PictureRef>,
    /// The lesson's sheets.
    pub sheets: Vec<Listed>,
    /// Second page, when there is anything to get ready.
    pub ready: Option<Ready>,
}

/// The page to get ready from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Ready {
    /// Words to know.
    pub words: Vec<Term>,
    /// What to have ready.
    pub ready: Vec<Said>,
    /// Books.
    pub books: Vec<Book>,
    /// Pages on line.
    pub links: Vec<Link>,
    /// The caution about links.
    pub caution: Option<String>,
}

impl Kind for LessonOpener {
    const ABOUT: About = About {
        id: "lesson-opener",
        rev: 1,
        scopes: &[Scope::Lesson],
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
        make::make(needs)
    }

    fn check(needs: &Needs, sheet: &Sheet) -> Proof {
        check::check(needs, sheet)
    }

    fn head(needs: &Needs, sheet: &Sheet) -> Head {
        let opening = sheet.opening.iter().flat_map(study::Block::lines);
        Head {
            title: needs.title.clone(),
            pictures: sheet.picture.iter().map(|p| p.name.clone()).collect(),
            facts: opening.flat_map(Said::facts).map(str::to_owned).collect(),
            ..Head::default()
        }
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

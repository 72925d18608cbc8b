//! Word search: listed words hidden in a grid of letters.
//!
//! # What it prints
//! A grid of capitals with cells of 7 to 16.25 mm, the list of words in the author's spelling with boxes to tick,
//! a sentence that says which ways the words run, and something to do with them afterwards.
//! The key rings each word from its first to its last cell.
//!
//! # What it needs
//! Words of its owner from `words.csv` (those with `puzzle` = `no` left out), or the words listed in the option
//! `words`. Spaces, hyphens and apostrophes are dropped in the grid; an accented letter is a letter of its own;
//! ß becomes SS. The band and the level choose the size, the number of words and the ways they run.
//!
//! # How it is proved
//! From the printed letters and the printed list alone: each listed word is found in all eight directions, and the
//! places where it is found, told apart by their sets of cells, are exactly one; its way is one of those the child is
//! told about; no unfit word can be read unless it lies wholly inside a listed word; the fillers hold the letters of
//! the words in their own shares. On the laid-out page each letter stands in its cell and no cell is under 7 mm.
//!
//! # Limits
//! At most 18 × 18 cells and 24 words. Words of one or two letters are refused, for they turn up by chance.
//! Capitals follow the general rules of Unicode, not those of one language (Turkish dotted i).

mod check;
mod make;
mod needs;
#[cfg(test)]
mod page_tests;
#[cfg(test)]
mod tests;

use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::Needs;
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};
use study::Said;

/// The kind.
pub struct WordSearch;

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Letters of the grid, row by row; one entry a cell.
    pub rows: Vec<Vec<String>>,
    /// The list, in the author's spelling.
    pub words: Vec<Said>,
    /// Side of a cell, µm.
    pub cell: u32,
    /// Number of ways in which words run, as the child is told: 2, 4, 6 or 8.
    pub ways: u8,
}

/// The answers.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    /// Letters of the grid.
    pub rows: Vec<Vec<String>>,
    /// Where each word lies.
    pub words: Vec<Ring>,
}

/// Where a word lies.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ring {
    /// The word.
    pub word: Said,
    /// Row and column of its first letter, from 0.
    pub from: (usize, usize),
    /// Row and column of its last letter, from 0.
    pub to: (usize, usize),
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for WordSearch {
    const ABOUT: About = About {
        id: "word-search",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson, Scope::Subject],
        sign: Sign::Play,
        options: &[
            Opt { name: "words", kind: OptKind::Texts },
            Opt { name: "how-many", kind: OptKind::Number { min: 3, max: 24 } },
            Opt { name: "rows", kind: OptKind::Number { min: 8, max: 18 } },
            Opt { name: "columns", kind: OptKind::Number { min: 8, max: 18 } },
            Opt { name: "directions", kind: OptKind::Choice(&["2", "4", "6", "8"]) },
            Opt { name: "fill", kind: OptKind::Choice(&["own", "alphabet"]) },
            Opt { name: "allow-inside", kind: OptKind::Flag },
        ],
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
        make::make(needs, dice)
    }

    fn check(needs: &Needs, sheet: &Sheet) -> Proof {
        check::check(needs, sheet)
    }

    fn head(needs: &Needs, _sheet: &Sheet) -> Head {
        Head { title: needs.title.clone(), name_line: true, ..Head::default() }
    }

    fn key(_needs: &Needs, sheet: &Sheet) -> Option<Key> {
        Some(Key { rows: sheet.rows.clone(), words: check::rings(sheet) })
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

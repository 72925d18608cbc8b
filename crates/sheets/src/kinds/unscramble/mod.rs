//! Unscramble: the letters of words in another order, with places to write the word.
//!
//! # What it prints
//! Numbered items: a clue (picture or meaning) where the level gives one, the mixed letters in boxes, and boxes or a
//! line to write the word; at the easiest level its first letter is given. The key lists the words and every other
//! dictionary word with the same letters, which is right too.
//!
//! # What it needs
//! Words of its owner from `words.csv` (those with `puzzle` = `no` left out), or the words listed in the option
//! `words`. Words of several parts (`home scar`) are mixed part by part.
//!
//! # How it is proved
//! From the printed letters, the clue and the word: both hold the same letters; they differ; no letter stands in its
//! own place wherever that can be; no unfit word can be read in them; they are no dictionary word themselves where
//! another order can be had; the places to write and the letters given fit the word; no clue holds the word.
//!
//! # Limits
//! Words of fewer than three letters are refused, and words whose letters are all the same. Whether a meaning holds
//! its word is judged by English endings. Other words with the same letters come from the dictionary alone.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::shared::PictureRef;
use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::Needs;
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};
use study::Said;

/// The kind.
pub struct Unscramble;

/// Where the child writes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Answer {
    /// A box for each letter.
    Boxes,
    /// A line.
    Lines,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Items in order; the number on the page is the index plus one.
    pub items: Vec<Item>,
    /// Where the child writes.
    pub answer: Answer,
    /// True when some item shows a picture (chooses the sentence above).
    pub pictures: bool,
    /// True when some item has a meaning as its clue.
    pub meanings: bool,
}

/// One word to find.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Item {
    /// Mixed letters, by the parts of the word.
    pub letters: Vec<Vec<String>>,
    /// First letters that stand in the answer already; as many as are given.
    pub given: Vec<String>,
    /// A picture as a clue.
    pub picture: Option<PictureRef>,
    /// The meaning as a clue.
    pub clue: Option<Said>,
}

/// The answers, in order.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    /// One entry an item.
    pub answers: Vec<Solved>,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Solved {
    /// The word.
    pub word: Said,
    /// Other words that are right too.
    pub also: Vec<String>,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for Unscramble {
    const ABOUT: About = About {
        id: "unscramble",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson, Scope::Subject],
        sign: Sign::Play,
        options: &[
            Opt { name: "words", kind: OptKind::Texts },
            Opt { name: "how-many", kind: OptKind::Number { min: 3, max: 12 } },
            Opt { name: "clue", kind: OptKind::Choice(&["picture", "meaning", "none"]) },
            Opt { name: "first-letter", kind: OptKind::Flag },
            Opt { name: "answer", kind: OptKind::Choice(&["boxes", "lines"]) },
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

    fn head(needs: &Needs, sheet: &Sheet) -> Head {
        let pictures =
            sheet.items.iter().filter_map(|i| i.picture.as_ref()).map(|p| p.name.clone());
        Head {
            title: needs.title.clone(),
            name_line: true,
            pictures: pictures.collect(),
            ..Head::default()
        }
    }

    fn key(needs: &Needs, sheet: &Sheet) -> Option<Key> {
        Some(Key { answers: check::solved(needs, sheet) })
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

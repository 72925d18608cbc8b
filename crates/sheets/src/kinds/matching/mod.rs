//! Matching: words to join with their meanings, or pictures with their words.
//!
//! # What it prints
//! Numbered words (for the youngest, pictures) on the left, meanings (words) with letters from A on the right in
//! another order, a ring at each, and room for pencil lines between. The key gives the letter for each number.
//!
//! # What it needs
//! Three to eight words of its owner from `words.csv` with a meaning, or with a picture where pictures are matched;
//! or the words listed in the option `words`.
//!
//! # How it is proved
//! Each left item is found again among the study's words by what is printed; its partner stands on the right exactly
//! once and never opposite; nothing is printed twice; no meaning holds its own word; the key is worked out from the
//! printed page. On the laid-out page every item has its ring and the rows stand in order.
//!
//! # Limits
//! Whether two different meanings fit one word is the author's to judge. Whether a meaning holds its word is judged
//! by English endings.

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
pub struct Matching;

/// What is joined with what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum What {
    /// Pictures with words.
    Pictures,
    /// Words with meanings.
    Meanings,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// What is joined with what.
    pub what: What,
    /// Left column, top to bottom; the number on the page is the index plus one.
    pub left: Vec<Left>,
    /// Right column, top to bottom; the letter on the page is A for the first.
    pub right: Vec<Said>,
}

/// An item of the left column: a word or a picture.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Left {
    /// The word.
    pub word: Option<Said>,
    /// The picture.
    pub picture: Option<PictureRef>,
}

/// The answers, in order of number.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    /// One entry a number.
    pub answers: Vec<Joined>,
}

/// An answer.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Joined {
    /// The word on the left, or that the picture shows.
    pub word: Said,
    /// Letter of its partner.
    pub letter: String,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for Matching {
    const ABOUT: About = About {
        id: "matching",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson, Scope::Subject],
        sign: Sign::Play,
        options: &[
            Opt { name: "words", kind: OptKind::Texts },
            Opt { name: "how-many", kind: OptKind::Number { min: 3, max: 8 } },
            Opt { name: "what", kind: OptKind::Choice(&["pictures", "meanings"]) },
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
        let pictures = sheet.left.iter().filter_map(|l| l.picture.as_ref()).map(|p| p.name.clone());
        Head {
            title: needs.title.clone(),
            name_line: true,
            pictures: pictures.collect(),
            ..Head::default()
        }
    }

    fn key(needs: &Needs, sheet: &Sheet) -> Option<Key> {
        Some(Key { answers: check::answers(needs, sheet) })
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

//! Pairs: cards to cut out for a game of finding what belongs together.
//!
//! # What it prints
//! A page of rules, then fronts and backs of the cards for printing on both sides, turned over the long edge: the
//! same picture twice, pictures with words, or words with meanings. The key lists the pairs.
//!
//! # What it needs
//! Eight to twenty-four words of its owner from `words.csv` with a picture, or with a meaning where words are paired
//! with meanings; or the words listed in the option `words`.
//!
//! # How it is proved
//! Each pair has exactly two cards, and their faces belong to one word of the study; no word, picture or meaning is
//! on the cards of two pairs; no meaning holds its own word; backs tell no card from another of its sort; texts fit;
//! the cards fill the leaves from the first and lie inside the field; cards meant for the laminator stand 3 mm apart
//! or more. On the laid-out pages every front is on the front of its paper, and its back lies behind it within
//! 0.5 mm.
//!
//! # Limits
//! A printer may still shift the paper; backs are drawn so that 2 mm do no harm (common practice, no source).

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
use study::{Ages, Said};

/// The kind.
pub struct Pairs;

/// What is paired with what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum What {
    /// The same picture twice.
    PicturePicture,
    /// A picture and its word.
    PictureWord,
    /// A word and its meaning.
    WordMeaning,
}

/// Size and places of the cards, µm.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Cards {
    /// Columns of a leaf.
    pub columns: usize,
    /// Rows of a leaf.
    pub rows: usize,
    /// Width of a card.
    pub width: u32,
    /// Height of a card.
    pub height: u32,
    /// Space between cards; 0 for one shared cut.
    pub gap: u32,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// What is paired with what.
    pub what: What,
    /// Number of pairs.
    pub pairs: usize,
    /// Ages that the rules name.
    pub ages: Ages,
    /// Size and places of the cards.
    pub cards: Cards,
    /// Cards of each leaf, row by row.
    pub leaves: Vec<Vec<Card>>,
    /// Sentences of the box "Take care".
    pub cautions: Vec<String>,
}

/// A card: one face and the sort of its back.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Card {
    /// Number of the pair and `a` or `b`; marks the card on the laid-out page, is never printed.
    pub name: String,
    /// The face is a picture.
    pub picture: Option<PictureRef>,
    /// The face is a word.
    pub word: Option<Said>,
    /// The face is a meaning.
    pub meaning: Option<Said>,
    /// Sort of the back: the same for all cards of a sort.
    pub back: u8,
}

/// The pairs in order of the author's words.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    /// One entry a pair.
    pub pairs: Vec<Paired>,
}

/// A pair.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Paired {
    /// The word.
    pub word: Said,
    /// Its meaning, when it stands on a card.
    pub meaning: Option<Said>,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for Pairs {
    const ABOUT: About = About {
        id: "pairs",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson, Scope::Subject],
        sign: Sign::Play,
        options: &[
            Opt { name: "words", kind: OptKind::Texts },
            Opt { name: "pairs", kind: OptKind::Number { min: 8, max: 24 } },
            Opt {
                name: "what",
                kind: OptKind::Choice(&["picture-picture", "picture-word", "word-meaning"]),
            },
            Opt { name: "gap", kind: OptKind::Number { min: 0, max: 10 } },
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
        let names = sheet
            .leaves
            .iter()
            .flatten()
            .filter_map(|c| c.picture.as_ref())
            .map(|p| p.name.clone());
        let names: std::collections::BTreeSet<String> = names.collect();
        Head {
            title: needs.title.clone(),
            lead: Some(needs.lead.clone()),
            card: true,
            pictures: names.into_iter().collect(),
            ..Head::default()
        }
    }

    fn key(needs: &Needs, sheet: &Sheet) -> Option<Key> {
        Some(Key { pairs: check::pairs(needs, sheet) })
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

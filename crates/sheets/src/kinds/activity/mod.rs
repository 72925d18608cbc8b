//! Activity: something to do, from an experiment to a sensory tray.
//!
//! # What it prints
//! What to have ready as a list to tick, numbered steps, the time, what to take care of beside the first steps, a
//! table for what happened, things to talk about. A tray has base, fillers and tools, and an idea to open with. The
//! key has what to expect and why.
//!
//! # What it needs
//! A lesson with an activity; which of several is chosen by the option `activity`, else by the sheet's place in a
//! count. An experiment, building, outing or kitchen activity has steps; a tray has at least one of base, fillers and
//! tools.
//!
//! # How it is proved
//! Supplies, steps, table and talk stand on the page once, as written and in order; the cautions are those of the
//! tags, worked out again, closing sentence last; every row of the table has its cells and something to fill in; the
//! answer is not on the page. Warned about: a thing that a step uses and nobody has got ready; a caution that the
//! words call for and no tag gives; a time that cannot be.
//!
//! # Limits
//! Things and dangers are known by an English list of words (`vocabulary.toml`): what is not on it is not noticed.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;
mod vocabulary;

use crate::shared::PictureRef;
use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::Needs;
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::{ActivityForm, Block, Said, Text};

/// The kind.
pub struct Activity;

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// What it is.
    pub form: ActivityForm,
    /// Why we do it.
    pub intro: Text,
    /// What to have ready, by group.
    pub supplies: Vec<Supplies>,
    /// Steps in order.
    pub steps: Vec<Said>,
    /// Idea to open a tray with.
    pub idea: Text,
    /// What to take care of, closing sentence last.
    pub cautions: Vec<String>,
    /// Titles of the table's columns; empty without a table.
    pub head: Vec<Said>,
    /// Rows of the table; none = a cell to fill in.
    pub rows: Vec<Vec<Option<Said>>>,
    /// Lines for what happened, where there is no table.
    pub lines: u32,
    /// Things to talk about.
    pub ask: Vec<Said>,
    /// Picture.
    pub picture: Option<PictureRef>,
}

/// A group of things to have ready.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Supplies {
    /// Which group.
    pub group: Group,
    /// Its things.
    pub items: Vec<Said>,
}

/// A group of things.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Group {
    /// Have ready.
    Ready,
    /// Base of a tray.
    Base,
    /// Fillers of a tray.
    Fillers,
    /// Tools for a tray.
    Tools,
}

/// The answers.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    /// What to expect and why.
    pub answer: Text,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for Activity {
    const ABOUT: About = About {
        id: "activity",
        rev: 1,
        scopes: &[Scope::Lesson, Scope::Subject],
        sign: Sign::Make,
        options: &[Opt { name: "activity", kind: OptKind::Number { min: 1, max: 9 } }],
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

    fn make(needs: &Needs, _dice: &mut Dice) -> Result<Sheet, Findings> {
        Ok(make::make(needs))
    }

    fn check(needs: &Needs, sheet: &Sheet) -> Proof {
        check::check(needs, sheet)
    }

    fn head(needs: &Needs, sheet: &Sheet) -> Head {
        let own =
            sheet.supplies.iter().flat_map(|g| &g.items).chain(&sheet.steps).chain(&sheet.ask);
        let texts = sheet.intro.iter().chain(&sheet.idea).flat_map(Block::lines);
        Head {
            title: needs.title.clone(),
            lead: needs.lead.clone(),
            pictures: sheet.picture.iter().map(|p| p.name.clone()).collect(),
            facts: own.chain(texts).flat_map(|s| s.facts()).map(str::to_owned).collect(),
            ..Head::default()
        }
    }

    fn key(needs: &Needs, _sheet: &Sheet) -> Option<Key> {
        needs.activity.answer.clone().map(|answer| Key { answer })
    }
}

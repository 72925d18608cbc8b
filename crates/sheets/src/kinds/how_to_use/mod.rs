//! How to use the study: the page that an adult reads before printing anything.
//!
//! # What it prints
//! A true-size ruler to check that the printer keeps 100 %, which sheets go on
//! card and which of them on both sides, what is printed once for the family,
//! once for each child and only for those who want it, how a lesson goes, the
//! drawn signs, and the cautions that the study's activities call for.
//!
//! # What it needs
//! The list of all sheets of the study; the tags of its activities.
//!
//! # How it is proved
//! The lists are sorted out again from the sheets: every card sheet stands in
//! its list once, nothing else does; every sheet has exactly one place among
//! those for the family, for each child, for those who want them; each
//! caution that a tag calls for is there, and the closing sentence is last.
//! On the laid-out page the ruler's marks are measured.
//!
//! # Limits
//! Which sheets a family can do without is guessed from their order: a second
//! sheet of the same kind in the same lesson counts as one.

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
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};
use study::Ages;

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct HowToUse;

/// What the page is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title of the page.
    pub title: String,
    /// One sentence under the title.
    pub lead: String,
    /// Ages in years.
    pub ages: Ages,
    /// Number of lessons.
    pub lessons: usize,
    /// Caution tags of all activities and of what the print guide itself asks for.
    pub tags: Vec<String>,
    /// Supplies of the activities with food or dough.
    pub supplies: Vec<String>,
    /// Language of the cautions.
    pub language: String,
    /// All sheets in printing order.
    pub sheets: Vec<Row>,
}

/// A sheet of the study as the print guide sees it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Row {
    /// Sheet id.
    pub id: String,
    /// Title as printed.
    pub title: String,
    /// Plain name of the kind.
    pub what: String,
    /// Sign.
    pub sign: String,
    /// Printed on card and cut.
    pub card: bool,
    /// Has backs, printed on the other side of the same card.
    pub backs: bool,
    /// Another sheet of the same kind stands before it in the same place.
    pub further: bool,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Ages in years.
    pub ages: Ages,
    /// Number of lessons.
    pub lessons: usize,
    /// Sheets for card.
    pub card: Vec<Shown>,
    /// Of those, the ones printed on both sides, turned over the long edge.
    pub backs: Vec<Shown>,
    /// Number of sheets that a family needs once.
    pub family: usize,
    /// Number of sheets that each child needs.
    pub child: usize,
    /// Sheets that only those print who want them.
    pub further: Vec<Shown>,
    /// Cautions in general, the closing sentence last.
    pub cautions: Vec<String>,
    /// Length of the ruler in inches.
    pub inches: u32,
    /// Length of the ruler in centimetres.
    pub centimetres: u32,
}

/// A sheet named in a list; the template adds its page.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Shown {
    /// Sheet id.
    pub id: String,
    /// Title as printed.
    pub title: String,
    /// Plain name of the kind.
    pub what: String,
}

impl Kind for HowToUse {
    const ABOUT: About = About {
        id: "how-to-use",
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
        Head { title: needs.title.clone(), lead: Some(needs.lead.clone()), ..Head::default() }
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

//! Writing prompts: things to write about, with the paper to write on.
//!
//! # What it prints
//! The prompts of its owner for the sheet's age, one to four a page, each with its picture and with lines to write on;
//! for the youngest a frame to draw in and one row of beginners' lines.
//!
//! # What it needs
//! One row or more of `prompts.csv` for its owner and its group: `little` for ages 3–6, `middle` for 7–12, `teen` for
//! 13–18, or the group that the option `for` names. The picture is that of the first lesson or subject in `where`.
//!
//! # How it is proved
//! Each prompt of the group stands on the pages once, numbered in order, none of another group; each has at least
//! the lines its age needs; prompt and lines fit the height of their place on the page.
//!
//! # Limits
//! The height of a prompt is estimated before printing; the laid-out page is measured afterwards.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::shared::PictureRef;
use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::{Needs, Theme};
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};
use study::Said;

/// The kind.
pub struct WritingPrompts;

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Prompts, page by page.
    pub pages: Vec<Page>,
}

/// A page.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Page {
    /// Height of each prompt's place, µm.
    pub height: u32,
    /// Its prompts.
    pub slots: Vec<Slot>,
}

/// A prompt with its paper.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Slot {
    /// Number, from 1 over all pages.
    pub n: u32,
    /// The prompt.
    pub prompt: Said,
    /// A picture beside it.
    pub picture: Option<PictureRef>,
    /// Lines to write on; for the youngest, rows of beginners' lines.
    pub lines: u32,
    /// A frame to draw in?
    pub frame: bool,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for WritingPrompts {
    const ABOUT: About = About {
        id: "writing-prompts",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson],
        sign: Sign::Write,
        options: &[
            Opt { name: "for", kind: OptKind::Choice(&["little", "middle", "teen"]) },
            Opt { name: "prompts", kind: OptKind::Number { min: 1, max: 4 } },
        ],
        page: include_str!("page.typ"),
        words: WORDS,
        doc: include_str!("mod.rs"),
        gathers: false,
    };
    type Needs = Needs;
    type Sheet = Sheet;
    type Key = ();

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
        let slots = sheet.pages.iter().flat_map(|p| &p.slots);
        Head {
            title: needs.title.clone(),
            lead: Some(needs.lead.clone()),
            name_line: true,
            pictures: slots
                .clone()
                .filter_map(|s| s.picture.as_ref())
                .map(|p| p.name.clone())
                .collect(),
            facts: slots.flat_map(|s| s.prompt.facts()).map(str::to_owned).collect(),
            ..Head::default()
        }
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

//! Inquiry: a page of the child's own question notebook.
//!
//! # What it prints
//! Boxes with the names that the study gives them: what I chose, what I wonder, what I found, how we know, draw it.
//! The first is a strip across the page, boxes to draw in are large; the same page serves writers (lines) and
//! drawers (blank paper for the youngest, dots for those who measure).
//!
//! # What it needs
//! Two to eight names of boxes: the option `boxes`, else `[inquiry] boxes` of the study, else names of our own.
//!
//! # How it is proved
//! Each name stands on the page once, in the author's order; every box lies inside the page, none meets another, none
//! is too small to write in; only boxes to draw in have dots; the boxes fill the page. On the laid-out page each box
//! is found where the data says.
//!
//! # Limits
//! A box counts as one to draw in when its name holds one of the words `draw-words` of the language.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::{Need, Needs, Use};
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};
use study::Said;

/// The kind.
pub struct Inquiry;

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// Boxes in reading order.
    pub boxes: Vec<NotebookBox>,
}

/// A box of the notebook; µm from the top left corner of the body's full width.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct NotebookBox {
    /// Its name.
    pub title: Said,
    /// A hint under the name.
    pub hint: Option<String>,
    /// Paper inside.
    pub fill: Fill,
    /// Left edge, µm.
    pub x: u32,
    /// Top edge, µm.
    pub y: u32,
    /// Width, µm.
    pub w: u32,
    /// Height, µm.
    pub h: u32,
}

/// Paper inside a box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Fill {
    /// Lines to write on.
    Lines,
    /// Dots to draw and measure by.
    Dots,
    /// Nothing.
    Blank,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for Inquiry {
    const ABOUT: About = About {
        id: "inquiry",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson, Scope::Subject],
        sign: Sign::Write,
        options: &[Opt { name: "boxes", kind: OptKind::Texts }],
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

    fn head(needs: &Needs, _sheet: &Sheet) -> Head {
        Head {
            title: needs.title.clone(),
            lead: Some(needs.lead.clone()),
            name_line: true,
            ..Head::default()
        }
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

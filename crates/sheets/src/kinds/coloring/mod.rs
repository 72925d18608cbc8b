//! Coloring: a picture in lines, as large as the page, with its name to colour as well.
//!
//! # What it prints
//! The line picture that the option `picture` names, or `<picture>-line` beside the owner's picture; else the outlines
//! of the flat picture itself: every visible shape in black lines over white, small dark eyes solid. Below it the name
//! in hollow letters. The youngest get thicker lines.
//!
//! # What it needs
//! A subject or lesson with a picture. A flat picture must be an SVG of plain shapes; a photo or another bitmap is
//! printed only when it is named as a line picture.
//!
//! # How it is proved
//! Every path of the flat picture stands in the line picture in the same paint order; nothing in it is painted but
//! with white and black; the lines are as wide on paper as the age asks; the picture is at least 170 mm long; the name
//! below is the one to be coloured, in letters that the hand has. On the laid-out page the picture has its size.
//!
//! # Limits
//! In artwork with shifted or hidden parts only the number of shapes is compared. Shapes in one colour that touch keep
//! their shared line.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::{Findings, Place};
pub use needs::Needs;
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};

/// The kind.
pub struct Coloring;

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// The picture.
    pub art: Art,
    /// Width of the box that it fills, µm.
    pub box_w: u32,
    /// Height of that box, µm.
    pub box_h: u32,
    /// Its name, to be coloured.
    pub letters: String,
}

/// A line picture: one of the study's own, or lines drawn from its flat picture.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Art {
    /// Name of the picture.
    pub name: String,
    /// Alt text.
    pub alt: String,
    /// Hash of the artwork.
    pub hash: String,
    /// Width in its own units.
    pub width: u32,
    /// Height in its own units.
    pub height: u32,
    /// The picture's file.
    pub at: Place,
    /// The drawn lines as SVG text; none when the study's own picture is printed as it is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub svg: Option<String>,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for Coloring {
    const ABOUT: About = About {
        id: "coloring",
        rev: 1,
        scopes: &[Scope::Lesson, Scope::Subject],
        sign: Sign::Make,
        options: &[
            Opt { name: "picture", kind: OptKind::Text },
            Opt { name: "letters", kind: OptKind::Text },
            Opt { name: "eyes", kind: OptKind::Choice(&["solid", "open"]) },
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
        make::make(needs)
    }

    fn check(needs: &Needs, sheet: &Sheet) -> Proof {
        check::check(needs, sheet)
    }

    fn head(needs: &Needs, sheet: &Sheet) -> Head {
        Head {
            title: needs.title.clone(),
            lead: Some(needs.lead.clone()),
            pictures: vec![sheet.art.name.clone()],
            ..Head::default()
        }
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

//! The front cover of a study.
//!
//! # What it prints
//! The study's title as large as it fits, its subtitle and ages, the cover
//! picture as large as the page lets it, author, press and issue, and a line
//! where a child writes its name.
//!
//! # What it needs
//! A title in `study.toml`. The picture is `cover` there, else the picture of
//! the first lesson that has one; without any the page keeps its ornament.
//!
//! # How it is proved
//! Every word on the page is compared with the study's, the ages run upwards,
//! and the picture is the one that was named, by the hash of its artwork.
//!
//! # Limits
//! One page; a title of more than about 60 letters is set smaller.

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
use findings::Findings;
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::{Ages, Said};

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct Cover;

/// What the cover says: both what it is made from and what is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Front {
    /// Title of the study.
    pub title: Said,
    /// One line below it.
    pub subtitle: Option<Said>,
    /// Ages in years.
    pub ages: Ages,
    /// Number of lessons.
    pub lessons: usize,
    /// The picture.
    pub picture: Option<PictureRef>,
    /// The author's name.
    pub author: Option<Said>,
    /// The press's name.
    pub press: Option<Said>,
    /// The published version, e.g. `1.0`.
    pub issue: String,
}

impl Kind for Cover {
    const ABOUT: About = About {
        id: "cover",
        rev: 1,
        scopes: &[Scope::Study],
        sign: Sign::Open,
        options: &[],
        page: include_str!("page.typ"),
        words: include_str!("words.toml"),
        doc: include_str!("mod.rs"),
        gathers: false,
    };
    type Needs = Front;
    type Sheet = Front;
    type Key = ();

    fn needs(ask: &Ask<'_>) -> Result<Front, Findings> {
        needs::needs(ask)
    }

    fn make(needs: &Front, _dice: &mut Dice) -> Result<Front, Findings> {
        Ok(make::make(needs))
    }

    fn check(needs: &Front, sheet: &Front) -> Proof {
        check::check(needs, sheet)
    }

    fn head(_needs: &Front, sheet: &Front) -> Head {
        Head {
            title: sheet.title.plain(),
            bare: true,
            pictures: sheet.picture.iter().map(|p| p.name.clone()).collect(),
            facts: sheet.subtitle.iter().flat_map(Said::facts).map(str::to_owned).collect(),
            ..Head::default()
        }
    }
}

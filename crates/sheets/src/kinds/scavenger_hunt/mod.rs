//! Scavenger hunt: things to find, with a box to tick.
//!
//! # What it prints
//! Pictures with tick boxes, a hint where to look, and what to do with the thing once it is found; for the youngest
//! six large pictures a page with few words, for older children up to fourteen. What to take care of stands
//! on the first page, before anybody sets out.
//!
//! # What it needs
//! Four rows or more of `hunt.csv` for its owner. Caution tags come from the option `tags`; without it the hunt is
//! `outdoors`, and on the `shore` too where its words say so.
//!
//! # How it is proved
//! Every thing stands on the pages once, numbered in order, with its own picture, hint and rule; no page holds more
//! than its band allows; the cautions of every tag are there and end with the closing sentence; a hunt whose words
//! speak of the shore has the shore's cautions. On the laid-out page every thing is found with its tick box.
//!
//! # Limits
//! Whether a thing can be found near the family is for them to see. The youngest get only things with a picture
//! where there are enough of them.

mod check;
mod make;
mod needs;
#[cfg(test)]
mod tests;

use crate::shared::PictureRef;
use crate::{About, Ask, Head, Kind, Opt, OptKind, Scope, Sign};
use craft::Dice;
use findings::Findings;
pub use needs::{Needs, Thing};
use proof::{Laid, Proof};
use serde::{Deserialize, Serialize};
use study::Said;

/// The kind.
pub struct ScavengerHunt;

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// What to take care of, the closing sentence last.
    pub cautions: Vec<String>,
    /// Large pictures with few words?
    pub large: bool,
    /// Things, page by page.
    pub pages: Vec<Vec<Find>>,
}

/// A thing to find.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Find {
    /// Number, from 1 over all pages.
    pub n: u32,
    /// What to find.
    pub item: Said,
    /// Its picture.
    pub picture: Option<PictureRef>,
    /// Where to look; none for the youngest.
    pub hint: Option<Said>,
    /// What to do with it.
    pub safe: Option<Said>,
}

/// Fixed words.
const WORDS: &str = include_str!("words.toml");

impl Kind for ScavengerHunt {
    const ABOUT: About = About {
        id: "scavenger-hunt",
        rev: 1,
        scopes: &[Scope::Study, Scope::Part, Scope::Lesson],
        sign: Sign::Play,
        options: &[
            Opt { name: "tags", kind: OptKind::Texts },
            Opt { name: "things", kind: OptKind::Number { min: 4, max: 48 } },
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
        let things = sheet.pages.iter().flatten();
        let facts = things
            .clone()
            .flat_map(|f| [Some(&f.item), f.hint.as_ref(), f.safe.as_ref()])
            .flatten();
        Head {
            title: needs.title.clone(),
            lead: Some(needs.lead.clone()),
            pictures: things.filter_map(|f| f.picture.as_ref()).map(|p| p.name.clone()).collect(),
            facts: facts.flat_map(|s| s.facts()).map(str::to_owned).collect(),
            ..Head::default()
        }
    }

    fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
        check::check_page(sheet, laid)
    }
}

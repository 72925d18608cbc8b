//! Credits: who made what, where the facts come from, what may be done with the study.
//!
//! # What it prints
//! Words, pictures with their authors and licences, type, all sources of facts
//! in full, dictionaries that were consulted, how links were chosen, terms of
//! use, thanks, issue and date, and what is proved before printing.
//!
//! # What it needs
//! The list of all sheets with their pictures and facts; the rights records of
//! the pictures; the sources of the facts.
//!
//! # How it is proved
//! Every picture that a sheet shows is named exactly once, under its own author
//! and licence, and no other; every source of a fact that is used is named
//! exactly once; terms, thanks, issue and date are the study's.
//!
//! # Limits
//! Rights that the author has not written down yet are asked for in the to-do,
//! and the picture is named under "rights still to be written down".

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
use proof::Proof;
use serde::{Deserialize, Serialize};
use study::{Date, Said};

/// The kind.
#[derive(Debug, Clone, Copy)]
pub struct Credits;

/// What the credits are made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title of the sheet.
    pub title: String,
    /// One sentence under it.
    pub lead: Option<String>,
    /// What the study says of itself.
    pub imprint: Imprint,
    /// Pictures that the sheets show, in order of name.
    pub pictures: Vec<Shown>,
    /// Sources of the facts that the sheets use; the same one may come several times.
    pub sources: Vec<Source>,
    /// Facts that are used and have no source yet.
    pub unsourced: usize,
    /// Kinds on the sheets that consult a dictionary.
    pub dictionary: bool,
    /// Number of pages on line that the study names.
    pub links: usize,
}

/// What the study says of itself.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Imprint {
    /// Title of the study.
    pub study: Said,
    /// Author of the words.
    pub author: Option<Said>,
    /// Press.
    pub press: Option<Said>,
    /// Terms of use.
    pub terms: Option<Said>,
    /// Thanks.
    pub thanks: Option<Said>,
    /// The published version.
    pub issue: String,
    /// Its date.
    pub date: Option<Date>,
}

/// A picture and its rights.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Shown {
    /// Name, as words.
    pub name: String,
    /// Its rights.
    pub rights: Rights,
}

/// Who made a picture, and under which licence it is used.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Rights {
    /// Author.
    pub author: Option<String>,
    /// Licence.
    pub licence: Option<String>,
    /// Where it comes from.
    pub source: Option<String>,
}

/// A source in full.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Source {
    /// Who published it.
    pub publisher: String,
    /// Title.
    pub source: String,
    /// Year as written.
    pub year: String,
    /// https address, when it has one.
    pub address: String,
}

/// What is printed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Sheet {
    /// What the study says of itself.
    pub imprint: Imprint,
    /// Pictures under their rights, those without rights last.
    pub pictures: Vec<Owned>,
    /// Sources, each once, by publisher.
    pub sources: Vec<Source>,
    /// A dictionary was consulted.
    pub dictionary: bool,
    /// Pages on line are named.
    pub links: bool,
}

/// Pictures of the same author and licence.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Owned {
    /// The rights.
    pub rights: Rights,
    /// Names of the pictures, in order.
    pub names: Vec<String>,
}

impl Kind for Credits {
    const ABOUT: About = About {
        id: "credits",
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
        Head { title: needs.title.clone(), lead: needs.lead.clone(), ..Head::default() }
    }
}

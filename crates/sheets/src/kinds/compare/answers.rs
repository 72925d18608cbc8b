//! The key, worked out from the printed page.

use super::{Needs, Sheet, Which};
use serde::Serialize;
use study::{CompareRow, Compared, Said};

/// The answers.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Key {
    /// First subject.
    pub first: Said,
    /// Second subject.
    pub second: Said,
    /// The author's rows, in the order of the page.
    pub rows: Vec<Full>,
    /// Which box of each sentence is ticked.
    pub ticks: Vec<Ticked>,
}

/// A full row.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Full {
    /// What is compared.
    pub aspect: Said,
    /// Of the first, or of both.
    pub first: Said,
    /// Of the second; none when alike.
    pub second: Option<Said>,
}

/// The box of a sentence.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Ticked {
    /// Number of the sentence.
    pub n: u32,
    /// The box.
    pub which: Which,
}

/// What the row says of each, as (of which, words).
pub(super) fn sayings(row: &CompareRow) -> Vec<(Which, &Said)> {
    match &row.what {
        Compared::Both(both) => vec![(Which::Both, both)],
        Compared::Each(first, second) => vec![(Which::First, first), (Which::Second, second)],
    }
}

/// The author's row of a printed heading.
pub(super) fn row_of<'a>(needs: &'a Needs, aspect: &Said) -> Option<&'a CompareRow> {
    needs.rows.iter().find(|r| r.aspect == *aspect)
}

/// The key of a page.
pub(super) fn answers(needs: &Needs, sheet: &Sheet) -> Key {
    let full = |row: &CompareRow| match &row.what {
        Compared::Both(both) => {
            Full { aspect: row.aspect.clone(), first: both.clone(), second: None }
        }
        Compared::Each(a, b) => {
            Full { aspect: row.aspect.clone(), first: a.clone(), second: Some(b.clone()) }
        }
    };
    let ticked = sheet.sentences.iter().filter_map(|s| {
        let (which, _) =
            sayings(row_of(needs, &s.aspect)?).into_iter().find(|(_, w)| **w == s.what)?;
        Some(Ticked { n: s.n, which })
    });
    Key {
        first: sheet.first.title.clone(),
        second: sheet.second.title.clone(),
        rows: sheet.rows.iter().filter_map(|r| row_of(needs, &r.aspect)).map(full).collect(),
        ticks: ticked.collect(),
    }
}

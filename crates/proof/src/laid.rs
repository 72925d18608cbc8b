//! Laid-out pages in plain numbers: what a check of the page may look at. No typesetting types.

use findings::Place;
use serde::{Deserialize, Serialize};

/// The laid-out pages of one sheet. All lengths in micrometres (µm), y downwards from the paper's top edge.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Laid {
    /// Sheet id.
    pub sheet: String,
    /// Its pages in order; blank pages put in for duplex included.
    pub pages: Vec<LaidPage>,
}

/// One page.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct LaidPage {
    /// Physical page in the file, from 1.
    pub number: u32,
    /// Name of the leaf that it belongs to (`main`, `fronts`, `backs` …).
    pub leaf: String,
    /// Width of the paper, µm.
    pub width: i64,
    /// Height of the paper, µm.
    pub height: i64,
    /// Left edge of the field (197 × 260 mm) on this paper, µm.
    pub field_x: i64,
    /// Top edge of the field on this paper, µm.
    pub field_y: i64,
    /// Marked items in drawing order.
    pub marks: Vec<Mark>,
    /// Runs of text in drawing order.
    pub texts: Vec<LaidText>,
    /// Pictures in drawing order.
    pub images: Vec<LaidImage>,
}

/// An item that the template marked with `mark(kind, name, …)`.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Mark {
    /// What it is, e.g. `cell`, `card`, `back`.
    pub kind: String,
    /// Which one, e.g. `3,4`.
    pub name: String,
    /// Left edge, µm.
    pub x: i64,
    /// Top edge, µm.
    pub y: i64,
    /// Width, µm.
    pub w: i64,
    /// Height, µm.
    pub h: i64,
}

/// A run of text in one font.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct LaidText {
    /// The characters.
    pub text: String,
    /// Left end of the run, µm.
    pub x: i64,
    /// Baseline, µm.
    pub y: i64,
    /// Width of the run, µm.
    pub w: i64,
    /// Size of the type, hundredths of a point.
    pub size: i64,
    /// Font family.
    pub font: String,
    /// True when a glyph is missing.
    pub missing: bool,
    /// The author's field that it comes from, when it was marked.
    pub field: Option<Place>,
    /// True when it belongs to a reduced drawing (a grid in the key), excepted from the type limit.
    pub reduced: bool,
}

/// A placed picture.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct LaidImage {
    /// Left edge, µm.
    pub x: i64,
    /// Top edge, µm.
    pub y: i64,
    /// Width, µm.
    pub w: i64,
    /// Height, µm.
    pub h: i64,
    /// Pixels across, for a bitmap.
    pub pixels: Option<(u32, u32)>,
    /// Name of the picture.
    pub name: String,
    /// The author's field that it comes from, when it was marked.
    pub field: Option<Place>,
}

impl Laid {
    /// All marks of one kind with the index of their page.
    pub fn marks<'a>(&'a self, kind: &'a str) -> impl Iterator<Item = (usize, &'a Mark)> + 'a {
        self.pages.iter().enumerate().flat_map(move |(i, page)| {
            page.marks.iter().filter(move |m| m.kind == kind).map(move |m| (i, m))
        })
    }
}

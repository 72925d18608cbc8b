//! What the press is given: everything as values, so that nothing is read from disk or clock.

use crate::Look;
use serde::Serialize;
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// One file to be printed.
#[derive(Debug, Clone)]
pub struct Job {
    /// What the file says about itself.
    pub document: Document,
    /// The look of its pages.
    pub look: Look,
    /// Its sheets in printing order.
    pub sheets: Vec<SheetIn>,
    /// The kinds of sheet in it (and the kinds that its key answers), by name.
    pub kinds: BTreeMap<String, KindIn>,
    /// The pictures that its sheets show, by name.
    pub pictures: BTreeMap<String, PictureIn>,
    /// The kinds whose answers a sheet of the kind `key` prints.
    pub answers: BTreeSet<String>,
}

/// What the whole file says about itself.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Document {
    /// Title of the file; a reader shows it in the window's bar.
    pub title: String,
    /// Who wrote it.
    pub author: String,
    /// Language and, if wanted, region, such as `en` or `en-GB`.
    pub language: String,
    /// Year, month, day. It comes from the study, so that a file can be made again byte for byte.
    pub date: Option<(i32, u8, u8)>,
    /// What it is about, in one line.
    pub subject: String,
    /// Words to find it by.
    pub keywords: Vec<String>,
    /// The paper it is printed on.
    pub paper: Paper,
    /// True for a build with gaps: marked on every page.
    pub proof_copy: bool,
    /// Who publishes it.
    pub press: String,
    /// Published version of the study, such as `1.0`.
    pub issue: String,
    /// Title of the study.
    pub study: String,
    /// How many lessons the study has.
    pub lessons: u32,
    /// Page numbers of sheets in the whole file, by sheet id: what `see(id)` prints when a sheet
    /// stands in a file of its own. Empty for the whole file.
    pub pages: BTreeMap<String, u32>,
}

/// The paper.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Paper {
    /// 8.5 × 11 in (612 × 792 pt).
    #[default]
    Letter,
    /// 210 × 297 mm (ISO 216).
    A4,
}

/// A made and proved sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct SheetIn {
    /// Its id.
    pub id: String,
    /// Name of its kind.
    pub kind: String,
    /// What the frame prints around it: title, lesson, part, band and so on.
    pub meta: Value,
    /// What its page template prints.
    pub data: Value,
}

/// A kind of sheet.
#[derive(Debug, Clone, PartialEq)]
pub struct KindIn {
    /// Source of its page template.
    pub page: String,
    /// The fixed words that it prints, in the language of the file.
    pub words: Value,
}

/// A picture, ready to be placed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PictureIn {
    /// Contents of the file.
    pub bytes: Arc<[u8]>,
    /// `svg`, `png` or `jpg`.
    pub ext: String,
    /// What it shows, for those who cannot see it.
    pub alt: String,
    /// Width: pixels of a bitmap, user units of a drawing.
    pub width: u32,
    /// Height, in the same unit.
    pub height: u32,
}

impl SheetIn {
    /// A text of the sheet's meta data, when it is there.
    pub(crate) fn word(&self, key: &str) -> Option<&str> {
        self.meta.get(key).and_then(Value::as_str)
    }

    /// How the author knows the sheet: its title, else the name of its kind.
    pub(crate) fn called(&self) -> &str {
        self.word("title")
            .filter(|t| !t.is_empty())
            .or_else(|| self.word("what"))
            .unwrap_or(&self.id)
    }
}

impl Job {
    /// The sheet with this id.
    pub fn sheet(&self, id: &str) -> Option<&SheetIn> {
        self.sheets.iter().find(|s| s.id == id)
    }
}

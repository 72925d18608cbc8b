//! What is still wanted, in the order worth doing: what stops a sheet first, then what a clean copy needs.

use findings::{Finding, Findings, Severity};
use sheets::Gathered;
use std::collections::BTreeMap;
use study::Study;

/// The to-do list.
#[derive(Debug, Clone, Default, serde::Serialize)]
pub struct Todo {
    /// The next three things worth doing.
    pub next: Vec<Finding>,
    /// Everything else.
    pub rest: Vec<Finding>,
    /// Pictures named but not there, and pictures without points, with their uses.
    pub pictures: Vec<PictureWanted>,
}

/// A picture that is wanted, or wants something.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, serde::Serialize)]
pub struct PictureWanted {
    /// Name of the picture.
    pub name: String,
    /// True when there is no file yet.
    pub missing: bool,
    /// Titles of the sheets, lessons and words that show it.
    pub uses: Vec<String>,
    /// Names of lesson words that could be marked on it as points, when it has none.
    pub points: Vec<String>,
}

/// Sorts findings into a to-do list.
pub fn todo(study: &Study, gathered: &Gathered, findings: &Findings) -> Todo {
    let mut wanted: Vec<Finding> =
        findings.clone().sorted().into_iter().filter(|f| f.severity >= Severity::Want).collect();
    wanted.sort_by_key(|f| (std::cmp::Reverse(f.severity), weight(f)));
    let rest = wanted.split_off(wanted.len().min(3));
    Todo { next: wanted, rest, pictures: pictures(study, gathered) }
}

/// Content before records: a missing text keeps a page from printing, a licence does not.
fn weight(finding: &Finding) -> u8 {
    match finding.code.as_str() {
        code if code.contains("alt") => 1,
        code if code.contains("rights") || code.contains("licence") || code.contains("sold") => 2,
        code if code.contains("source") => 3,
        _ => 0,
    }
}

fn pictures(study: &Study, gathered: &Gathered) -> Vec<PictureWanted> {
    let mut uses: BTreeMap<&str, Vec<String>> = BTreeMap::new();
    let lessons = study.lessons.iter().map(|l| (&l.picture, &l.title));
    let subjects = study.lessons.iter().flat_map(|l| &l.subjects).map(|s| (&s.picture, &s.title));
    let words = study.words.iter().map(|w| (&w.picture, &w.word));
    for (name, by) in lessons.chain(subjects).chain(words) {
        if let Some(name) = name {
            uses.entry(name).or_default().push(by.plain());
        }
    }
    for entry in &gathered.entries {
        for name in &entry.pictures {
            uses.entry(name).or_default().push(entry.title.clone());
        }
    }
    let all = uses.into_iter().map(|(name, by)| wanted(study, name, by));
    all.filter(|p| p.missing || !p.points.is_empty()).collect()
}

fn wanted(study: &Study, name: &str, mut uses: Vec<String>) -> PictureWanted {
    uses.sort();
    uses.dedup();
    let picture = study.pictures.get(name);
    let points = match picture {
        Some(p) if p.points.is_empty() => points_to_mark(study, name),
        _ => Vec::new(),
    };
    PictureWanted { name: name.to_owned(), missing: picture.is_none(), uses, points }
}

/// Pieces that the artwork names already are the points most worth marking.
fn points_to_mark(study: &Study, name: &str) -> Vec<String> {
    let shown_alone =
        study.lessons.iter().flat_map(|l| &l.subjects).any(|s| s.picture.as_deref() == Some(name));
    let pieces = study.pictures.get(name).map(|p| p.pieces.as_slice()).unwrap_or_default();
    if shown_alone { pieces.iter().map(|(_, plain)| plain.clone()).collect() } else { Vec::new() }
}

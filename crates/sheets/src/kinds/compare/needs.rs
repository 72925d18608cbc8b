//! What the page is made from: two subjects and what the author says of them.

use super::answers::sayings;
use super::{Side, WORDS};
use crate::ask::{Ask, Owner};
use crate::shared::{owner_place, owner_title, picture, title};
use crate::words::words;
use findings::{Finding, Findings};
use serde::{Deserialize, Serialize};
use study::{Band, CompareRow, Compared, Lesson, Said, Subject};

/// Everything the page is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// The sentence under it.
    pub lead: String,
    /// Age band.
    pub band: Band,
    /// Level 1 to 3; the youngest always tick.
    pub level: u8,
    /// First subject.
    pub first: Side,
    /// Second subject.
    pub second: Side,
    /// The author's rows.
    pub rows: Vec<CompareRow>,
    /// Sentences at level 1: all that is said, but few for the youngest.
    pub sentences: usize,
}

/// Most sentences for the youngest: one page in their type.
const MOST_YOUNG: usize = 6;

impl Needs {
    /// Facts that the rows use.
    pub fn facts(&self) -> Vec<String> {
        let said = self.rows.iter().flat_map(|r| match &r.what {
            Compared::Both(both) => vec![&r.aspect, both],
            Compared::Each(a, b) => vec![&r.aspect, a, b],
        });
        said.flat_map(Said::facts).map(str::to_owned).collect()
    }
}

/// Fewest rows.
pub(super) const LEAST: usize = 3;

/// Works out the Needs.
pub(super) fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let words = words(WORDS, ask.language);
    let lesson = match ask.owner {
        Owner::Lesson(i) => ask.study.lessons.get(i),
        _ => None,
    };
    let Some(lesson) = lesson else {
        let finding = Finding::error("compare-owner", "only a lesson compares its two subjects")
            .at(&owner_place(ask));
        return Err(finding.remedy("put `compare` among the sheets of a lesson").into());
    };
    let [first, second] = lesson.subjects.as_slice() else {
        let message = format!(
            "`{}` compares two subjects, and has {}",
            owner_title(ask).plain(),
            lesson.subjects.len()
        );
        let finding = Finding::error("compare-two", message).at(&lesson.place);
        return Err(finding
            .remedy(
                "give the lesson two [[subject]] entries, or leave the sheet out with `leave-out`",
            )
            .into());
    };
    refuse(lesson)?;
    let side = |s: &Subject| Side {
        title: s.title.clone(),
        picture: s.picture.as_deref().and_then(|p| picture(ask.study, p)),
    };
    let level = if ask.band == Band::A { 1 } else { ask.level.clamp(1, 3) };
    let all: usize = lesson.compare.iter().map(|r| sayings(r).len()).sum();
    let sentences = if ask.band == Band::A { all.min(MOST_YOUNG) } else { all };
    let lead = words.get(&format!("lead-{level}")).cloned().unwrap_or_default();
    Ok(Needs {
        title: title(ask, &words),
        lead,
        band: ask.band,
        level,
        first: side(first),
        second: side(second),
        rows: lesson.compare.clone(),
        sentences,
    })
}

fn refuse(lesson: &Lesson) -> Result<(), Findings> {
    let rows = &lesson.compare;
    let mut bad = Findings::none();
    let differ = rows.iter().any(|r| matches!(r.what, Compared::Each(..)));
    if rows.len() < LEAST || !differ {
        let message = format!(
            "`{}` has {} rows to compare, and needs {LEAST}, one of them a difference",
            lesson.title.plain(),
            rows.len()
        );
        let finding = Finding::error("compare-short", message).at(&lesson.place);
        bad.push(
            finding
                .remedy("add [[compare]] entries with `aspect`, `first` and `second`, or `both`"),
        );
    }
    for (i, row) in rows.iter().enumerate() {
        let aspect = row.aspect.plain();
        if rows[..i].iter().any(|r| r.aspect.plain().to_lowercase() == aspect.to_lowercase()) {
            bad.push(
                Finding::error("compare-twice", format!("`{aspect}` is compared twice"))
                    .at(&row.aspect.at)
                    .remedy("put the two rows into one"),
            );
        }
        if let Compared::Each(a, b) = &row.what
            && a.plain().trim().to_lowercase() == b.plain().trim().to_lowercase()
        {
            let finding =
                Finding::error("compare-same", format!("`{aspect}` says the same of both"))
                    .at(&row.aspect.at);
            bad.push(finding.remedy("write it once under `both`"));
        }
    }
    if bad.is_empty() { Ok(()) } else { Err(bad) }
}

//! What the page is made from: sentences of the owner with their figures.

use super::{Task, WORDS};
use crate::ask::{Ask, Owner};
use crate::shared::{PictureRef, belongs, owner_place, owner_title, picture, title};
use crate::words::words;
use findings::{Finding, Findings};
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;
use study::{Band, Figure, Said};

/// Everything the page is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// The sentence under it.
    pub lead: String,
    /// Age band.
    pub band: Band,
    /// How the child answers.
    pub task: Task,
    /// How many sentences the page shows.
    pub count: usize,
    /// The owner's picture.
    pub picture: Option<PictureRef>,
    /// Sentences to choose from.
    pub rows: Vec<Row>,
    /// What the author might look at.
    pub notes: Findings,
}

/// A sentence with its figure.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Row {
    /// The sentence.
    pub sentence: Said,
    /// Its figure.
    pub figure: Figure,
    /// Why.
    pub why: Option<Said>,
}

/// All figures in the order of their reminders.
pub(super) const ALL: [Figure; 4] =
    [Figure::Simile, Figure::Metaphor, Figure::Hyperbole, Figure::Personification];
/// Fewest sentences on a page.
pub(super) const LEAST: usize = 4;

/// As the author writes it.
pub(super) fn name(figure: Figure) -> &'static str {
    match figure {
        Figure::Simile => "simile",
        Figure::Metaphor => "metaphor",
        Figure::Hyperbole => "hyperbole",
        Figure::Personification => "personification",
    }
}

/// Sentences a page by level, fewer for the youngest; our own steps.
fn plan(band: Band, level: u8) -> usize {
    match (band, level) {
        (Band::A, _) => 4,
        (Band::B, level) => 4 + 2 * usize::from(level),
        (_, level) => 6 + 2 * usize::from(level),
    }
}

/// Works out the Needs.
pub(super) fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let words = words(WORDS, ask.language);
    let mut rows: Vec<Row> = Vec::new();
    let mut notes = Findings::none();
    for row in ask.study.figures.iter().filter(|f| belongs(ask, &f.wherever)) {
        if rows.iter().any(|r| same(&r.sentence, &row.sentence)) {
            let finding = Finding::warning(
                "figure-twice",
                format!("the sentence `{}` stands in the list twice", row.sentence.plain()),
            );
            notes.push(finding.at(&row.sentence.at).remedy("take one of the two rows out"));
            continue;
        }
        rows.push(Row { sentence: row.sentence.clone(), figure: row.figure, why: row.why.clone() });
    }
    refuse(ask, &rows)?;
    notes.append(missing(ask, &rows));
    let wish = ask.number("sentences").and_then(|n| usize::try_from(n).ok());
    let task = match ask.level {
        0 | 1 => Task::Letter,
        2 => Task::Underline,
        _ => Task::Sort,
    };
    let key = match task {
        Task::Letter => "lead",
        Task::Underline => "lead-underline",
        Task::Sort => "lead-sort",
    };
    let count = wish.unwrap_or(plan(ask.band, ask.level)).min(rows.len());
    let lead = words.get(key).cloned().unwrap_or_default();
    Ok(Needs {
        title: title(ask, &words),
        lead,
        band: ask.band,
        task,
        count,
        picture: own_picture(ask),
        rows,
        notes,
    })
}

/// The picture of the lesson, part or study.
fn own_picture(ask: &Ask<'_>) -> Option<PictureRef> {
    let study = ask.study;
    let name = match ask.owner {
        Owner::Study => study.cover.as_ref(),
        Owner::Part(i) => study.parts.get(i).and_then(|p| p.picture.as_ref()),
        Owner::Lesson(i) | Owner::Subject(i, _) => {
            study.lessons.get(i).and_then(|l| l.picture.as_ref())
        }
    };
    name.and_then(|n| picture(study, n))
}

/// Equal but for capitals and spaces.
pub(super) fn same(a: &Said, b: &Said) -> bool {
    let plain = |s: &Said| {
        s.plain().to_lowercase().split_whitespace().map(str::to_owned).collect::<Vec<_>>()
    };
    plain(a) == plain(b)
}

fn counts(rows: &[Row]) -> BTreeMap<Figure, usize> {
    let mut counts = BTreeMap::new();
    for row in rows {
        *counts.entry(row.figure).or_insert(0) += 1;
    }
    counts
}

fn refuse(ask: &Ask<'_>, rows: &[Row]) -> Result<(), Findings> {
    let counts = counts(rows);
    if rows.len() >= LEAST && counts.len() >= 2 {
        return Ok(());
    }
    let have: Vec<String> =
        ALL.iter().map(|f| format!("{} `{}`", counts.get(f).unwrap_or(&0), name(*f))).collect();
    let owner = owner_title(ask).plain();
    let message = format!(
        "`{owner}` has too few sentences with figures of speech: {}; at least {LEAST} of two figures are needed",
        have.join(", ")
    );
    let finding = Finding::error("figures-missing", message).at(&owner_place(ask));
    Err(finding
        .remedy("add rows to `figures.csv` that name it under `where`")
        .remedy("or leave the sheet out here with `leave-out`")
        .into())
}

/// A figure that the owner has no sentence for: the page prints without it.
fn missing(ask: &Ask<'_>, rows: &[Row]) -> Findings {
    let counts = counts(rows);
    let owner = owner_title(ask).plain();
    ALL.iter()
        .filter(|f| !counts.contains_key(f))
        .map(|f| {
            let finding = Finding::hint(
                "figure-missing",
                format!("`{owner}` has no sentence with a {}", name(*f)),
            )
            .at(&owner_place(ask));
            finding.remedy("add one to `figures.csv`")
        })
        .collect()
}

//! Pieces that several kinds share: rows that belong to an owner, pictures, sources, titles.

use crate::ask::{Ask, Owner};
use crate::words::Words;
use findings::Place;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use study::{Said, Study, Word};

/// A picture as a sheet refers to it. The press finds the artwork by name; the hash makes the cache notice a change.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct PictureRef {
    /// Name of the picture.
    pub name: String,
    /// Alt text; a plain stand-in naming the picture when the author has written none yet.
    pub alt: String,
    /// Hash of the artwork.
    pub hash: String,
    /// Width in pixels or SVG units.
    pub width: u32,
    /// Height in pixels or SVG units.
    pub height: u32,
    /// The picture's file.
    pub at: Place,
}

/// A source as it is printed.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct SourceLine {
    /// Title of the source.
    pub source: String,
    /// Who published it.
    pub publisher: String,
    /// Year as written.
    pub year: String,
}

/// The picture of that name, when the study has it.
pub fn picture(study: &Study, name: &str) -> Option<PictureRef> {
    let p = study.pictures.get(name)?;
    let alt = p.alt.as_ref().map_or_else(|| name.replace('-', " "), Said::plain);
    Some(PictureRef {
        name: p.name.clone(),
        alt,
        hash: p.hash.clone(),
        width: p.width,
        height: p.height,
        at: p.place.clone(),
    })
}

/// Names that rows may carry in `where` to belong to the owner; none for the study, which takes every row.
///
/// A lesson takes its own rows and its subjects'; a subject takes its own, and
/// its lesson's too when it is the lesson's only subject; a part takes its
/// own and all of its lessons'.
pub fn names_of(study: &Study, owner: Owner) -> Option<BTreeSet<&str>> {
    let lesson_names = |i: usize| {
        let lesson = study.lessons.get(i);
        let subjects = lesson.into_iter().flat_map(|l| l.subjects.iter().map(|s| s.name.as_str()));
        lesson.into_iter().map(|l| l.name.as_str()).chain(subjects).collect::<Vec<_>>()
    };
    match owner {
        Owner::Study => None,
        Owner::Part(i) => {
            let part = study.parts.get(i)?;
            let lessons = part.lessons.iter().flat_map(|l| lesson_names(*l));
            Some(lessons.chain([part.name.as_str()]).collect())
        }
        Owner::Lesson(i) => Some(lesson_names(i).into_iter().collect()),
        Owner::Subject(i, j) => {
            let lesson = study.lessons.get(i)?;
            if lesson.subjects.len() == 1 {
                return Some(lesson_names(i).into_iter().collect());
            }
            Some(lesson.subjects.get(j).map(|s| s.name.as_str()).into_iter().collect())
        }
    }
}

/// True when a row with these `where` names belongs to the asking owner.
pub fn belongs(ask: &Ask<'_>, wherever: &[String]) -> bool {
    match names_of(ask.study, ask.owner) {
        None => true,
        Some(names) => wherever.iter().any(|w| names.contains(w.as_str())),
    }
}

/// Words of the owner, in file order.
pub fn words_of<'a>(ask: &Ask<'a>) -> Vec<&'a Word> {
    ask.study.words.iter().filter(|w| belongs(ask, &w.wherever)).collect()
}

/// Index of the lesson that the owner is or stands in.
pub fn lesson_of(owner: Owner) -> Option<usize> {
    match owner {
        Owner::Lesson(i) | Owner::Subject(i, _) => Some(i),
        Owner::Study | Owner::Part(_) => None,
    }
}

/// What the owner is called: the title of the study, part, lesson or subject.
pub fn owner_title<'a>(ask: &Ask<'a>) -> &'a Said {
    let study = ask.study;
    let found = match ask.owner {
        Owner::Study => None,
        Owner::Part(i) => study.parts.get(i).map(|p| &p.title),
        Owner::Lesson(i) => study.lessons.get(i).map(|l| &l.title),
        Owner::Subject(i, j) => {
            study.lessons.get(i).and_then(|l| l.subjects.get(j)).map(|s| &s.title)
        }
    };
    found.unwrap_or(&study.title)
}

/// Where the owner is written, to point a finding at.
pub fn owner_place(ask: &Ask<'_>) -> Place {
    let study = ask.study;
    let found = match ask.owner {
        Owner::Study => None,
        Owner::Part(i) => study.parts.get(i).map(|p| p.place.clone()),
        Owner::Lesson(i) => study.lessons.get(i).map(|l| l.place.clone()),
        Owner::Subject(i, j) => {
            study.lessons.get(i).and_then(|l| l.subjects.get(j)).map(|s| s.place.clone())
        }
    };
    found.unwrap_or_else(|| Place::file("study.toml"))
}

/// Title of a sheet: the author's option, else the kind's default (`title` in its words, `{owner}` filled in).
pub fn title(ask: &Ask<'_>, words: &Words) -> String {
    if let Some(own) = ask.text("title") {
        return own.to_owned();
    }
    let default = words.get("title").map_or("", String::as_str);
    default.replace("{owner}", &owner_title(ask).plain())
}

/// Sources of facts, each once, in order of title.
pub fn sources<'a>(study: &Study, ids: impl IntoIterator<Item = &'a str>) -> Vec<SourceLine> {
    let set: BTreeSet<SourceLine> = ids
        .into_iter()
        .filter_map(|id| study.facts.get(id))
        .filter(|f| !f.source.is_empty())
        .map(|f| SourceLine {
            source: f.source.clone(),
            publisher: f.publisher.clone(),
            year: f.year.clone(),
        })
        .collect();
    set.into_iter().collect()
}

//! Takes from each sheet what its line says.

use super::{Line, Needs, Row};
use crate::ask::{Ask, Entry, Owner};
use crate::shared;
use crate::words::words;
use findings::{Finding, Findings};

/// Kinds that the contents do not list: the cover stands before them, and they do not list themselves.
const UNLISTED: [&str; 2] = ["cover", "contents"];

pub(super) fn needs(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let words = words(toml, ask.language);
    let sheets: Vec<Row> = ask
        .gathered
        .entries
        .iter()
        .filter(|e| e.id != ask.sheet && !UNLISTED.contains(&e.kind.as_str()))
        .map(row)
        .collect();
    if sheets.is_empty() {
        return Err(Finding::error(
            "contents-empty",
            "there is nothing yet that the contents could list",
        )
        .at(&shared::owner_place(ask))
        .remedy("add lessons or sheets to the study, or take `contents` out of its page set")
        .into());
    }
    let list = ask.flag("list").unwrap_or(false);
    let short = ask.flag("short").unwrap_or(false);
    let lessons: Vec<_> = ask.study.lessons.iter().map(|l| l.title.clone()).collect();
    let lead = match (list, lessons.len()) {
        _ if short => words.get("lead-short"),
        (true, _) => words.get("lead-list"),
        (_, 0) => None,
        (_, 1) => words.get("lead-one"),
        _ => words.get("lead"),
    };
    Ok(Needs {
        title: shared::title(ask, &words),
        lead: lead.map(|l| l.replace("{n}", &lessons.len().to_string())),
        list,
        short,
        parts: ask.study.parts.iter().map(|p| p.title.clone()).collect(),
        lessons,
        sheets,
    })
}

fn row(entry: &Entry) -> Row {
    Row {
        line: Line {
            id: entry.id.clone(),
            sign: entry.sign.clone(),
            title: entry.title.clone(),
            what: entry.what.clone(),
        },
        lesson: entry.lesson,
        part: entry.part,
        opens: entry.kind == "lesson-opener" && matches!(entry.owner, Owner::Lesson(_)),
    }
}

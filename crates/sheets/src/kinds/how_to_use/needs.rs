//! Gathers what the print guide tells.

use super::{Needs, Row};
use crate::ask::{Ask, Entry};
use crate::kinds::find;
use crate::shared;
use crate::words::words;
use findings::{Finding, Findings};
use std::collections::BTreeSet;
use study::Said;

/// Tags whose activities use food; their supplies are searched for allergens.
const FOOD: [&str; 2] = ["food", "dough"];

pub(super) fn needs(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let study = ask.study;
    let words = words(toml, ask.language);
    let mut seen = BTreeSet::new();
    let sheets: Vec<Row> = ask
        .gathered
        .entries
        .iter()
        .filter(|e| e.id != ask.sheet)
        .map(|e| row(e, !seen.insert((e.kind.as_str(), e.owner))))
        .collect();
    if sheets.is_empty() {
        return Err(Finding::error(
            "guide-empty",
            "the study has no other sheets that a print guide could speak of",
        )
        .at(&shared::owner_place(ask))
        .remedy("add lessons or sheets to the study, or take `how-to-use` out of its page set")
        .into());
    }
    let activities = || study.lessons.iter().flat_map(|l| &l.activities);
    let mut tags: BTreeSet<String> = activities().flat_map(|a| a.tags.iter().cloned()).collect();
    if sheets.iter().any(|s| s.card) {
        tags.extend(["cut".to_owned(), "laminate".to_owned()]);
    }
    if !study.links.is_empty() {
        tags.insert("links".to_owned());
    }
    let with_food = activities().filter(|a| a.tags.iter().any(|t| FOOD.contains(&t.as_str())));
    let supplies =
        with_food.flat_map(|a| a.supplies.iter().chain(&a.base).chain(&a.fillers)).map(Said::plain);
    Ok(Needs {
        title: shared::title(ask, &words),
        lead: words.get("lead").cloned().unwrap_or_default(),
        ages: study.ages,
        lessons: study.lessons.len(),
        tags: tags.into_iter().collect(),
        supplies: supplies.collect(),
        language: ask.language.to_owned(),
        sheets,
    })
}

fn row(entry: &Entry, further: bool) -> Row {
    // A kind whose template lays leaves behind others prints on both sides.
    let backs =
        entry.card && find(&entry.kind).is_some_and(|k| k.about().page.contains("\"verso-of\""));
    Row {
        id: entry.id.clone(),
        title: entry.title.clone(),
        what: entry.what.clone(),
        sign: entry.sign.clone(),
        card: entry.card,
        backs,
        further,
    }
}

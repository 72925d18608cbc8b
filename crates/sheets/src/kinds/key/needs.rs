//! Takes the answers from the study's sheets.

use super::{Entry, Needs};
use crate::ask::Ask;
use crate::shared;
use crate::words::words;
use findings::{Finding, Findings};

pub(super) fn needs(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let words = words(toml, ask.language);
    let answered = ask.gathered.entries.iter().filter_map(|e| {
        Some(Entry {
            id: e.id.clone(),
            number: e.key_number?,
            kind: e.kind.clone(),
            what: e.what.clone(),
            title: e.title.clone(),
            lesson: e.lesson.map(|l| l + 1),
            part: e.part.filter(|_| e.lesson.is_none()).map(|p| p + 1),
            key: e.key.clone()?,
        })
    });
    let sheets: Vec<Entry> = answered.collect();
    if sheets.is_empty() {
        return Err(Finding::error("key-empty", "no sheet of this study has answers yet")
            .at(&shared::owner_place(ask))
            .remedy(
                "add a sheet with answers, such as `questions`, or take `key` out of the page set",
            )
            .into());
    }
    Ok(Needs {
        title: shared::title(ask, &words),
        lead: words.get("lead").cloned(),
        lessons: ask.study.lessons.iter().map(|l| l.title.clone()).collect(),
        parts: ask.study.parts.iter().map(|p| p.title.clone()).collect(),
        sheets,
    })
}

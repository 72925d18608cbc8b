//! Sections, blocks, items and cells of a text.

use super::{line_end, no_place, spliced, words};
use crate::lines::markdown_spans;
use crate::model::Value;
use findings::{Finding, Place};
use std::collections::BTreeSet;

/// Sections that can be begun, with their headings.
const BEGUN: &[(&str, &str)] =
    &[("opening", "## Opening"), ("reading", "## Reading"), ("more", "## One thing more")];

/// The text with one field exchanged; a missing section is added at the end.
pub(super) fn set(text: &str, place: &Place, value: &Value) -> Result<String, Finding> {
    let spans = markdown_spans(text, &place.file);
    let new = fitted(&words(value), place, line_end(text));
    let changed = match spans.get(place) {
        Some(bytes) if bytes.is_empty() => {
            spliced(text, bytes.clone(), &begun(text, bytes.start, &new))
        }
        Some(bytes) => spliced(text, bytes.clone(), &new),
        None => appended(text, place, &new)?,
    };
    let fields = |text: &str| -> BTreeSet<Place> {
        let is_section = |p: &Place| {
            !p.field.contains('/')
                || p.field.starts_with("activity/") && p.field.matches('/').count() == 1
        };
        markdown_spans(text, &place.file).into_keys().filter(is_section).collect()
    };
    let (before, after) = (fields(text), fields(&changed));
    let others = |set: &BTreeSet<Place>| {
        set.iter().filter(|p| *p != place).cloned().collect::<BTreeSet<_>>()
    };
    if others(&before) != others(&after) {
        return Err(Finding::error(
            "section-inside",
            "a line that begins with `##` would begin another section here",
        )
        .at(place)
        .remedy("use `###` for a heading inside a text"));
    }
    Ok(changed)
}

/// Words as they may stand at a place: on one line in items, cells and titles.
fn fitted(new: &str, place: &Place, end: &str) -> String {
    let last = place.field.rsplit('/').next().unwrap_or_default();
    let in_table = place.field.contains("/table/");
    let list = ["supplies/", "steps/", "ask/", "base/", "fillers/", "tools/"]
        .iter()
        .any(|l| place.field.contains(l));
    if in_table || list || last == "title" {
        let one = new.split_whitespace().collect::<Vec<_>>().join(" ");
        return if in_table { one.replace("\\|", "|").replace('|', "\\|") } else { one };
    }
    new.trim().replace("\r\n", "\n").replace('\n', end)
}

/// A text under a heading that stood alone.
fn begun(text: &str, at: usize, new: &str) -> String {
    let end = line_end(text);
    let before =
        if text.get(..at).is_some_and(|t| t.is_empty() || t.ends_with('\n')) { "" } else { end };
    format!("{before}{new}{end}")
}

fn appended(text: &str, place: &Place, new: &str) -> Result<String, Finding> {
    let lesson = (place.file.starts_with("lessons/") || place.file.starts_with("parts/"))
        && !place.file.contains(".reading");
    let heading = BEGUN.iter().find(|(field, _)| *field == place.field).filter(|_| lesson);
    let (_, heading) = heading.ok_or_else(|| no_place(place))?;
    let end = line_end(text);
    let gap = match text {
        "" => String::new(),
        t if t.ends_with('\n') => end.to_owned(),
        _ => format!("{end}{end}"),
    };
    Ok(format!("{text}{gap}{heading}{end}{new}{end}"))
}

//! From a place to a line: looked up only when a finding is shown.

use crate::csv_text::{Cell, scan};
use crate::lists::{LISTS, List, keys};
use crate::markdown;
use crate::read::Cx;
use crate::toml_text;
use findings::Place;
use std::collections::BTreeMap;
use std::ops::Range;
use std::path::Path;
use std::sync::Arc;

/// The texts of a study as they were read, to look places up in.
#[derive(Debug, Clone, Default)]
pub struct Lines {
    pub(crate) texts: BTreeMap<String, Arc<str>>,
    pub(crate) spans: BTreeMap<Place, Range<usize>>,
}

/// Where a place stands in its file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Spot {
    /// Line, from 1.
    pub line: u32,
    /// Letter in the line, from 1.
    pub column: u32,
    /// The line's words, without its line end.
    pub text: String,
    /// Bytes of the field in the file.
    pub bytes: Range<usize>,
}

impl Lines {
    /// The whole text of a file, when it was readable.
    pub fn source(&self, file: &str) -> Option<&str> {
        self.texts.get(file).map(AsRef::as_ref)
    }

    /// Where a place stands; the nearest field around it when it is not written itself.
    pub fn spot(&self, place: &Place) -> Option<Spot> {
        let text = self.source(&place.file)?;
        let mut at = place.clone();
        loop {
            if let Some(bytes) = self.spans.get(&at).cloned().or_else(|| bytes(text, &at)) {
                return Some(spot(text, bytes));
            }
            at.field = at.field.rsplit_once('/').map(|(outer, _)| outer.to_owned())?;
        }
    }
}

/// Line of a place in the folder as it stands now.
pub fn line_of(folder: &Path, place: &Place) -> Option<u32> {
    let text = std::fs::read_to_string(folder.join(&place.file)).ok()?;
    let mut lines = Lines { spans: markdown_spans(&text, &place.file), ..Lines::default() };
    lines.texts.insert(place.file.clone(), text.into());
    lines.spot(place).map(|s| s.line)
}

fn spot(text: &str, bytes: Range<usize>) -> Spot {
    let start =
        (0..=bytes.start.min(text.len())).rev().find(|i| text.is_char_boundary(*i)).unwrap_or(0);
    let before = text.get(..start).unwrap_or_default();
    let line_start = before.rfind('\n').map_or(0, |i| i + 1);
    let line = text.get(line_start..).unwrap_or_default().split('\n').next().unwrap_or_default();
    let number = |n: usize| u32::try_from(n + 1).unwrap_or(u32::MAX);
    Spot {
        line: number(before.matches('\n').count()),
        column: number(before.get(line_start..).unwrap_or_default().chars().count()),
        text: line.trim_end_matches('\r').to_owned(),
        bytes,
    }
}

/// Bytes of a field that needs no reading of Markdown: a line, a setting, a cell.
pub(crate) fn bytes(text: &str, place: &Place) -> Option<Range<usize>> {
    if let Some(number) = place.field.strip_prefix("line ") {
        let index = number.parse::<usize>().ok()?.checked_sub(1)?;
        let mut at = 0;
        let line = text.split_inclusive('\n').enumerate().find_map(|(n, line)| {
            let start = at;
            at += line.len();
            (n == index).then(|| start..start + line.trim_end().len())
        });
        return line.or(Some(text.len()..text.len()));
    }
    if place.field.is_empty() {
        return Some(0..0);
    }
    if place.file.ends_with(".toml") {
        return setting(text, 0, &place.file, &place.field);
    }
    if place.file.ends_with(".md") {
        let field = place.field.strip_prefix("front")?;
        let front = toml_text::split(text, &place.file).ok()?;
        if field.is_empty() {
            return Some(front.settings.start..front.settings.start);
        }
        let start = front.settings.start;
        return setting(text.get(front.settings)?, start, &place.file, field);
    }
    match cell(text, place) {
        Some(cell) => Some(cell.span),
        None => row(text, place),
    }
}

fn setting(text: &str, base: usize, file: &str, field: &str) -> Option<Range<usize>> {
    let mark = text.len() - text.strip_prefix('\u{feff}').unwrap_or(text).len();
    let settings = toml_text::parse(text, file, 1).ok()?;
    let span = toml_text::span(settings.as_table(), field)?;
    Some(base + mark + span.start..base + mark + span.end)
}

fn list_of(place: &Place) -> Option<&'static List> {
    LISTS.iter().find(|l| l.file == place.file)
}

fn row(text: &str, place: &Place) -> Option<Range<usize>> {
    let scan = scan(text);
    let index = keys(list_of(place)?, &scan).iter().position(|key| *key == place.field)?;
    scan.records.get(index + 1).map(|record| record.span.clone())
}

/// The cell at a place of a list.
pub(crate) fn cell(text: &str, place: &Place) -> Option<Cell> {
    let scan = scan(text);
    let (key, column) = place.field.rsplit_once('/')?;
    let row = keys(list_of(place)?, &scan).iter().position(|k| k == key)?;
    let column = scan
        .records
        .first()?
        .cells
        .iter()
        .position(|c| c.text.trim().eq_ignore_ascii_case(column))?;
    scan.records.get(row + 1)?.cells.get(column).cloned()
}

/// Bytes of every field in the text of a Markdown file.
pub(crate) fn markdown_spans(text: &str, file: &str) -> BTreeMap<Place, Range<usize>> {
    let mut cx = Cx { facts_unsure: true, ..Cx::default() };
    if file.ends_with(".md")
        && let Ok(front) = toml_text::split(text, file)
        && let Some(body) = text.get(front.body..)
    {
        let lesson = file.starts_with("lessons/") || file.starts_with("parts/");
        if lesson && !file.contains(".reading") {
            markdown::lesson(body, front.body, file, false, &mut cx);
        } else {
            markdown::plain(body, front.body, file, false, &mut cx);
        }
    }
    cx.spans
}

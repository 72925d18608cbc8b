//! Writing single fields back: every other byte of the author's file stays as it is.

mod atomic;
mod markdown;
mod settings;
mod table;

use crate::lines::{self, markdown_spans};
use crate::model::Value;
use crate::toml_text;
use findings::{Finding, Place};
use std::fs;
use std::path::Path;

pub(crate) use settings::set_after_first;

/// How often a file that changes while it is written is read anew.
const TRIES: usize = 3;

/// Writes one field: a setting, a field of front matter, a section or block of a text, a cell.
///
/// A text in Markdown files is given as Markdown. A field that is not there yet
/// is added at the end of its group, a missing settings file is begun. The file
/// is replaced in one step; when anything fails it stays as it was.
///
/// # Errors
/// A finding when the place is unknown, the value does not fit, or the disk refuses.
pub fn write_field(folder: &Path, place: &Place, value: &Value) -> Result<(), Finding> {
    change(folder, &place.file, |text| edited(text, place, value))
}

/// Adds a row at the end of a list; the file is begun with its usual columns when it is missing.
///
/// # Errors
/// A finding when the list or a column is unknown, or the disk refuses.
pub fn append_row(folder: &Path, file: &str, cells: &[(&str, &str)]) -> Result<(), Finding> {
    change(folder, file, |text| table::append(text, file, cells))
}

/// Takes the row of a place (`words.csv#limpet`) out of its list.
///
/// # Errors
/// A finding when there is no such row, or the disk refuses.
pub fn remove_row(folder: &Path, place: &Place) -> Result<(), Finding> {
    change(folder, &place.file, |text| table::remove(text, place))
}

/// The words of a field as the author would edit them: a text setting, a cell, Markdown.
pub fn source_of(folder: &Path, place: &Place) -> Option<String> {
    let text = fs::read_to_string(folder.join(inside(&place.file)?)).ok()?;
    source(&text, place)
}

/// A path that stays inside the folder.
fn inside(file: &str) -> Option<&str> {
    let safe = !file.starts_with('/')
        && !file.contains(['\\', ':'])
        && file.split('/').all(|p| !p.is_empty() && p != ".." && p != ".");
    safe.then_some(file)
}

fn source(text: &str, place: &Place) -> Option<String> {
    if place.file.ends_with(".md") && !place.field.starts_with("front") {
        let bytes = markdown_spans(text, &place.file).get(place)?.clone();
        return text.get(bytes).map(str::to_owned);
    }
    if place.file.ends_with(".csv") {
        return lines::cell(text, place).map(|cell| cell.text);
    }
    let raw = text.get(lines::bytes(text, place)?)?;
    let wrapped = toml_text::parse(&format!("v = {raw}"), &place.file, 1).ok()?;
    let value = wrapped.get("v")?.as_value()?;
    Some(value.as_str().map_or_else(|| raw.trim().to_owned(), str::to_owned))
}

fn edited(text: &str, place: &Place, value: &Value) -> Result<String, Finding> {
    let ending = place.file.rsplit_once('.').map_or("", |(_, e)| e);
    match ending {
        "toml" => settings::set(text, &place.file, &place.field, value),
        "csv" => table::set(text, place, value),
        "md" => match place.field.strip_prefix("front/") {
            Some(field) => front(text, place, field, value),
            None => markdown::set(text, place, value),
        },
        _ => Err(no_place(place)),
    }
}

/// Sets a field of front matter, which is begun when there is none.
fn front(text: &str, place: &Place, field: &str, value: &Value) -> Result<String, Finding> {
    let (text, front) = with_front(text, &place.file)?;
    let inner = text.get(front.settings.clone()).unwrap_or_default();
    let changed = settings::set(inner, &place.file, field, value)?;
    Ok(spliced(&text, front.settings, &changed))
}

/// The text with front matter, empty when it had none.
pub(crate) fn with_front(text: &str, file: &str) -> Result<(String, toml_text::Front), Finding> {
    let front = toml_text::split(text, file)?;
    if front.body > front.settings.end {
        return Ok((text.to_owned(), front));
    }
    let end = line_end(text);
    let text = spliced(text, front.body..front.body, &format!("+++{end}+++{end}"));
    let front = toml_text::split(&text, file)?;
    Ok((text, front))
}

/// The line end that a text uses.
pub(crate) fn line_end(text: &str) -> &'static str {
    if text.contains("\r\n") { "\r\n" } else { "\n" }
}

/// The text with some bytes exchanged.
pub(crate) fn spliced(text: &str, bytes: std::ops::Range<usize>, new: &str) -> String {
    let mut out = text.to_owned();
    out.replace_range(bytes, new);
    out
}

/// A value as plain words, for cells and texts.
fn words(value: &Value) -> String {
    match value {
        Value::Flag(true) => "yes".into(),
        Value::Flag(false) => "no".into(),
        Value::Number(number) => number.to_string(),
        Value::Text(text) => text.clone(),
        Value::List(list) => list.iter().map(words).collect::<Vec<_>>().join("; "),
    }
}

fn no_place(place: &Place) -> Finding {
    Finding::error(
        "no-such-field",
        format!("there is no field `{}` in `{}`", place.field, place.file),
    )
    .at(place)
    .remedy("look whether the file has changed in the meantime")
}

/// Reads, changes and replaces a file; begins again when it changed in between.
pub(crate) fn change(
    folder: &Path,
    file: &str,
    edit: impl Fn(&str) -> Result<String, Finding>,
) -> Result<(), Finding> {
    let place = Place::file(file);
    let path = folder.join(inside(file).ok_or_else(|| no_place(&place))?);
    for _ in 0..TRIES {
        let before = match fs::read(&path) {
            Ok(bytes) => Some(bytes),
            Err(e) if e.kind() == std::io::ErrorKind::NotFound => None,
            Err(e) => return Err(refused(file, &e)),
        };
        let text = String::from_utf8(before.clone().unwrap_or_default()).map_err(|_| {
            let finding = Finding::error("not-utf8", format!("`{file}` cannot be read as text"));
            finding.at(&place).remedy("save the file again as UTF-8")
        })?;
        let after = edit(&text)?;
        if before.as_deref() == Some(after.as_bytes()) {
            return Ok(());
        }
        // The author may have saved the file while it was being changed here.
        if fs::read(&path).ok() == before {
            return atomic::replace(&path, after.as_bytes()).map_err(|e| refused(file, &e));
        }
    }
    Err(Finding::error("file-busy", format!("`{file}` keeps changing"))
        .at(&place)
        .remedy("close it in the other program, then try again"))
}

fn refused(file: &str, error: &std::io::Error) -> Finding {
    let why = match error.kind() {
        std::io::ErrorKind::StorageFull => "the disk is full".to_owned(),
        std::io::ErrorKind::PermissionDenied => "writing is not allowed there".to_owned(),
        std::io::ErrorKind::ReadOnlyFilesystem => "the disk cannot be written".to_owned(),
        _ => error.to_string(),
    };
    Finding::error("not-written", format!("`{file}` could not be written: {why}"))
        .at(&Place::file(file))
        .remedy(
            "nothing was lost: the file is as it was; make room or allow writing, then try again",
        )
}

#[cfg(test)]
mod tests;

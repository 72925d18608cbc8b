//! Cells and rows of a list.

use super::{line_end, no_place, spliced, words};
use crate::csv_text::{Scan, scan, written};
use crate::lists::{LISTS, List, keys};
use crate::model::Value;
use findings::{Finding, Place};

fn list(file: &str) -> Result<&'static List, Finding> {
    LISTS.iter().find(|l| l.file == file).ok_or_else(|| no_place(&Place::file(file)))
}

/// Index of a column in the header.
fn column(scan: &Scan, name: &str) -> Option<usize> {
    scan.records.first()?.cells.iter().position(|c| c.text.trim().eq_ignore_ascii_case(name))
}

/// The text with one cell exchanged; a column of the format that is missing is added.
pub(super) fn set(text: &str, place: &Place, value: &Value) -> Result<String, Finding> {
    let list = list(&place.file)?;
    let (key, name) = place.field.rsplit_once('/').ok_or_else(|| no_place(place))?;
    if !list.columns.contains(&name) {
        return Err(no_place(place));
    }
    let table = scan(text);
    if table.unclosed.is_some() {
        return Err(no_place(place));
    }
    let Some(index) = column(&table, name) else {
        return set(&with_column(text, &table, name), place, value);
    };
    let row =
        keys(list, &table).iter().position(|k| k == key).and_then(|n| table.records.get(n + 1));
    let row = row.ok_or_else(|| no_place(place))?;
    let new = words(value);
    match row.cells.get(index) {
        Some(cell) => {
            Ok(spliced(text, cell.span.clone(), &written(&new, cell.quoted, table.delimiter)))
        }
        None => {
            let gap = table.delimiter.to_string().repeat(index + 1 - row.cells.len());
            Ok(spliced(
                text,
                row.span.end..row.span.end,
                &format!("{gap}{}", written(&new, false, table.delimiter)),
            ))
        }
    }
}

fn with_column(text: &str, table: &Scan, name: &str) -> String {
    let mut out = text.to_owned();
    let width = table.records.first().map_or(0, |r| r.cells.len());
    for (n, record) in table.records.iter().enumerate().rev() {
        let gap =
            table.delimiter.to_string().repeat((width + 1).saturating_sub(record.cells.len()));
        let cell = if n == 0 { name } else { "" };
        out.insert_str(record.span.end, &format!("{gap}{cell}"));
    }
    out
}

/// The text with a row added at its end.
pub(super) fn append(text: &str, file: &str, cells: &[(&str, &str)]) -> Result<String, Finding> {
    let list = list(file)?;
    if let Some((name, _)) = cells.iter().find(|(name, _)| !list.columns.contains(name)) {
        return Err(no_place(&Place::new(file, *name)));
    }
    let mut out = text.to_owned();
    let end = line_end(text);
    if scan(text).records.is_empty() {
        out.push_str(&list.columns.join(","));
        out.push_str(end);
    }
    for (name, _) in cells {
        let table = scan(&out);
        if column(&table, name).is_none() {
            out = with_column(&out, &table, name);
        }
    }
    let table = scan(&out);
    if table.unclosed.is_some() {
        return Err(no_place(&Place::file(file)));
    }
    let width = table.records.first().map_or(0, |r| r.cells.len());
    let mut row = vec![String::new(); width];
    for (name, words) in cells {
        if let Some(cell) = column(&table, name).and_then(|i| row.get_mut(i)) {
            *cell = written(words, false, table.delimiter);
        }
    }
    if !out.is_empty() && !out.ends_with(['\n', '\r']) {
        out.push_str(end);
    }
    out.push_str(&row.join(&table.delimiter.to_string()));
    out.push_str(end);
    Ok(out)
}

/// The text without one row.
pub(super) fn remove(text: &str, place: &Place) -> Result<String, Finding> {
    let list = list(&place.file)?;
    let table = scan(text);
    let row = keys(list, &table)
        .iter()
        .position(|k| *k == place.field)
        .and_then(|n| table.records.get(n + 1));
    let row = row.ok_or_else(|| no_place(place))?;
    let rest = text.get(row.span.end..).unwrap_or_default();
    let step = if rest.starts_with("\r\n") { 2 } else { usize::from(!rest.is_empty()) };
    Ok(spliced(text, row.span.start..row.span.end + step, ""))
}

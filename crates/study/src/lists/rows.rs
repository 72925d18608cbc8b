//! Rows of a list: header checked, cells by column, each with its place.

use super::List;
use crate::csv_text::{Record, Scan, scan};
use crate::fields::{self, unknown};
use crate::files::Files;
use crate::markdown;
use crate::model::Said;
use crate::names::nearest;
use crate::read::Cx;
use findings::{Finding, Place};
use std::collections::BTreeMap;

/// Longest name of a row in a place, in letters.
const KEY_LETTERS: usize = 40;

/// A row.
#[derive(Debug)]
pub(crate) struct Row {
    /// Its place.
    pub at: Place,
    cells: BTreeMap<&'static str, String>,
}

/// The rows of a list; none when it is missing or unreadable.
pub(super) fn all(list: &'static List, files: &Files, cx: &mut Cx) -> Vec<Row> {
    read(list, files, cx).unwrap_or_default()
}

/// The rows of a list; `None` when it is there but unreadable.
pub(super) fn read(list: &'static List, files: &Files, cx: &mut Cx) -> Option<Vec<Row>> {
    if !files.has(list.file) {
        return Some(Vec::new());
    }
    let text = files.text(list.file, cx)?;
    let scan = scan(&text);
    let line = |at: usize| 1 + text.get(..at).unwrap_or_default().matches('\n').count();
    if let Some(at) = scan.unclosed {
        let place = Place::new(list.file, format!("line {}", line(at)));
        let finding =
            Finding::error("quote-open", "a quotation mark opens here and never closes").at(&place);
        cx.findings.push(finding.remedy(
            "close it with \" at the end of the cell; write \"\" for a quotation mark inside",
        ));
        return None;
    }
    if let Some(at) = scan.after_quote {
        let place = Place::new(list.file, format!("line {}", line(at)));
        let finding =
            Finding::warning("after-quote", "letters follow the closing quotation mark of a cell")
                .at(&place);
        cx.findings.push(
            finding.remedy(
                "put the whole cell between quotation marks, and write \"\" for one inside",
            ),
        );
    }
    let Some((header, records)) = scan.records.split_first() else {
        return Some(Vec::new());
    };
    let columns = columns(list, header, line(header.span.start), cx)?;
    let keys = keys(list, &scan);
    let rows = records.iter().zip(keys).map(|(record, key)| row(list, record, &columns, &key, cx));
    Some(rows.collect::<Vec<_>>().into_iter().flatten().collect())
}

/// Column of each header cell; none when a column that must be there is missing.
fn columns(
    list: &'static List,
    header: &Record,
    line: usize,
    cx: &mut Cx,
) -> Option<Vec<Option<&'static str>>> {
    let at = Place::new(list.file, format!("line {line}"));
    let mut columns: Vec<Option<&'static str>> = Vec::new();
    for cell in &header.cells {
        let column = column(list, header, cell.text.trim(), &at, cx);
        let twice = column.filter(|c| columns.contains(&Some(*c)));
        if let Some(column) = twice {
            let fact = format!("the column `{column}` stands twice");
            cx.findings
                .push(Finding::error("column-twice", fact).at(&at).remedy("keep one of them"));
        }
        columns.push(column.filter(|_| twice.is_none()));
    }
    let missing: Vec<&str> =
        list.required.iter().copied().filter(|c| !columns.contains(&Some(*c))).collect();
    for column in &missing {
        cx.findings.push(
            Finding::error("column-missing", format!("the column `{column}` is missing"))
                .at(&at)
                .remedy(format!("begin the file with the line {}", list.columns.join(","))),
        );
    }
    missing.is_empty().then_some(columns)
}

/// The column that a header cell names. A slip is reported and taken as it was meant, so that
/// it does not empty the column; a column of the author's own is left alone.
fn column(
    list: &'static List,
    header: &Record,
    written: &str,
    at: &Place,
    cx: &mut Cx,
) -> Option<&'static str> {
    let same = |column: &&&str| written.eq_ignore_ascii_case(column);
    if let Some(column) = list.columns.iter().find(same).copied() {
        return Some(column);
    }
    let named =
        |column: &&str| header.cells.iter().any(|h| h.text.trim().eq_ignore_ascii_case(column));
    let left: Vec<&'static str> = list.columns.iter().copied().filter(|c| !named(c)).collect();
    let meant = nearest(written, left.iter().copied()).filter(|_| !written.is_empty());
    if let Some(meant) = meant {
        unknown(cx, at, "column", written, left.iter().copied());
        return left.into_iter().find(|c| *c == meant);
    }
    if !written.is_empty() {
        cx.findings.push(
            Finding::hint("column-own", format!("the column `{written}` is not read"))
                .at(at)
                .remedy(format!("columns that are read: {}", list.columns.join(", "))),
        );
    }
    None
}

/// Names of the rows in places, header left out: the key cell, shortened, told apart by `~2`; `~5` for the fifth row when it is empty.
pub(crate) fn keys(list: &List, scan: &Scan) -> Vec<String> {
    let Some((header, records)) = scan.records.split_first() else { return Vec::new() };
    let column = header.cells.iter().position(|c| c.text.trim().eq_ignore_ascii_case(list.key));
    let mut seen: BTreeMap<String, usize> = BTreeMap::new();
    let name = |(record, n): (&Record, usize)| {
        let cell = column
            .and_then(|c| record.cells.get(c))
            .map(|c| c.text.split_whitespace().collect::<Vec<_>>().join(" "));
        let key: String = cell.unwrap_or_default().chars().take(KEY_LETTERS).collect();
        if key.is_empty() {
            return format!("~{n}");
        }
        let times = seen.entry(key.clone()).or_insert(0);
        *times += 1;
        if *times == 1 { key } else { format!("{key}~{times}") }
    };
    records.iter().zip(1..).map(name).collect()
}

fn row(
    list: &'static List,
    record: &Record,
    columns: &[Option<&'static str>],
    key: &str,
    cx: &mut Cx,
) -> Option<Row> {
    let at = Place::new(list.file, key);
    let (have, want) = (record.cells.len(), columns.len());
    if have > want {
        cx.findings.push(
            Finding::error("cells-many", format!("this row has {have} cells, and the header {want}"))
                .at(&at)
                .remedy("put a cell that holds a comma between quotation marks, or take out a comma at the end"),
        );
        return None;
    }
    if have < want {
        cx.findings.push(
            Finding::warning(
                "cells-few",
                format!("this row has {have} cells, and the header {want}"),
            )
            .at(&at)
            .remedy("add the missing commas; the missing cells are read as empty"),
        );
    }
    let filled = columns
        .iter()
        .zip(&record.cells)
        .filter_map(|(c, cell)| Some(((*c)?, cell.text.trim().to_owned())));
    let row = Row { at, cells: filled.filter(|(_, text)| !text.is_empty()).collect() };
    let Some(column) = list.required.iter().find(|c| !row.cells.contains_key(*c)) else {
        return Some(row);
    };
    cx.findings.push(
        Finding::error("cell-empty", format!("the cell `{column}` of this row is empty"))
            .at(&row.at)
            .remedy("fill it in, or take the row out"),
    );
    None
}

impl Row {
    /// The place of a cell.
    pub fn place(&self, column: &str) -> Place {
        self.at.child(column)
    }

    /// The words of a cell, when it is not empty.
    pub fn text(&self, column: &'static str) -> Option<&str> {
        self.cells.get(column).map(String::as_str)
    }

    /// The words of a cell, or none at all.
    pub fn words(&self, column: &'static str) -> String {
        self.text(column).unwrap_or_default().to_owned()
    }

    /// A cell with its marks.
    pub fn said(&self, column: &'static str, cx: &mut Cx) -> Option<Said> {
        let text = self.text(column)?;
        Some(markdown::line(text, &self.place(column), cx))
    }

    /// The parts of a cell between semicolons.
    pub fn parts(&self, column: &'static str) -> Vec<(String, Place)> {
        let at = self.place(column);
        let parts = self.text(column).unwrap_or_default().split(';').map(str::trim);
        parts.filter(|p| !p.is_empty()).map(|p| (p.to_owned(), at.clone())).collect()
    }

    /// The names in the column `where`.
    pub fn wherever(&self, cx: &mut Cx) -> Vec<String> {
        crate::read::wherever::names(&self.parts("where"), cx)
    }

    /// The picture named in the column `picture`.
    pub fn picture(&self, cx: &mut Cx) -> Option<String> {
        cx.picture(self.text("picture").map(str::to_owned), &self.place("picture"))
    }

    /// One of several words; the first of them when the cell is empty or wrong.
    pub fn choice<T: Copy>(
        &self,
        column: &'static str,
        choices: &[(&'static str, T)],
        cx: &mut Cx,
    ) -> Option<T> {
        let usual = choices.first().map(|(_, value)| *value);
        match self.text(column) {
            Some(text) => fields::choice(cx, text, &self.place(column), column, choices).or(usual),
            None => usual,
        }
    }
}

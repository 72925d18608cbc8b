//! `facts.csv`.

use super::rows::{self, Row};
use crate::facts::Told;
use crate::files::Files;
use crate::markdown;
use crate::model::{Fact, Said};
use crate::names::normal;
use crate::read::{Cx, spelt};
use findings::{Finding, Place, Severity};
use std::collections::BTreeMap;

/// Rows of the facts; their values are learnt at once, since texts use them.
pub(crate) fn facts_ahead(files: &Files, cx: &mut Cx) -> Vec<(String, Row)> {
    let Some(rows) = rows::read(&super::FACTS, files, cx) else {
        cx.facts_unsure = true;
        return Vec::new();
    };
    // A row that was refused may be the one that a text uses.
    cx.facts_unsure = cx.findings.iter().any(|f| {
        f.severity == Severity::Error
            && f.place.as_ref().is_some_and(|p| p.file == super::FACTS.file)
    });
    let mut out: Vec<(String, Row)> = Vec::new();
    for row in rows {
        let written = row.words("id");
        let id = normal(&written);
        if id != written {
            cx.findings.push(spelt(&written, &id, &row.place("id")));
        }
        if cx.facts.contains_key(&id) {
            cx.findings.push(
                Finding::error("fact-twice", format!("the fact `{id}` stands twice"))
                    .at(&row.place("id"))
                    .remedy("take one of the two rows out, or give it another id"),
            );
            continue;
        }
        cx.facts.insert(id.clone(), Told { value: row.words("value"), unit: row.words("unit") });
        out.push((id, row));
    }
    out
}

/// The facts by id.
pub(crate) fn facts(rows: Vec<(String, Row)>, cx: &mut Cx) -> BTreeMap<String, Fact> {
    rows.into_iter().map(|(id, row)| (id.clone(), fact(id, &row, cx))).collect()
}

fn fact(id: String, row: &Row, cx: &mut Cx) -> Fact {
    let statement = row
        .said("statement", cx)
        .unwrap_or_else(|| Said { at: row.place("statement"), spans: Vec::new() });
    let address = row.words("address");
    let http = address.starts_with("http://") || address.starts_with("https://");
    if !address.is_empty() && (!http || address.contains(char::is_whitespace)) {
        cx.findings.push(
            Finding::warning("address-odd", format!("`{address}` is no address of a page"))
                .at(&row.place("address"))
                .remedy("copy it from the address line, beginning with https://"),
        );
    }
    Fact {
        id,
        statement,
        value: row.words("value"),
        unit: row.words("unit"),
        source: plain(row, "source", cx),
        publisher: plain(row, "publisher", cx),
        year: row.words("year"),
        address,
        place: Place::new(super::FACTS.file, row.at.field.clone()),
    }
}

/// Words of a cell without marks such as `*…*` round a title.
fn plain(row: &Row, column: &'static str, cx: &mut Cx) -> String {
    row.text(column)
        .map(|text| markdown::line(text, &row.place(column), cx).plain())
        .unwrap_or_default()
}

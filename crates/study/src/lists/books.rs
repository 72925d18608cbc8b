//! `books.csv` and `links.csv`.

use super::rows::{self, Row};
use crate::files::Files;
use crate::isbn::{IsbnFault, isbn_fault};
use crate::markdown::link_refused;
use crate::model::{Book, Link, Said};
use crate::read::Cx;
use findings::{Finding, Place};
use std::collections::BTreeSet;

/// All books in file order.
pub(super) fn books(files: &Files, cx: &mut Cx) -> Vec<Book> {
    let rows = rows::all(&super::BOOKS, files, cx);
    rows.iter().filter_map(|row| book(row, cx)).collect()
}

fn book(row: &Row, cx: &mut Cx) -> Option<Book> {
    if let Some(isbn) = row.text("isbn")
        && let Some(fault) = isbn_fault(isbn)
    {
        cx.findings.push(isbn_finding(isbn, fault).at(&row.place("isbn")));
    }
    if let Some(year) = row.text("year").filter(|year| !has_year(year)) {
        cx.findings.push(
            Finding::warning("year-odd", format!("`{year}` holds no year"))
                .at(&row.place("year"))
                .remedy("write the four digits of the year it was published"),
        );
    }
    Some(Book {
        title: row.said("title", cx)?,
        author: row.said("author", cx)?,
        publisher: row.words("publisher"),
        year: row.words("year"),
        isbn: row.text("isbn").filter(|isbn| isbn_fault(isbn).is_none()).map(str::to_owned),
        ages: row.words("ages"),
        wherever: row.wherever(cx),
        when: row.said("when", cx),
        note: row.said("note", cx),
    })
}

fn has_year(text: &str) -> bool {
    text.split(|c: char| !c.is_ascii_digit()).any(|digits| digits.len() == 4)
}

fn isbn_finding(isbn: &str, fault: IsbnFault) -> Finding {
    let why = match fault {
        IsbnFault::Length(n) => format!("it has {n} digits, not 10 or 13"),
        IsbnFault::Sign(sign) => format!("`{sign}` is no digit"),
        IsbnFault::Prefix => "its thirteen digits begin with neither 978 nor 979".into(),
        IsbnFault::CheckDigit { expected } => {
            format!("after the other digits the last would be {expected}")
        }
    };
    Finding::error("isbn-wrong", format!("`{isbn}` is no ISBN: {why}"))
        .remedy("copy it again from the book's back or first pages, or leave the cell empty")
}

/// All links in file order.
pub(super) fn links(files: &Files, cx: &mut Cx) -> Vec<Link> {
    let rows = rows::all(&super::LINKS, files, cx);
    let mut seen = BTreeSet::new();
    rows.iter().filter_map(|row| link(row, &mut seen, cx)).collect()
}

fn link(row: &Row, seen: &mut BTreeSet<String>, cx: &mut Cx) -> Option<Link> {
    let address = row.words("address");
    let place: Place = row.place("address");
    if address.starts_with("http://") {
        cx.findings.push(link_refused(&address).at(&place));
        return None;
    }
    let host = address
        .strip_prefix("https://")
        .unwrap_or_default()
        .split(['/', '?', '#'])
        .next()
        .unwrap_or_default();
    if !host.contains('.') || address.contains(char::is_whitespace) {
        cx.findings.push(
            Finding::error("address-odd", format!("`{address}` is no address of a page"))
                .at(&place)
                .remedy("copy it from the address line of the open page, beginning with https://"),
        );
        return None;
    }
    if !seen.insert(address.clone()) {
        cx.findings.push(
            Finding::warning("link-twice", format!("the address `{address}` stands twice"))
                .at(&place)
                .remedy("one row can serve several lessons: separate their names in `where` by semicolons"),
        );
    }
    let nobody = Said { at: row.place("institution"), spans: Vec::new() };
    Some(Link {
        title: row.said("title", cx)?,
        institution: row.said("institution", cx).unwrap_or(nobody),
        address,
        wherever: row.wherever(cx),
        when: row.said("when", cx),
        note: row.said("note", cx),
        place,
    })
}

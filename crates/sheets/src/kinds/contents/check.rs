//! Counts the contents again: every sheet once, in order, under the right heading.

use super::{Group, Heading, Line, Needs, Row, Sheet};
use proof::Proof;
use std::collections::BTreeMap;

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let rows: BTreeMap<&str, &Row> = needs.sheets.iter().map(|r| (r.line.id.as_str(), r)).collect();
    order(&mut proof, needs, sheet);
    for (i, group) in sheet.groups.iter().enumerate() {
        for line in &group.lines {
            match rows.get(line.id.as_str()) {
                Some(row) => under(&mut proof, sheet, i, row, line),
                None => proof.fault(
                    "contents-unknown",
                    format!("`{}` is listed but is no sheet", line.title),
                ),
            }
        }
        if let Heading::Lesson { n, title, id } = &group.head {
            lesson(&mut proof, needs, *n, &title.plain(), id);
        }
    }
    once_each(&mut proof, needs, sheet);
    parts(&mut proof, needs, sheet, &rows);
    counts(&mut proof, needs, sheet, &rows);
    let sort = sheet.list == needs.list && sheet.short == needs.short;
    proof.demand(sort, "contents-list", "the list is of the other sort");
    proof.count("sheets listed", needs.sheets.len());
    proof
}

/// Sheets by sign: those of the lines, and the opener that stands beside the lesson's title.
fn counts(proof: &mut Proof, needs: &Needs, sheet: &Sheet, rows: &BTreeMap<&str, &Row>) {
    for group in &sheet.groups {
        let mut wanted: BTreeMap<&str, usize> = BTreeMap::new();
        let beside = match &group.head {
            Heading::Lesson { id, .. } if group.lines.iter().all(|l| l.id != *id) => {
                rows.get(id.as_str()).map(|r| r.line.sign.as_str())
            }
            _ => None,
        };
        for sign in group.lines.iter().map(|l| l.sign.as_str()).chain(beside) {
            *wanted.entry(sign).or_default() += 1;
        }
        let right = group.counts.iter().map(|(sign, n)| (sign.as_str(), *n)).eq(wanted);
        proof.demand(right, "contents-count", "the sheets of a heading are counted wrongly");
    }
    let all: usize = sheet.groups.iter().flat_map(|g| g.counts.values()).sum();
    proof.demand(
        all == needs.sheets.len(),
        "contents-count",
        format!("{all} of {} sheets are counted", needs.sheets.len()),
    );
}

/// All lines but the openers', one after the other, are the sheets in printing order.
fn order(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    let printed: Vec<&str> =
        sheet.groups.iter().flat_map(|g| &g.lines).map(|l| l.id.as_str()).collect();
    let wanted: Vec<&str> =
        needs.sheets.iter().filter(|r| !r.opens).map(|r| r.line.id.as_str()).collect();
    // An opener that comes second in its lesson is a line of its own when another one opened it first.
    let openers = |id: &&&str| needs.sheets.iter().any(|r| r.opens && r.line.id == ***id);
    let plain: Vec<&str> = printed.iter().filter(|id| !openers(id)).copied().collect();
    proof.demand(
        plain == wanted,
        "contents-order",
        "the sheets are not listed once each in printing order",
    );
    proof.count("lines", printed.len());
}

fn under(proof: &mut Proof, sheet: &Sheet, i: usize, row: &Row, line: &Line) {
    proof.demand(
        *line == row.line,
        "contents-line",
        format!("`{}` is listed with another title or sign", row.line.title),
    );
    let earlier = |l: usize| {
        sheet.groups[..i]
            .iter()
            .any(|g| matches!(&g.head, Heading::Lesson { n, .. } if *n == l + 1))
    };
    let taught = |g: &Group| !matches!(g.head, Heading::Front | Heading::Back);
    let right = match (&sheet.groups[i].head, row.lesson, row.part) {
        (Heading::Lesson { n, .. }, Some(l), _) => *n == l + 1,
        (Heading::Part, Some(l), Some(_)) => earlier(l),
        (Heading::Part, None, Some(_)) => true,
        (Heading::Back, Some(l), _) => earlier(l),
        (Heading::Back, None, Some(_)) => sheet.groups[..i].iter().any(taught),
        (Heading::Back, None, None) => sheet.groups[..i].iter().any(taught),
        (Heading::Front, None, None) => !sheet.groups[..i].iter().any(taught),
        _ => false,
    };
    proof.demand(
        right,
        "contents-heading",
        format!("`{}` stands under the wrong heading", row.line.title),
    );
}

fn lesson(proof: &mut Proof, needs: &Needs, n: usize, title: &str, id: &str) {
    let own = n.checked_sub(1).and_then(|l| needs.lessons.get(l));
    proof.demand(
        own.is_some_and(|t| t.plain() == title),
        "contents-lesson",
        format!("lesson {n} is not `{title}`"),
    );
    let mut rows = needs.sheets.iter().filter(|r| r.lesson == n.checked_sub(1));
    let opener = rows.clone().find(|r| r.opens).or_else(|| rows.next());
    let right = opener.is_some_and(|r| r.line.id == id);
    proof.demand(right, "contents-opener", format!("lesson {n} does not lead to where it begins"));
}

fn once_each(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    for (l, title) in needs.lessons.iter().enumerate() {
        let wanted = usize::from(needs.sheets.iter().any(|r| r.lesson == Some(l)));
        let heads = sheet
            .groups
            .iter()
            .filter(|g| matches!(&g.head, Heading::Lesson { n, .. } if *n == l + 1))
            .count();
        let right = heads == wanted;
        proof.demand(
            right,
            "contents-lesson-once",
            format!("`{}` has {heads} headings", title.plain()),
        );
    }
}

/// Each part is named once, where its first sheet stands.
fn parts(proof: &mut Proof, needs: &Needs, sheet: &Sheet, rows: &BTreeMap<&str, &Row>) {
    let holds = |g: &Group, p: usize| {
        let head = match &g.head {
            Heading::Lesson { id, .. } => rows.get(id.as_str()).is_some_and(|r| r.part == Some(p)),
            _ => false,
        };
        head || g.lines.iter().any(|l| rows.get(l.id.as_str()).is_some_and(|r| r.part == Some(p)))
    };
    for (p, title) in needs.parts.iter().enumerate() {
        let first = sheet.groups.iter().position(|g| holds(g, p));
        let named: Vec<usize> = (0..sheet.groups.len())
            .filter(|i| {
                sheet.groups[*i]
                    .part
                    .as_ref()
                    .is_some_and(|n| n.n == p + 1 && n.title.plain() == title.plain())
            })
            .collect();
        let right = named == Vec::from_iter(first);
        proof.demand(
            right,
            "contents-part",
            format!("`{}` is not named once where it begins", title.plain()),
        );
    }
    let strange = sheet
        .groups
        .iter()
        .filter_map(|g| g.part.as_ref())
        .any(|n| n.n == 0 || n.n > needs.parts.len());
    proof.demand(!strange, "contents-part-unknown", "a part is named that the study does not have");
}

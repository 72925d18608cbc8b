//! Compares every row, works out book numbers again, reads code symbols back.

use super::{Needs, Row, Section, Sheet};
use findings::{Finding, Findings, Place};
use proof::{Laid, Proof, isbn, symbol};
use std::collections::BTreeSet;

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let sections: Vec<Section> = sheet.sections.iter().map(|s| s.section).collect();
    let ordered = sections.windows(2).all(|w| w[0] < w[1]);
    proof.demand(
        ordered,
        "resources-sections",
        "the sections are out of order, or one stands twice",
    );
    let printed: Vec<&Row> = sheet.sections.iter().flat_map(|s| &s.rows).collect();
    proof.demand(
        printed.len() == needs.rows.len(),
        "resources-count",
        "a resource is lost or printed twice",
    );
    for row in &needs.rows {
        let times = printed.iter().filter(|p| same(p, row)).count();
        let right = times == needs.rows.iter().filter(|r| same(r, row)).count();
        proof.demand(
            right,
            "resource-changed",
            format!("`{}` is not printed as it is written", row.title.plain()),
        );
    }
    for listed in &sheet.sections {
        let right =
            !listed.rows.is_empty() && listed.rows.iter().all(|r| r.section == listed.section);
        proof.demand(right, "resource-section", "a resource stands in another section");
    }
    for row in &printed {
        book_number(&mut proof, row);
        address(&mut proof, row);
        if row.when.is_none() {
            let finding = Finding::hint(
                "resource-when",
                format!("`{}` does not say when to use it", row.title.plain()),
            );
            proof.findings.push(finding.at(&row.at).remedy("fill in its `when` column"));
        }
    }
    let online = printed.iter().any(|r| r.address.is_some());
    proof.demand(
        !online || sheet.caution.is_some(),
        "caution-missing",
        "the caution about links is missing",
    );
    proof.demand(
        sheet.caution == needs.caution,
        "caution-missing",
        "the caution about links is not the right one",
    );
    let places: BTreeSet<&Place> = printed.iter().map(|r| &r.at).collect();
    proof.count("resources", printed.len());
    proof.count("rows of the lists", places.len());
    proof
}

/// Equal but for the code symbol, which the Needs do not hold.
fn same(a: &Row, b: &Row) -> bool {
    Row { code: Vec::new(), ..a.clone() } == Row { code: Vec::new(), ..b.clone() }
}

fn book_number(proof: &mut Proof, row: &Row) {
    if let Some(written) = &row.isbn {
        let holds = isbn::isbn_holds(written);
        proof.demand(
            holds,
            "isbn-digit",
            format!("the ISBN `{written}` of `{}` has a wrong digit", row.title.plain()),
        );
    }
}

fn address(proof: &mut Proof, row: &Row) {
    let Some(address) = &row.address else {
        proof.demand(
            row.code.is_empty(),
            "code-stray",
            format!("`{}` has a code symbol but no address", row.title.plain()),
        );
        return;
    };
    proof.demand(
        address.starts_with("https://"),
        "address-https",
        format!("`{address}` does not begin with https://"),
    );
    let read = symbol::read(&row.code);
    let right = read.as_deref() == Some(address) && symbol::finders_hold(&row.code);
    proof.demand(
        right,
        "code-symbol",
        format!("the code symbol of `{}` does not read `{address}`", row.title.plain()),
    );
}

/// Each code symbol on the page is marked with the number of its row, counted from 0 over the sheet.
pub(super) fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let rows =
        sheet.sections.iter().flat_map(|s| &s.rows).enumerate().filter(|(_, r)| !r.code.is_empty());
    let faults = rows.filter_map(|(i, row)| {
        Some((row, symbol::fault_on_page(laid, &i.to_string(), row.code.len())?))
    });
    faults
        .map(|(row, what)| {
            Finding::error(
                "code-on-page",
                format!("the code symbol of `{}` {what}", row.title.plain()),
            )
            .at(&row.at)
            .remedy("use a shorter address, or take the link out of the list")
        })
        .collect()
}

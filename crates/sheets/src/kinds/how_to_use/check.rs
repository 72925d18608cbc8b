//! Sorts the sheets out again and compares; measures the ruler on the page.

use super::{Needs, Row, Sheet, Shown};
use crate::cautions::{cautions, tags};
use findings::{Finding, Findings};
use proof::{Laid, Proof};
use std::collections::BTreeSet;

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    list(&mut proof, "on card", &sheet.card, needs, |r| r.card);
    list(&mut proof, "on both sides", &sheet.backs, needs, |r| r.backs);
    list(&mut proof, "for those who want them", &sheet.further, needs, |r| r.further && !r.card);
    let all = sheet.card.len() + sheet.further.len() + sheet.family + sheet.child;
    proof.demand(
        all == needs.sheets.len(),
        "guide-count",
        "some sheets have no place in the print guide, or two",
    );
    let writes = |r: &&Row| matches!(r.sign.as_str(), "play" | "write") && !r.card && !r.further;
    let child = needs.sheets.iter().filter(writes).count();
    proof.demand(child == sheet.child, "guide-count", "the sheets for each child are miscounted");
    let facts = sheet.ages == needs.ages && sheet.lessons == needs.lessons;
    proof.demand(facts, "guide-words", "ages or number of lessons are not the study's");
    take_care(&mut proof, needs, sheet);
    let inch_ruler = (1..=7).contains(&sheet.inches);
    let centimetre_ruler = (1..=18).contains(&sheet.centimetres);
    proof.demand(
        inch_ruler && centimetre_ruler,
        "guide-ruler",
        "the ruler does not fit on the paper",
    );
    proof.count("sheets", needs.sheets.len());
    proof
}

fn list(
    proof: &mut Proof,
    name: &str,
    printed: &[Shown],
    needs: &Needs,
    belongs: fn(&Row) -> bool,
) {
    let ids: BTreeSet<&str> = printed.iter().map(|s| s.id.as_str()).collect();
    proof.demand(
        ids.len() == printed.len(),
        "guide-twice",
        format!("a sheet is listed twice {name}"),
    );
    for row in &needs.sheets {
        let there = printed.iter().find(|s| s.id == row.id);
        let right = there.is_some() == belongs(row);
        proof.demand(right, "guide-list", format!("`{}` is wrongly sorted: {name}", row.title));
        let titled = there.is_none_or(|s| s.title == row.title && s.what == row.what);
        proof.demand(
            titled,
            "guide-title",
            format!("`{}` is listed under another title", row.title),
        );
    }
    let unknown = printed.iter().find(|s| needs.sheets.iter().all(|r| r.id != s.id));
    if let Some(s) = unknown {
        proof.fault(
            "guide-unknown",
            format!("`{}` is listed but is no sheet of this study", s.title),
        );
    }
    proof.count(name, printed.len());
}

fn take_care(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    let none: [&str; 0] = [];
    let last = cautions(&none, &none, &needs.language).pop();
    proof.demand(
        sheet.cautions.last() == last.as_ref(),
        "caution-last",
        "the closing caution is not the last",
    );
    let known = tags();
    for tag in needs.tags.iter().filter(|t| known.contains(t)) {
        let wanted = cautions(&[tag], &none, &needs.language);
        let there = wanted.iter().all(|w| sheet.cautions.contains(w));
        proof.demand(there, "caution-missing", format!("the caution for `{tag}` is missing"));
    }
    let different: BTreeSet<&String> = sheet.cautions.iter().collect();
    proof.demand(
        different.len() == sheet.cautions.len(),
        "caution-twice",
        "a caution stands twice",
    );
    proof.count("cautions", sheet.cautions.len());
}

/// An inch is 25.4 mm by definition (25 400 µm); a point is 1/72 inch, so 0.01 pt is 3.5 µm.
const INCH: i64 = 25_400;
const TOLERANCE: i64 = 4;

pub(super) fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let mut findings = Findings::none();
    let rulers =
        [("in", i64::from(sheet.inches) * INCH), ("cm", i64::from(sheet.centimetres) * 10_000)];
    for (name, length) in rulers {
        let found = laid.marks("ruler").find(|(_, m)| m.name == name).map(|(_, m)| m.w);
        match found {
            Some(w) if (w - length).abs() <= TOLERANCE => {}
            Some(w) => findings.push(
                Finding::error(
                    "ruler-length",
                    format!("the {name} ruler is {w} µm long instead of {length}"),
                )
                .remedy("this is a fault of the program, please report it"),
            ),
            None => findings.push(
                Finding::error("ruler-missing", format!("the {name} ruler is not on the page"))
                    .remedy("this is a fault of the program, please report it"),
            ),
        }
    }
    findings
}

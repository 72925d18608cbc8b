//! Counts the key again: numbers, entries, lessons, and answers as the sheets' kinds gave them.

use super::{Entry, Needs, Sheet};
use proof::Proof;

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let numbered = sheet.entries.iter().zip(1..).all(|(e, n)| e.number == n);
    proof.demand(numbered, "key-number", "the key numbers do not run from 1 without a gap");
    proof.demand(
        sheet.entries.len() == needs.sheets.len(),
        "key-count",
        "an entry is lost or printed twice",
    );
    for own in &needs.sheets {
        entry(&mut proof, sheet, own);
    }
    lessons(&mut proof, needs, sheet);
    proof.count("entries", sheet.entries.len());
    proof
}

fn entry(proof: &mut Proof, sheet: &Sheet, own: &Entry) {
    let found: Vec<&Entry> = sheet.entries.iter().filter(|e| e.id == own.id).collect();
    let [printed] = found.as_slice() else {
        proof.fault("key-once", format!("`{}` does not stand once in the key", own.title));
        return;
    };
    let named =
        printed.number == own.number && printed.title == own.title && printed.what == own.what;
    proof.demand(
        named,
        "key-entry",
        format!("`{}` stands under another number or title", own.title),
    );
    let answers = printed.key == own.key && printed.kind == own.kind && !printed.key.is_null();
    proof.demand(
        answers,
        "key-answers",
        format!("the answers of `{}` are not the sheet's", own.title),
    );
    let placed = printed.lesson == own.lesson && printed.part == own.part;
    proof.demand(placed, "key-lesson", format!("`{}` stands under the wrong heading", own.title));
}

/// Titles of lessons and parts are the study's, and every number among the entries has one.
fn lessons(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    let same = sheet.lessons == needs.lessons && sheet.parts == needs.parts;
    proof.demand(same, "key-lessons", "the titles of the lessons or parts are not the study's");
    let within =
        |n: Option<usize>, all: &[study::Said]| n.is_none_or(|n| (1..=all.len()).contains(&n));
    let all = sheet
        .entries
        .iter()
        .all(|e| within(e.lesson, &sheet.lessons) && within(e.part, &sheet.parts));
    proof.demand(all, "key-lessons", "an entry belongs to a lesson or part that there is not");
}

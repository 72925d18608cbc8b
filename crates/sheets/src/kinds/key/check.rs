//! Counts the key again: numbers, entries, lessons, and answers as the sheets' kinds gave them.

use super::{Answered, Group, Needs, Sheet};
use proof::Proof;

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let printed: Vec<_> = sheet.groups.iter().flat_map(|g| &g.entries).collect();
    let numbered = printed.iter().zip(1..).all(|(e, n)| e.number == n);
    proof.demand(numbered, "key-number", "the key numbers do not run from 1 without a gap");
    proof.demand(printed.len() == needs.sheets.len(), "key-count", "an entry is lost or printed twice");
    for answered in &needs.sheets {
        entry(&mut proof, sheet, answered);
    }
    for group in &sheet.groups {
        heading(&mut proof, needs, group);
    }
    proof.count("entries", printed.len());
    proof
}

fn entry(proof: &mut Proof, sheet: &Sheet, answered: &Answered) {
    let own = &answered.entry;
    let found: Vec<_> =
        sheet.groups.iter().flat_map(|g| g.entries.iter().map(move |e| (g, e))).filter(|(_, e)| e.id == own.id).collect();
    let [(group, printed)] = found.as_slice() else {
        proof.fault("key-once", format!("`{}` does not stand once in the key", own.title));
        return;
    };
    let named = printed.number == own.number && printed.title == own.title && printed.what == own.what;
    proof.demand(named, "key-entry", format!("`{}` stands under another number or title", own.title));
    let answers = printed.key == own.key && printed.kind == own.kind;
    proof.demand(answers, "key-answers", format!("the answers of `{}` are not the sheet's", own.title));
    let lesson = group.lesson.as_ref().map(|l| l.n);
    proof.demand(lesson == answered.lesson.map(|l| l + 1), "key-lesson", format!("`{}` stands under the wrong lesson", own.title));
}

fn heading(proof: &mut Proof, needs: &Needs, group: &Group) {
    proof.demand(!group.entries.is_empty(), "key-heading", "a heading stands over no answers");
    if let Some(lesson) = &group.lesson {
        let own = lesson.n.checked_sub(1).and_then(|l| needs.lessons.get(l));
        let right = own == Some(&lesson.title);
        proof.demand(right, "key-lesson", format!("lesson {} is not `{}`", lesson.n, lesson.title.plain()));
    }
}

//! Keys of small studies, and planted faults.

use super::{AnswerKey, Group, Needs, Sheet};
use crate::ask::Owner;
use crate::fixture::{asking, gathered, said};
use crate::kind::Kind;
use crate::tested::{Fault, Tested, keeps_contract};
use findings::Findings;

fn needs() -> Needs {
    let mut asking = asking(Owner::Study);
    asking.gathered = gathered();
    AnswerKey::needs(&asking.ask()).expect("a key")
}

fn group(s: &mut Sheet) -> Option<&mut Group> {
    s.groups.iter_mut().find(|g| g.entries.len() > 1)
}

impl Tested for AnswerKey {
    fn good() -> Vec<Needs> {
        let mut one = needs();
        one.sheets.truncate(1);
        vec![needs(), one]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![("nothing to answer", AnswerKey::needs(&asking(Owner::Study).ask()).map(|_| ()))]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("entry lost", |_, s, _| group(s).and_then(|g| g.entries.pop()).is_some()),
            ("entry twice", |_, s, _| group(s).map(|g| g.entries.push(g.entries[0].clone())).is_some()),
            ("number skipped", |_, s, _| group(s).map(|g| g.entries[1].number += 1).is_some()),
            ("numbers swapped", |_, s, _| match group(s) {
                Some(g) => {
                    let other = g.entries[1].number;
                    g.entries[1].number = std::mem::replace(&mut g.entries[0].number, other);
                    true
                }
                None => false,
            }),
            ("answers swapped", |_, s, _| match group(s) {
                Some(g) => {
                    let other = g.entries[1].key.clone();
                    g.entries[1].key = std::mem::replace(&mut g.entries[0].key, other);
                    true
                }
                None => false,
            }),
            ("answers lost", |_, s, _| {
                s.groups[0].entries[0].key = serde_json::Value::Null;
                true
            }),
            ("laid by another kind", |_, s, _| {
                s.groups[0].entries[0].kind = "pairs".into();
                true
            }),
            ("another title", |_, s, _| {
                s.groups[0].entries[0].title.push('s');
                true
            }),
            ("leads to another sheet", |_, s, _| {
                s.groups[0].entries[0].id = "nobody".into();
                true
            }),
            ("under another lesson", |_, s, _| {
                if s.groups.len() < 2 {
                    return false;
                }
                let moved = s.groups[1].entries.remove(0);
                s.groups[0].entries.push(moved);
                s.groups.retain(|g| !g.entries.is_empty());
                true
            }),
            ("lesson renumbered", |_, s, _| s.groups[0].lesson.as_mut().map(|l| l.n += 1).is_some()),
            ("lesson under another title", |_, s, _| {
                s.groups[0].lesson.as_mut().map(|l| l.title = said("lessons/x.md#title", "Another")).is_some()
            }),
            ("heading over nothing", |_, s, _| {
                s.groups.push(Group { lesson: None, entries: Vec::new() });
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&AnswerKey);
}

#[test]
fn entries_are_grouped_by_lesson_in_order_of_number() {
    let sheet = super::make::make(&needs());
    let outline: Vec<(Option<usize>, Vec<u32>)> =
        sheet.groups.iter().map(|g| (g.lesson.as_ref().map(|l| l.n), g.entries.iter().map(|e| e.number).collect())).collect();
    assert_eq!(outline, [(Some(1), vec![1, 2]), (Some(2), vec![3, 4]), (None, vec![5])]);
}

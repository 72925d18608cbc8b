//! Keys of small studies, and planted faults.

use super::{AnswerKey, Needs};
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
            ("entry lost", |_, s, _| s.entries.pop().is_some()),
            ("entry twice", |_, s, _| {
                s.entries.push(s.entries[0].clone());
                true
            }),
            ("number skipped", |_, s, _| s.entries.last_mut().map(|e| e.number += 1).is_some()),
            ("numbers swapped", |_, s, _| {
                if s.entries.len() < 2 {
                    return false;
                }
                let other = s.entries[1].number;
                s.entries[1].number = std::mem::replace(&mut s.entries[0].number, other);
                true
            }),
            ("entries out of order", |_, s, _| {
                s.entries.reverse();
                s.entries.len() > 1
            }),
            ("answers swapped", |_, s, _| {
                if s.entries.len() < 2 {
                    return false;
                }
                let other = s.entries[1].key.clone();
                s.entries[1].key = std::mem::replace(&mut s.entries[0].key, other);
                true
            }),
            ("answers lost", |_, s, _| {
                s.entries[0].key = serde_json::Value::Null;
                true
            }),
            ("laid by another kind", |_, s, _| {
                s.entries[0].kind = "pairs".into();
                true
            }),
            ("another title", |_, s, _| {
                s.entries[0].title.push('s');
                true
            }),
            ("leads to another sheet", |_, s, _| {
                s.entries[0].id = "nobody".into();
                true
            }),
            ("under another lesson", |_, s, _| {
                s.entries[0].lesson.as_mut().map(|l| *l += 1).is_some()
            }),
            ("under no lesson", |_, s, _| s.entries[0].lesson.take().is_some()),
            ("under a part", |_, s, _| {
                s.entries[0].part = Some(1);
                true
            }),
            ("lesson under another title", |_, s, _| {
                s.lessons[0] = said("lessons/x.md#title", "Another");
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
fn entries_know_their_lessons_in_order_of_number() {
    let entries = super::make::make(&needs()).entries;
    let outline: Vec<(u32, Option<usize>)> = entries.iter().map(|e| (e.number, e.lesson)).collect();
    assert_eq!(outline, [(1, Some(1)), (2, Some(1)), (3, Some(2)), (4, Some(2)), (5, None)]);
}

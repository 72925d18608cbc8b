//! Numbers the questions; the key answers under the same numbers.

use super::{Answer, Item, Key, Needs, Sheet};

pub(super) fn make(needs: &Needs) -> Sheet {
    let items = needs.asked.iter().enumerate().map(|(i, a)| Item {
        n: i + 1,
        whom: a.whom,
        question: a.question.clone(),
        lines: a.lines,
    });
    Sheet { items: items.collect() }
}

pub(super) fn key(needs: &Needs, sheet: &Sheet) -> Option<Key> {
    let mut answers = Vec::new();
    for item in &sheet.items {
        let Some(asked) = needs.asked.iter().find(|a| a.question == item.question) else {
            continue;
        };
        if asked.answer.is_some() || asked.range.is_some() || !asked.also.is_empty() {
            answers.push(Answer {
                n: item.n,
                answer: asked.answer.clone(),
                also: asked.also.clone(),
                range: asked.range.clone(),
                source: asked.source.clone(),
            });
        }
    }
    (!answers.is_empty()).then_some(Key { answers })
}

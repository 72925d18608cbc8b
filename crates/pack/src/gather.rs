//! The list of sheets that contents, openers, print guide, key and credits look at.

use crate::making::Outcome;
use crate::plan::{Plan, Planned};
use sheets::shared;
use sheets::words::words;
use sheets::{Entry, Gathered, Owner};
use study::Study;

/// One entry a sheet, in printing order; sheets with answers are numbered in that order.
pub fn entries(study: &Study, plan: &Plan, made: &[Option<Outcome>]) -> Gathered {
    let mut number = 0;
    let entries = plan.sheets.iter().zip(made).map(|(sheet, outcome)| {
        let mut entry = entry(study, sheet);
        if let Some(outcome) = outcome {
            fill(&mut entry, outcome, &mut number);
        }
        entry
    });
    Gathered { entries: entries.collect() }
}

fn entry(study: &Study, sheet: &Planned) -> Entry {
    let about = sheet.about();
    let words = words(about.words, &study.language);
    let word = |key: &str| words.get(key).cloned().unwrap_or_default();
    let own_title = match sheet.options.get("title") {
        Some(study::Value::Text(t)) => t.clone(),
        _ => word("title").replace("{owner}", &owner_title(study, sheet.owner)),
    };
    Entry {
        id: sheet.id.clone(),
        kind: about.id.to_owned(),
        title: own_title,
        what: word("name"),
        sign: about.sign.name().to_owned(),
        lesson: sheet.lesson(),
        part: sheet.part(study),
        owner: sheet.owner,
        key_number: None,
        key: None,
        pictures: Vec::new(),
        facts: Vec::new(),
        card: false,
        wanting: false,
    }
}

fn fill(entry: &mut Entry, outcome: &Outcome, number: &mut u32) {
    let Some(made) = &outcome.made else {
        entry.wanting = true;
        return;
    };
    entry.title = made.head.title.clone();
    entry.pictures = made.head.pictures.clone();
    entry.facts = made.head.facts.clone();
    entry.card = made.head.card;
    if let Some(key) = &made.key {
        *number += 1;
        entry.key_number = Some(*number);
        entry.key = Some(key.clone());
    }
}

fn owner_title(study: &Study, owner: Owner) -> String {
    let said = match owner {
        Owner::Study => Some(&study.title),
        Owner::Part(i) => study.parts.get(i).map(|p| &p.title),
        Owner::Lesson(_) | Owner::Subject(..) => {
            shared::lesson_of(owner).and_then(|l| study.lessons.get(l)).map(|l| &l.title)
        }
    };
    said.unwrap_or(&study.title).plain()
}

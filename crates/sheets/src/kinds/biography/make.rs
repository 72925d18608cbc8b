//! Sets out a life: line of time, text, questions with lines, sources.

use super::{Asked, Event, Needs, Sheet};
use crate::shared::SourceLine;
use std::collections::BTreeSet;
use study::Band;

/// Lines for one answer: one for a word or two, more where the answer is longer, within what the age writes.
fn lines(band: Band, answer: &str) -> u32 {
    let (most, each) = match band {
        Band::A => (1, 200),
        Band::B => (3, 45),
        Band::C => (4, 50),
        Band::D => (5, 60),
    };
    let letters = answer.chars().count();
    let wanted = if letters <= 20 { 1 } else { u32::try_from(letters / each).unwrap_or(most) + 1 };
    wanted.clamp(1, most).max(if letters > 20 { 2 } else { 1 }.min(most))
}

/// The page.
pub(super) fn make(needs: &Needs) -> Sheet {
    let person = &needs.person;
    let asked = person.questions.iter().zip(1..);
    let sources: BTreeSet<SourceLine> =
        needs.facts.iter().filter_map(|f| f.source.clone()).collect();
    Sheet {
        name: person.name.clone(),
        born: person.born.clone(),
        died: person.died.clone(),
        known_for: person.known_for.clone(),
        picture: needs.picture.clone(),
        text: person.text.clone(),
        timeline: person
            .timeline
            .iter()
            .map(|(year, what)| Event { year: year.clone(), what: what.clone() })
            .collect(),
        questions: asked
            .map(|((question, answer), n)| Asked {
                n,
                question: question.clone(),
                lines: lines(needs.band, &answer.plain()),
            })
            .collect(),
        sources: sources.into_iter().collect(),
    }
}

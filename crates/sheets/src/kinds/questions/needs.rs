//! Chooses the owner's questions for the band, and the lines to write on.

use super::{Asked, Needs};
use crate::ask::Ask;
use crate::shared::{self, SourceLine};
use crate::words::words;
use findings::{Finding, Findings, Place};
use study::{Band, Question, QuestionFor, Study};

/// Order of printing.
const ORDER: [QuestionFor; 4] =
    [QuestionFor::Write, QuestionFor::Talk, QuestionFor::Teen, QuestionFor::Toddler];

/// Most questions to write at a band, in the second level; the first level has fewer, the third more.
fn most(ask: &Ask<'_>) -> usize {
    if let Some(n) = ask.number("questions") {
        return usize::try_from(n).unwrap_or(1);
    }
    let middle: usize = match ask.band {
        Band::A => 3,
        Band::B => 6,
        Band::C | Band::D => 8,
    };
    match ask.level {
        1 => middle - 1,
        3 => middle + 2,
        _ => middle,
    }
}

/// Fewest lines under a question to write: young hands write large, on two.
fn least_lines(band: Band) -> u32 {
    match band {
        Band::A => 1,
        Band::B | Band::C | Band::D => 2,
    }
}

pub(super) fn needs(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let mine = |q: &&Question| {
        shared::belongs(ask, &q.wherever) && q.band.is_none_or(|b| fits(q.whom, b, ask.band))
    };
    let all: Vec<&Question> = ask.study.questions.iter().filter(mine).collect();
    let most = most(ask);
    let mut asked = Vec::new();
    for whom in ORDER {
        let limit = if whom == QuestionFor::Write { most } else { usize::MAX };
        let group = all.iter().filter(|q| q.whom == whom).take(limit);
        asked.extend(group.map(|q| entry(ask.study, q, ask.band)));
    }
    if asked.is_empty() {
        let title = shared::owner_title(ask).plain();
        return Err(Finding::error("questions-none", format!("there are no questions for `{title}` at ages {}", ask.band.name()))
            .at(&Place::file("questions.csv"))
            .remedy("add rows to questions.csv and name it in their `where` column, or take `questions` out of its page set")
            .into());
    }
    Ok(Needs {
        title: shared::title(ask, &words(toml, ask.language)),
        asked,
        least_lines: least_lines(ask.band),
        language: ask.language.to_owned(),
    })
}

/// A question for teens or toddlers carries its band with it; one to write or talk about must match the sheet's.
fn fits(whom: QuestionFor, own: Band, sheet: Band) -> bool {
    matches!(whom, QuestionFor::Teen | QuestionFor::Toddler) || own == sheet
}

fn entry(study: &Study, q: &Question, band: Band) -> Asked {
    let least = least_lines(band);
    let lines = match (q.whom, q.lines) {
        (QuestionFor::Write, Some(n)) => n.clamp(least, 12),
        (QuestionFor::Write, None) => least,
        (QuestionFor::Teen, n) => n.unwrap_or(0).min(12),
        (QuestionFor::Talk | QuestionFor::Toddler, _) => 0,
    };
    let fact = q.fact.as_deref().and_then(|id| study.facts.get(id));
    Asked {
        whom: q.whom,
        question: q.question.clone(),
        answer: q.answer.clone(),
        also: q.also.clone(),
        range: q.range.clone(),
        lines,
        fact: fact.map(|f| f.id.clone()),
        source: fact.filter(|f| !f.source.is_empty()).map(|f| SourceLine {
            source: f.source.clone(),
            publisher: f.publisher.clone(),
            year: f.year.clone(),
        }),
    }
}

//! Takes from the lesson, the lists and the other sheets what opens a lesson.

use super::{Book, Link, Listed, Needs, Term};
use crate::ask::Ask;
use crate::cautions::cautions;
use crate::shared;
use crate::words::words;
use findings::{Finding, Findings};
use std::collections::BTreeSet;
use study::{Lesson, Said, Span, Text};

/// Most words to know on an opener; more are for the readings.
const WORDS: usize = 8;

pub(super) fn needs(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let study = ask.study;
    let at = shared::lesson_of(ask.owner);
    let Some((index, lesson)) = at.and_then(|i| Some((i, study.lessons.get(i)?))) else {
        return Err(Finding::error("opener-no-lesson", "only a lesson has an opening page")
            .remedy("put `lesson-opener` among the sheets of the lessons")
            .into());
    };
    let opening = lesson.opening.clone().unwrap_or_default();
    if lesson.question.is_none() && opening.is_empty() {
        return Err(nothing(lesson));
    }
    let links = links(ask);
    let none: [&str; 0] = [];
    let caution = || cautions(&["links"], &none, ask.language).into_iter().next();
    Ok(Needs {
        number: index + 1,
        of: study.lessons.len(),
        title: shared::title(ask, &words(toml, ask.language)),
        question: lesson.question.clone(),
        opening,
        picture: lesson.picture.as_deref().and_then(|name| shared::picture(study, name)),
        words: terms(ask, lesson),
        ready: lesson.ready.clone(),
        sheets: sheets(ask, index),
        books: books(ask),
        caution: if links.is_empty() { None } else { caution() },
        links,
    })
}

fn nothing(lesson: &Lesson) -> Findings {
    Finding::error(
        "opener-empty",
        format!("`{}` has neither a question nor an opening text", lesson.title.plain()),
    )
    .at(&lesson.place)
    .remedy(format!(
        "write a `question` at the top of {}, or a section `## Opening`",
        lesson.place.file
    ))
    .into()
}

/// Words of the lesson that have a meaning: first those that stand bold in a reading, then in file order.
fn terms(ask: &Ask<'_>, lesson: &Lesson) -> Vec<Term> {
    let mut bold = BTreeSet::new();
    for reading in &lesson.readings {
        bold_in(&reading.text, &mut bold);
    }
    let all = shared::words_of(ask)
        .into_iter()
        .filter_map(|w| Some(Term { term: w.word.clone(), meaning: w.meaning.clone()? }));
    let (mut first, rest): (Vec<Term>, Vec<Term>) =
        all.partition(|t| bold.contains(&t.term.plain().to_lowercase()));
    first.extend(rest);
    first.truncate(WORDS);
    first
}

fn bold_in(text: &Text, out: &mut BTreeSet<String>) {
    for span in text.iter().flat_map(study::Block::lines).flat_map(|l| &l.spans) {
        if let Span::Strong { v } = span {
            out.insert(Said { spans: v.clone(), ..Said::default() }.plain().to_lowercase());
        }
    }
}

fn sheets(ask: &Ask<'_>, index: usize) -> Vec<Listed> {
    let own = ask.gathered.entries.iter().filter(|e| e.lesson == Some(index) && e.id != ask.sheet);
    own.map(|e| Listed {
        id: e.id.clone(),
        sign: e.sign.clone(),
        title: e.title.clone(),
        what: e.what.clone(),
    })
    .collect()
}

fn books(ask: &Ask<'_>) -> Vec<Book> {
    let mine = ask.study.books.iter().filter(|b| shared::belongs(ask, &b.wherever));
    mine.map(|b| Book {
        title: b.title.clone(),
        author: b.author.clone(),
        isbn: b.isbn.clone(),
        ages: (!b.ages.is_empty()).then(|| b.ages.replace('-', "–")),
        when: b.when.clone(),
    })
    .collect()
}

fn links(ask: &Ask<'_>) -> Vec<Link> {
    let mine = ask.study.links.iter().filter(|l| shared::belongs(ask, &l.wherever));
    mine.map(|l| Link {
        title: l.title.clone(),
        institution: Some(l.institution.clone())
            .filter(|i| !i.plain().is_empty() && i.plain() != l.title.plain()),
        address: l.address.clone(),
        when: l.when.clone(),
        code: Vec::new(),
        at: l.place.clone(),
    })
    .collect()
}

//! Chooses the text of the band and finds its bold words and facts.

use super::{Fact, Needs, Term};
use crate::ask::{Ask, Owner};
use crate::shared::{self, SourceLine};
use crate::words::words;
use findings::{Finding, Findings, Place};
use std::collections::BTreeSet;
use study::{Band, Block, Lesson, Reading, Said, Span, Study, Text, Word};

pub(super) fn needs(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let found = match ask.owner {
        Owner::Lesson(i) => ask.study.lessons.get(i).map(|lesson| of_lesson(ask, lesson)),
        _ => Some(introduction(ask, toml)),
    };
    let mut needs = found.unwrap_or_else(|| Err(Findings::none()))?;
    if let Some(own) = ask.text("title") {
        needs.title = Said::plain_at(&needs.title.at, own);
    }
    if let Some(name) = ask.text("picture") {
        let other = shared::picture(ask.study, name).ok_or_else(|| unknown(ask, name))?;
        // The lesson's caption tells of the lesson's picture.
        needs.caption.take_if(|_| needs.picture.as_ref().is_none_or(|p| p.name != other.name));
        needs.picture = Some(other);
    }
    Ok(needs)
}

fn unknown(ask: &Ask<'_>, name: &str) -> Finding {
    Finding::error("picture-unknown", format!("the study has no picture `{name}`"))
        .at(&shared::owner_place(ask))
        .remedy("put it into the folder `pictures`, or name one that is there")
}

fn introduction(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let Some(text) = ask.study.introduction.clone().filter(|t| !t.is_empty()) else {
        return Err(Finding::error("reading-none", "the study has no introduction to read")
            .at(&Place::file("introduction.md"))
            .remedy("write introduction.md, or take `reading` out of the study's own sheets")
            .into());
    };
    let title = words(toml, ask.language).get("introduction").cloned().unwrap_or_default();
    let at = text.first().and_then(|b| b.lines().first().map(|l| l.at.clone())).unwrap_or_default();
    Ok(assemble(ask, Said::plain_at(&Place::file(at.file), title), text, None))
}

fn of_lesson(ask: &Ask<'_>, lesson: &Lesson) -> Result<Needs, Findings> {
    let Some(reading) = nearest(&lesson.readings, ask.band) else {
        return Err(Finding::error(
            "reading-none",
            format!("`{}` has no text to read", lesson.title.plain()),
        )
        .at(&lesson.place)
        .remedy(format!("write a section `## Reading: …` in {}", lesson.place.file))
        .into());
    };
    // The aside and the further sources belong to the lesson's own text, the first.
    let own = lesson.readings.first().is_some_and(|r| r.band == reading.band).then_some(lesson);
    let mut needs = assemble(ask, reading.title.clone(), reading.text.clone(), own);
    needs.picture = lesson.picture.as_deref().and_then(|name| shared::picture(ask.study, name));
    needs.caption = lesson.caption.clone().filter(|_| needs.picture.is_some());
    Ok(needs)
}

/// The reading of the band, else of the nearest one; the younger of two that are equally near.
fn nearest(readings: &[Reading], band: Band) -> Option<&Reading> {
    let rank = |b: Band| Band::ALL.iter().position(|x| *x == b).unwrap_or(0);
    let full = readings.iter().filter(|r| !r.text.is_empty());
    full.min_by_key(|r| (rank(r.band).abs_diff(rank(band)), rank(r.band)))
}

fn assemble(ask: &Ask<'_>, title: Said, text: Text, lesson: Option<&Lesson>) -> Needs {
    let study = ask.study;
    let more = lesson.and_then(|l| l.more.clone()).unwrap_or_default();
    let (terms, unexplained) = terms(ask, &text);
    let lines = || text.iter().chain(&more).flat_map(Block::lines);
    let mut ids: Vec<&str> = lines().flat_map(Said::facts).collect();
    ids.extend(lesson.iter().flat_map(|l| l.sources.iter().map(String::as_str)));
    let facts = facts(study, ids);
    Needs {
        title,
        more,
        picture: None,
        caption: None,
        terms,
        unexplained,
        facts,
        language: study.language.clone(),
        text,
    }
}

fn facts(study: &Study, ids: Vec<&str>) -> Vec<Fact> {
    let unique: BTreeSet<&str> = ids.into_iter().collect();
    let known = unique.into_iter().filter_map(|id| study.facts.get(id));
    known
        .map(|f| Fact {
            id: f.id.clone(),
            value: format!("{} {}", f.value, f.unit).trim().to_owned(),
            says: format!("{} {} {}", f.statement.plain(), f.value, f.unit),
            source: (!f.source.is_empty()).then(|| SourceLine {
                source: f.source.clone(),
                publisher: f.publisher.clone(),
                year: f.year.clone(),
            }),
        })
        .collect()
}

/// Bold words in order of first use: those with a meaning, and the rest.
fn terms(ask: &Ask<'_>, text: &Text) -> (Vec<Term>, Vec<Said>) {
    let (mut terms, mut unexplained) = (Vec::new(), Vec::new());
    let mut seen = BTreeSet::new();
    for line in text.iter().flat_map(Block::lines) {
        for bold in bold(&line.spans) {
            let key = bold.to_lowercase();
            if !seen.insert(key.clone()) {
                continue;
            }
            match lookup(ask, &key) {
                Some((term, meaning)) if !terms.iter().any(|t: &Term| t.term == term) => {
                    terms.push(Term { term, meaning, bold: key });
                }
                Some(_) => {}
                None => unexplained.push(Said::plain_at(&line.at, bold)),
            }
        }
    }
    (terms, unexplained)
}

fn bold(spans: &[Span]) -> Vec<String> {
    let mut out = Vec::new();
    for span in spans {
        match span {
            Span::Strong { v } => out.push(Said { spans: v.clone(), ..Said::default() }.plain()),
            Span::Emph { v } | Span::Link { v, .. } | Span::Fact { v, .. } => out.extend(bold(v)),
            Span::Text { .. } | Span::Break => {}
        }
    }
    out
}

/// The word of the list that a bold word is, in the singular or with an `s`; the owner's own rows come first.
fn lookup(ask: &Ask<'_>, bold: &str) -> Option<(Said, Said)> {
    let own = shared::words_of(ask);
    let all = own.into_iter().chain(&ask.study.words);
    let is = |w: &Word| {
        let word = w.word.plain().to_lowercase();
        bold == word
            || bold.strip_suffix('s') == Some(&word)
            || bold.strip_suffix("es") == Some(&word)
    };
    all.filter(|w| is(w)).find_map(|w| Some((w.word.clone(), w.meaning.clone()?)))
}

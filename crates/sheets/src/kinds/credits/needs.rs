//! Gathers whose work the sheets show.

use super::{Imprint, Needs, Rights, Shown, Source};
use crate::ask::Ask;
use crate::shared;
use crate::words::words;
use findings::{Finding, Findings};
use std::collections::BTreeSet;
use study::{Fact, Said, Study};

/// Kinds that look words up in the dictionary.
const WITH_DICTIONARY: [&str; 2] = ["unscramble", "word-search"];

pub(super) fn needs(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let study = ask.study;
    if ask.gathered.entries.iter().all(|e| e.id == ask.sheet) {
        return Err(Finding::error(
            "credits-empty",
            "the study has no other sheets whose makers could be named",
        )
        .at(&shared::owner_place(ask))
        .remedy("add lessons or sheets to the study, or take `credits` out of its page set")
        .into());
    }
    let words = words(toml, ask.language);
    let facts: Vec<&Fact> = facts(ask).into_iter().filter_map(|id| study.facts.get(id)).collect();
    let kinds = || ask.gathered.entries.iter().map(|e| e.kind.as_str());
    Ok(Needs {
        title: shared::title(ask, &words),
        lead: words.get("lead").cloned(),
        imprint: imprint(study),
        pictures: pictures(ask),
        unsourced: facts.iter().filter(|f| f.source.is_empty()).count(),
        sources: facts.iter().filter(|f| !f.source.is_empty()).map(|f| source(f)).collect(),
        dictionary: ask.lexicon.has_words && kinds().any(|k| WITH_DICTIONARY.contains(&k)),
        links: study.links.len(),
    })
}

fn imprint(study: &Study) -> Imprint {
    Imprint {
        study: study.title.clone(),
        author: study.author.clone(),
        press: study.press.clone(),
        terms: study.terms.clone(),
        thanks: study.thanks.clone(),
        issue: study.issue.clone(),
        date: study.date,
    }
}

fn source(fact: &Fact) -> Source {
    Source {
        publisher: fact.publisher.clone(),
        source: fact.source.clone(),
        year: fact.year.clone(),
        address: fact.address.clone(),
    }
}

/// Lessons whose openers are among the sheets: openers gather too, so their
/// pictures and facts are not in the list yet and are looked up here.
fn opened(ask: &Ask<'_>) -> Vec<usize> {
    ask.gathered
        .entries
        .iter()
        .filter(|e| e.kind == "lesson-opener")
        .filter_map(|e| e.lesson)
        .collect()
}

fn pictures(ask: &Ask<'_>) -> Vec<Shown> {
    let study = ask.study;
    let shown = ask.gathered.entries.iter().flat_map(|e| e.pictures.iter().map(String::as_str));
    let opening = opened(ask).into_iter().filter_map(|l| study.lessons.get(l)?.picture.as_deref());
    let names: BTreeSet<&str> = shown.chain(opening).collect();
    let known = names.into_iter().filter_map(|name| study.pictures.get(name));
    known
        .map(|p| Shown {
            name: p.name.replace('-', " "),
            rights: Rights {
                author: p.author.clone(),
                licence: p.licence.clone(),
                source: p.source.clone(),
            },
        })
        .collect()
}

fn facts<'a>(ask: &Ask<'a>) -> BTreeSet<&'a str> {
    let study = ask.study;
    let used = ask.gathered.entries.iter().flat_map(|e| e.facts.iter().map(String::as_str));
    let openings = opened(ask).into_iter().filter_map(|l| study.lessons.get(l)?.opening.as_ref());
    let in_openings = openings.flatten().flat_map(study::Block::lines).flat_map(Said::facts);
    used.chain(in_openings).collect()
}

//! Reads the printed text again: bold words against the words box, numbers against facts, facts against sources.

use super::{Fact, Needs, Sheet};
use crate::shared::SourceLine;
use findings::{Finding, Place};
use proof::Proof;
use proof::numbers::numbers;
use std::collections::{BTreeMap, BTreeSet};
use study::{Block, Said, Span};

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let words = sheet.title == needs.title && sheet.text == needs.text && sheet.more == needs.more;
    proof.demand(words, "reading-words", "title, text or aside are not the author's");
    proof.demand(!sheet.text.is_empty(), "reading-empty", "there is no text on the page");
    let pictured = sheet.picture == needs.picture && sheet.caption == needs.caption;
    proof.demand(pictured, "reading-picture", "picture or caption are not the lesson's");
    glossary(&mut proof, needs, sheet);
    numbers_of_facts(&mut proof, needs, sheet);
    sources(&mut proof, needs, sheet);
    let lines = sheet.text.iter().flat_map(Block::lines);
    proof.count("words", lines.map(|l| l.plain().split_whitespace().count()).sum::<usize>());
    proof
}

fn glossary(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    let mut bold = BTreeMap::new();
    for line in sheet.text.iter().flat_map(Block::lines) {
        gather_bold(&line.spans, &line.at, &mut bold);
    }
    for term in &sheet.glossary {
        let name = term.term.plain();
        proof.demand(
            bold.contains_key(&term.bold),
            "gloss-stray",
            format!("`{name}` is explained but does not stand bold in the text"),
        );
        let own = needs.terms.iter().filter(|t| *t == term).count() == 1;
        proof.demand(
            own,
            "gloss-meaning",
            format!("`{name}` stands with a meaning that is not its own"),
        );
        let once = sheet.glossary.iter().filter(|t| t.term == term.term).count() == 1;
        proof.demand(once, "gloss-twice", format!("`{name}` is explained twice"));
    }
    for term in &needs.terms {
        let there = sheet.glossary.iter().any(|t| t.term == term.term);
        proof.demand(
            there,
            "gloss-missing",
            format!("`{}` stands bold but is not explained", term.term.plain()),
        );
    }
    for word in needs.unexplained.iter().filter(|w| bold.contains_key(&w.plain().to_lowercase())) {
        let finding = Finding::hint(
            "word-without-meaning",
            format!("`{}` stands bold but has no meaning in words.csv", word.plain()),
        );
        proof.findings.push(
            finding
                .at(&word.at)
                .remedy("add it to words.csv with its meaning, or take the stars away"),
        );
    }
    proof.count("words explained", sheet.glossary.len());
}

fn gather_bold(spans: &[Span], at: &Place, out: &mut BTreeMap<String, Place>) {
    for span in spans {
        match span {
            Span::Strong { v } => {
                let words = Said { spans: v.clone(), ..Said::default() }.plain().to_lowercase();
                out.entry(words).or_insert_with(|| at.clone());
            }
            Span::Emph { v } | Span::Link { v, .. } | Span::Fact { v, .. } => {
                gather_bold(v, at, out)
            }
            Span::Text { .. } | Span::Break => {}
        }
    }
}

/// Where a fact has a number, words linked to it contradict it with none of theirs.
fn numbers_of_facts(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    let mut used = Vec::new();
    for line in sheet.text.iter().chain(&sheet.more).flat_map(Block::lines) {
        facts_in(&line.spans, &line.at, &mut used);
    }
    for (id, words, at) in &used {
        let Some(fact) = needs.facts.iter().find(|f| f.id == *id) else {
            proof.findings.push(
                Finding::error(
                    "fact-unknown",
                    format!("`{words}` points to `{id}`, which is no fact of this study"),
                )
                .at(at)
                .remedy("add the fact to facts.csv, or mend its name in the text"),
            );
            continue;
        };
        if let Some(number) = contradiction(words, fact, &needs.language) {
            proof.findings.push(
                Finding::error(
                    "fact-number",
                    format!("`{words}` says {number}, but the fact `{id}` says `{}`", fact.value),
                )
                .at(at)
                .remedy("mend the number in the text, or the fact in facts.csv"),
            );
        }
    }
    proof.count("facts used", used.len());
}

/// A number in the words that the fact does not have. Digits must all be the
/// fact's; of numbers in words (`the two of them`) one in common is enough.
fn contradiction(words: &str, fact: &Fact, language: &str) -> Option<String> {
    if numbers(&fact.value, language).is_empty() {
        return None;
    }
    let says = numbers(&fact.says, language);
    // In no language: digits only.
    let wrong_digits = numbers(words, "").difference(&says).next().cloned();
    let all = numbers(words, language);
    let strange = || all.iter().next().filter(|_| all.is_disjoint(&says)).cloned();
    wrong_digits.or_else(strange)
}

fn facts_in(spans: &[Span], at: &Place, out: &mut Vec<(String, String, Place)>) {
    for span in spans {
        match span {
            Span::Fact { id, v } => {
                let words = Said { spans: v.clone(), ..Said::default() }.plain();
                out.push((id.clone(), words, at.clone()));
            }
            Span::Strong { v } | Span::Emph { v } | Span::Link { v, .. } => facts_in(v, at, out),
            Span::Text { .. } | Span::Break => {}
        }
    }
}

fn sources(proof: &mut Proof, needs: &Needs, sheet: &Sheet) {
    let wanted: BTreeSet<&SourceLine> =
        needs.facts.iter().filter_map(|f| f.source.as_ref()).collect();
    let named: BTreeSet<&SourceLine> = sheet.sources.iter().collect();
    proof.demand(named.len() == sheet.sources.len(), "source-twice", "a source is named twice");
    for source in wanted.difference(&named) {
        proof.fault("source-missing", format!("the source `{}` is not named", source.source));
    }
    for source in named.difference(&wanted) {
        proof.fault(
            "source-stray",
            format!("the source `{}` belongs to no fact of this text", source.source),
        );
    }
    proof.count("sources", named.len());
}

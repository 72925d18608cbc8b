//! Readings at several bands, and planted faults.

use super::{Needs, Reading, Sheet};
use crate::ask::Owner;
use crate::fixture::{asking, para, said};
use crate::kind::Kind;
use crate::shared::SourceLine;
use crate::tested::{Fault, Tested, keeps_contract};
use findings::{Findings, Severity};
use study::{Band, Block, Span, Value};

fn needs_of(owner: Owner, band: Band) -> Needs {
    Reading::needs(&asking(owner).band(band).ask()).expect("a reading")
}

fn pictured(owner: Owner, picture: &str) -> Result<Needs, Findings> {
    let mut asking = asking(owner);
    asking.options.insert("picture".into(), Value::Text(picture.into()));
    Reading::needs(&asking.ask())
}

fn made(needs: &Needs) -> Sheet {
    super::make::make(needs)
}

/// Changes the words of the first fact link.
fn reword(s: &mut Sheet, words: &str) -> bool {
    for block in &mut s.text {
        if let Block::Para { v } = block {
            for span in &mut v.spans {
                if let Span::Fact { v, .. } = span {
                    *v = vec![Span::Text { v: words.into() }];
                    return true;
                }
            }
        }
    }
    false
}

impl Tested for Reading {
    fn good() -> Vec<Needs> {
        vec![
            needs_of(Owner::Lesson(0), Band::B),
            needs_of(Owner::Lesson(0), Band::D),
            needs_of(Owner::Study, Band::C),
            pictured(Owner::Study, "crab").expect("a picture"),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let mut none = asking(Owner::Study);
        none.study.introduction = None;
        vec![
            ("lesson without a text", Reading::needs(&asking(Owner::Lesson(1)).ask()).map(|_| ())),
            ("study without an introduction", Reading::needs(&none.ask()).map(|_| ())),
            ("unknown picture", pictured(Owner::Study, "crrab").map(|_| ())),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("paragraph lost", |_, s, _| {
                s.text.pop();
                true
            }),
            ("word of the text changed", |_, s, _| {
                s.text.push(para("lessons/edge.md#reading/9", "One word too many."));
                true
            }),
            ("another title", |_, s, _| {
                s.title = said("lessons/edge.md#reading/title", "Another title");
                true
            }),
            ("aside lost", |_, s, _| s.more.pop().is_some()),
            ("picture lost", |_, s, _| s.picture.take().is_some()),
            ("caption lost", |_, s, _| s.caption.take().is_some()),
            ("bold word not explained", |_, s, _| s.glossary.pop().is_some()),
            ("word explained that is not in the text", |_, s, _| {
                let Some(first) = s.glossary.first().cloned() else { return false };
                s.glossary.push(super::Term {
                    term: said("words.csv#x/word", "kelp"),
                    bold: "kelp".into(),
                    ..first
                });
                true
            }),
            ("word explained twice", |_, s, _| {
                s.glossary.first().cloned().map(|t| s.glossary.push(t)).is_some()
            }),
            ("meaning of another word", |_, s, _| {
                s.glossary
                    .first_mut()
                    .map(|t| t.meaning = said("words.csv#x/meaning", "something else"))
                    .is_some()
            }),
            ("number of a fact changed", |_, s, _| reword(s, "25 hours and fifty minutes")),
            ("fact of another study", |_, s, _| {
                s.more.push(para("lessons/edge.md#more/9", "It is [7](fact:nobody)."));
                true
            }),
            ("source not named", |_, s, _| s.sources.pop().is_some()),
            ("source of no fact", |_, s, _| {
                s.sources.push(SourceLine {
                    source: "A book".into(),
                    publisher: String::new(),
                    year: String::new(),
                });
                true
            }),
            ("source twice", |_, s, _| {
                s.sources.first().cloned().map(|t| s.sources.push(t)).is_some()
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Reading);
}

#[test]
fn a_wrong_number_is_found_even_when_it_is_the_authors() {
    let mut asking = asking(Owner::Lesson(0));
    asking.study.lessons[0].readings[0]
        .text
        .push(para("lessons/edge.md#reading/2", "It lasts [thirty hours](fact:tide-day)."));
    let needs = Reading::needs(&asking.ask()).expect("a reading");
    let proof = Reading::check(&needs, &made(&needs));
    let found: Vec<&str> = proof.findings.iter().map(|f| f.code.as_str()).collect();
    assert_eq!(found, ["fact-number"]);
}

#[test]
fn the_nearest_reading_serves_a_band_that_has_none() {
    let title = |band| needs_of(Owner::Lesson(0), band).title.plain();
    assert_eq!(title(Band::A), "A line that moves");
    assert_eq!(title(Band::B), "A line that moves");
    assert_eq!(title(Band::C), "A line that moves", "younger of two equally near");
    assert_eq!(title(Band::D), "Why springs keep their hour");
}

#[test]
fn bold_words_without_a_meaning_are_only_a_hint() {
    let mut asking = asking(Owner::Lesson(0));
    asking.study.words.retain(|w| w.word.plain() != "ebb");
    let needs = Reading::needs(&asking.ask()).expect("a reading");
    let proof = Reading::check(&needs, &made(&needs));
    assert!(proof.holds());
    assert_eq!(proof.findings.count(Severity::Hint), 1);
    assert!(proof.findings.iter().all(|f| f.message.contains("`ebb`")));
}

#[test]
fn plurals_find_their_word() {
    let mut asking = asking(Owner::Lesson(0));
    asking.study.lessons[0].readings[0].text =
        vec![para("lessons/edge.md#reading/0", "Look into **rock pools** at **Ebb**.")];
    let needs = Reading::needs(&asking.ask()).expect("a reading");
    let terms: Vec<String> = needs.terms.iter().map(|t| t.term.plain()).collect();
    assert_eq!(terms, ["rock pool", "ebb"]);
}

#[test]
fn sources_named_besides_are_printed_with_the_lessons_own_text_only() {
    let own = made(&needs_of(Owner::Lesson(0), Band::B));
    assert_eq!(own.sources.len(), 3);
    let older = made(&needs_of(Owner::Lesson(0), Band::D));
    assert_eq!(older.sources.len(), 1);
}

#[test]
fn another_picture_leaves_the_caption_of_the_lessons_own_behind() {
    let own = needs_of(Owner::Lesson(0), Band::B);
    let other = pictured(Owner::Lesson(0), "crab").expect("a picture");
    assert_ne!(own.picture, other.picture);
    assert!(own.caption.is_some() && other.caption.is_none());
}

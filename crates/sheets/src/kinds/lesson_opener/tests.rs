//! Openers of several lessons, and planted faults.

use super::{LessonOpener, Needs, Ready, Sheet};
use crate::ask::Owner;
use crate::fixture::{asking, gathered, said};
use crate::kind::Kind;
use crate::tested::{Fault, Tested, keeps_contract};
use craft::Dice;
use findings::Findings;
use proof::{Laid, LaidPage, LaidText, Mark};

fn needs_of(lesson: usize) -> Needs {
    let mut asking = asking(Owner::Lesson(lesson));
    asking.gathered = gathered();
    LessonOpener::needs(&asking.ask()).expect("an opener")
}

fn made(needs: &Needs) -> Sheet {
    LessonOpener::make(needs, &mut Dice::from_number(1)).expect("a sheet")
}

fn ready(s: &mut Sheet) -> Option<&mut Ready> {
    s.ready.as_mut()
}

impl Tested for LessonOpener {
    fn good() -> Vec<Needs> {
        let mut bare = asking(Owner::Lesson(1));
        bare.study.words.clear();
        bare.study.lessons[1].ready.clear();
        bare.study.lessons[1].picture = None;
        vec![needs_of(0), needs_of(1), LessonOpener::needs(&bare.ask()).expect("a bare opener")]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let mut empty = asking(Owner::Lesson(1));
        empty.study.lessons[1].question = None;
        empty.study.lessons[1].opening = None;
        let mut long = needs_of(0);
        long.links[0].address = format!("https://example.org/{}", "a".repeat(2400));
        vec![
            ("neither question nor opening", LessonOpener::needs(&empty.ask()).map(|_| ())),
            ("of the study", LessonOpener::needs(&asking(Owner::Study).ask()).map(|_| ())),
            ("address too long", LessonOpener::make(&long, &mut Dice::from_number(1)).map(|_| ())),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("wrong number", |_, s, _| {
                s.number += 1;
                true
            }),
            ("lessons miscounted", |_, s, _| {
                s.of += 1;
                true
            }),
            ("another question", |_, s, _| {
                s.question = Some(said("lessons/edge.md#question", "Who lives here?"));
                true
            }),
            ("opening text lost", |_, s, _| s.opening.pop().is_some()),
            ("picture lost", |_, s, _| s.picture.take().is_some()),
            ("sheet forgotten", |_, s, _| s.sheets.pop().is_some()),
            ("sheet under another title", |_, s, _| {
                s.sheets.first_mut().map(|l| l.title.push('s')).is_some()
            }),
            ("sheets out of order", |_, s, _| {
                s.sheets.reverse();
                s.sheets.len() > 1
            }),
            ("meanings swapped", |_, s, _| match ready(s) {
                Some(r) if r.words.len() > 1 => {
                    let other = r.words[1].meaning.clone();
                    r.words[1].meaning = std::mem::replace(&mut r.words[0].meaning, other);
                    true
                }
                _ => false,
            }),
            ("word lost", |_, s, _| ready(s).and_then(|r| r.words.pop()).is_some()),
            ("word twice", |_, s, _| match ready(s) {
                Some(r) if !r.words.is_empty() => {
                    r.words.push(r.words[0].clone());
                    true
                }
                _ => false,
            }),
            ("supply lost", |_, s, _| ready(s).and_then(|r| r.ready.pop()).is_some()),
            ("second page lost", |_, s, _| s.ready.take().is_some()),
            ("one digit of an ISBN", |_, s, _| {
                match ready(s).and_then(|r| r.books.iter_mut().find_map(|b| b.isbn.as_mut())) {
                    Some(isbn) => {
                        isbn.pop();
                        isbn.push('0');
                        true
                    }
                    None => false,
                }
            }),
            ("link lost", |_, s, _| ready(s).and_then(|r| r.links.pop()).is_some()),
            ("code of another address", |_, s, _| {
                match ready(s).and_then(|r| r.links.first_mut()) {
                    Some(link) => {
                        link.code =
                            crate::code_symbol::rows("https://example.org").expect("a symbol");
                        true
                    }
                    None => false,
                }
            }),
            ("code mirrored up and down", |_, s, _| {
                match ready(s).and_then(|r| r.links.first_mut()) {
                    Some(link) => {
                        link.code.reverse();
                        true
                    }
                    None => false,
                }
            }),
            ("row of modules lost", |_, s, _| {
                ready(s).and_then(|r| r.links.first_mut()).and_then(|l| l.code.pop()).is_some()
            }),
            ("caution about links lost", |_, s, _| {
                ready(s).and_then(|r| r.caution.take()).is_some()
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&LessonOpener);
}

#[test]
fn bold_words_come_first_and_words_without_meaning_never() {
    let terms: Vec<String> = needs_of(0).words.iter().map(|t| t.term.plain()).collect();
    assert_eq!(terms, ["tide", "ebb", "rock pool", "spray"]);
    let terms: Vec<String> = needs_of(1).words.iter().map(|t| t.term.plain()).collect();
    assert_eq!(terms, ["limpet"], "radula has no meaning yet");
}

#[test]
fn only_the_lessons_own_sheets_are_listed() {
    let ids: Vec<String> = needs_of(1).sheets.into_iter().map(|s| s.id).collect();
    assert_eq!(ids, ["ls-1.lesson-opener.a", "ls-1.questions.a", "sj-1-0.word-search.a"]);
}

#[test]
fn small_or_crowded_code_symbols_are_found_on_the_page() {
    let sheet = made(&needs_of(0));
    let modules = i64::try_from(sheet.ready.as_ref().expect("a second page").links[0].code.len())
        .expect("a size")
        + 8;
    let laid = |side: i64, text_x: i64| {
        let mark =
            Mark { kind: "code".into(), name: "0".into(), x: 20_000, y: 30_000, w: side, h: side };
        let text = LaidText {
            text: "noc.ac.uk".into(),
            x: text_x,
            y: 40_000,
            w: 9_000,
            ..LaidText::default()
        };
        Laid {
            sheet: String::new(),
            pages: vec![LaidPage { marks: vec![mark], texts: vec![text], ..LaidPage::default() }],
        }
    };
    let count = |laid: &Laid| LessonOpener::check_page(&sheet, laid).0.len();
    assert_eq!(count(&laid(modules * 500, 60_000)), 0);
    assert_eq!(count(&laid(modules * 490, 60_000)), 1, "modules of 0.49 mm");
    assert_eq!(count(&laid(modules * 500, 25_000)), 1, "words in the margin");
    assert_eq!(count(&Laid::default()), 1, "not drawn at all");
}

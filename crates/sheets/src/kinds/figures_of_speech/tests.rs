//! Fixtures, refused asks and planted faults of `figures-of-speech`.

use super::needs::ALL;
use super::*;
use crate::ask::Owner;
use crate::fixture::{Asking, asking, said};
use crate::tested::{Fault, Tested, keeps_contract};
use study::{Band, FigureOfSpeech, Value};

fn asked(counts: [usize; 4]) -> Asking {
    let mut asking = asking(Owner::Lesson(0));
    for (figure, count) in ALL.into_iter().zip(counts) {
        for i in 0..count {
            let like = if figure == Figure::Simile { "like" } else { "over" };
            let short = &format!("{figure:?}")[..3];
            let place = format!("figures.csv#{short}-{i}");
            asking.study.figures.push(FigureOfSpeech {
                sentence: said(
                    &format!("{place}/sentence"),
                    &format!("Wave {i} of {short} rolled {like} a drum."),
                ),
                figure,
                why: Some(said(&format!("{place}/why"), "Because.")),
                wherever: vec!["edge".into()],
            });
        }
    }
    asking
}

fn met(asking: &Asking) -> Needs {
    needs::needs(&asking.ask()).expect("needs")
}

fn refuse(counts: [usize; 4]) -> Result<(), Findings> {
    needs::needs(&asked(counts).ask()).map(|_| ())
}

fn made(needs: &Needs) -> Sheet {
    make::make(needs, &mut Dice::from_number(1))
}

impl Tested for FiguresOfSpeech {
    fn good() -> Vec<Needs> {
        let mut many = asked([5, 5, 5, 5]).level(3).band(Band::D);
        many.options.insert("sentences".into(), Value::Number(16));
        vec![
            met(&asked([2, 2, 2, 2]).level(1)),
            met(&asked([3, 3, 3, 3]).level(2).band(Band::C)),
            met(&asked([6, 1, 0, 4]).level(3)),
            met(&asked([1, 1, 1, 1]).band(Band::A)),
            met(&many),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![
            ("nothing", refuse([0; 4])),
            ("three sentences", refuse([1, 1, 1, 0])),
            ("one figure", refuse([9, 0, 0, 0])),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("sentence dropped", |_, s, _| s.sentences.pop().is_some()),
            ("sentence doubled", |_, s, _| {
                s.sentences[0].sentence = s.sentences[1].sentence.clone();
                true
            }),
            ("other words", |_, s, _| {
                s.sentences[0].sentence = said("x", "The sea is wet.");
                true
            }),
            ("one word changed", |_, s, _| {
                let plain = s.sentences[0].sentence.plain().replace("rolled", "rolls");
                s.sentences[0].sentence = said(&s.sentences[0].sentence.at.to_string(), &plain);
                true
            }),
            ("wrong number", |_, s, _| {
                s.sentences[1].n = 1;
                true
            }),
            ("numbers exchanged", |_, s, _| {
                s.sentences[0].n = 2;
                s.sentences[1].n = 1;
                true
            }),
            ("grouped by figure", |n, s, _| {
                let of = |x: &Sentence| {
                    n.rows.iter().find(|r| r.sentence == x.sentence).map(|r| r.figure)
                };
                s.sentences.sort_by_key(of);
                s.sentences.iter_mut().zip(1..).for_each(|(x, i)| x.n = i);
                s.sentences.len() > s.figures.len()
            }),
            ("one figure crowds out another", |n, s, _| {
                let of = |x: &Sentence| {
                    n.rows.iter().find(|r| r.sentence == x.sentence).map(|r| r.figure)
                };
                let count = |f: Option<Figure>| s.sentences.iter().filter(|x| of(x) == f).count();
                let spare = n
                    .rows
                    .iter()
                    .filter(|r| !s.sentences.iter().any(|x| x.sentence == r.sentence))
                    .max_by_key(|r| count(Some(r.figure)));
                let Some(spare) = spare else { return false };
                let place = s.sentences.iter().position(|x| {
                    of(x) != Some(spare.figure) && count(of(x)) <= count(Some(spare.figure))
                });
                let Some(place) = place else { return false };
                s.sentences[place].sentence = spare.sentence.clone();
                true
            }),
            ("reminder lost", |_, s, _| s.figures.pop().is_some()),
            ("reminders in another order", |_, s, _| {
                s.figures.reverse();
                true
            }),
            ("own sentence of a figure not explained", |_, s, _| {
                let absent = ALL.into_iter().find(|f| !s.figures.contains(f));
                absent.is_some_and(|f| {
                    s.own.push(f);
                    true
                })
            }),
            ("own sentence lost", |_, s, _| s.task == Task::Sort && s.own.pop().is_some()),
            ("no lines", |_, s, _| {
                s.lines = 0;
                true
            }),
            ("picture lost", |_, s, _| s.picture.take().is_some()),
            ("another task", |_, s, _| {
                s.task = if s.task == Task::Sort { Task::Letter } else { Task::Sort };
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&FiguresOfSpeech);
}

#[test]
fn the_key_gives_the_authors_figure_and_reason() {
    let needs = met(&asked([2, 2, 2, 2]).level(1));
    let sheet = made(&needs);
    let key = FiguresOfSpeech::key(&needs, &sheet).expect("key");
    assert_eq!(key.answers.len(), sheet.sentences.len());
    for (answer, sentence) in key.answers.iter().zip(&sheet.sentences) {
        assert!(sentence.sentence.plain().contains(&format!("{:?}", answer.figure)[..3]));
        assert!(answer.why.is_some());
    }
}

#[test]
fn doubtful_sentences_are_warned_about() {
    let mut asking = asked([2, 2, 0, 0]);
    asking.study.figures[0].sentence = said("figures.csv#0/sentence", "The tide was in a hurry.");
    asking.study.figures[2].sentence = said("figures.csv#2/sentence", "The foam lay like lace.");
    asking.study.figures[3].sentence = said("figures.csv#3/sentence", "This metaphor is a box.");
    let needs = met(&asking);
    let proof = check::check(&needs, &made(&needs));
    assert!(proof.holds(), "{:?}", proof.findings);
    let codes: Vec<&str> = proof.findings.iter().map(|f| f.code.as_str()).collect();
    assert_eq!(codes.iter().filter(|c| **c == "figure-sign").count(), 2);
    assert_eq!(codes.iter().filter(|c| **c == "figure-told").count(), 1);
    assert_eq!(codes.iter().filter(|c| **c == "figure-missing").count(), 2);
}

//! Sheets of questions at several bands, and planted faults.

use super::{Needs, Questions, Sheet};
use crate::ask::Owner;
use crate::fixture::{asking, question, said};
use crate::kind::Kind;
use crate::tested::{Fault, Tested, keeps_contract};
use findings::Findings;
use study::{Band, QuestionFor, Range, Value};

fn needs_of(band: Band) -> Needs {
    Questions::needs(&asking(Owner::Lesson(0)).band(band).ask()).expect("questions")
}

fn write(s: &mut Sheet) -> Option<&mut super::Item> {
    s.items.iter_mut().find(|i| i.whom == QuestionFor::Write)
}

impl Tested for Questions {
    fn good() -> Vec<Needs> {
        let mut all: Vec<Needs> = Band::ALL.into_iter().map(needs_of).collect();
        let mut one = asking(Owner::Subject(0, 0)).level(1);
        one.options.insert("questions".into(), Value::Number(1));
        all.push(Questions::needs(&one.ask()).expect("one question"));
        all
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![("no questions", Questions::needs(&asking(Owner::Lesson(1)).ask()).map(|_| ()))]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("question lost", |_, s, _| s.items.pop().is_some()),
            ("question twice", |_, s, _| {
                let again = s.items[0].clone();
                s.items.push(again);
                true
            }),
            ("number skipped", |_, s, _| {
                for item in s.items.iter_mut().skip(1) {
                    item.n += 1;
                }
                s.items.len() > 1
            }),
            ("numbers swapped", |_, s, _| {
                if s.items.len() < 2 {
                    return false;
                }
                s.items[0].n = 2;
                s.items[1].n = 1;
                true
            }),
            ("questions swapped", |_, s, _| {
                if s.items.len() < 2 {
                    return false;
                }
                let other = s.items[1].question.clone();
                s.items[1].question = std::mem::replace(&mut s.items[0].question, other);
                true
            }),
            ("words changed", |_, s, _| {
                s.items[0].question = said("questions.csv#q1/question", "What is a tide?");
                true
            }),
            ("words lost", |_, s, _| {
                s.items[0].question.spans.clear();
                true
            }),
            ("too few lines", |_, s, _| write(s).map(|i| i.lines = 0).is_some()),
            ("lines for talking", |_, s, _| {
                s.items
                    .iter_mut()
                    .find(|i| i.whom == QuestionFor::Talk)
                    .map(|i| i.lines = 2)
                    .is_some()
            }),
            ("for the wrong child", |_, s, _| {
                write(s).map(|i| i.whom = QuestionFor::Teen).is_some()
            }),
            ("answer printed with the question", |n, s, _| match n.asked[0].answer.as_ref() {
                Some(answer) => {
                    s.items[0].question.spans.extend(answer.spans.clone());
                    true
                }
                None => false,
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Questions);
}

#[test]
fn the_key_answers_number_by_number() {
    let needs = needs_of(Band::B);
    let sheet = super::make::make(&needs);
    let key = Questions::key(&needs, &sheet).expect("a key");
    for answer in &key.answers {
        let item = sheet.items.iter().find(|i| i.n == answer.n).expect("its question");
        let asked = needs
            .asked
            .iter()
            .find(|a| a.question.plain() == item.question.plain())
            .expect("the row");
        assert_eq!(answer.answer, asked.answer);
    }
    assert_eq!(key.answers[1].range.as_ref().map(|r| r.high.as_str()), Some("25"));
    assert_eq!(key.answers[1].source.as_ref().map(|s| s.publisher.as_str()), Some("NOAA"));
    assert_eq!(key.answers[2].also.len(), 1);
}

#[test]
fn the_page_data_holds_numbers_questions_and_lines_but_no_answer() {
    let page = serde_json::to_value(super::make::make(&needs_of(Band::B))).expect("page data");
    let items = page["items"].as_array().expect("items");
    assert_eq!(items.len(), 6);
    for item in items {
        let fields: Vec<&str> =
            item.as_object().expect("an item").keys().map(String::as_str).collect();
        assert_eq!(fields, ["lines", "n", "question", "whom"]);
    }
}

#[test]
fn ranges_that_run_down_or_miss_the_answer_are_found() {
    for (low, high, faults) in [("24", "25", 0), ("25", "24", 2), ("1", "9", 1)] {
        let mut needs = needs_of(Band::B);
        needs.asked[1].range =
            Some(Range { low: low.into(), high: high.into(), unit: "hours".into() });
        let proof = Questions::check(&needs, &super::make::make(&needs));
        let found = proof.findings.iter().filter(|f| f.code == "answer-range").count();
        assert_eq!(found, faults, "{low} to {high}");
    }
}

#[test]
fn bands_choose_number_and_lines() {
    let written = |n: &Needs| n.asked.iter().filter(|a| a.whom == QuestionFor::Write).count();
    let mut asking = asking(Owner::Lesson(0));
    for i in 0..12 {
        asking.study.questions.push(question(
            &format!("x{i}"),
            "edge",
            QuestionFor::Write,
            &format!("Why {i}?"),
            "Because.",
        ));
    }
    for (band, middle) in [(Band::A, 3), (Band::B, 6), (Band::C, 8), (Band::D, 8)] {
        for (level, wanted) in [(1, middle - 1), (2, middle), (3, middle + 2)] {
            let asking = asking.clone().band(band).level(level);
            assert_eq!(
                written(&Questions::needs(&asking.ask()).expect("questions")),
                wanted,
                "{band:?} {level}"
            );
        }
    }
}

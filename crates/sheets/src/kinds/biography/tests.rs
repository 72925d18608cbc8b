//! Fixtures, refused asks and planted faults of `biography`.

use super::*;
use crate::ask::Owner;
use crate::fixture::{Asking, asking, para, said};
use crate::tested::{Fault, Tested, keeps_contract};
use study::{Band, Person, Value};

fn person(stem: &str) -> Person {
    let at = |field: &str| format!("people/{stem}.md#{field}");
    let when = |i: usize, year: &str, what: &str| {
        (said(&at(&format!("when/{i}/year")), year), said(&at(&format!("when/{i}/what")), what))
    };
    let ask = |i: usize, q: &str, a: &str| {
        (
            said(&at(&format!("question/{i}/question")), q),
            said(&at(&format!("question/{i}/answer")), a),
        )
    };
    Person {
        id: format!("pe-{stem}"),
        stem: stem.into(),
        name: said(&at("name"), stem),
        born: Some(said(&at("born"), "about 1799")),
        died: Some(said(&at("died"), "1871")),
        known_for: Some(said(&at("known-for"), "She measured the tide.")),
        picture: Some("pool".into()),
        wherever: vec!["edge".into()],
        facts: vec!["tide-cycle".into()],
        timeline: vec![
            when(0, "1799", "She is born."),
            when(1, "1843", "Her book comes out."),
            when(2, "1871", "She dies."),
        ],
        questions: vec![
            ask(0, "What did she measure?", "The tide."),
            ask(1, "Why?", &"Because it moves. ".repeat(12)),
        ],
        text: vec![para(
            &at("text/0"),
            "The tide lasts [24 hours and 50 minutes](fact:tide-day), and she measured it.",
        )],
        band: None,
        place: findings::Place::file(format!("people/{stem}.md")),
    }
}

fn asked(band: Band) -> Asking {
    let mut asking = asking(Owner::Lesson(0)).band(band);
    asking.study.people = vec![person("ada"), person("ben")];
    asking
}

fn met(asking: &Asking) -> Needs {
    needs::needs(&asking.ask()).expect("needs")
}

fn refuse(change: fn(&mut Asking)) -> Result<(), Findings> {
    let mut asking = asked(Band::B);
    change(&mut asking);
    needs::needs(&asking.ask()).map(|_| ())
}

fn named(asking: &mut Asking, name: &str) {
    asking.options.insert("person".into(), Value::Text(name.into()));
}

impl Tested for Biography {
    fn good() -> Vec<Needs> {
        let mut plain = asked(Band::D);
        plain.study.people[0].timeline.clear();
        plain.study.people[0].questions.clear();
        plain.study.people[0].picture = None;
        vec![met(&asked(Band::A)), met(&asked(Band::B)), met(&asked(Band::C)), met(&plain)]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![
            ("nobody", refuse(|a| a.study.people.clear())),
            ("nobody here", refuse(|a| a.owner = Owner::Lesson(1))),
            ("unknown person", refuse(|a| named(a, "adda"))),
            ("no text", refuse(|a| a.study.people[0].text.clear())),
            ("no name", refuse(|a| a.study.people[0].name = said("x", " "))),
            ("empty question", refuse(|a| a.study.people[0].questions[0].0 = said("x", ""))),
            ("no answer", refuse(|a| a.study.people[0].questions[0].1 = said("x", ""))),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("other name", |_, s, _| {
                s.name = said("x", "Somebody");
                true
            }),
            ("other year of birth", |_, s, _| {
                s.born = Some(said("x", "1801"));
                true
            }),
            ("known for lost", |_, s, _| s.known_for.take().is_some()),
            ("picture lost", |_, s, _| s.picture.take().is_some()),
            ("paragraph lost", |_, s, _| s.text.pop().is_some()),
            ("event lost", |_, s, _| s.timeline.pop().is_some()),
            ("events exchanged", |_, s, _| {
                s.timeline.len() > 1 && {
                    s.timeline.swap(0, 1);
                    true
                }
            }),
            ("question lost", |_, s, _| s.questions.pop().is_some()),
            ("question doubled", |_, s, _| {
                let again = s.questions.first().cloned();
                again.is_some_and(|q| {
                    s.questions.push(q);
                    true
                })
            }),
            ("other question", |_, s, _| {
                s.questions.first_mut().is_some_and(|q| {
                    q.question = said("x", "Who?");
                    true
                })
            }),
            ("wrong number", |_, s, _| {
                s.questions.first_mut().is_some_and(|q| {
                    q.n = 2;
                    true
                })
            }),
            ("no lines", |_, s, _| {
                s.questions.first_mut().is_some_and(|q| {
                    q.lines = 0;
                    true
                })
            }),
            ("source lost", |_, s, _| s.sources.pop().is_some()),
            ("source doubled", |_, s, _| {
                s.sources.push(s.sources[0].clone());
                true
            }),
            ("a source of no fact", |_, s, _| {
                s.sources.push(SourceLine {
                    source: "Hearsay".into(),
                    publisher: String::new(),
                    year: String::new(),
                });
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Biography);
}

#[test]
fn a_count_takes_one_person_after_another() {
    let asking = asked(Band::B);
    let of = |sheet: &str| needs::needs(&Ask { sheet, ..asking.ask() });
    assert_eq!(of("ls-1.biography.a").expect("first").person.stem, "ada");
    assert_eq!(of("ls-1.biography.b").expect("second").person.stem, "ben");
    assert!(of("ls-1.biography.c").is_err());
    assert_eq!(of("ls-1.biography.own-name").expect("an own name").person.stem, "ada");
}

#[test]
fn years_are_read_and_doubted() {
    let read = |t: &str| check::year(&said("x", t));
    assert_eq!(
        (read("about 1799"), read("1853–54"), read("300 BC"), read("spring")),
        (Some(1799), Some(1853), None, None)
    );
    let mut asking = asked(Band::B);
    asking.study.people[0].timeline.swap(1, 2);
    asking.study.people[0].timeline[0].0 = said("x", "1700");
    asking.study.people[0].died = Some(said("x", "1971"));
    let needs = met(&asking);
    let proof = check::check(&needs, &make::make(&needs));
    let codes: Vec<&str> = proof.findings.iter().map(|f| f.code.as_str()).collect();
    for code in ["time-order", "time-birth", "life-length"] {
        assert!(codes.contains(&code), "{code}: {codes:?}");
    }
    assert!(proof.holds());
}

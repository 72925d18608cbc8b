//! Fixtures, refused asks and planted faults of `activity`.

use super::vocabulary::Vocabulary;
use super::*;
use crate::ask::Owner;
use crate::fixture::{Asking, asking, para, said};
use crate::tested::{Fault, Tested, keeps_contract};
use std::path::Path;
use study::Value;

type Doing = study::Activity;

fn lines(field: &str, all: &[&str]) -> Vec<Said> {
    all.iter()
        .enumerate()
        .map(|(i, l)| said(&format!("lessons/edge.md#activity/0/{field}/{i}"), l))
        .collect()
}

fn experiment() -> Doing {
    let mut doing = asking(Owner::Lesson(0)).study.lessons[0].activities[0].clone();
    doing.picture = Some("pool".into());
    doing.intro = vec![para("lessons/edge.md#activity/0/why/0", "Why we do it: to see.")];
    doing.supplies =
        lines("ready", &["two tins", "scissors and paper", "a washing-up bowl", "a tablespoon"]);
    doing.steps = lines(
        "steps",
        &[
            "Cut the paper into cards.",
            "Lay each card under a tin in the bowl.",
            "Stir with the spoon.",
        ],
    );
    doing.ask = lines("ask", &["What did you see?"]);
    doing.table = vec![
        lines("table/0", &["tin", "wet?"]),
        lines("table/1", &["first", ""]),
        lines("table/2", &["second", " "]),
    ];
    doing.answer = Some(vec![para("lessons/edge.md#activity/0/answer/0", "The first is wet.")]);
    doing
}

fn tray() -> Doing {
    let mut doing = experiment();
    doing.form = ActivityForm::Tray;
    doing.tags = vec!["water".into(), "small-parts".into()];
    doing.steps.clear();
    doing.supplies.clear();
    doing.table.clear();
    doing.answer = None;
    doing.base = lines("base", &["a tray of water"]);
    doing.fillers = lines("fillers", &["sponges", "shells"]);
    doing.tools = lines("tools", &["a cup"]);
    doing.idea = Some(vec![para("lessons/edge.md#activity/0/idea/0", "Hide the sponges.")]);
    doing.band = Some(study::Band::A);
    doing
}

fn with(doing: Doing) -> Asking {
    let mut asking = asking(Owner::Lesson(0));
    asking.study.lessons[0].activities = vec![doing];
    asking
}

fn met(doing: Doing) -> Needs {
    needs::needs(&with(doing).ask()).expect("needs")
}

fn refuse(change: fn(&mut Doing)) -> Result<(), Findings> {
    let mut doing = experiment();
    change(&mut doing);
    needs::needs(&with(doing).ask()).map(|_| ())
}

/// Codes of the findings on a doing that prints.
fn told(doing: Doing) -> Vec<String> {
    let needs = met(doing);
    let proof = check::check(&needs, &make::make(&needs));
    assert!(proof.holds(), "{:?}", proof.findings);
    proof.findings.iter().map(|f| format!("{} {}", f.code, f.message)).collect()
}

impl Tested for Activity {
    fn good() -> Vec<Needs> {
        let mut plain = experiment();
        plain.table.clear();
        plain.form = ActivityForm::Kitchen;
        plain.tags.push("food".into());
        vec![met(experiment()), met(tray()), met(plain)]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let mut second = with(experiment());
        second.options.insert("activity".into(), Value::Number(2));
        let mut none = with(experiment());
        none.study.lessons[0].activities.clear();
        let mut part = with(experiment());
        part.owner = Owner::Part(0);
        let ask = |a: &Asking| needs::needs(&a.ask()).map(|_| ());
        vec![
            ("no second activity", ask(&second)),
            ("no activity", ask(&none)),
            ("no lesson", ask(&part)),
            ("no steps", refuse(|d| d.steps.clear())),
            ("no title", refuse(|d| d.title = said("x", ""))),
            ("no time", refuse(|d| d.minutes = Some(0))),
            (
                "ragged table",
                refuse(|d| {
                    d.table[1].pop();
                }),
            ),
            ("table of titles only", refuse(|d| d.table.truncate(1))),
            (
                "empty tray",
                refuse(|d| {
                    d.form = ActivityForm::Tray;
                    d.supplies.clear();
                }),
            ),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("step lost", |_, s, _| s.steps.pop().is_some()),
            ("steps exchanged", |_, s, _| {
                s.steps.len() > 1 && {
                    s.steps.swap(0, 1);
                    true
                }
            }),
            ("step doubled", |_, s, _| {
                s.steps.first().cloned().is_some_and(|x| {
                    s.steps.push(x);
                    true
                })
            }),
            ("other words in a step", |_, s, _| {
                s.steps.first_mut().is_some_and(|x| {
                    *x = said("x", "Do nothing.");
                    true
                })
            }),
            ("supply lost", |_, s, _| s.supplies[0].items.pop().is_some()),
            ("supply in another group", |_, s, _| {
                s.supplies[0].group =
                    if s.supplies[0].group == Group::Tools { Group::Base } else { Group::Tools };
                true
            }),
            ("supply doubled", |_, s, _| {
                let again = s.supplies[0].clone();
                s.supplies.push(again);
                true
            }),
            ("caution lost", |_, s, _| {
                s.cautions.remove(0);
                true
            }),
            ("closing sentence lost", |_, s, _| s.cautions.pop().is_some()),
            ("caution changed", |_, s, _| {
                s.cautions[0] = "Nothing can happen.".into();
                true
            }),
            ("row lost", |_, s, _| s.rows.pop().is_some()),
            ("cell filled in", |_, s, _| {
                s.rows.first_mut().is_some_and(|r| {
                    r[1] = Some(said("x", "yes"));
                    true
                })
            }),
            ("given cell emptied", |_, s, _| {
                s.rows.first_mut().is_some_and(|r| r[0].take().is_some())
            }),
            ("title of a column lost", |_, s, _| s.head.pop().is_some()),
            ("nowhere to write", |_, s, _| {
                s.lines > 0 && {
                    s.lines = 0;
                    true
                }
            }),
            ("answer told", |n, s, _| {
                let answer =
                    n.activity.answer.iter().flatten().flat_map(Block::lines).next().cloned();
                answer.is_some_and(|a| {
                    s.ask.push(a);
                    true
                })
            }),
            ("talk lost", |_, s, _| s.ask.pop().is_some()),
            ("idea lost", |_, s, _| s.idea.pop().is_some()),
            ("picture lost", |_, s, _| s.picture.take().is_some()),
            ("another form", |_, s, _| {
                s.form = if s.form == ActivityForm::Outing {
                    ActivityForm::Tray
                } else {
                    ActivityForm::Outing
                };
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Activity);
}

#[test]
fn a_count_takes_one_activity_after_another() {
    let mut asking = with(experiment());
    asking.study.lessons[0].activities.push(tray());
    let form = |sheet: &str| needs::needs(&Ask { sheet, ..asking.ask() }).map(|n| n.activity.form);
    assert_eq!(form("ls-1.activity.a"), Ok(ActivityForm::Experiment));
    assert_eq!(form("ls-1.activity.b"), Ok(ActivityForm::Tray));
    assert!(form("ls-1.activity.c").is_err());
}

#[test]
fn what_nobody_got_ready_is_noticed() {
    assert_eq!(
        told(experiment()),
        [""; 0],
        "cards are made from the paper, the spoon is a tablespoon"
    );
    let mut doing = experiment();
    doing.steps = lines(
        "steps",
        &[
            "Set it on a tray and leave it, like a plate.",
            "Weigh it on the scales.",
            "Fill the trays.",
        ],
    );
    let told = told(doing);
    assert_eq!(told.len(), 2, "{told:?}");
    assert!(told[0].contains("step 1") && told[0].contains("`tray`"), "{told:?}");
    assert!(told[1].contains("`scales`"), "{told:?}");
}

#[test]
fn what_calls_for_a_caution_is_noticed() {
    let calls = |words: &str, form: ActivityForm| {
        let mut doing = experiment();
        doing.form = form;
        doing.supplies = lines("ready", &[words]);
        doing.steps = lines("steps", &["Go on."]);
        Vocabulary::of("en-GB")
            .called_for(&doing)
            .into_iter()
            .map(|(tag, _)| tag)
            .collect::<Vec<_>>()
    };
    let indoors = ActivityForm::Experiment;
    assert_eq!(calls("a pair of scissors", indoors), ["cut"]);
    assert_eq!(calls("two strong magnets", indoors), ["magnet"]);
    assert_eq!(calls("a sharp knife and an oven", indoors), ["heat", "knife"]);
    assert_eq!(calls("a magnifying glass", indoors), [""; 0]);
    assert_eq!(calls("a glass", indoors), ["glass"]);
    assert_eq!(calls("a picture of the sea", indoors), [""; 0]);
    assert_eq!(calls("the tide times", ActivityForm::Outing), ["outdoors", "shore"]);
    assert_eq!(calls("a bowl", ActivityForm::Kitchen), ["food"]);
    let mut doing = experiment();
    doing.tags.clear();
    let told = told(doing);
    assert_eq!(told.iter().filter(|t| t.starts_with("tag-missing")).count(), 2, "{told:?}");
}

#[test]
fn time_is_looked_at() {
    let with_minutes = |minutes| {
        let mut doing = experiment();
        doing.minutes = minutes;
        told(doing).join(" ")
    };
    assert!(with_minutes(None).contains("minutes-unsaid"));
    assert!(with_minutes(Some(3000)).contains("minutes-many"));
    assert_eq!(with_minutes(Some(90)), "");
}

/// The activities of the sample study print, and are warned about nothing: its author has looked at each warning.
#[test]
fn the_sample_study_is_not_nagged() {
    let read =
        study::read(&Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies/rocky-shore"));
    let study = read.study.expect("the sample study");
    let mut asking = asking(Owner::Lesson(0));
    asking.study = study;
    let mut seen = 0;
    for i in 0..asking.study.lessons.len() {
        asking.owner = Owner::Lesson(i);
        for n in 1..=asking.study.lessons[i].activities.len() {
            asking
                .options
                .insert("activity".into(), Value::Number(i64::try_from(n).expect("small")));
            let needs = needs::needs(&asking.ask()).expect("needs");
            let proof = check::check(&needs, &make::make(&needs));
            assert!(proof.findings.is_empty(), "{}: {:?}", needs.title, proof.findings);
            seen += 1;
        }
    }
    assert!(seen >= 9, "{seen} activities");
}

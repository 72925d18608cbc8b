//! Fixtures, refused asks and planted faults of `writing-prompts`.

use super::*;
use crate::ask::Owner;
use crate::fixture::{Asking, asking, said};
use crate::tested::{Fault, Tested, keeps_contract};
use study::{Band, Prompt, PromptFor, Value};

fn asked(band: Band, count: usize, length: usize) -> Asking {
    let mut asking = asking(Owner::Lesson(0)).band(band);
    let groups = [PromptFor::Little, PromptFor::Middle, PromptFor::Teen];
    asking.study.prompts = (0..count * 3)
        .map(|i| Prompt {
            prompt: said(
                &format!("prompts.csv#{i}/prompt"),
                &format!("{i} {}", "wave ".repeat(length / 5)),
            ),
            whom: groups[i % 3],
            wherever: vec!["edge".into()],
        })
        .collect();
    asking
}

fn met(asking: &Asking) -> Needs {
    needs::needs(&asking.ask()).expect("needs")
}

fn refuse(asking: &Asking) -> Result<(), Findings> {
    needs::needs(&asking.ask()).map(|_| ())
}

impl Tested for WritingPrompts {
    fn good() -> Vec<Needs> {
        let mut four = asked(Band::B, 5, 60);
        four.options.insert("prompts".into(), Value::Number(4));
        vec![
            met(&asked(Band::A, 5, 100)),
            met(&asked(Band::B, 7, 150)),
            met(&asked(Band::C, 1, 390)),
            met(&asked(Band::D, 4, 300)),
            met(&four),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let mut twice = asked(Band::B, 2, 40);
        twice.study.prompts[4].prompt = twice.study.prompts[1].prompt.clone();
        let mut teen = asked(Band::A, 1, 40);
        teen.study.prompts.retain(|p| p.whom != PromptFor::Teen);
        teen.options.insert("for".into(), Value::Text("teen".into()));
        vec![
            ("no prompt", refuse(&asked(Band::B, 0, 40))),
            ("none for the group", refuse(&teen)),
            ("a prompt twice", refuse(&twice)),
            ("a prompt too long", refuse(&asked(Band::B, 1, 500))),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        fn first(s: &mut Sheet) -> &mut Slot {
            &mut s.pages[0].slots[0]
        }
        &[
            ("prompt dropped", |_, s, _| s.pages[0].slots.pop().is_some()),
            ("prompt doubled", |_, s, _| {
                let again = first(s).clone();
                s.pages[0].slots.push(again);
                true
            }),
            ("other words", |_, s, _| {
                first(s).prompt = said("x", "Something else.");
                true
            }),
            ("prompts exchanged", |_, s, _| {
                s.pages.len() > 1 && {
                    s.pages.swap(0, 1);
                    true
                }
            }),
            ("wrong number", |_, s, _| {
                first(s).n += 1;
                true
            }),
            ("picture lost", |_, s, _| first(s).picture.take().is_some()),
            ("no lines", |_, s, _| {
                first(s).lines = 0;
                true
            }),
            ("too few lines for the age", |n, s, _| {
                n.band == Band::D && {
                    first(s).lines = 5;
                    true
                }
            }),
            ("lines run into the next prompt", |_, s, _| {
                first(s).lines += 4;
                true
            }),
            ("places higher than the page", |n, s, _| {
                s.pages[0].height = n.room.body_h + 1;
                true
            }),
            ("frame for one who writes", |_, s, _| {
                first(s).frame = !first(s).frame;
                true
            }),
            ("empty page", |_, s, _| {
                s.pages.push(Page { height: 1000, slots: Vec::new() });
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&WritingPrompts);
}

#[test]
fn the_band_chooses_its_group_and_the_option_another() {
    let mut asking = asked(Band::A, 2, 40);
    assert!(met(&asking).themes[0].prompt.plain().starts_with('0'));
    asking.options.insert("for".into(), Value::Text("teen".into()));
    assert!(met(&asking).themes[0].prompt.plain().starts_with('2'));
}

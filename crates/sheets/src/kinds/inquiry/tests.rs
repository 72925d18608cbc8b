//! Fixtures, refused asks and planted faults of `inquiry`.

use super::*;
use crate::ask::Owner;
use crate::fixture::{asking, said};
use crate::tested::{Fault, Tested, keeps_contract};
use study::{Band, Value};

fn met(band: Band, boxes: &[&str]) -> Needs {
    let mut asking = asking(Owner::Lesson(0)).band(band);
    if !boxes.is_empty() {
        asking.options.insert("boxes".into(), list(boxes));
    }
    needs::needs(&asking.ask()).expect("needs")
}

fn list(boxes: &[&str]) -> Value {
    Value::List(boxes.iter().map(|b| Value::Text((*b).into())).collect())
}

fn refuse(boxes: &[&str]) -> Result<(), Findings> {
    let mut asking = asking(Owner::Study);
    asking.options.insert("boxes".into(), list(boxes));
    needs::needs(&asking.ask()).map(|_| ())
}

impl Tested for Inquiry {
    fn good() -> Vec<Needs> {
        let six = [
            "The one I chose",
            "I wonder",
            "My guess",
            "I saw",
            "A person told me",
            "Draw it where it lives",
        ];
        vec![
            met(Band::A, &[]),
            met(Band::B, &[]),
            met(Band::C, &six),
            met(
                Band::D,
                &["Choice", "Why", "How", "Where", "Who", "When", "What next", "A map of it"],
            ),
            met(Band::B, &["Question", "Answer"]),
            met(Band::C, &["Draw it", "Say it", "Show it"]),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![
            ("one box", refuse(&["Alone"])),
            ("nine boxes", refuse(&["1", "2", "3", "4", "5", "6", "7", "8", "9"])),
            ("nameless", refuse(&["One", " "])),
            ("twice", refuse(&["One", "One"])),
            (
                "too long",
                refuse(&["One", "What I would like to know more about than anybody else does"]),
            ),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("box dropped", |_, s, _| s.boxes.pop().is_some()),
            ("box doubled", |_, s, _| {
                s.boxes.push(s.boxes[0].clone());
                true
            }),
            ("name changed", |_, s, _| {
                s.boxes[0].title = said("x", "Something else");
                true
            }),
            ("names exchanged", |_, s, _| {
                let (a, b) = (s.boxes[0].title.clone(), s.boxes[1].title.clone());
                (s.boxes[0].title, s.boxes[1].title) = (b, a);
                true
            }),
            ("hint lost", |_, s, _| s.boxes[1].hint.take().is_some()),
            ("off the right edge", |_, s, _| {
                s.boxes[1].x += 100_000;
                true
            }),
            ("off the foot", |_, s, _| {
                s.boxes.last_mut().is_some_and(|b| {
                    b.y += 60_000;
                    true
                })
            }),
            ("one on another", |_, s, _| {
                s.boxes[1].y = s.boxes[0].y;
                s.boxes[1].x = s.boxes[0].x;
                true
            }),
            ("gap closed", |_, s, _| {
                s.boxes[0].h += 4000;
                true
            }),
            ("too low to write in", |_, s, _| {
                s.boxes[0].h = 20_000;
                true
            }),
            ("too narrow", |_, s, _| {
                s.boxes[0].w = 50_000;
                true
            }),
            ("lines for drawing", |_, s, _| {
                s.boxes.iter_mut().find(|b| b.fill == Fill::Dots).is_some_and(|b| {
                    b.fill = Fill::Lines;
                    true
                })
            }),
            ("lines for the youngest", |n, s, _| {
                n.band == Band::A && {
                    s.boxes[1].fill = Fill::Lines;
                    true
                }
            }),
            ("dots for writing", |_, s, _| {
                s.boxes.iter_mut().find(|b| b.fill == Fill::Lines).is_some_and(|b| {
                    b.fill = Fill::Dots;
                    true
                })
            }),
            ("page half empty", |_, s, _| {
                s.boxes.iter_mut().for_each(|b| b.h = (b.h / 2).max(25_000));
                s.boxes.len() < 4
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Inquiry);
}

#[test]
fn the_studys_names_come_before_our_own() {
    let mut asking = asking(Owner::Study);
    assert_eq!(needs::needs(&asking.ask()).expect("needs").boxes.len(), 6);
    asking.study.inquiry_boxes = vec![
        said("study.toml#inquiry/boxes/0", "Mine"),
        said("study.toml#inquiry/boxes/1", "Draw mine"),
    ];
    let needs = needs::needs(&asking.ask()).expect("needs");
    assert_eq!(needs.boxes.iter().map(|b| b.used).collect::<Vec<_>>(), [Use::Choose, Use::Draw]);
    assert_eq!(needs.boxes[0].title.at.to_string(), "study.toml#inquiry/boxes/0");
}

//! Fixtures, refused asks and planted faults of `compare`.

use super::*;
use crate::ask::Owner;
use crate::fixture::{Asking, asking, said};
use crate::tested::{Fault, Tested, keeps_contract};
use study::{Band, CompareRow, Compared};

fn row(i: usize, both: bool) -> CompareRow {
    let at = |field: &str| format!("lessons/edge.md#compare/{i}/{field}");
    let what = if both {
        Compared::Both(said(&at("both"), &format!("shared {i}")))
    } else {
        Compared::Each(
            said(&at("first"), &format!("one {i}")),
            said(&at("second"), &format!("other {i}")),
        )
    };
    CompareRow { aspect: said(&at("aspect"), &format!("aspect {i}")), what }
}

fn asked(differ: usize, alike: usize) -> Asking {
    let mut asking = asking(Owner::Lesson(0));
    let lesson = &mut asking.study.lessons[0];
    let mut second = lesson.subjects[0].clone();
    second.name = "limpet".into();
    second.title = said("lessons/edge.md#subject/1/title", "The limpet");
    second.picture = Some("limpet".into());
    lesson.subjects.push(second);
    lesson.compare = (0..differ + alike).map(|i| row(i, i >= differ)).collect();
    asking
}

fn met(asking: &Asking) -> Needs {
    needs::needs(&asking.ask()).expect("needs")
}

fn refuse(change: fn(&mut Asking)) -> Result<(), Findings> {
    let mut asking = asked(4, 2);
    change(&mut asking);
    needs::needs(&asking.ask()).map(|_| ())
}

impl Tested for Compare {
    fn good() -> Vec<Needs> {
        vec![
            met(&asked(5, 3).level(1)),
            met(&asked(5, 3).level(2)),
            met(&asked(5, 3).level(3).band(Band::D)),
            met(&asked(2, 1).band(Band::A)),
            met(&asked(3, 0).level(2).band(Band::C)),
            met(&asked(1, 4).level(2)),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![
            ("one subject", refuse(|a| a.study.lessons[0].subjects.truncate(1))),
            ("no lesson", refuse(|a| a.owner = Owner::Study)),
            ("two rows", refuse(|a| a.study.lessons[0].compare.truncate(2))),
            (
                "no difference",
                refuse(|a| a.study.lessons[0].compare = (0..5).map(|i| row(i, true)).collect()),
            ),
            (
                "a heading twice",
                refuse(|a| a.study.lessons[0].compare[1].aspect = said("x", "Aspect 0")),
            ),
            (
                "the same of both",
                refuse(|a| {
                    a.study.lessons[0].compare[0].what =
                        Compared::Each(said("x", "soft"), said("y", "Soft "))
                }),
            ),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("row lost", |_, s, _| s.rows.pop().is_some()),
            ("row doubled", |_, s, _| {
                s.rows.first().cloned().is_some_and(|r| {
                    s.rows.push(r);
                    true
                })
            }),
            ("row of nobody's", |_, s, _| {
                s.rows.first_mut().is_some_and(|r| {
                    r.aspect = said("x", "colour");
                    true
                })
            }),
            ("given words changed", |_, s, _| {
                s.rows.iter_mut().find_map(|r| r.first.as_mut()).is_some_and(|f| {
                    *f = said("x", "made up");
                    true
                })
            }),
            ("sides exchanged", |_, s, _| {
                s.rows.iter_mut().find(|r| r.alike == Some(false)).is_some_and(|r| {
                    std::mem::swap(&mut r.first, &mut r.second);
                    true
                })
            }),
            ("gap filled in", |n, s, _| {
                let row = s.rows.iter_mut().find(|r| r.first.is_none() && r.alike != Some(true));
                row.is_some_and(|r| {
                    r.first =
                        answers::row_of(n, &r.aspect).map(|o| answers::sayings(o)[0].1.clone());
                    true
                })
            }),
            ("answer told in another cell", |n, s, _| {
                let gap = s
                    .rows
                    .iter()
                    .find(|r| r.first.is_none())
                    .and_then(|r| answers::row_of(n, &r.aspect))
                    .map(|o| answers::sayings(o)[0].1.clone());
                let cell = s.rows.iter_mut().find(|r| r.first.is_some());
                gap.zip(cell).is_some_and(|(gap, cell)| {
                    cell.first = Some(gap);
                    true
                })
            }),
            ("wrong heading", |_, s, _| {
                s.rows.first_mut().is_some_and(|r| {
                    r.alike = r.alike.map_or(Some(true), |a| Some(!a));
                    true
                })
            }),
            ("no lines", |_, s, _| {
                !s.rows.is_empty() && {
                    s.lines = 0;
                    true
                }
            }),
            ("pictures exchanged", |_, s, _| {
                std::mem::swap(&mut s.first, &mut s.second);
                true
            }),
            ("sentence lost", |_, s, _| s.sentences.pop().is_some()),
            ("sentence doubled", |_, s, _| {
                s.sentences.len() > 1 && {
                    s.sentences[0].what = s.sentences[1].what.clone();
                    s.sentences[0].aspect = s.sentences[1].aspect.clone();
                    true
                }
            }),
            ("sentence of nobody's", |_, s, _| {
                s.sentences.first_mut().is_some_and(|x| {
                    x.what = said("x", "made up");
                    true
                })
            }),
            ("wrong number", |_, s, _| {
                s.sentences.first_mut().is_some_and(|x| {
                    x.n = 7;
                    true
                })
            }),
            ("grouped by answer", |n, s, _| {
                let which = |x: &Sentence| {
                    answers::row_of(n, &x.aspect)
                        .and_then(|r| answers::sayings(r).into_iter().find(|(_, w)| **w == x.what))
                        .map(|(w, _)| w)
                };
                s.sentences.sort_by_key(which);
                s.sentences.iter_mut().zip(1..).for_each(|(x, i)| x.n = i);
                s.sentences.len() > 4
            }),
            ("another level", |_, s, _| {
                s.level = 3 - s.level % 2;
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Compare);
}

#[test]
fn the_key_has_every_row_in_full() {
    let needs = met(&asked(4, 2).level(2));
    let sheet = make::make(&needs, &mut Dice::from_number(3));
    let key = Compare::key(&needs, &sheet).expect("key");
    assert_eq!(key.rows.len(), 6);
    assert_eq!(key.rows.iter().filter(|r| r.second.is_none()).count(), 2);
    for (full, row) in key.rows.iter().zip(&sheet.rows) {
        assert_eq!(full.aspect, row.aspect);
    }
}

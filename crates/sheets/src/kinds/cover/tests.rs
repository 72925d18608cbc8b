//! Good covers, one that must be refused, and planted faults.

use super::{Cover, Front};
use crate::ask::Owner;
use crate::fixture::{asking, said};
use crate::kind::Kind;
use crate::tested::{Fault, Tested, keeps_contract};
use findings::Findings;

fn full() -> Front {
    Cover::needs(&asking(Owner::Study).ask()).expect("a cover")
}

impl Tested for Cover {
    fn good() -> Vec<Front> {
        let mut plain = asking(Owner::Study);
        plain.study.cover = None;
        plain.study.pictures.clear();
        plain.study.subtitle = None;
        plain.study.author = None;
        vec![full(), Cover::needs(&plain.ask()).expect("a plain cover")]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let mut nameless = asking(Owner::Study);
        nameless.study.title = said("study.toml#title", "  ");
        vec![("no title", Cover::needs(&nameless.ask()).map(|_| ()))]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("another title", |_, s, _| {
                s.title = said("study.toml#title", "The Sandy Shore");
                true
            }),
            ("subtitle lost", |_, s, _| s.subtitle.take().is_some()),
            ("author lost", |_, s, _| s.author.take().is_some()),
            ("another press", |_, s, _| {
                s.press = Some(said("study.toml#press", "Other Press"));
                true
            }),
            ("another issue", |_, s, _| {
                s.issue.push('1');
                true
            }),
            ("ages run backwards", |_, s, _| {
                std::mem::swap(&mut s.ages.from, &mut s.ages.to);
                true
            }),
            ("picture swapped", |_, s, _| match &mut s.picture {
                Some(p) => {
                    p.hash = "hash of another".into();
                    true
                }
                None => false,
            }),
            ("picture lost", |_, s, _| s.picture.take().is_some()),
            ("picture without size", |_, s, _| s.picture.as_mut().map(|p| p.width = 0).is_some()),
            ("lessons miscounted", |_, s, _| {
                s.lessons += 1;
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Cover);
}

#[test]
fn without_a_cover_picture_the_first_lesson_lends_its_own() {
    let mut asking = asking(Owner::Study);
    asking.study.cover = None;
    asking.study.lessons[0].picture = None;
    let front = Cover::needs(&asking.ask()).expect("a cover");
    assert_eq!(front.picture.map(|p| p.name).as_deref(), Some("limpet"));
}

#[test]
fn the_head_is_bare_and_names_the_picture() {
    let front = full();
    let head = Cover::head(&front, &front);
    assert!(head.bare && !head.name_line);
    assert_eq!(head.pictures, ["pool"]);
    assert_eq!(head.title, "The Moving Shore");
}

//! Fixtures, refused asks and planted faults of `scavenger-hunt`.

use super::*;
use crate::ask::Owner;
use crate::fixture::{Asking, asking, said};
use crate::tested::{Fault, Tested, keeps_contract};
use study::{Band, HuntItem, Value};

fn row(i: usize, item: &str, picture: Option<&str>, hint: &str) -> HuntItem {
    HuntItem {
        item: said(&format!("hunt.csv#{i}/item"), item),
        picture: picture.map(str::to_owned),
        wherever: vec!["edge".into()],
        hint: Some(said(&format!("hunt.csv#{i}/hint"), hint)),
        safe: Some(said(&format!("hunt.csv#{i}/safe"), "Look only.")),
    }
}

fn hunting(band: Band, count: usize) -> Asking {
    let mut asking = asking(Owner::Lesson(0)).band(band);
    let pictures = ["pool", "limpet", "crab"];
    let hints = ["Under weed.", "On the beach.", "In a street.", "By a wall."];
    asking.study.hunt = (0..count)
        .map(|i| row(i, &format!("thing {i}"), (i % 4 != 3).then(|| pictures[i % 3]), hints[i % 4]))
        .collect();
    asking
}

fn met(asking: &Asking) -> Needs {
    needs::needs(&asking.ask()).expect("needs")
}

fn refuse(asking: &Asking) -> Result<(), Findings> {
    needs::needs(&asking.ask()).map(|_| ())
}

fn with_tags(mut asking: Asking, tags: &[&str]) -> Asking {
    asking.options.insert(
        "tags".into(),
        Value::List(tags.iter().map(|t| Value::Text((*t).into())).collect()),
    );
    asking
}

impl Tested for ScavengerHunt {
    fn good() -> Vec<Needs> {
        let indoors = with_tags(hunting(Band::B, 5), &["small-parts"]);
        vec![
            met(&hunting(Band::A, 16)),
            met(&hunting(Band::B, 16)),
            met(&hunting(Band::C, 4)),
            met(&hunting(Band::D, 33)),
            met(&indoors),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let mut twice = hunting(Band::B, 6);
        twice.study.hunt[3].item = said("hunt.csv#3/item", "Thing 1");
        vec![
            ("three things", refuse(&hunting(Band::B, 3))),
            ("a thing twice", refuse(&twice)),
            ("a tag that is none", refuse(&with_tags(hunting(Band::B, 5), &["bears"]))),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        fn first(s: &mut Sheet) -> &mut Find {
            &mut s.pages[0][0]
        }
        &[
            ("thing dropped", |_, s, _| s.pages.last_mut().is_some_and(|p| p.pop().is_some())),
            ("thing doubled", |_, s, _| {
                let again = first(s).clone();
                s.pages[0].push(again);
                true
            }),
            ("other words", |_, s, _| {
                first(s).item = said("x", "something else");
                true
            }),
            ("things exchanged", |_, s, _| {
                s.pages[0].swap(0, 1);
                true
            }),
            ("wrong number", |_, s, _| {
                first(s).n = 9;
                true
            }),
            ("picture lost", |_, s, _| first(s).picture.take().is_some()),
            ("another's picture", |_, s, _| {
                let other = s.pages[0][1].picture.clone();
                first(s).picture != other && {
                    first(s).picture = other;
                    true
                }
            }),
            ("hint lost", |_, s, _| first(s).hint.take().is_some()),
            ("hint for the youngest", |n, s, _| {
                n.band == Band::A && {
                    first(s).hint = Some(said("x", "Look up."));
                    true
                }
            }),
            ("rule lost", |_, s, _| first(s).safe.take().is_some()),
            ("caution lost", |_, s, _| {
                s.cautions.remove(0);
                true
            }),
            ("closing sentence lost", |_, s, _| s.cautions.pop().is_some()),
            ("closing sentence first", |_, s, _| {
                s.cautions.reverse();
                true
            }),
            ("page crowded", |n, s, _| {
                let all: Vec<Find> = s.pages.drain(..).flatten().collect();
                let many = all.len() > if n.band == Band::D { 16 } else { 12 };
                s.pages.push(all);
                many
            }),
            ("empty page", |_, s, _| {
                s.pages.push(Vec::new());
                true
            }),
            ("wrong size of pictures", |_, s, _| {
                s.large = !s.large;
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&ScavengerHunt);
}

#[test]
fn the_shore_is_known_by_its_words() {
    assert_eq!(met(&hunting(Band::B, 8)).tags, ["outdoors", "shore"]);
    let mut inland = hunting(Band::B, 8);
    inland.study.hunt.iter_mut().for_each(|h| h.hint = None);
    assert_eq!(met(&inland).tags, ["outdoors"]);
    // Left out by the author: printed all the same, with a warning.
    let needs = met(&with_tags(hunting(Band::B, 8), &["outdoors"]));
    let proof = check::check(&needs, &make::make(&needs));
    assert!(proof.holds());
    assert_eq!(proof.findings.iter().filter(|f| f.code == "hunt-shore").count(), 1);
}

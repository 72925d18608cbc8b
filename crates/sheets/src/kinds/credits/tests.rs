//! Credits of small studies, and planted faults.

use super::{Credits, Needs, Sheet, Source};
use crate::ask::Owner;
use crate::fixture::{asking, gathered, said};
use crate::kind::Kind;
use crate::tested::{Fault, Tested, keeps_contract};
use findings::{Findings, Severity};

fn needs() -> Needs {
    let mut asking = asking(Owner::Study);
    asking.gathered = gathered();
    Credits::needs(&asking.ask()).expect("credits")
}

fn made(needs: &Needs) -> Sheet {
    super::make::make(needs)
}

impl Tested for Credits {
    fn good() -> Vec<Needs> {
        let mut gaps = asking(Owner::Study);
        gaps.gathered = gathered();
        gaps.study.links.clear();
        for picture in gaps.study.pictures.values_mut() {
            picture.author = None;
            picture.licence = None;
        }
        vec![needs(), Credits::needs(&gaps.ask()).expect("credits with gaps")]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![("no other sheets", Credits::needs(&asking(Owner::Study).ask()).map(|_| ()))]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("picture forgotten", |_, s, _| {
                s.pictures.first_mut().and_then(|o| o.names.pop()).is_some()
            }),
            ("picture twice", |_, s, _| {
                s.pictures.first_mut().map(|o| o.names.push(o.names[0].clone())).is_some()
            }),
            ("picture invented", |_, s, _| {
                s.pictures.first_mut().map(|o| o.names.push("whale".into())).is_some()
            }),
            ("picture under another author", |_, s, _| {
                s.pictures.first_mut().map(|o| o.rights.author = Some("Nobody".into())).is_some()
            }),
            ("another licence", |_, s, _| {
                s.pictures.first_mut().map(|o| o.rights.licence = Some("none".into())).is_some()
            }),
            ("pictures swapped between authors", |_, s, _| {
                if s.pictures.len() < 2 {
                    return false;
                }
                let other = s.pictures[1].names.clone();
                s.pictures[1].names = std::mem::replace(&mut s.pictures[0].names, other);
                true
            }),
            ("source forgotten", |_, s, _| s.sources.pop().is_some()),
            ("source twice", |_, s, _| {
                s.sources.first().cloned().map(|x| s.sources.push(x)).is_some()
            }),
            ("source invented", |_, s, _| {
                let text = |t: &str| t.to_owned();
                s.sources.push(Source {
                    publisher: text("Nobody"),
                    source: text("A book"),
                    year: text("1900"),
                    address: text(""),
                });
                true
            }),
            ("year of a source changed", |_, s, _| {
                s.sources.first_mut().map(|x| x.year.push('1')).is_some()
            }),
            ("terms lost", |_, s, _| s.imprint.terms.take().is_some()),
            ("another author", |_, s, _| {
                s.imprint.author = Some(said("study.toml#author", "Nobody"));
                true
            }),
            ("another issue", |_, s, _| {
                s.imprint.issue.push('1');
                true
            }),
            ("another date", |_, s, _| s.imprint.date.as_mut().map(|d| d.day += 1).is_some()),
            ("dictionary invented", |_, s, _| {
                s.dictionary = !s.dictionary;
                true
            }),
            ("note on links lost", |_, s, _| {
                s.links = !s.links;
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Credits);
}

#[test]
fn pictures_of_openers_are_named_too_and_those_of_no_sheet_are_not() {
    let sheet = made(&needs());
    let names: Vec<&str> =
        sheet.pictures.iter().flat_map(|o| &o.names).map(String::as_str).collect();
    assert_eq!(names, ["pool", "limpet"], "the crab is shown nowhere");
}

#[test]
fn each_source_is_named_once_and_only_if_used() {
    let mut asking = asking(Owner::Study);
    asking.gathered = gathered();
    asking.gathered.entries.retain(|e| e.lesson != Some(1));
    let needs = Credits::needs(&asking.ask()).expect("credits");
    let titles: Vec<String> = made(&needs).sources.into_iter().map(|s| s.source).collect();
    assert_eq!(titles, ["High high tide", "Lunar tides"]);
}

#[test]
fn facts_without_a_source_are_hinted_at() {
    let mut asking = asking(Owner::Study);
    asking.gathered = gathered();
    asking.study.facts.get_mut("tide-why").expect("a fact").source.clear();
    let needs = Credits::needs(&asking.ask()).expect("credits");
    let proof = Credits::check(&needs, &made(&needs));
    assert!(proof.holds());
    assert_eq!(proof.findings.count(Severity::Hint), 1);
}

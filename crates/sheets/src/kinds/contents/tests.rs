//! Contents of small studies, and planted faults.

use super::{Contents, Group, Heading, Needs, Sheet};
use crate::ask::{Gathered, Owner};
use crate::fixture::{asking, entry, gathered, said};
use crate::kind::Kind;
use crate::tested::{Fault, Tested, keeps_contract};
use findings::Findings;
use study::Value;

fn needs_of(gathered: Gathered) -> Needs {
    let mut asking = asking(Owner::Study);
    asking.gathered = gathered;
    Contents::needs(&asking.ask()).expect("contents")
}

fn made(needs: &Needs) -> Sheet {
    super::make::make(needs)
}

/// A lesson's sheet that prints at the end of its part, and one that prints at the back.
fn moved() -> Gathered {
    let mut all = gathered();
    let mut late = entry("word-search", Owner::Lesson(0), "Words of the edge");
    late.id = "ls-0.word-search.late".into();
    let credits = all.entries.len() - 1;
    all.entries.insert(credits, late);
    all
}

impl Tested for Contents {
    fn good() -> Vec<Needs> {
        let mut list = asking(Owner::Study);
        list.gathered = gathered();
        list.options.insert("list".into(), Value::Flag(true));
        let mut short = asking(Owner::Study);
        short.gathered = moved();
        short.options.insert("short".into(), Value::Flag(true));
        vec![
            needs_of(gathered()),
            needs_of(moved()),
            Contents::needs(&list.ask()).expect("a list"),
            Contents::needs(&short.ask()).expect("a short list"),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let asking = asking(Owner::Study);
        vec![("nothing to list", Contents::needs(&asking.ask()).map(|_| ()))]
    }

    fn faults() -> &'static [Fault<Self>] {
        fn lesson(s: &mut Sheet) -> Option<&mut Group> {
            s.groups
                .iter_mut()
                .find(|g| matches!(g.head, Heading::Lesson { .. }) && g.lines.len() > 1)
        }
        &[
            ("sheet forgotten", |_, s, _| lesson(s).and_then(|g| g.lines.pop()).is_some()),
            ("sheet twice", |_, s, _| {
                lesson(s).map(|g| g.lines.push(g.lines[0].clone())).is_some()
            }),
            ("out of order", |_, s, _| lesson(s).map(|g| g.lines.swap(0, 1)).is_some()),
            ("another title", |_, s, _| lesson(s).map(|g| g.lines[0].title.push('!')).is_some()),
            ("another sign", |_, s, _| {
                lesson(s).map(|g| g.lines[0].sign = "make".into()).is_some()
            }),
            ("another type", |_, s, _| {
                lesson(s).map(|g| g.lines[0].what = "maze".into()).is_some()
            }),
            ("unknown sheet", |_, s, _| {
                lesson(s).map(|g| g.lines[0].id = "nobody".into()).is_some()
            }),
            ("wrong lesson number", |_, s, _| match lesson(s).map(|g| &mut g.head) {
                Some(Heading::Lesson { n, .. }) => {
                    *n += 1;
                    true
                }
                _ => false,
            }),
            ("wrong lesson title", |_, s, _| match lesson(s).map(|g| &mut g.head) {
                Some(Heading::Lesson { title, .. }) => {
                    *title = said("lessons/x.md#title", "Another lesson");
                    true
                }
                _ => false,
            }),
            ("lesson leads elsewhere", |_, s, _| match lesson(s) {
                Some(Group { head: Heading::Lesson { id, .. }, lines, .. }) => {
                    id.clone_from(&lines[1].id);
                    true
                }
                _ => false,
            }),
            ("part forgotten", |_, s, _| s.groups.iter_mut().find_map(|g| g.part.take()).is_some()),
            ("part renumbered", |_, s, _| {
                s.groups.iter_mut().find_map(|g| g.part.as_mut()).map(|p| p.n += 1).is_some()
            }),
            ("counted one too many", |_, s, _| {
                lesson(s).and_then(|g| g.counts.values_mut().next()).map(|n| *n += 1).is_some()
            }),
            ("a sign not counted", |_, s, _| {
                lesson(s).and_then(|g| g.counts.pop_first()).is_some()
            }),
            ("long instead of short", |_, s, _| {
                s.short = !s.short;
                true
            }),
            ("moved into another group", |_, s, _| {
                let Some(i) = s.groups.iter().position(|g| matches!(g.head, Heading::Front)) else {
                    return false;
                };
                let Some(line) = s.groups[i].lines.pop() else { return false };
                s.groups[i + 1].lines.insert(0, line);
                true
            }),
            ("lesson split in two", |_, s, _| {
                let Some(i) = s
                    .groups
                    .iter()
                    .position(|g| matches!(g.head, Heading::Lesson { .. }) && g.lines.len() > 1)
                else {
                    return false;
                };
                let half = Group {
                    lines: s.groups[i].lines.split_off(1),
                    part: None,
                    head: s.groups[i].head.clone(),
                    counts: s.groups[i].counts.clone(),
                };
                s.groups.insert(i + 1, half);
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Contents);
}

fn outline(sheet: &Sheet) -> Vec<String> {
    let head = |g: &Group| match &g.head {
        Heading::Front => "front".to_owned(),
        Heading::Lesson { n, .. } => format!("lesson {n}"),
        Heading::Part => "part".to_owned(),
        Heading::Back => "back".to_owned(),
    };
    sheet.groups.iter().map(|g| format!("{} {}", head(g), g.lines.len())).collect()
}

#[test]
fn groups_follow_the_printing_order() {
    let sheet = made(&needs_of(gathered()));
    assert_eq!(outline(&sheet), ["front 1", "lesson 1 3", "part 1", "lesson 2 2", "back 3"]);
    assert_eq!(sheet.groups[2].part.as_ref().map(|p| p.n), Some(1));
    assert_eq!(sheet.groups[3].part, None);
}

#[test]
fn a_sheet_that_prints_late_opens_no_second_heading_of_its_lesson() {
    let sheet = made(&needs_of(moved()));
    assert_eq!(outline(&sheet), ["front 1", "lesson 1 3", "part 1", "lesson 2 2", "back 4"]);
}

#[test]
fn the_end_of_a_part_stands_by_itself() {
    let mut all = gathered();
    let at = all.entries.iter().position(|e| e.kind == "pairs").expect("pairs");
    let mut third = entry("lesson-opener", Owner::Lesson(2), "A third lesson");
    third.part = Some(0);
    let mut end = entry("maze", Owner::Lesson(1), "Find the way");
    end.part = Some(0);
    all.entries.splice(at..at, [third, end]);
    let mut needs = needs_of(all);
    needs.lessons.push(said("lessons/third.md#title", "A third lesson"));
    let sheet = made(&needs);
    assert_eq!(
        outline(&sheet),
        ["front 1", "lesson 1 3", "part 1", "lesson 2 2", "lesson 3 0", "part 1", "back 3"]
    );
    assert!(Contents::check(&needs, &sheet).holds());
}

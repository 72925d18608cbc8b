//! Puts the sheets under their headings.

use super::{Group, Heading, Needs, Numbered, Row, Sheet};
use std::collections::{BTreeMap, BTreeSet};
use study::Said;

/// What a run of sheets has in common, by index.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Run {
    Front,
    Lesson(usize),
    Part(usize),
    Back,
}

pub(super) fn make(needs: &Needs) -> Sheet {
    let mut groups: Vec<Group> = Vec::new();
    let mut now = Run::Front;
    let (mut lessons, mut parts) = (BTreeSet::new(), BTreeSet::new());
    for row in &needs.sheets {
        let run = next(now, row, &lessons);
        lessons.extend(row.lesson);
        if groups.is_empty() || run != now {
            let begins = row.part.filter(|p| run != Run::Back && parts.insert(*p));
            groups.push(Group {
                head: heading(needs, run, row),
                part: begins.and_then(|p| numbered(needs, p)),
                lines: Vec::new(),
                counts: BTreeMap::new(),
            });
            now = run;
        }
        let Some(group) = groups.last_mut() else { continue };
        *group.counts.entry(row.line.sign.clone()).or_default() += 1;
        match &mut group.head {
            // The opener's page stands beside the lesson's own title.
            Heading::Lesson { id, .. } if row.opens => id.clone_from(&row.line.id),
            _ => group.lines.push(row.line.clone()),
        }
    }
    Sheet { list: needs.list, short: needs.short, groups }
}

/// The run that a sheet stands in. A lesson has one run; its sheets that print
/// after another run has begun stand with the end of their part, or at the back.
fn next(now: Run, row: &Row, begun: &BTreeSet<usize>) -> Run {
    match (row.lesson, row.part) {
        (Some(l), _) if now == Run::Lesson(l) || !begun.contains(&l) => Run::Lesson(l),
        (Some(_), Some(p)) if in_part(now, p, row, begun) => Run::Part(p),
        (None, Some(p)) if now != Run::Back => Run::Part(p),
        (None, None) if now == Run::Front => Run::Front,
        _ => Run::Back,
    }
}

/// Still inside the part: in its own run, or in the run of a lesson before which this sheet's lesson began.
fn in_part(now: Run, p: usize, row: &Row, begun: &BTreeSet<usize>) -> bool {
    match now {
        Run::Part(q) => p == q,
        Run::Lesson(l) => begun.contains(&l) && row.lesson != Some(l),
        Run::Front | Run::Back => false,
    }
}

fn heading(needs: &Needs, run: Run, row: &Row) -> Heading {
    match run {
        Run::Front => Heading::Front,
        Run::Part(_) => Heading::Part,
        Run::Back => Heading::Back,
        Run::Lesson(l) => Heading::Lesson {
            n: l + 1,
            title: needs.lessons.get(l).cloned().unwrap_or_else(Said::default),
            id: row.line.id.clone(),
        },
    }
}

fn numbered(needs: &Needs, p: usize) -> Option<Numbered> {
    Some(Numbered { n: p + 1, title: needs.parts.get(p)?.clone() })
}

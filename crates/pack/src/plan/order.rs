//! Printing order: front, the steps of teaching, the back; `print` moves a sheet, never its identity.

use super::{Planned, Planner};
use sheets::Owner;
use study::{Band, PageSet, PrintAt, Step};

/// All sheets in printing order.
pub(crate) fn in_order(planner: &mut Planner<'_>, set: &PageSet) -> Vec<Planned> {
    let study = planner.study;
    let front = planner.owned(Owner::Study, &set.front, &[], Band::B).sheets;
    let mut back = planner.owned(Owner::Study, &set.back, &[], Band::B).sheets;
    renumber_back(planner, &front, &mut back);
    let mut late = Vec::new();
    let mut out = settle(front, &mut Vec::new(), &mut late);
    for step in &study.order {
        let mut part_end = Vec::new();
        match step {
            Step::Lesson(i) => {
                let sheets = lesson(planner, *i, set);
                out.extend(settle(sheets, &mut part_end, &mut late));
            }
            Step::Part(p) => {
                let Some(part) = study.parts.get(*p) else { continue };
                let own = planner.owned(Owner::Part(*p), &set.part, &[&part.pages], Band::B).sheets;
                out.extend(settle(own, &mut part_end, &mut late));
                for i in &part.lessons {
                    let sheets = lesson(planner, *i, set);
                    out.extend(settle(sheets, &mut part_end, &mut late));
                }
            }
        }
        out.extend(part_end);
    }
    out.extend(late);
    out.extend(back);
    out
}

/// A kind may stand both in front and at the back: the second goes on with the letters.
fn renumber_back(planner: &Planner<'_>, front: &[Planned], back: &mut [Planned]) {
    for sheet in back.iter_mut() {
        let mut n = 0;
        while front.iter().any(|f| f.id == sheet.id) {
            n += 1;
            sheet.id = format!(
                "{}.{}.back-{}",
                planner.owner_id(Owner::Study),
                sheet.about().id,
                super::letters(n - 1)
            );
        }
    }
}

fn lesson(planner: &mut Planner<'_>, i: usize, set: &PageSet) -> Vec<Planned> {
    let study = planner.study;
    let Some(lesson) = study.lessons.get(i) else { return Vec::new() };
    let part = lesson.part.and_then(|p| study.parts.get(p));
    let from_part = part.and_then(|p| p.pages.lesson.as_deref());
    let base = from_part.unwrap_or(&set.lesson);
    let owned = planner.owned(Owner::Lesson(i), base, &[&lesson.pages], lesson.band);
    let for_subjects =
        lesson.pages.subject.as_deref().or(part.and_then(|p| p.pages.subject.as_deref()));
    let base = for_subjects.unwrap_or(&set.subject);
    let mut subjects = Vec::new();
    for (j, subject) in lesson.subjects.iter().enumerate() {
        let band = lesson.pages.band.unwrap_or(lesson.band);
        subjects.extend(planner.owned(Owner::Subject(i, j), base, &[&subject.pages], band).sheets);
    }
    let mut sheets = owned.sheets;
    let at = owned.subjects_at.unwrap_or(sheets.len());
    sheets.splice(at..at, subjects);
    sheets
}

/// Keeps what prints here; the rest goes to the end of the part or to the back.
fn settle(
    sheets: Vec<Planned>,
    part_end: &mut Vec<Planned>,
    late: &mut Vec<Planned>,
) -> Vec<Planned> {
    let mut here = Vec::new();
    for sheet in sheets {
        match sheet.print {
            PrintAt::Here => here.push(sheet),
            PrintAt::PartEnd => part_end.push(sheet),
            PrintAt::Back => late.push(sheet),
        }
    }
    here
}

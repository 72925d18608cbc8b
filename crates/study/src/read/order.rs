//! The order of teaching: parts and lessons put in their places.

use super::lesson::RawLesson;
use super::part::RawPart;
use super::{Cx, settings, spelt};
use crate::model::{Step, Study};
use crate::names::{nearest, normal};
use findings::{Finding, Place};
use toml_edit::Document;

/// Puts parts and lessons into the study, in the author's order and then in order of names.
pub(super) fn settle(
    study: &mut Study,
    parts: &mut [RawPart],
    lessons: Vec<RawLesson>,
    settings: Option<&Document<String>>,
    cx: &mut Cx,
) {
    let written = settings.map(settings::order).unwrap_or_default();
    let free: Vec<String> =
        lessons.iter().filter(|l| l.folder.is_none()).map(|l| l.lesson.name.clone()).collect();
    let own: Vec<String> = parts.iter().map(|p| p.part.name.clone()).chain(free).collect();
    let elsewhere: Vec<(String, String)> =
        lessons.iter().filter_map(|l| Some((l.lesson.name.clone(), l.folder.clone()?))).collect();
    let mut lessons: Vec<Option<RawLesson>> = lessons.into_iter().map(Some).collect();
    for name in ordered(&written, own, &elsewhere, "this study", cx) {
        if let Some(index) = parts.iter().position(|p| p.part.name == name) {
            let part_index = study.parts.len();
            study.order.push(Step::Part(part_index));
            let part = &mut parts[index];
            study.parts.push(part.part.clone());
            take_lessons(study, part, part_index, &mut lessons, cx);
        } else if let Some(raw) =
            lessons.iter_mut().find(|l| is(l, &name, None)).and_then(Option::take)
        {
            study.order.push(Step::Lesson(study.lessons.len()));
            study.lessons.push(raw.lesson);
        }
    }
}

fn is(raw: &Option<RawLesson>, name: &str, folder: Option<&str>) -> bool {
    raw.as_ref().is_some_and(|r| r.lesson.name == name && r.folder.as_deref() == folder)
}

fn take_lessons(
    study: &mut Study,
    raw: &RawPart,
    part_index: usize,
    lessons: &mut [Option<RawLesson>],
    cx: &mut Cx,
) {
    let folder = Some(raw.folder.as_str());
    let inside = |l: &&Option<RawLesson>| l.as_ref().is_some_and(|r| r.folder.as_deref() == folder);
    let own: Vec<String> =
        lessons.iter().filter(inside).flatten().map(|l| l.lesson.name.clone()).collect();
    for name in ordered(&raw.order, own, &[], &format!("the part `{}`", raw.part.name), cx) {
        let Some(mut raw) =
            lessons.iter_mut().find(|l| is(l, &name, folder)).and_then(Option::take)
        else {
            continue;
        };
        raw.lesson.part = Some(part_index);
        if let Some(part) = study.parts.get_mut(part_index) {
            part.lessons.push(study.lessons.len());
        }
        study.lessons.push(raw.lesson);
    }
}

/// Names in the written order; those not named follow in order of names.
fn ordered(
    written: &[(String, Place)],
    mut own: Vec<String>,
    elsewhere: &[(String, String)],
    of: &str,
    cx: &mut Cx,
) -> Vec<String> {
    own.sort();
    own.dedup();
    let mut order: Vec<String> = Vec::new();
    for (name, at) in written {
        let tidy = normal(name);
        if own.contains(&tidy) {
            if tidy != *name {
                cx.findings.push(spelt(name, &tidy, at));
            }
            if order.contains(&tidy) {
                cx.findings.push(
                    Finding::warning("order-twice", format!("`{name}` stands twice in the order"))
                        .at(at)
                        .remedy("keep it once"),
                );
            } else {
                order.push(tidy);
            }
        } else if !cx.names.contains(&tidy) {
            cx.findings.push(unknown(name, &tidy, &own, elsewhere, of).at(at));
        }
    }
    let rest: Vec<String> = own.into_iter().filter(|name| !order.contains(name)).collect();
    order.extend(rest);
    order
}

fn unknown(
    name: &str,
    tidy: &str,
    own: &[String],
    elsewhere: &[(String, String)],
    of: &str,
) -> Finding {
    if let Some((_, part)) = elsewhere.iter().find(|(lesson, _)| lesson == tidy) {
        return Finding::error(
            "order-elsewhere",
            format!("the lesson `{name}` stands in the part `{part}`, not directly in the study"),
        )
        .remedy(format!("put it into the order of parts/{part}/part.toml"));
    }
    let finding = Finding::error("order-unknown", format!("`{name}` is no lesson or part of {of}"));
    match nearest(tidy, own.iter().map(String::as_str)) {
        Some(near) => finding.remedy(format!("did you mean `{near}`?")),
        None => finding.remedy("write its file, or take the name out of the order"),
    }
}

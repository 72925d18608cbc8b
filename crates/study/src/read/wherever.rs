//! Names in `where` columns: lessons, parts and subjects.

use super::{Cx, spelt};
use crate::model::Study;
use crate::names::{nearest, normal};
use findings::{Finding, Place};
use std::collections::BTreeMap;

/// Learns the names of the study; two things of one name are a finding.
pub(super) fn learn(study: &Study, cx: &mut Cx) {
    let mut first: BTreeMap<String, (Place, String)> = BTreeMap::new();
    let mut note = |name: &str, at: Place, group: String, cx: &mut Cx| {
        match first.get(name) {
            // A lesson and its own subject may share a name: rows of the one are rows of the other.
            Some((_, other)) if *other == group => {}
            Some((place, _)) => cx.findings.push(
                Finding::error(
                    "name-twice",
                    format!("the name `{name}` is taken: {} has it too", place.file),
                )
                .at(&at)
                .remedy(
                    "give one of the two another name; `where` columns could not tell them apart",
                ),
            ),
            None => {
                first.insert(name.to_owned(), (at, group));
            }
        }
        cx.names.insert(name.to_owned());
    };
    for part in &study.parts {
        note(&part.name, part.place.clone(), format!("part {}", part.id), cx);
    }
    for lesson in &study.lessons {
        note(&lesson.name, lesson.place.clone(), lesson.place.to_string(), cx);
        let mut inside = Vec::new();
        for subject in &lesson.subjects {
            let twice = inside.contains(&subject.name);
            inside.push(subject.name.clone());
            let group = if twice { subject.place.to_string() } else { lesson.place.to_string() };
            note(&subject.name, subject.place.clone(), group, cx);
        }
    }
}

/// Names of a `where` cell, separated by semicolons.
pub(crate) fn names(written: &[(String, Place)], cx: &mut Cx) -> Vec<String> {
    let mut names: Vec<String> = Vec::new();
    for (name, at) in written {
        let tidy = normal(name);
        if tidy.is_empty() || names.contains(&tidy) {
            continue;
        }
        if cx.names.contains(&tidy) {
            if tidy != *name {
                cx.findings.push(spelt(name, &tidy, at));
            }
        } else if !cx.names_unsure {
            let finding = Finding::error(
                "where-unknown",
                format!("there is no lesson, part or subject called `{name}`"),
            )
            .at(at);
            cx.findings.push(match nearest(&tidy, cx.names.iter().map(String::as_str)) {
                Some(near) => finding.remedy(format!("did you mean `{near}`?")),
                None => finding.remedy("write the name of a lesson's file, of a part's folder or of a subject; leave the cell empty for the whole study"),
            });
        }
        // An unknown name stays, so that the row does not become the whole study's.
        names.push(tidy);
    }
    names
}

//! Activities and the rows of the compare sheet.

use super::Cx;
use crate::fields::Fields;
use crate::markdown::{Activities, Body};
use crate::model::{Activity, ActivityForm, CompareRow, Compared, Said, Subject};
use crate::names::nearest;
use findings::{Finding, Place};

/// Tags that call for a caution.
const TAGS: &[&str] = &[
    "animals",
    "chemical",
    "cord",
    "cut",
    "dough",
    "elastic",
    "food",
    "glass",
    "heat",
    "knife",
    "laminate",
    "links",
    "loud",
    "magnet",
    "mouthpiece",
    "outdoors",
    "shore",
    "small-parts",
    "water",
];

const FORMS: &[(&str, ActivityForm)] = &[
    ("experiment", ActivityForm::Experiment),
    ("building", ActivityForm::Building),
    ("outing", ActivityForm::Outing),
    ("kitchen", ActivityForm::Kitchen),
    ("tray", ActivityForm::Tray),
];

/// All activities of a lesson: the first `[[activity]]` with the first `## Activity`.
pub(super) fn all(f: &mut Fields<'_>, body: &Body, path: &str, cx: &mut Cx) -> Vec<Activity> {
    let settings = f.tables(cx, "activity");
    let many = settings.len().max(body.activities.len());
    let mut settings = settings.into_iter();
    let mut sections = body.activities.iter();
    (0..many)
        .map(|_| match (settings.next(), sections.next()) {
            (Some(f), Some(section)) => with_settings(f, section, cx),
            (Some(f), None) => {
                cx.findings.push(
                    Finding::error(
                        "activity-without-text",
                        "this activity has no `## Activity` section",
                    )
                    .at(&f.at)
                    .remedy("write `## Activity` with its steps below, once for each [[activity]]"),
                );
                with_settings(
                    f,
                    &Activities { at: Place::new(path, "activity"), ..Activities::default() },
                    cx,
                )
            }
            (None, section) => bare(section, cx),
        })
        .collect()
}

fn with_settings(mut f: Fields<'_>, section: &Activities, cx: &mut Cx) -> Activity {
    let mut activity = of_section(section);
    match f.said(cx, "title") {
        Some(title) => activity.title = title,
        None if section.title.is_none() => nameless(&f.at, cx),
        None => {}
    }
    activity.form = f.choice(cx, "form", FORMS).unwrap_or(activity.form);
    activity.minutes = f.number(cx, "minutes", 1, 10_000);
    activity.tags =
        f.texts(cx, "tags").into_iter().filter_map(|(tag, at)| known_tag(tag, &at, cx)).collect();
    activity.band = f.band(cx, "band");
    let picture = f.text(cx, "picture");
    activity.picture = cx.picture(picture, &f.place("picture"));
    activity.place = f.at.clone();
    f.finish(cx);
    activity
}

fn bare(section: Option<&Activities>, cx: &mut Cx) -> Activity {
    let none = Activities::default();
    let section = section.unwrap_or(&none);
    if section.title.is_none() {
        nameless(&section.at, cx);
    }
    of_section(section)
}

fn nameless(at: &Place, cx: &mut Cx) {
    cx.findings
        .push(Finding::want("activity-nameless", "this activity has no title").at(at).remedy(
        "write a line like title = \"A wall of sand\" under [[activity]] at the top of the file",
    ));
}

fn of_section(section: &Activities) -> Activity {
    let mut lists = Activities { lists: section.lists.clone(), ..Activities::default() };
    let tray = !lists.lines("base").is_empty() || !lists.lines("fillers").is_empty();
    let idea = section.text("idea");
    let answer = section.text("answer");
    Activity {
        title: section.title.clone().unwrap_or_else(|| Said::plain_at(&section.at, "Activity")),
        form: if tray { ActivityForm::Tray } else { ActivityForm::Experiment },
        minutes: None,
        tags: Vec::new(),
        band: None,
        picture: None,
        intro: section.text("intro"),
        supplies: lists.lines("supplies"),
        steps: lists.lines("steps"),
        base: lists.lines("base"),
        fillers: lists.lines("fillers"),
        tools: lists.lines("tools"),
        idea: (!idea.is_empty()).then_some(idea),
        table: section.table.clone(),
        answer: (!answer.is_empty()).then_some(answer),
        ask: lists.lines("ask"),
        place: section.at.clone(),
    }
}

fn known_tag(tag: String, at: &Place, cx: &mut Cx) -> Option<String> {
    let name = crate::names::normal(&tag);
    if TAGS.contains(&name.as_str()) {
        return Some(name);
    }
    let finding =
        Finding::error("tag-unknown", format!("there is no caution for the tag `{tag}`")).at(at);
    cx.findings.push(match nearest(&name, TAGS.iter().copied()) {
        Some(near) => finding.remedy(format!("did you mean `{near}`?")),
        None => finding.remedy(format!("use any of {}", TAGS.join(", "))),
    });
    None
}

/// Rows of the compare sheet; they need two subjects.
pub(super) fn compare(f: &mut Fields<'_>, subjects: &[Subject], cx: &mut Cx) -> Vec<CompareRow> {
    let rows = f.tables(cx, "compare");
    if let Some(first) = rows.first().filter(|_| subjects.len() != 2) {
        cx.findings.push(
            Finding::error(
                "compare-without-two",
                format!(
                    "a compare sheet takes two subjects, and this lesson has {}",
                    subjects.len()
                ),
            )
            .at(&first.at)
            .remedy("add a second [[subject]] to the lesson, or take the [[compare]] rows out"),
        );
    }
    rows.into_iter().filter_map(|row| compare_row(row, cx)).collect()
}

fn compare_row(mut f: Fields<'_>, cx: &mut Cx) -> Option<CompareRow> {
    let aspect = f.said(cx, "aspect");
    let (both, first, second) = (f.said(cx, "both"), f.said(cx, "first"), f.said(cx, "second"));
    let at = f.at.clone();
    f.finish(cx);
    let what = match (both, first, second) {
        (Some(both), None, None) => Some(Compared::Both(both)),
        (None, Some(first), Some(second)) => Some(Compared::Each(first, second)),
        _ => None,
    };
    if let (Some(aspect), Some(what)) = (aspect, what) {
        return Some(CompareRow { aspect, what });
    }
    cx.findings.push(
        Finding::error("compare-row", "this row of the compare sheet is not complete")
            .at(&at)
            .remedy("give it an `aspect`, and either `both`, or `first` and `second`"),
    );
    None
}

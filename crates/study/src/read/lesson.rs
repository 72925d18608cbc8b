//! Lessons and their readings: `lessons/<lesson>.md`, `parts/<part>/<lesson>.md`, `<lesson>.reading-<band>.md`.

use super::{Cx, activity, pages, spelt};
use crate::fields::{Fields, band};
use crate::files::Files;
use crate::ids::{digits, or_stand_in};
use crate::markdown::{self, Body};
use crate::model::{Band, Changes, Lesson, Reading, Said, Study, Subject, Text};
use crate::names::{nearest, normal, title_from};
use crate::toml_text;
use findings::{Finding, Place};
use std::collections::BTreeMap;
use toml_edit::Document;

/// A lesson as it was read, with the folder of its part.
#[derive(Debug)]
pub(super) struct RawLesson {
    /// The lesson; its part is settled later.
    pub lesson: Lesson,
    /// Folder inside `parts`, when it stands in one.
    pub folder: Option<String>,
}

/// A Markdown file split and parsed: settings and where its text starts.
pub(super) struct Page {
    /// The settings at its top.
    pub settings: Document<String>,
    /// The whole file.
    pub text: std::sync::Arc<str>,
    /// Where the text below the settings starts.
    pub body: usize,
}

/// Opens a Markdown file; none, with a finding, when it is unreadable.
pub(super) fn open(files: &Files, path: &str, cx: &mut Cx) -> Option<Page> {
    let text = files.text(path, cx)?;
    let front = toml_text::split(&text, path).map_err(|f| cx.findings.push(f)).ok()?;
    let settings = toml_text::parse(text.get(front.settings)?, path, front.first_line);
    let settings = settings.map_err(|f| cx.findings.push(f)).ok()?;
    Some(Page { settings, text, body: front.body })
}

/// `introduction.md`.
pub(super) fn introduction(files: &Files, cx: &mut Cx) -> Option<Text> {
    let path = "introduction.md";
    if !files.has(path) {
        return None;
    }
    let page = open(files, path, cx)?;
    Fields::new(page.settings.as_table(), Place::new(path, "front")).finish(cx);
    let text = markdown::plain(page.text.get(page.body..)?, page.body, path, false, cx);
    (!text.is_empty()).then_some(text)
}

/// All lessons, in order of their files.
pub(super) fn all(files: &Files, study: &Study, cx: &mut Cx) -> Vec<RawLesson> {
    let paths: Vec<&str> = files
        .entries
        .keys()
        .map(String::as_str)
        .filter(|p| p.ends_with(".md") && (p.starts_with("lessons/") || p.starts_with("parts/")))
        .collect();
    let (readings, lessons): (Vec<&str>, Vec<&str>) =
        paths.into_iter().partition(|p| stem(p).contains(".reading"));
    let mut raw: BTreeMap<&str, RawLesson> = BTreeMap::new();
    for path in &lessons {
        match one(path, files, study, cx) {
            Some(lesson) => {
                raw.insert(path, lesson);
            }
            None => {
                cx.names_unsure = true;
                cx.names.insert(normal(stem(path)));
            }
        }
    }
    for path in readings {
        reading(path, &lessons, files, &mut raw, cx);
    }
    raw.into_values()
        .map(|mut raw| {
            // The lesson's own reading stands first, the others from young to old.
            let own = usize::from(
                raw.lesson
                    .readings
                    .first()
                    .is_some_and(|r| r.title.at.file == raw.lesson.place.file),
            );
            if let Some(others) = raw.lesson.readings.get_mut(own..) {
                others.sort_by_key(|r| r.band);
            }
            raw
        })
        .collect()
}

fn stem(path: &str) -> &str {
    let name = path.rsplit_once('/').map_or(path, |(_, n)| n);
    name.strip_suffix(".md").unwrap_or(name)
}

fn one(path: &str, files: &Files, study: &Study, cx: &mut Cx) -> Option<RawLesson> {
    let page = open(files, path, cx)?;
    let place = Place::file(path);
    let name = normal(stem(path));
    if name != stem(path) {
        cx.findings.push(spelt(stem(path), &name, &place));
    }
    let mut f = Fields::new(page.settings.as_table(), place.child("front"));
    let band = f.band(cx, "band");
    let keep_lines = band == Some(Band::A);
    let body = markdown::lesson(page.text.get(page.body..)?, page.body, path, keep_lines, cx);
    let mut lesson = settings(&mut f, name, study, &body, cx);
    lesson.band = band.unwrap_or(Band::B);
    lesson.subjects = subjects(&mut f, &lesson, cx);
    lesson.activities = activity::all(&mut f, &body, path, cx);
    lesson.compare = activity::compare(&mut f, &lesson.subjects, cx);
    f.finish(cx);
    lesson.place = place;
    fill(&mut lesson, body);
    Some(RawLesson {
        lesson,
        folder: path
            .strip_prefix("parts/")
            .and_then(|p| p.split_once('/'))
            .map(|(f, _)| f.to_owned()),
    })
}

fn settings(f: &mut Fields<'_>, name: String, study: &Study, body: &Body, cx: &mut Cx) -> Lesson {
    let place = Place::file(f.at.file.clone());
    let id = or_stand_in(f.text(cx, "id"), "ls", &f.at.clone(), cx);
    let title = f.said(cx, "title").or_else(|| body.title.clone());
    if title.is_none() {
        cx.findings.push(
            Finding::hint(
                "title-from-name",
                format!("the lesson `{name}` has no title; it prints as `{}`", title_from(&name)),
            )
            .at(&place)
            .remedy("write a line like title = \"Holding on\" between the lines of +++ at the top"),
        );
    }
    let picture = f.text(cx, "picture");
    let sources = f.texts(cx, "sources");
    Lesson {
        id,
        title: title.unwrap_or_else(|| Said::plain_at(&f.place("title"), title_from(&name))),
        name,
        question: f.said(cx, "question"),
        part: None,
        ages: f.ages(cx, "ages").unwrap_or(study.ages),
        band: Band::B,
        picture: cx.picture(picture, &f.place("picture")),
        caption: f.said(cx, "caption"),
        ready: f.saids(cx, "ready"),
        sources: sources.iter().filter_map(|(id, at)| cx.fact(id, at)).collect(),
        subjects: Vec::new(),
        opening: None,
        readings: Vec::new(),
        more: None,
        activities: Vec::new(),
        compare: Vec::new(),
        pages: pages::changes(f, &["subject"], cx),
        place,
    }
}

/// Subjects of the front matter; a lesson without any is its own subject.
fn subjects(f: &mut Fields<'_>, lesson: &Lesson, cx: &mut Cx) -> Vec<Subject> {
    let subjects: Vec<Subject> =
        f.tables(cx, "subject").into_iter().map(|f| subject(f, lesson, cx)).collect();
    if !subjects.is_empty() {
        return subjects;
    }
    vec![Subject {
        id: format!("sj-{}", digits(&[&lesson.id, "itself"])),
        name: lesson.name.clone(),
        title: lesson.title.clone(),
        picture: lesson.picture.clone(),
        pages: Changes::default(),
        place: Place::file(&lesson.place.file),
    }]
}

fn subject(mut f: Fields<'_>, lesson: &Lesson, cx: &mut Cx) -> Subject {
    let place = f.at.clone();
    let id = or_stand_in(f.text(cx, "id"), "sj", &place, cx);
    let written = f.text(cx, "name");
    let title = f.said(cx, "title");
    if written.is_none() {
        cx.findings.push(
            Finding::error("subject-nameless", "this subject has no `name`")
                .at(&place)
                .remedy("write a line like name = \"limpet\"; the `where` columns use it"),
        );
    }
    let written =
        written.or_else(|| title.as_ref().map(Said::plain)).unwrap_or_else(|| lesson.name.clone());
    let name = normal(&written);
    if name != written && f.table.contains_key("name") {
        cx.findings.push(spelt(&written, &name, &f.place("name")));
    }
    let picture = f.text(cx, "picture");
    let subject = Subject {
        id,
        title: title.unwrap_or_else(|| Said::plain_at(&f.place("title"), title_from(&name))),
        name,
        picture: cx.picture(picture, &f.place("picture")),
        pages: pages::changes(&mut f, &[], cx),
        place,
    };
    f.finish(cx);
    subject
}

fn fill(lesson: &mut Lesson, body: Body) {
    lesson.opening = body.opening.filter(|t| !t.is_empty());
    lesson.more = body.more.filter(|t| !t.is_empty());
    if let Some((title, text)) = body.reading.filter(|(_, text)| !text.is_empty()) {
        let at = lesson.place.child("reading/title");
        let title = title.unwrap_or_else(|| Said { at, spans: lesson.title.spans.clone() });
        lesson.readings.push(Reading { band: lesson.band, title, text });
    }
}

/// Reads a further reading and gives it to its lesson.
fn reading(
    path: &str,
    lessons: &[&str],
    files: &Files,
    raw: &mut BTreeMap<&str, RawLesson>,
    cx: &mut Cx,
) {
    let place = Place::file(path);
    let (dir, _) = path.rsplit_once('/').unwrap_or_default();
    let (name, ending) = stem(path).split_once(".reading").unwrap_or_default();
    let Some(band) = band(cx, ending.trim_start_matches('-'), &place) else { return };
    let own = format!("{dir}/{name}.md");
    if !lessons.contains(&own.as_str()) {
        let near = nearest(name, lessons.iter().filter(|l| l.starts_with(dir)).map(|l| stem(l)));
        let finding = Finding::error(
            "reading-alone",
            format!("this reading belongs to no lesson: there is no `{own}`"),
        )
        .at(&place);
        cx.findings.push(match near {
            Some(near) => {
                finding.remedy(format!("did you mean `{near}.reading-{}.md`?", band.name()))
            }
            None => finding.remedy("name the file after its lesson, in the same folder"),
        });
        return;
    }
    let Some(page) = open(files, path, cx) else { return };
    let mut f = Fields::new(page.settings.as_table(), place.child("front"));
    let title = f.said(cx, "title");
    f.finish(cx);
    let body = page.text.get(page.body..).unwrap_or_default();
    let text = markdown::plain(body, page.body, path, band == Band::A, cx);
    let Some(raw) = raw.get_mut(own.as_str()) else { return };
    if raw.lesson.readings.iter().any(|r| r.band == band) {
        cx.findings.push(
            Finding::error(
                "reading-twice",
                format!("the lesson `{name}` has two readings for {}", band.name()),
            )
            .at(&place)
            .remedy("give this file another band in its name, or set another `band` in the lesson"),
        );
        return;
    }
    let title = title.unwrap_or_else(|| Said {
        at: place.child("front/title"),
        spans: raw.lesson.title.spans.clone(),
    });
    raw.lesson.readings.push(Reading { band, title, text });
}

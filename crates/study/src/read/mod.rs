//! Reading a whole study: every file, every finding, nothing written.

mod activity;
mod gaps;
mod kept;
mod lesson;
mod order;
mod pages;
mod part;
mod person;
mod settings;
mod strays;
pub(crate) mod wherever;

use crate::facts::Told;
use crate::files::Files;
use crate::ids::Seen;
use crate::lines::Lines;
use crate::lists;
use crate::model::{Lesson, Part, Study};
use crate::pictures;
use findings::{Finding, Findings, Place};
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;
use std::path::Path;
use std::sync::Arc;

/// What reading a folder gives.
#[derive(Debug, Clone)]
pub struct Read {
    /// The study; none when `study.toml` is missing or unreadable.
    pub study: Option<Study>,
    /// Everything that was found, worst first.
    pub findings: Findings,
    /// Turns places into lines.
    pub lines: Lines,
}

/// What is gathered while reading.
#[derive(Debug, Default)]
pub(crate) struct Cx {
    /// Everything found so far.
    pub findings: Findings,
    /// Texts of the files, for line numbers.
    pub texts: BTreeMap<String, Arc<str>>,
    /// Bytes of fields in Markdown files.
    pub spans: BTreeMap<Place, Range<usize>>,
    /// Facts by id, as far as texts repeat them.
    pub facts: BTreeMap<String, Told>,
    /// Facts in use, with the first place.
    pub used_facts: BTreeMap<String, Place>,
    /// True when facts.csv could not be read, so that its names are unknown.
    pub facts_unsure: bool,
    /// Names of the pictures.
    pub pictures: BTreeSet<String>,
    /// Pictures in use, with the first place.
    pub used_pictures: BTreeMap<String, Place>,
    /// Names of lessons, parts and subjects.
    pub names: BTreeSet<String>,
    /// True when a lesson or part could not be read, so that some names are unknown.
    pub names_unsure: bool,
    /// True when the study is in English, so that number words can be read.
    pub english: bool,
}

/// Reads the folder of a study. Never writes and never fails: what is wrong is in the findings.
pub fn read(folder: &Path) -> Read {
    match Files::load(folder) {
        Ok(files) => read_files(&files),
        Err(finding) => Read { study: None, findings: finding.into(), lines: Lines::default() },
    }
}

/// Reads a study from its files.
pub fn read_files(files: &Files) -> Read {
    let mut cx = Cx::default();
    let study = whole(files, &mut cx);
    strays::look(files, &mut cx);
    Read {
        study,
        findings: cx.findings.sorted(),
        lines: Lines { texts: cx.texts, spans: cx.spans },
    }
}

fn whole(files: &Files, cx: &mut Cx) -> Option<Study> {
    let settings = settings::open(files, cx);
    cx.english = settings.as_ref().is_none_or(settings::is_english);
    let fact_rows = lists::facts_ahead(files, cx);
    let pictures = pictures::read(files, cx);
    let facts = lists::facts(fact_rows, cx);
    let mut study = match &settings {
        Some(settings) => settings::read(settings, files, cx),
        None => settings::bare(files),
    };
    study.pictures = pictures;
    study.facts = facts;
    study.introduction = lesson::introduction(files, cx);
    let mut parts = part::all(files, cx);
    let lessons = lesson::all(files, &study, cx);
    order::settle(&mut study, &mut parts, lessons, settings.as_ref(), cx);
    wherever::learn(&study, cx);
    study.people = person::all(files, cx);
    lists::read(files, &mut study, cx);
    study.kept = kept::all(files, cx);
    equal_ids(&study, cx);
    gaps::look(&study, cx);
    if settings.is_some() { Some(study) } else { None }
}

fn equal_ids(study: &Study, cx: &mut Cx) {
    let mut seen = Seen::default();
    let mut note = |id: &str, at: &Place, cx: &mut Cx| seen.note(id, at, cx);
    note(&study.id, &Place::file("study.toml"), cx);
    study.parts.iter().for_each(|p: &Part| note(&p.id, &p.place, cx));
    for lesson in &study.lessons {
        let lesson: &Lesson = lesson;
        note(&lesson.id, &lesson.place.child("front"), cx);
        // A lesson that is its own subject has one id.
        lesson
            .subjects
            .iter()
            .filter(|s| !s.place.field.is_empty())
            .for_each(|s| note(&s.id, &s.place, cx));
    }
    study.people.iter().for_each(|p| note(&p.id, &p.place.child("front"), cx));
}

impl Cx {
    /// The name of a picture used at a place, or a finding when there is none of that name.
    pub(crate) fn picture(&mut self, written: Option<String>, at: &Place) -> Option<String> {
        let written = written?;
        let (stem, _) = written
            .rsplit_once('.')
            .filter(|(_, e)| pictures::is_ending(e))
            .unwrap_or((&written, ""));
        let name = [written.clone(), crate::names::normal(stem)]
            .into_iter()
            .find(|n| self.pictures.contains(n));
        if let Some(name) = name {
            if name != written {
                self.findings.push(spelt(&written, &name, at));
            }
            self.used_pictures.entry(name.clone()).or_insert_with(|| at.clone());
            return Some(name);
        }
        let near = crate::names::nearest(&written, self.pictures.iter().map(String::as_str));
        let finding =
            Finding::want("picture-missing", format!("there is no picture called `{written}` yet"))
                .at(at);
        let finding = match near {
            Some(near) => finding.remedy(format!("did you mean `{near}`?")),
            None => finding
                .remedy(format!("put `{written}.svg`, .png or .jpg into the folder pictures")),
        };
        self.findings.push(finding);
        None
    }
}

/// A name that is written in another way than it is called.
pub(crate) fn spelt(written: &str, name: &str, at: &Place) -> Finding {
    Finding::hint("name-spelt", format!("`{written}` is read as `{name}`"))
        .at(at)
        .remedy("names are lower-case letters, digits and hyphens; write it that way")
}

//! From made sheets to the press's job: page data, the frame's meta data, the pictures shown.

use crate::making::Outcome;
use findings::{Finding, Findings};
use press::{Document, Job, KindIn, Look, Paper, PictureIn, SheetIn};
use serde_json::{Value, json};
use sheets::words::words;
use sheets::{Gathered, KINDS};
use std::collections::{BTreeMap, BTreeSet};
use study::{PictureForm, Study};

/// Name of the page that stands for a sheet that is not ready.
const WANTING: &str = "wanting";
/// Its template is the press's own.
const WANTING_PAGE: &str = "#import \"/wanting.typ\": *\n";

/// Sheets that failed on the laid-out page, with the reasons: their place says what is wrong.
pub type Spoilt = BTreeMap<String, Findings>;

/// Which copy is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Copy {
    /// The paper.
    pub paper: Paper,
    /// Marked as a proof copy on every page.
    pub proof: bool,
}

/// The job of a whole study on one paper.
///
/// # Errors
/// A finding when the study asks for a look that there is none of.
pub fn whole(
    study: &Study,
    outcomes: &[Outcome],
    gathered: &Gathered,
    spoilt: &Spoilt,
    copy: Copy,
) -> Result<Job, Findings> {
    let mut last_lesson = None;
    let sheets = outcomes.iter().zip(&gathered.entries).map(|(outcome, entry)| {
        let lesson = entry.lesson;
        // The first sheet of a lesson opens a chapter; what follows stands under it.
        let level = if lesson.is_some() && lesson == last_lesson { 2 } else { 1 };
        last_lesson = lesson;
        sheet(study, outcome, spoilt.get(&outcome.planned.id), entry.key_number, level)
    });
    job(study, sheets.collect(), copy)
}

/// The job of one sheet alone.
///
/// # Errors
/// A finding when the study asks for a look that there is none of.
pub fn alone(
    study: &Study,
    outcome: &Outcome,
    key_number: Option<u32>,
    pages: BTreeMap<String, u32>,
    copy: Copy,
) -> Result<Job, Findings> {
    let mut job = job(study, vec![sheet(study, outcome, None, key_number, 1)], copy)?;
    job.document.pages = pages;
    Ok(job)
}

fn job(study: &Study, sheets: Vec<SheetIn>, copy: Copy) -> Result<Job, Findings> {
    let look = Look::named(&study.look).map_err(|all| {
        let place = findings::Place::new("study.toml", "look");
        all.into_iter().map(|f| f.at(&place)).collect::<Findings>()
    })?;
    let answers = answered(&sheets);
    let used: BTreeSet<&str> =
        sheets.iter().map(|s| s.kind.as_str()).chain(answers.iter().map(String::as_str)).collect();
    Ok(Job {
        document: document(study, copy),
        look,
        kinds: kinds(&used, &study.language),
        pictures: pictures(study),
        answers,
        sheets,
    })
}

/// Kinds whose answers the key prints.
fn answered(sheets: &[SheetIn]) -> BTreeSet<String> {
    let keys = sheets.iter().filter(|s| s.kind == "key");
    let entries = keys.filter_map(|s| s.data.get("entries")?.as_array()).flatten();
    entries.filter_map(|e| e.get("kind")?.as_str().map(str::to_owned)).collect()
}

fn document(study: &Study, copy: Copy) -> Document {
    let said = |s: &Option<study::Said>| s.as_ref().map(study::Said::plain).unwrap_or_default();
    let title = study.title.plain();
    Document {
        title: title.clone(),
        author: said(&study.author),
        language: study.language.clone(),
        date: study.date.map(|d| (d.year, d.month, d.day)),
        subject: said(&study.subtitle),
        keywords: study.lessons.iter().map(|l| l.title.plain()).collect(),
        paper: copy.paper,
        proof_copy: copy.proof,
        press: said(&study.press),
        issue: study.issue.clone(),
        study: title,
        lessons: u32::try_from(study.lessons.len()).unwrap_or(u32::MAX),
        pages: BTreeMap::new(),
    }
}

fn kinds(used: &BTreeSet<&str>, language: &str) -> BTreeMap<String, KindIn> {
    let mut all: BTreeMap<String, KindIn> = KINDS
        .iter()
        .map(|k| k.about())
        .filter(|about| used.contains(about.id))
        .map(|about| {
            let words = json!(words(about.words, language));
            (about.id.to_owned(), KindIn { page: about.page.to_owned(), words })
        })
        .collect();
    if used.contains(WANTING) {
        let words = json!(words(crate::wanting::WORDS, language));
        all.insert(WANTING.to_owned(), KindIn { page: WANTING_PAGE.to_owned(), words });
    }
    all
}

fn pictures(study: &Study) -> BTreeMap<String, PictureIn> {
    let one = |p: &study::Picture| PictureIn {
        bytes: p.bytes.clone(),
        ext: match p.form {
            PictureForm::Svg => "svg",
            PictureForm::Png => "png",
            PictureForm::Jpeg => "jpg",
        }
        .to_owned(),
        alt: p.alt.as_ref().map_or_else(|| p.name.replace('-', " "), study::Said::plain),
        width: p.width,
        height: p.height,
    };
    study.pictures.iter().map(|(name, p)| (name.clone(), one(p))).collect()
}

fn sheet(
    study: &Study,
    outcome: &Outcome,
    spoilt: Option<&Findings>,
    key_number: Option<u32>,
    level: u8,
) -> SheetIn {
    let planned = &outcome.planned;
    let about = planned.about();
    let words = words(about.words, &study.language);
    let what = words.get("name").cloned().unwrap_or_else(|| about.id.to_owned());
    let lesson = planned.lesson().and_then(|i| Some((i, study.lessons.get(i)?)));
    let part = planned.part(study).and_then(|i| Some((i, study.parts.get(i)?)));
    let mut meta = json!({
        "id": planned.id,
        "kind": about.id,
        "title": what,
        "lead": null,
        "name-line": false,
        "card": false,
        "bare": false,
        "band": planned.band.name(),
        "large": false,
        "what": what,
        "sign": about.sign.name(),
        "lesson": lesson.map(|(i, l)| json!({ "n": i + 1, "of": study.lessons.len(), "title": l.title.plain() })),
        "part": part.map(|(i, p)| json!({ "n": i + 1, "of": study.parts.len(), "title": p.title.plain() })),
        "key": key_number,
        "level": level,
        "field": planned.place.to_string(),
    });
    let (kind, data) = match (&outcome.made, spoilt) {
        (Some(made), None) => {
            let head = &made.head;
            let set = json!({
                "title": head.title, "lead": head.lead, "name-line": head.name_line,
                "card": head.card, "bare": head.bare,
            });
            merge(&mut meta, set);
            (about.id, made.sheet.clone())
        }
        (_, why) => (WANTING, crate::wanting::data(&what, why.unwrap_or(&outcome.findings))),
    };
    SheetIn { id: planned.id.clone(), kind: kind.to_owned(), meta, data }
}

fn merge(into: &mut Value, from: Value) {
    if let (Some(into), Value::Object(from)) = (into.as_object_mut(), from) {
        into.extend(from);
    }
}

/// Pictures that no sheet shows are worth a hint.
pub fn unused_pictures(study: &Study, gathered: &Gathered) -> Findings {
    let shown: BTreeSet<&str> =
        gathered.entries.iter().flat_map(|e| &e.pictures).map(String::as_str).collect();
    study
        .pictures
        .values()
        .filter(|p| !shown.contains(p.name.as_str()))
        .map(|p| {
            Finding::hint("picture-unused", format!("no sheet shows the picture `{}`", p.name))
                .at(&p.place)
        })
        .collect()
}

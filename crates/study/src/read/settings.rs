//! `study.toml`: the study's own settings.

use super::{Cx, pages};
use crate::fields::Fields;
use crate::files::Files;
use crate::ids::or_stand_in;
use crate::model::{Ages, Said, Study};
use crate::names::title_from;
use crate::toml_text::{self, Node};
use findings::{Finding, Place};
use std::collections::BTreeMap;
use toml_edit::{Document, Value};

const FILE: &str = "study.toml";

/// The parsed settings; none, with a finding, when they are missing or unreadable.
pub(super) fn open(files: &Files, cx: &mut Cx) -> Option<Document<String>> {
    if !files.has(FILE) {
        cx.findings.push(
            Finding::error("settings-missing", "there is no `study.toml` in this folder")
                .at(&Place::file(FILE))
                .remedy(
                    "write one with a line like title = \"The Rocky Shore\", or begin a new study",
                ),
        );
        return None;
    }
    let text = files.text(FILE, cx)?;
    toml_text::parse(&text, FILE, 1).map_err(|finding| cx.findings.push(finding)).ok()
}

/// True unless the study names another language.
pub(super) fn is_english(settings: &Document<String>) -> bool {
    let language = settings.get("language").and_then(|i| i.as_str());
    language.is_none_or(|l| l.trim().is_empty() || l.to_lowercase().starts_with("en"))
}

/// Names of lessons and parts in the author's order, with their places.
pub(super) fn order(settings: &Document<String>) -> Vec<(String, Place)> {
    match Node::Table(settings.as_table()).part("order") {
        Some(Node::Value(Value::Array(list))) => {
            let at = Place::new(FILE, "order");
            list.iter()
                .zip(1..)
                .filter_map(|(v, n)| Some((v.as_str()?.trim().to_owned(), at.child(n))))
                .collect()
        }
        _ => Vec::new(),
    }
}

/// A study of which only the folder's name is known.
pub(super) fn bare(files: &Files) -> Study {
    let at = Place::new(FILE, "title");
    Study {
        id: String::new(),
        title: Said::plain_at(&at, title_from(&files.folder)),
        subtitle: None,
        author: None,
        press: None,
        language: "en".into(),
        issue: "1.0".into(),
        date: None,
        ages: Ages { from: 3, to: 18 },
        look: "strand".into(),
        cover: None,
        terms: None,
        thanks: None,
        inquiry_boxes: Vec::new(),
        introduction: None,
        page_set: None,
        order: Vec::new(),
        parts: Vec::new(),
        lessons: Vec::new(),
        people: Vec::new(),
        facts: BTreeMap::new(),
        words: Vec::new(),
        questions: Vec::new(),
        books: Vec::new(),
        links: Vec::new(),
        resources: Vec::new(),
        hunt: Vec::new(),
        prompts: Vec::new(),
        figures: Vec::new(),
        pictures: BTreeMap::new(),
        kept: BTreeMap::new(),
    }
}

/// Reads the settings; what is left out takes its usual value.
pub(super) fn read(settings: &Document<String>, files: &Files, cx: &mut Cx) -> Study {
    let mut study = bare(files);
    let mut f = Fields::new(settings.as_table(), Place::file(FILE));
    study.id = or_stand_in(f.text(cx, "id"), "st", &f.at.clone(), cx);
    match f.said(cx, "title") {
        Some(title) => study.title = title,
        None => cx.findings.push(
            Finding::want("title-missing", "the study has no `title` yet")
                .at(&Place::file(FILE))
                .remedy("write a line like title = \"The Rocky Shore\" at the top of study.toml"),
        ),
    }
    study.subtitle = f.said(cx, "subtitle");
    study.author = f.said(cx, "author");
    study.press = f.said(cx, "press");
    study.terms = f.said(cx, "terms");
    study.thanks = f.said(cx, "thanks");
    study.date = f.date(cx, "date");
    study.issue = f.text(cx, "issue").unwrap_or(study.issue);
    study.look = f.text(cx, "look").unwrap_or(study.look);
    study.ages = f.ages(cx, "ages").unwrap_or(study.ages);
    study.language = language(&mut f, cx).unwrap_or(study.language);
    let cover = f.text(cx, "cover");
    study.cover = cx.picture(cover, &f.place("cover"));
    f.texts(cx, "order");
    if let Some(mut inquiry) = f.table(cx, "inquiry") {
        study.inquiry_boxes = inquiry.saids(cx, "boxes");
        inquiry.finish(cx);
    }
    if let Some(set) = f.table(cx, "page-set") {
        study.page_set = Some(pages::page_set(set, cx));
    }
    f.finish(cx);
    study
}

/// A language code such as `en` or `pt-BR` (form of BCP 47: a code of two or three letters, then parts of up to eight).
fn language(f: &mut Fields<'_>, cx: &mut Cx) -> Option<String> {
    let code = f.text(cx, "language")?;
    let mut parts = code.split('-');
    let first = parts
        .next()
        .is_some_and(|p| (2..=3).contains(&p.len()) && p.chars().all(|c| c.is_ascii_alphabetic()));
    if first
        && parts.all(|p| (1..=8).contains(&p.len()) && p.chars().all(|c| c.is_ascii_alphanumeric()))
    {
        return Some(code);
    }
    cx.findings.push(
        Finding::error("language-odd", format!("`{code}` is no language code"))
            .at(&f.place("language"))
            .remedy("write a short code like language = \"en\" or \"de\""),
    );
    None
}

//! `parts/<part>/part.toml`.

use super::{Cx, pages, spelt};
use crate::fields::Fields;
use crate::files::Files;
use crate::ids::or_stand_in;
use crate::model::{Changes, Part, Said};
use crate::names::{normal, title_from};
use crate::toml_text;
use findings::{Finding, Place};
use std::collections::BTreeSet;

/// A part as it was read, its lessons still by name.
#[derive(Debug)]
pub(super) struct RawPart {
    /// The part, without its lessons.
    pub part: Part,
    /// Name of its folder as it stands on the disk.
    pub folder: String,
    /// Names of its lessons in the author's order.
    pub order: Vec<(String, Place)>,
}

/// All parts in order of their names.
pub(super) fn all(files: &Files, cx: &mut Cx) -> Vec<RawPart> {
    let folders: BTreeSet<&str> = files
        .entries
        .keys()
        .filter_map(|path| path.strip_prefix("parts/")?.split_once('/'))
        .filter(|(_, file)| *file == "part.toml" || file.ends_with(".md"))
        .map(|(folder, _)| folder)
        .collect();
    folders.into_iter().map(|folder| one(folder, files, cx)).collect()
}

fn one(folder: &str, files: &Files, cx: &mut Cx) -> RawPart {
    let file = format!("parts/{folder}/part.toml");
    let place = Place::file(&file);
    let name = normal(folder);
    if name != folder {
        cx.findings.push(spelt(folder, &name, &place));
    }
    let mut raw = RawPart {
        part: Part {
            id: String::new(),
            title: Said::plain_at(&place, title_from(&name)),
            name,
            question: None,
            picture: None,
            lessons: Vec::new(),
            pages: Changes::default(),
            place: place.clone(),
        },
        folder: folder.to_owned(),
        order: Vec::new(),
    };
    let text = if files.has(&file) { files.text(&file, cx) } else { None };
    let settings = text
        .and_then(|text| toml_text::parse(&text, &file, 1).map_err(|f| cx.findings.push(f)).ok());
    match &settings {
        Some(settings) => read(&mut raw, Fields::new(settings.as_table(), place), cx),
        None => raw.part.id = or_stand_in(None, "pt", &place, cx),
    }
    raw
}

fn read(raw: &mut RawPart, mut f: Fields<'_>, cx: &mut Cx) {
    let part = &mut raw.part;
    part.id = or_stand_in(f.text(cx, "id"), "pt", &part.place, cx);
    match f.said(cx, "title") {
        Some(title) => part.title = title,
        None => cx.findings.push(
            Finding::hint(
                "title-from-name",
                format!(
                    "the part `{}` has no title; it prints as `{}`",
                    part.name,
                    part.title.plain()
                ),
            )
            .at(&part.place)
            .remedy("write a line like title = \"The middle shore\""),
        ),
    }
    part.question = f.said(cx, "question");
    let picture = f.text(cx, "picture");
    part.picture = cx.picture(picture, &f.place("picture"));
    part.pages = pages::changes(&mut f, &["lesson", "subject"], cx);
    raw.order = f.texts(cx, "order");
    f.finish(cx);
}

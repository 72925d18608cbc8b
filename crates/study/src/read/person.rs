//! `people/<name>.md`: biographies.

use super::{Cx, lesson, spelt, wherever};
use crate::fields::Fields;
use crate::files::Files;
use crate::ids::or_stand_in;
use crate::markdown;
use crate::model::{Band, Person, Said};
use crate::names::{normal, title_from};
use findings::{Finding, Place};

/// All people in order of file name.
pub(super) fn all(files: &Files, cx: &mut Cx) -> Vec<Person> {
    let paths: Vec<(&str, &str)> =
        files.inside("people").filter_map(|(p, n)| Some((p, n.strip_suffix(".md")?))).collect();
    paths.into_iter().filter_map(|(path, stem)| one(path, stem, files, cx)).collect()
}

fn one(path: &str, stem: &str, files: &Files, cx: &mut Cx) -> Option<Person> {
    let page = lesson::open(files, path, cx)?;
    let place = Place::file(path);
    let name = normal(stem);
    if name != stem {
        cx.findings.push(spelt(stem, &name, &place));
    }
    let mut f = Fields::new(page.settings.as_table(), place.child("front"));
    let band = f.band(cx, "band");
    let picture = f.text(cx, "picture");
    let wherever_written = f.texts(cx, "where");
    let facts = f.texts(cx, "facts");
    let person = Person {
        id: or_stand_in(f.text(cx, "id"), "pe", &f.at.clone(), cx),
        name: f
            .said(cx, "name")
            .unwrap_or_else(|| Said::plain_at(&f.place("name"), title_from(&name))),
        stem: name,
        born: year(&mut f, "born", cx),
        died: year(&mut f, "died", cx),
        known_for: f.said(cx, "known-for"),
        picture: cx.picture(picture, &f.place("picture")),
        wherever: wherever::names(&wherever_written, cx),
        facts: facts.iter().filter_map(|(id, at)| cx.fact(id, at)).collect(),
        timeline: pairs(&mut f, "when", "year", "what", cx),
        questions: pairs(&mut f, "question", "question", "answer", cx),
        text: markdown::plain(
            page.text.get(page.body..)?,
            page.body,
            path,
            band == Some(Band::A),
            cx,
        ),
        band,
        place,
    };
    f.finish(cx);
    Some(person)
}

fn year(f: &mut Fields<'_>, name: &'static str, cx: &mut Cx) -> Option<Said> {
    let text = f.text_or_number(cx, name)?;
    Some(markdown::line(&text, &f.place(name), cx))
}

/// Tables of two fields that both must be there.
fn pairs(
    f: &mut Fields<'_>,
    list: &'static str,
    first: &'static str,
    second: &'static str,
    cx: &mut Cx,
) -> Vec<(Said, Said)> {
    let mut out = Vec::new();
    for mut row in f.tables(cx, list) {
        let (one, two) = (year(&mut row, first, cx), row.said(cx, second));
        let at = row.at.clone();
        row.finish(cx);
        match (one, two) {
            (Some(one), Some(two)) => out.push((one, two)),
            _ => cx.findings.push(
                Finding::error("pair-incomplete", format!("this [[{list}]] is not complete"))
                    .at(&at)
                    .remedy(format!("give it both `{first}` and `{second}`")),
            ),
        }
    }
    out
}

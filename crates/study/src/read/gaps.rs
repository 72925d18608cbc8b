//! What is still wanted: rights and alt texts of pictures in use, sources of facts in use, an empty study.

use super::Cx;
use crate::model::{MayBeSold, Picture, Study};
use crate::names::listed;
use findings::{Finding, Place};

/// Adds the gaps of a whole study.
pub(super) fn look(study: &Study, cx: &mut Cx) {
    for picture in
        cx.used_pictures.keys().filter_map(|name| study.pictures.get(name)).collect::<Vec<_>>()
    {
        rights(picture, cx);
    }
    for id in cx.used_facts.keys().cloned().collect::<Vec<_>>() {
        let Some(fact) = study.facts.get(&id) else { continue };
        if fact.source.is_empty() {
            cx.findings.push(
                Finding::want(
                    "fact-without-source",
                    format!("the fact `{id}` is used and names no source"),
                )
                .at(&fact.place.child("source"))
                .remedy("write into facts.csv where you have it from"),
            );
        }
    }
    let nothing = study.lessons.is_empty()
        && study.people.is_empty()
        && study.words.is_empty()
        && study.questions.is_empty()
        && study.introduction.is_none()
        && study.hunt.is_empty()
        && study.prompts.is_empty()
        && study.figures.is_empty();
    if nothing && !cx.findings.has_errors() {
        cx.findings.push(
            Finding::error("study-empty", "this study has nothing to print yet")
                .at(&Place::file("study.toml"))
                .remedy("write twelve words into words.csv, or a lesson into the folder lessons"),
        );
    }
}

fn rights(picture: &Picture, cx: &mut Cx) {
    let name = &picture.name;
    let record = Place::file(format!("pictures/{name}.toml"));
    let missing: Vec<String> = [
        ("alt text", picture.alt.is_none()),
        ("author", picture.author.is_none()),
        ("licence", picture.licence.is_none()),
        ("answer to `may-be-sold`", picture.may_be_sold.is_none()),
    ]
    .into_iter()
    .filter(|(_, missing)| *missing)
    .map(|(what, _)| what.to_owned())
    .collect();
    if !missing.is_empty() {
        cx.findings.push(
            Finding::want(
                "picture-record",
                format!("the picture `{name}` wants its {}", listed(&missing)),
            )
            .at(&record)
            .remedy(format!(
                "write {} into pictures/{name}.toml",
                if missing.len() == 1 { "it" } else { "them" }
            )),
        );
    }
    let (fact, remedy) = match picture.may_be_sold {
        Some(MayBeSold::No) => {
            ("may not be sold", "use another picture, or get leave and write may-be-sold = \"yes\"")
        }
        Some(MayBeSold::Ask) => (
            "may be sold only after asking",
            "ask its maker, and write may-be-sold = \"yes\" when you have leave",
        ),
        Some(MayBeSold::Yes) | None => return,
    };
    cx.findings.push(
        Finding::want("picture-not-for-sale", format!("the picture `{name}` {fact}"))
            .at(&record.child("may-be-sold"))
            .remedy(remedy),
    );
}

//! What a biography is made from: the person's file and the sources of its facts.

use super::WORDS;
use crate::ask::{Ask, Owner};
use crate::shared::{PictureRef, SourceLine, belongs, owner_place, owner_title, picture, sources};
use crate::words::words;
use findings::{Finding, Findings, Place};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use study::{Band, Block, Person, Said};

/// Everything the page is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title of the sheet.
    pub title: String,
    /// Age band.
    pub band: Band,
    /// The person.
    pub person: Person,
    /// Picture.
    pub picture: Option<PictureRef>,
    /// Facts named or used, with their sources.
    pub facts: Vec<FactSource>,
}

/// A fact and where it comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct FactSource {
    /// Fact id.
    pub id: String,
    /// Its source, when the author has named one.
    pub source: Option<SourceLine>,
}

/// Works out the Needs.
pub(super) fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let person = person(ask)?;
    refuse(person)?;
    let ids: BTreeSet<&str> =
        used_facts(person).into_iter().chain(person.facts.iter().map(String::as_str)).collect();
    let source = |id: &str| sources(ask.study, [id]).into_iter().next();
    let title = ask.text("title").map_or_else(
        || {
            words(WORDS, ask.language).get("title").map_or_else(
                || person.name.plain(),
                |t| t.replace("{person}", &person.name.plain()),
            )
        },
        str::to_owned,
    );
    Ok(Needs {
        title,
        band: ask.band,
        person: person.clone(),
        picture: person.picture.as_deref().and_then(|p| picture(ask.study, p)),
        facts: ids
            .into_iter()
            .map(|id| FactSource { id: id.to_owned(), source: source(id) })
            .collect(),
    })
}

/// Facts that stand in the texts of a person.
pub(super) fn used_facts(person: &Person) -> Vec<&str> {
    let text = person.text.iter().flat_map(Block::lines);
    let times = person.timeline.iter().flat_map(|(year, what)| [year, what]);
    let asked = person.questions.iter().flat_map(|(question, answer)| [question, answer]);
    text.chain(times).chain(asked).chain(&person.known_for).flat_map(Said::facts).collect()
}

/// The person that the option names, else the one of the sheet's own place in a count.
fn person<'a>(ask: &Ask<'a>) -> Result<&'a Person, Findings> {
    let people = &ask.study.people;
    if let Some(name) = ask.text("person") {
        return people.iter().find(|p| p.stem == name).ok_or_else(|| unknown(ask, name).into());
    }
    let own: Vec<&Person> = match ask.owner {
        Owner::Study => people.iter().collect(),
        _ => {
            people.iter().filter(|p| !p.wherever.is_empty() && belongs(ask, &p.wherever)).collect()
        }
    };
    let nth = ask.nth();
    own.get(nth).copied().ok_or_else(|| {
        let owner = owner_title(ask).plain();
        let message = match own.len() {
            0 => format!("no person belongs to `{owner}`"),
            n => format!("`{owner}` has {n} of the {} people that its sheets ask for", nth + 1),
        };
        let finding = Finding::error("person-missing", message).at(&owner_place(ask));
        finding
            .remedy("write a file in `people/` whose `where` names it")
            .remedy("or say whom you mean with `person`")
            .into()
    })
}

fn unknown(ask: &Ask<'_>, name: &str) -> Finding {
    let near = ask
        .study
        .people
        .iter()
        .map(|p| (strsim::damerau_levenshtein(&p.stem, name), &p.stem))
        .min();
    let finding = Finding::error("person-unknown", format!("there is no person `{name}`"))
        .at(&owner_place(ask));
    match near {
        Some((distance, stem)) if distance < 4 => finding.remedy(format!("did you mean `{stem}`?")),
        _ => finding.remedy(format!("write `people/{name}.md`, or name another person")),
    }
}

fn refuse(person: &Person) -> Result<(), Findings> {
    let mut bad = Findings::none();
    let at = |field: &str| Place::new(person.place.file.clone(), field);
    if person.name.plain().trim().is_empty() {
        bad.push(
            Finding::error("person-nameless", "this person has no name")
                .at(&at("name"))
                .remedy("write it under `name`"),
        );
    }
    if person.text.iter().flat_map(Block::lines).all(|l| l.plain().trim().is_empty()) {
        let finding = Finding::error(
            "person-untold",
            format!("nothing is told about `{}`", person.name.plain()),
        );
        bad.push(finding.at(&person.place).remedy("write the text below the second line of `+++`"));
    }
    for (i, (question, answer)) in person.questions.iter().enumerate() {
        let here = at(&format!("question/{i}"));
        if question.plain().trim().is_empty() {
            bad.push(
                Finding::error("question-empty", format!("question {} asks nothing", i + 1))
                    .at(&here)
                    .remedy("write it under `question`"),
            );
        }
        if answer.plain().trim().is_empty() {
            let finding = Finding::error(
                "answer-empty",
                format!("question {} has no answer for the key", i + 1),
            )
            .at(&here);
            bad.push(
                finding.remedy(
                    "write it under `answer`, even if it only says what a good answer holds",
                ),
            );
        }
    }
    if bad.is_empty() { Ok(()) } else { Err(bad) }
}

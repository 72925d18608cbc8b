//! Takes the owner's rows from the lists of books, resources and links.

use super::{Needs, Row, Section};
use crate::ask::{Ask, Owner};
use crate::cautions::cautions;
use crate::shared;
use crate::words::words;
use findings::{Finding, Findings, Place};
use std::collections::BTreeSet;
use study::{Book, Link, Resource, ResourceForm, Said, Study};

pub(super) fn needs(ask: &Ask<'_>, toml: &str) -> Result<Needs, Findings> {
    let study = ask.study;
    let mine = |names: &[String]| shared::belongs(ask, names);
    let mut rows: Vec<Row> = study
        .books
        .iter()
        .filter(|b| mine(&b.wherever))
        .map(|b| book(study, ask.owner, b))
        .collect();
    rows.extend(
        study.resources.iter().filter(|r| mine(&r.wherever)).map(|r| resource(study, ask.owner, r)),
    );
    let links = study.links.iter().filter(|l| match ask.owner {
        Owner::Study => l.wherever.is_empty(),
        _ => mine(&l.wherever),
    });
    rows.extend(links.map(|l| link(study, ask.owner, l)));
    if rows.is_empty() {
        return Err(none(ask));
    }
    let words = words(toml, ask.language);
    let online = rows.iter().any(|r| r.section == Section::Online);
    let none: [&str; 0] = [];
    let caution = || cautions(&["links"], &none, ask.language).into_iter().next();
    Ok(Needs {
        title: shared::title(ask, &words),
        lead: words.get("lead").cloned(),
        rows,
        caution: online.then(caution).flatten(),
    })
}

fn none(ask: &Ask<'_>) -> Findings {
    let (whose, names) = match ask.owner {
        Owner::Study => ("the study".to_owned(), String::new()),
        _ => (
            format!("`{}`", shared::owner_title(ask).plain()),
            " and name it in their `where` column".to_owned(),
        ),
    };
    Finding::error("resources-none", format!("{whose} has no books or other resources to list"))
        .at(&Place::file("books.csv"))
        .remedy(format!(
            "add rows to books.csv or resources.csv{names}, or take `resources` out of the page set"
        ))
        .into()
}

fn book(study: &Study, owner: Owner, book: &Book) -> Row {
    let parts: Vec<&str> = [book.publisher.as_str(), book.year.as_str()]
        .into_iter()
        .filter(|p| !p.is_empty())
        .collect();
    Row {
        section: Section::Read,
        title: book.title.clone(),
        by: Some(book.author.clone()).filter(has_words),
        published: (!parts.is_empty()).then(|| parts.join(", ")),
        isbn: book.isbn.clone(),
        ages: (!book.ages.is_empty()).then(|| book.ages.replace('-', "–")),
        when: book.when.clone(),
        note: book.note.clone(),
        lessons: lessons(study, owner, &book.wherever),
        address: None,
        code: Vec::new(),
        at: book.title.at.clone(),
    }
}

fn resource(study: &Study, owner: Owner, resource: &Resource) -> Row {
    let section = match resource.form {
        ResourceForm::Hear => Section::Hear,
        ResourceForm::Look => Section::Look,
        ResourceForm::Make => Section::Make,
        ResourceForm::Visit => Section::Visit,
        ResourceForm::Play => Section::Play,
    };
    Row {
        section,
        title: resource.title.clone(),
        by: resource.by.clone().filter(has_words),
        published: None,
        isbn: None,
        ages: None,
        when: resource.when.clone(),
        note: resource.note.clone(),
        lessons: lessons(study, owner, &resource.wherever),
        address: None,
        code: Vec::new(),
        at: resource.title.at.clone(),
    }
}

fn link(study: &Study, owner: Owner, link: &Link) -> Row {
    Row {
        section: Section::Online,
        title: link.title.clone(),
        by: Some(link.institution.clone())
            .filter(|by| has_words(by) && by.plain() != link.title.plain()),
        published: None,
        isbn: None,
        ages: None,
        when: link.when.clone(),
        note: link.note.clone(),
        lessons: lessons(study, owner, &link.wherever),
        address: Some(link.address.clone()),
        code: Vec::new(),
        at: link.place.clone(),
    }
}

fn has_words(said: &Said) -> bool {
    !said.plain().trim().is_empty()
}

/// Numbers of the lessons that `where` names, directly, by a subject or by a whole part; none on a lesson's own sheet.
fn lessons(study: &Study, owner: Owner, wherever: &[String]) -> Vec<usize> {
    if matches!(owner, Owner::Lesson(_) | Owner::Subject(..)) {
        return Vec::new();
    }
    let named = |name: &str| wherever.iter().any(|w| w == name);
    let parts =
        study.parts.iter().filter(|p| named(&p.name)).flat_map(|p| p.lessons.iter().map(|l| l + 1));
    let own = study
        .lessons
        .iter()
        .enumerate()
        .filter(|(_, l)| named(&l.name) || l.subjects.iter().any(|s| named(&s.name)));
    let all: BTreeSet<usize> = own.map(|(i, _)| i + 1).chain(parts).collect();
    all.into_iter().collect()
}

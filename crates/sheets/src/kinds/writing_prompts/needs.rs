//! What a page of prompts is made from.

use super::WORDS;
use crate::ask::{Ask, Room};
use crate::shared::{PictureRef, belongs, owner_place, owner_title, picture, title};
use crate::words::words;
use findings::{Finding, Findings};
use serde::{Deserialize, Serialize};
use study::{Band, PromptFor, Said, Study};

/// Everything the pages are made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// The sentence under it.
    pub lead: String,
    /// Age band.
    pub band: Band,
    /// Space to fill.
    pub room: Room,
    /// Most prompts a page.
    pub per_page: u32,
    /// The prompts in the author's order.
    pub themes: Vec<Theme>,
}

/// A prompt with its picture.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Theme {
    /// The prompt.
    pub prompt: Said,
    /// Its picture.
    pub picture: Option<PictureRef>,
}

/// The group of an age band.
fn group(band: Band) -> PromptFor {
    match band {
        Band::A => PromptFor::Little,
        Band::B | Band::C => PromptFor::Middle,
        Band::D => PromptFor::Teen,
    }
}

/// Prompts a page, when the author does not say.
fn per_page(band: Band) -> u32 {
    match band {
        Band::A | Band::D => 2,
        Band::B | Band::C => 3,
    }
}

/// Works out the Needs.
pub(super) fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let words = words(WORDS, ask.language);
    let group = match ask.text("for") {
        Some("little") => PromptFor::Little,
        Some("middle") => PromptFor::Middle,
        Some("teen") => PromptFor::Teen,
        _ => group(ask.band),
    };
    let rows = ask.study.prompts.iter().filter(|p| p.whom == group && belongs(ask, &p.wherever));
    let themes: Vec<Theme> = rows
        .map(|p| Theme { prompt: p.prompt.clone(), picture: picture_for(ask.study, &p.wherever) })
        .collect();
    refuse(ask, &themes, group)?;
    let per_page =
        ask.number("prompts").and_then(|n| u32::try_from(n).ok()).unwrap_or(per_page(ask.band));
    let key = match (ask.band, themes.len()) {
        (Band::A, _) => "lead-little",
        (_, 1) => "lead-one",
        _ => "lead",
    };
    let lead = words.get(key).cloned().unwrap_or_default();
    Ok(Needs { title: title(ask, &words), lead, band: ask.band, room: ask.room, per_page, themes })
}

/// The picture of the first lesson, part or subject that a row belongs to.
fn picture_for(study: &Study, wherever: &[String]) -> Option<PictureRef> {
    let named = |name: &String| {
        let lesson =
            study.lessons.iter().find(|l| l.name == *name).and_then(|l| l.picture.as_ref());
        let subject = study
            .lessons
            .iter()
            .flat_map(|l| &l.subjects)
            .find(|s| s.name == *name)
            .and_then(|s| s.picture.as_ref());
        let part = study.parts.iter().find(|p| p.name == *name).and_then(|p| p.picture.as_ref());
        subject.or(lesson).or(part)
    };
    wherever.iter().find_map(named).and_then(|name| picture(study, name))
}

fn refuse(ask: &Ask<'_>, themes: &[Theme], group: PromptFor) -> Result<(), Findings> {
    let mut bad = Findings::none();
    if themes.is_empty() {
        let name = match group {
            PromptFor::Little => "little",
            PromptFor::Middle => "middle",
            PromptFor::Teen => "teen",
        };
        let message = format!(
            "`{}` has nothing to write about for the group `{name}`",
            owner_title(ask).plain()
        );
        let finding = Finding::error("prompts-missing", message).at(&owner_place(ask));
        bad.push(
            finding
                .remedy(format!("add a row to `prompts.csv` with `{name}` under `for`"))
                .remedy("or leave the sheet out here with `leave-out`"),
        );
    }
    for (i, theme) in themes.iter().enumerate() {
        let words = theme.prompt.plain();
        if themes[..i].iter().any(|t| t.prompt.plain() == words) {
            bad.push(
                Finding::error(
                    "prompt-twice",
                    format!("the prompt `{words}` stands in the list twice"),
                )
                .at(&theme.prompt.at)
                .remedy("take one of the two rows out"),
            );
        }
        if words.chars().count() > 400 {
            let finding =
                Finding::error("prompt-long", "a prompt is too long to leave room for writing")
                    .at(&theme.prompt.at);
            bad.push(finding.remedy("say it in at most 400 letters and spaces"));
        }
    }
    if bad.is_empty() { Ok(()) } else { Err(bad) }
}

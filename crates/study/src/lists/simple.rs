//! `resources.csv`, `hunt.csv`, `prompts.csv`, `figures.csv`.

use super::rows;
use crate::files::Files;
use crate::model::{Figure, FigureOfSpeech, HuntItem, Prompt, PromptFor, Resource, ResourceForm};
use crate::read::Cx;

const RESOURCE_FORMS: &[(&str, ResourceForm)] = &[
    ("look", ResourceForm::Look),
    ("hear", ResourceForm::Hear),
    ("make", ResourceForm::Make),
    ("visit", ResourceForm::Visit),
    ("play", ResourceForm::Play),
];

const PROMPT_FOR: &[(&str, PromptFor)] =
    &[("middle", PromptFor::Middle), ("little", PromptFor::Little), ("teen", PromptFor::Teen)];

const FIGURES: &[(&str, Figure)] = &[
    ("simile", Figure::Simile),
    ("metaphor", Figure::Metaphor),
    ("hyperbole", Figure::Hyperbole),
    ("personification", Figure::Personification),
];

/// All resources in file order.
pub(super) fn resources(files: &Files, cx: &mut Cx) -> Vec<Resource> {
    let rows = rows::all(&super::RESOURCES, files, cx);
    let one = |row: &rows::Row, cx: &mut Cx| {
        Some(Resource {
            form: row.choice("form", RESOURCE_FORMS, cx)?,
            title: row.said("title", cx)?,
            by: row.said("by", cx),
            when: row.said("when", cx),
            note: row.said("note", cx),
            wherever: row.wherever(cx),
        })
    };
    rows.iter().filter_map(|row| one(row, cx)).collect()
}

/// All items of the scavenger hunt in file order.
pub(super) fn hunt(files: &Files, cx: &mut Cx) -> Vec<HuntItem> {
    let rows = rows::all(&super::HUNT, files, cx);
    let one = |row: &rows::Row, cx: &mut Cx| {
        Some(HuntItem {
            item: row.said("item", cx)?,
            picture: row.picture(cx),
            wherever: row.wherever(cx),
            hint: row.said("hint", cx),
            safe: row.said("safe", cx),
        })
    };
    rows.iter().filter_map(|row| one(row, cx)).collect()
}

/// All writing prompts in file order.
pub(super) fn prompts(files: &Files, cx: &mut Cx) -> Vec<Prompt> {
    let rows = rows::all(&super::PROMPTS, files, cx);
    let one = |row: &rows::Row, cx: &mut Cx| {
        Some(Prompt {
            prompt: row.said("prompt", cx)?,
            whom: row.choice("for", PROMPT_FOR, cx)?,
            wherever: row.wherever(cx),
        })
    };
    rows.iter().filter_map(|row| one(row, cx)).collect()
}

/// All sentences with a figure of speech in file order; one whose figure is unknown is left out.
pub(super) fn figures(files: &Files, cx: &mut Cx) -> Vec<FigureOfSpeech> {
    let rows = rows::all(&super::FIGURES, files, cx);
    let one = |row: &rows::Row, cx: &mut Cx| {
        let figure = crate::fields::choice(
            cx,
            row.text("figure")?,
            &row.place("figure"),
            "figure",
            FIGURES,
        )?;
        Some(FigureOfSpeech {
            sentence: row.said("sentence", cx)?,
            figure,
            why: row.said("why", cx),
            wherever: row.wherever(cx),
        })
    };
    rows.iter().filter_map(|row| one(row, cx)).collect()
}

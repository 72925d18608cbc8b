//! Reads the cover's words from the study.

use super::Front;
use crate::ask::Ask;
use crate::shared;
use findings::{Finding, Findings, Place};
use study::Said;

pub(super) fn needs(ask: &Ask<'_>) -> Result<Front, Findings> {
    let study = ask.study;
    let title = match ask.text("title") {
        Some(own) => Said::plain_at(&study.title.at, own),
        None => study.title.clone(),
    };
    if title.plain().trim().is_empty() {
        return Err(Finding::error("cover-title", "the study has no title to print on its cover")
            .at(&Place::new("study.toml", "title"))
            .remedy("write its `title` in study.toml")
            .into());
    }
    let named = study.cover.iter().map(String::as_str);
    let first = study.lessons.iter().filter_map(|l| l.picture.as_deref());
    Ok(Front {
        title,
        subtitle: study.subtitle.clone(),
        ages: study.ages,
        lessons: study.lessons.len(),
        picture: named.chain(first).find_map(|name| shared::picture(study, name)),
        author: study.author.clone(),
        press: study.press.clone(),
        issue: study.issue.clone(),
    })
}

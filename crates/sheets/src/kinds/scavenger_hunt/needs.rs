//! What a hunt is made from: rows of `hunt.csv`, and the cautions that they call for.

use super::WORDS;
use crate::ask::Ask;
use crate::cautions::{self, cautions};
use crate::shared::{PictureRef, belongs, owner_place, owner_title, picture, title};
use crate::words::words;
use findings::{Finding, Findings};
use serde::{Deserialize, Serialize};
use study::{Band, HuntItem, Said};

/// Everything the hunt is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// The sentence under it.
    pub lead: String,
    /// Age band.
    pub band: Band,
    /// Large print holds fewer a page.
    pub large_print: bool,
    /// Things in the author's order.
    pub things: Vec<Thing>,
    /// Caution tags.
    pub tags: Vec<String>,
    /// Language of the cautions.
    pub language: String,
    /// What to take care of.
    pub cautions: Vec<String>,
    /// Words of the shore, by which a hunt there is known.
    pub shore_words: Vec<String>,
}

/// A thing to find.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Thing {
    /// What to find.
    pub item: Said,
    /// Its picture.
    pub picture: Option<PictureRef>,
    /// Where to look.
    pub hint: Option<Said>,
    /// What to do with it.
    pub safe: Option<Said>,
}

/// Fewest things.
pub(super) const LEAST: usize = 4;

/// Works out the Needs.
pub(super) fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let words = words(WORDS, ask.language);
    let mut things: Vec<Thing> = ask
        .study
        .hunt
        .iter()
        .filter(|h| belongs(ask, &h.wherever))
        .map(|h| thing(ask, h))
        .collect();
    let pictured = things.iter().filter(|t| t.picture.is_some()).count();
    if ask.band == Band::A && pictured >= LEAST {
        things.retain(|t| t.picture.is_some());
    }
    if let Some(most) = ask.number("things").and_then(|n| usize::try_from(n).ok()) {
        things.truncate(most);
    }
    refuse(ask, &things)?;
    let list = |key: &str| -> Vec<String> {
        words.get(key).map(|w| w.split(' ').map(str::to_owned).collect()).unwrap_or_default()
    };
    let shore_words = list("shore-words");
    let tags = tags(ask, &things, &shore_words)?;
    let lead = words.get("lead").cloned().unwrap_or_default();
    let cautions = cautions(&tags, &[] as &[&str], ask.language);
    let language = ask.language.to_owned();
    Ok(Needs {
        title: title(ask, &words),
        lead,
        band: ask.band,
        large_print: ask.room.large_print,
        things,
        tags,
        language,
        cautions,
        shore_words,
    })
}

fn thing(ask: &Ask<'_>, row: &HuntItem) -> Thing {
    Thing {
        item: row.item.clone(),
        picture: row.picture.as_deref().and_then(|p| picture(ask.study, p)),
        hint: row.hint.clone(),
        safe: row.safe.clone(),
    }
}

fn refuse(ask: &Ask<'_>, things: &[Thing]) -> Result<(), Findings> {
    let mut bad = Findings::none();
    if things.len() < LEAST {
        let owner = owner_title(ask).plain();
        let message =
            format!("`{owner}` has {} things to find, and a hunt needs {LEAST}", things.len());
        let finding = Finding::error("hunt-short", message).at(&owner_place(ask));
        bad.push(
            finding
                .remedy("add rows to `hunt.csv` that name it under `where`")
                .remedy("or leave the sheet out here with `leave-out`"),
        );
    }
    for (i, thing) in things.iter().enumerate() {
        let name = thing.item.plain();
        if things[..i].iter().any(|t| t.item.plain().to_lowercase() == name.to_lowercase()) {
            bad.push(
                Finding::error("hunt-twice", format!("`{name}` is to be found twice"))
                    .at(&thing.item.at)
                    .remedy("take one of the two rows out"),
            );
        }
    }
    if bad.is_empty() { Ok(()) } else { Err(bad) }
}

/// The author's tags, else `outdoors`, and `shore` where the words speak of it.
fn tags(ask: &Ask<'_>, things: &[Thing], shore_words: &[String]) -> Result<Vec<String>, Findings> {
    if let Some(own) = ask.texts("tags") {
        let known = cautions::tags();
        let unknown: Findings = own
            .iter()
            .filter(|t| !known.iter().any(|k| k == *t))
            .map(|t| {
                let finding =
                    Finding::error("tag-unknown", format!("there is no caution called `{t}`"))
                        .at(&owner_place(ask));
                finding.remedy(format!("take one of {}", known.join(", ")))
            })
            .collect();
        return if unknown.is_empty() {
            Ok(own.into_iter().map(str::to_owned).collect())
        } else {
            Err(unknown)
        };
    }
    let mut tags = vec!["outdoors".to_owned()];
    if things.iter().any(|t| speaks_of(t, shore_words)) {
        tags.push("shore".to_owned());
    }
    Ok(tags)
}

/// True when one of these words stands in the thing's words.
pub(super) fn speaks_of(thing: &Thing, words: &[String]) -> bool {
    let lines = [Some(&thing.item), thing.hint.as_ref(), thing.safe.as_ref()];
    lines.into_iter().flatten().any(|line| {
        let plain = line.plain().to_lowercase();
        plain.split(|c: char| !c.is_alphanumeric()).any(|w| words.iter().any(|s| s == w))
    })
}

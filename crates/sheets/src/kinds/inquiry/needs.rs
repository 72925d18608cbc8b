//! What a notebook page is made from: the names of its boxes.

use super::WORDS;
use crate::ask::{Ask, Room};
use crate::shared::{owner_place, title};
use crate::words::{Words, words};
use findings::{Finding, Findings, Place};
use serde::{Deserialize, Serialize};
use study::{Band, Said};

/// Everything the page is made from.
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
    /// The boxes in order.
    pub boxes: Vec<Need>,
}

/// A box that is wanted.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Need {
    /// Its name.
    pub title: Said,
    /// A hint under the name.
    pub hint: Option<String>,
    /// What a child does in it.
    pub used: Use,
}

/// What a child does in a box.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Use {
    /// Writes a name or two.
    Choose,
    /// Writes, or draws when too young to write.
    Write,
    /// Draws.
    Draw,
}

/// Fewest boxes.
pub(super) const LEAST: usize = 2;
/// Most boxes: three rows of two between a strip and a large one.
pub(super) const MOST: usize = 8;

/// Works out the Needs.
pub(super) fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let words = words(WORDS, ask.language);
    let (named, place) = named(ask);
    let boxes = if named.is_empty() { our_own(&words) } else { authors(&named, &words) };
    refuse(&boxes, &place)?;
    let lead = words.get("lead").cloned().unwrap_or_default();
    Ok(Needs { title: title(ask, &words), lead, band: ask.band, room: ask.room, boxes })
}

/// The author's names for the boxes, and where she wrote them.
fn named(ask: &Ask<'_>) -> (Vec<Said>, Place) {
    match ask.texts("boxes") {
        Some(names) => {
            let place = owner_place(ask);
            (names.iter().map(|n| Said::plain_at(&place, *n)).collect(), place)
        }
        None => (ask.study.inquiry_boxes.clone(), Place::new("study.toml", "inquiry/boxes")),
    }
}

fn our_own(words: &Words) -> Vec<Need> {
    let text = |key: String| words.get(&key).cloned();
    let all = (1..=6).filter_map(|i| {
        let title = Said::plain_at(&Place::default(), text(format!("box-{i}"))?);
        Some((title, text(format!("hint-{i}")).filter(|h| !h.is_empty())))
    });
    all.enumerate()
        .map(|(i, (title, hint))| Need { used: used(i, &title, words), title, hint })
        .collect()
}

fn authors(names: &[Said], words: &Words) -> Vec<Need> {
    names
        .iter()
        .enumerate()
        .map(|(i, title)| Need { title: title.clone(), hint: None, used: used(i, title, words) })
        .collect()
}

fn used(index: usize, title: &Said, words: &Words) -> Use {
    let plain = title.plain().to_lowercase();
    let draws = words.get("draw-words").map(String::as_str).unwrap_or_default();
    let named: Vec<&str> = plain.split(|c: char| !c.is_alphanumeric()).collect();
    match index {
        _ if draws.split(' ').any(|d| named.contains(&d)) => Use::Draw,
        0 => Use::Choose,
        _ => Use::Write,
    }
}

/// Says what is wrong with the author's names.
pub(super) fn refuse(boxes: &[Need], place: &Place) -> Result<(), Findings> {
    let mut bad = Findings::none();
    if !(LEAST..=MOST).contains(&boxes.len()) {
        let message =
            format!("the notebook has {} boxes, and its page takes {LEAST} to {MOST}", boxes.len());
        bad.push(
            Finding::error("boxes-count", message)
                .at(place)
                .remedy("name more boxes, or fewer, under `boxes`"),
        );
    }
    for (i, need) in boxes.iter().enumerate() {
        let name = need.title.plain();
        if name.trim().is_empty() {
            bad.push(
                Finding::error("box-nameless", "a box of the notebook has no name")
                    .at(place)
                    .remedy("name it, or take it out of `boxes`"),
            );
        } else if boxes[..i].iter().any(|b| b.title.plain() == name) {
            bad.push(
                Finding::error("box-twice", format!("two boxes are called `{name}`"))
                    .at(place)
                    .remedy("give one of them another name"),
            );
        } else if name.chars().count() > 40 {
            bad.push(
                Finding::error("box-long", format!("`{name}` is too long for the head of a box"))
                    .at(place)
                    .remedy("say it in at most 40 letters"),
            );
        }
    }
    if bad.is_empty() { Ok(()) } else { Err(bad) }
}

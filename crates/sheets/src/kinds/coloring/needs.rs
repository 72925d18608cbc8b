//! What the page is made from: a picture, and the name below it.

use super::WORDS;
use crate::ask::{Ask, Owner, Room};
use crate::shared::{PictureRef, owner_place, owner_title, picture, title};
use crate::words::words;
use findings::{Finding, Findings};
use pictures::outline::is_line_art;
use serde::{Deserialize, Serialize};
use study::{Band, Picture, PictureForm};

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
    /// The picture.
    pub picture: PictureRef,
    /// Its SVG text, when lines are to be drawn from it; none when it is printed as it is.
    pub flat: Option<String>,
    /// Pixels across and down, of a bitmap.
    pub pixels: Option<(u32, u32)>,
    /// The name in hollow letters.
    pub letters: String,
    /// Keep small dark discs solid?
    pub solid_eyes: bool,
}

/// Most letters of the name: one line across the page in large letters.
const MOST_LETTERS: usize = 26;

/// Works out the Needs.
pub(super) fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let words = words(WORDS, ask.language);
    let (art, named) = chosen(ask)?;
    let flat = flat(art, named)?;
    let letters = letters(ask);
    refuse_letters(ask, &letters)?;
    let picture = picture(ask.study, &art.name).ok_or_else(|| Findings::from(missing(ask)))?;
    Ok(Needs {
        title: title(ask, &words),
        lead: words.get("lead").cloned().unwrap_or_default(),
        band: ask.band,
        room: ask.room,
        picture,
        flat,
        pixels: (art.form != PictureForm::Svg).then_some((art.width, art.height)),
        letters,
        solid_eyes: ask.text("eyes") != Some("open"),
    })
}

/// The picture, and whether the author named it for this sheet or as a line picture.
fn chosen<'a>(ask: &Ask<'a>) -> Result<(&'a Picture, bool), Findings> {
    let study = ask.study;
    if let Some(name) = ask.text("picture") {
        return study
            .pictures
            .get(name)
            .map(|p| (p, true))
            .ok_or_else(|| unknown(ask, name).into());
    }
    let own = match ask.owner {
        Owner::Subject(i, j) => {
            study.lessons.get(i).and_then(|l| l.subjects.get(j)).and_then(|s| s.picture.as_ref())
        }
        Owner::Lesson(i) => study.lessons.get(i).and_then(|l| l.picture.as_ref()),
        Owner::Study | Owner::Part(_) => None,
    };
    let Some(own) = own else { return Err(missing(ask).into()) };
    if let Some(lines) = study.pictures.get(&format!("{own}-line")) {
        return Ok((lines, true));
    }
    study
        .pictures
        .get(own)
        .map(|p| (p, own.ends_with("-line")))
        .ok_or_else(|| unknown(ask, own).into())
}

fn missing(ask: &Ask<'_>) -> Finding {
    let message = format!("`{}` has no picture to colour", owner_title(ask).plain());
    let finding = Finding::error("picture-missing", message).at(&owner_place(ask));
    finding
        .remedy("name one under `picture`")
        .remedy("or leave the sheet out here with `leave-out`")
}

fn unknown(ask: &Ask<'_>, name: &str) -> Finding {
    let near = ask.study.pictures.keys().map(|p| (strsim::damerau_levenshtein(p, name), p)).min();
    let finding = Finding::error("picture-unknown", format!("there is no picture `{name}`"))
        .at(&owner_place(ask));
    match near {
        Some((distance, near)) if distance < 4 => finding.remedy(format!("did you mean `{near}`?")),
        _ => finding.remedy(format!("put `{name}.svg` into the folder `pictures`")),
    }
}

/// The SVG text of a flat picture; none for one that is printed as it is.
fn flat(art: &Picture, named: bool) -> Result<Option<String>, Findings> {
    let refuse = |message: String| {
        let finding = Finding::error("picture-lines", message).at(&art.place);
        let finding =
            finding.remedy(format!("draw a line picture and call it `{}-line`", art.name));
        Findings::from(finding.remedy("or leave the sheet out here with `leave-out`"))
    };
    if art.form != PictureForm::Svg {
        return if named {
            Ok(None)
        } else {
            Err(refuse(format!("no outlines can be drawn from `{}`, which is no SVG", art.name)))
        };
    }
    let svg = std::str::from_utf8(&art.bytes)
        .map_err(|_| refuse(format!("`{}` cannot be read", art.name)))?;
    match is_line_art(svg) {
        Ok(true) => Ok(None),
        Ok(false) => Ok(Some(svg.to_owned())),
        // A picture that the author calls a line picture is taken at her word.
        Err(_) if art.name.ends_with("-line") => Ok(None),
        Err(e) => Err(refuse(format!("no outlines can be drawn from `{}`: {e}", art.name))),
    }
}

/// The author's word, else the subject's own name, else the title.
fn letters(ask: &Ask<'_>) -> String {
    if let Some(own) = ask.text("letters") {
        return own.trim().to_owned();
    }
    let lesson = |i: usize| ask.study.lessons.get(i);
    let name = match ask.owner {
        Owner::Subject(i, j) => lesson(i).and_then(|l| l.subjects.get(j)).map(|s| s.name.as_str()),
        Owner::Lesson(i) => lesson(i)
            .filter(|l| l.subjects.len() == 1)
            .and_then(|l| l.subjects.first())
            .map(|s| s.name.as_str()),
        Owner::Study | Owner::Part(_) => None,
    };
    name.map_or_else(|| owner_title(ask).plain(), |n| n.replace('-', " "))
}

fn refuse_letters(ask: &Ask<'_>, letters: &str) -> Result<(), Findings> {
    let refuse = |message: String| {
        let finding = Finding::error("letters-wrong", message).at(&owner_place(ask));
        Err(Findings::from(finding.remedy("write a short name under `letters` for this sheet")))
    };
    let count = letters.chars().count();
    if count == 0 {
        return refuse("the name below the picture has no letters".into());
    }
    if count > MOST_LETTERS {
        return refuse(format!(
            "`{letters}` is too long to stand below the picture in large letters"
        ));
    }
    match letters.chars().find(|c| *c != ' ' && !pictures::hand::covers(*c)) {
        Some(c) => refuse(format!("the large letters have no `{c}`")),
        None => Ok(()),
    }
}

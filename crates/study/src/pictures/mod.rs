//! Pictures: artwork checked and cleaned, with its record of rights, points and pieces.

mod bitmap;
mod record;
mod svg;
mod svg_rules;

use crate::files::Files;
use crate::model::{Picture, PictureForm};
use crate::names::normal;
use crate::read::{Cx, spelt};
use findings::{Finding, Place};
use std::collections::{BTreeMap, BTreeSet};

/// Artwork that passed its checks.
#[derive(Debug)]
pub(crate) struct Art {
    /// How it is coded.
    pub form: PictureForm,
    /// Cleaned bytes.
    pub bytes: Vec<u8>,
    /// Width in pixels or SVG units.
    pub width: u32,
    /// Height in pixels or SVG units.
    pub height: u32,
    /// Left and top edge in tenths of an SVG unit.
    pub origin: (i32, i32),
    /// Ids of the parts of an SVG.
    pub ids: BTreeSet<String>,
}

/// Endings of picture files, and of those that authors try.
const ENDINGS: &[&str] = &["svg", "png", "jpg", "jpeg"];

/// True for an ending of a picture file.
pub(crate) fn is_ending(ending: &str) -> bool {
    ENDINGS.contains(&ending.to_ascii_lowercase().as_str())
}

/// All pictures by name; also learns their names.
pub(crate) fn read(files: &Files, cx: &mut Cx) -> BTreeMap<String, Picture> {
    let mut pictures: BTreeMap<String, Picture> = BTreeMap::new();
    for (path, file) in files.inside("pictures") {
        let (stem, ending) = file.rsplit_once('.').unwrap_or((file, ""));
        let place = Place::file(path);
        if ending == "toml" {
            alone(path, stem, files, cx);
            continue;
        }
        if !is_ending(ending) {
            other_form(path, ending, cx);
            continue;
        }
        let name = normal(stem);
        if name != stem {
            cx.findings.push(spelt(stem, &name, &place));
        }
        cx.pictures.insert(name.clone());
        if let Some(other) = pictures.get(&name) {
            let finding = Finding::error(
                "picture-twice",
                format!("two pictures are called `{name}`: this one and {}", other.place.file),
            );
            cx.findings.push(finding.at(&place).remedy("rename or delete one of the two files"));
            continue;
        }
        if let Some(picture) = one(path, stem, name, files, cx) {
            pictures.insert(picture.name.clone(), picture);
        }
    }
    pictures
}

fn one(path: &str, stem: &str, name: String, files: &Files, cx: &mut Cx) -> Option<Picture> {
    let place = Place::file(path);
    let bytes = files.bytes(path, &mut cx.findings)?;
    if let Some(text) =
        (!bitmap::is_bitmap(&bytes)).then(|| std::str::from_utf8(&bytes).ok()).flatten()
    {
        cx.texts.insert(path.to_owned(), text.into());
    }
    let art = match bitmap::is_bitmap(&bytes) {
        true => bitmap::clean(&bytes),
        false => svg::clean(&bytes, path),
    };
    let art = art
        .map_err(|findings| {
            cx.findings.append(
                findings
                    .into_iter()
                    .map(|f| if f.place.is_some() { f } else { f.at(&place) })
                    .collect(),
            )
        })
        .ok()?;
    let mut picture = Picture {
        name,
        form: art.form,
        hash: blake3::hash(&art.bytes).to_hex().to_string(),
        width: art.width,
        height: art.height,
        alt: None,
        author: None,
        licence: None,
        source: None,
        may_be_sold: None,
        points: Vec::new(),
        pieces: Vec::new(),
        place,
        bytes: Vec::new().into(),
    };
    record::read(&mut picture, &format!("pictures/{stem}.toml"), &art, files, cx);
    picture.bytes = art.bytes.into();
    Some(picture)
}

/// A record without its picture.
fn alone(path: &str, stem: &str, files: &Files, cx: &mut Cx) {
    let there = files.inside("pictures").any(|(_, file)| {
        file.rsplit_once('.').is_some_and(|(other, ending)| other == stem && is_ending(ending))
    });
    if !there {
        let finding = Finding::warning(
            "record-alone",
            format!("there is no picture `{stem}` beside this record"),
        );
        cx.findings.push(finding.at(&Place::file(path)).remedy(
            "put the picture into the same folder under the same name, or delete the record",
        ));
    }
}

/// A picture in a form that does not print.
fn other_form(path: &str, ending: &str, cx: &mut Cx) {
    let picture =
        ["webp", "gif", "bmp", "tif", "tiff", "heic", "avif", "svgz", "eps", "ai", "psd", "pdf"];
    if picture.contains(&ending.to_ascii_lowercase().as_str()) {
        cx.findings.push(
            Finding::warning(
                "picture-form",
                format!("a picture in the form `{ending}` does not print"),
            )
            .at(&Place::file(path))
            .remedy("save a drawing as SVG, a photo as JPEG or PNG"),
        );
    }
}

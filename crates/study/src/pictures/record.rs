//! `pictures/<name>.toml`: alt text, rights, points and pieces.

use super::Art;
use crate::fields::Fields;
use crate::files::Files;
use crate::model::{Landmark, MayBeSold, Picture, PictureForm};
use crate::names::nearest;
use crate::read::Cx;
use crate::toml_text;
use findings::{Finding, Place};

const SOLD: &[(&str, MayBeSold)] =
    &[("yes", MayBeSold::Yes), ("no", MayBeSold::No), ("ask", MayBeSold::Ask)];

/// Reads the record of a picture, when there is one.
pub(super) fn read(picture: &mut Picture, path: &str, art: &Art, files: &Files, cx: &mut Cx) {
    if !files.has(path) {
        return;
    }
    let Some(text) = files.text(path, cx) else { return };
    let settings = match toml_text::parse(&text, path, 1) {
        Ok(settings) => settings,
        Err(finding) => return cx.findings.push(finding),
    };
    let mut f = Fields::new(settings.as_table(), Place::file(path));
    picture.alt = f.said(cx, "alt");
    picture.author = f.text(cx, "author");
    picture.licence = f.text(cx, "licence");
    picture.source = f.text(cx, "source");
    picture.may_be_sold = f.choice(cx, "may-be-sold", SOLD);
    for piece in f.tables(cx, "piece") {
        picture.pieces.extend(self::piece(piece, picture.form, art, cx));
    }
    for point in f.tables(cx, "point") {
        if let Some(point) = self::point(point, picture, art, cx) {
            picture.points.push(point);
        }
    }
    f.finish(cx);
}

fn piece(mut f: Fields<'_>, form: PictureForm, art: &Art, cx: &mut Cx) -> Option<(String, String)> {
    let (id, name) = (f.text(cx, "id"), f.text(cx, "name"));
    let at = f.at.clone();
    f.finish(cx);
    let Some(id) = id else {
        cx.findings.push(
            Finding::error("piece-nameless", "this piece has no `id`")
                .at(&at)
                .remedy("write the id that the piece has in the drawing"),
        );
        return None;
    };
    if form != PictureForm::Svg {
        cx.findings.push(
            Finding::warning("piece-of-bitmap", "only a drawing (SVG) has pieces")
                .at(&at)
                .remedy("take the piece out"),
        );
        return None;
    }
    if !art.ids.contains(&id) {
        let finding =
            Finding::error("piece-unknown", format!("the drawing has no part called `{id}`"))
                .at(&at.child("id"));
        cx.findings.push(match nearest(&id, art.ids.iter().map(String::as_str)) {
            Some(near) => finding.remedy(format!("did you mean `{near}`?")),
            None => finding
                .remedy("give the part this id in your drawing program, or take the piece out"),
        });
        return None;
    }
    let name = name.unwrap_or_else(|| id.replace('-', " "));
    Some((id, name))
}

fn point(mut f: Fields<'_>, picture: &Picture, art: &Art, cx: &mut Cx) -> Option<Landmark> {
    let (name, x, y) = (f.text(cx, "name"), f.tenths(cx, "x"), f.tenths(cx, "y"));
    let piece = f.text(cx, "piece");
    let at = f.at.clone();
    f.finish(cx);
    let (Some(name), Some(x), Some(y)) = (name, x, y) else {
        cx.findings.push(
            Finding::error("point-incomplete", "this point is not complete")
                .at(&at)
                .remedy("give it a `name`, an `x` and a `y`"),
        );
        return None;
    };
    if picture.points.iter().any(|p| p.name == name) {
        cx.findings.push(
            Finding::error("point-twice", format!("the point `{name}` stands twice"))
                .at(&at.child("name"))
                .remedy("give one of the two another name"),
        );
        return None;
    }
    let (x, y) = (x.saturating_sub(art.origin.0), y.saturating_sub(art.origin.1));
    let inside =
        |n: i32, size: u32| n >= 0 && u32::try_from(n).is_ok_and(|n| n <= size.saturating_mul(10));
    if !inside(x, art.width) || !inside(y, art.height) {
        let finding =
            Finding::error("point-outside", format!("the point `{name}` lies outside the picture"));
        cx.findings.push(
            finding
                .at(&at)
                .remedy(format!("the picture is {} wide and {} high", art.width, art.height)),
        );
        return None;
    }
    if let Some(piece) =
        piece.as_ref().filter(|piece| !picture.pieces.iter().any(|(id, _)| id == *piece))
    {
        let finding =
            Finding::error("piece-unknown", format!("there is no [[piece]] with the id `{piece}`"))
                .at(&at.child("piece"));
        cx.findings.push(match nearest(piece, picture.pieces.iter().map(|(id, _)| id.as_str())) {
            Some(near) => finding.remedy(format!("did you mean `{near}`?")),
            None => finding.remedy("write a [[piece]] with this id, or take the line out"),
        });
    }
    Some(Landmark { name, x, y, piece: piece.filter(|id| art.ids.contains(id)) })
}

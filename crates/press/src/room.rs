//! The room that drawn items take on the page.

use crate::drawn::{Area, um};
use typst::layout::{Abs, Point, Ratio, Rect, Transform};
use typst::text::TextItem;

/// The letters of a run that its font lacks, each once.
pub(crate) fn missing(item: &TextItem) -> String {
    let mut letters = String::new();
    for glyph in item.glyphs.iter().filter(|glyph| glyph.id == 0) {
        let written = item.text.get(glyph.range()).unwrap_or_default();
        letters.extend(written.chars().filter(|c| !letters.contains(*c)).collect::<Vec<_>>());
    }
    letters
}

/// Whether upright rectangles stay upright.
pub(crate) fn right_angled(to_page: Transform) -> bool {
    let none = |ratio: Ratio| ratio.get().abs() < 1e-6;
    (none(to_page.kx) && none(to_page.ky)) || (none(to_page.sx) && none(to_page.sy))
}

/// The room of the glyphs' outlines, from the start of the base line. `None` for blanks.
pub(crate) fn of_text(item: &TextItem) -> Option<Rect> {
    let face = item.font.ttf();
    let mut pen = Abs::zero();
    let mut room: Option<Rect> = None;
    for glyph in &item.glyphs {
        if let Some(outline) = face.glyph_bounding_box(ttf_parser::GlyphId(glyph.id)) {
            let along = |units: i16| item.font.to_em(units).at(item.size);
            let origin =
                Point::new(pen + glyph.x_offset.at(item.size), -glyph.y_offset.at(item.size));
            let min = origin + Point::new(along(outline.x_min), -along(outline.y_max));
            let max = origin + Point::new(along(outline.x_max), -along(outline.y_min));
            room = Some(match room {
                None => Rect::new(min, max),
                Some(r) => Rect::new(r.min.min(min), r.max.max(max)),
            });
        }
        pen += glyph.x_advance.at(item.size);
    }
    room
}

/// The upright rectangle round a transformed one.
pub(crate) fn area(rect: Rect, to_page: Transform) -> Area {
    let corners = [
        rect.min,
        rect.max,
        Point::new(rect.min.x, rect.max.y),
        Point::new(rect.max.x, rect.min.y),
    ]
    .map(|corner| corner.transform(to_page));
    let (mut min, mut max) = (corners[0], corners[0]);
    for corner in &corners[1..] {
        min = min.min(*corner);
        max = max.max(*corner);
    }
    Area {
        left: um(min.x.to_pt()),
        top: um(min.y.to_pt()),
        right: um(max.x.to_pt()),
        bottom: um(max.y.to_pt()),
    }
}

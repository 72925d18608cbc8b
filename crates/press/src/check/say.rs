//! How findings name what is drawn.

use super::Page;
use crate::drawn::{Ink, What};

/// How many letters of a text are enough to know it again.
const LETTERS: usize = 40;

/// An item in the author's words.
pub(super) fn item(page: Page<'_>, ink: &Ink) -> String {
    let laid = &page.drawn.page;
    match ink.what {
        What::Text(n) => laid.texts.get(n).map_or_else(String::new, |text| quoted(&text.text)),
        What::Image(n) => match laid.images.get(n).filter(|image| !image.name.is_empty()) {
            Some(image) => format!("the picture {}", quoted(&image.name)),
            None => "a picture".to_owned(),
        },
        What::Mark(n) => laid
            .marks
            .get(n)
            .map_or_else(String::new, |mark| format!("the {} {}", mark.kind, quoted(&mark.name))),
        What::Shape => "a line or box".to_owned(),
    }
}

/// A text between quotes, cut short when it is long.
pub(super) fn quoted(text: &str) -> String {
    let text = text.trim();
    let mut short: String = text.chars().take(LETTERS).collect();
    if short.len() < text.len() {
        short.push('…');
    }
    format!("`{short}`")
}

/// The sheet and the page, as the author knows them.
pub(super) fn whereabouts(page: Page<'_>) -> String {
    let number = page.drawn.page.number;
    match page.sheet {
        Some(sheet) => format!("{} (page {number})", quoted(sheet.called())),
        None => format!("page {number}"),
    }
}

/// A length in mm with one decimal.
pub(super) fn mm(um: i64) -> String {
    let tenths = (um + 50) / 100;
    format!("{}.{} mm", tenths / 10, tenths % 10)
}

/// What to do about an item that has no room.
pub(super) fn make_room(ink: &Ink) -> &'static str {
    match (ink.what, &ink.field) {
        (What::Text(_), Some(_)) => "shorten this text",
        (_, Some(_)) => "shorten what stands there, or use a smaller picture",
        (_, None) => "give the sheet fewer or shorter items, or make another one",
    }
}

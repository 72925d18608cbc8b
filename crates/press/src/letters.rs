//! Letters that no typeface of the shelf has.
//!
//! An accessible file may not hold a letter without a shape. On a sheet, such a letter is a
//! finding; but the page that says so, and the foot of every page, must print all the same.

use crate::fonts::shelf;
use serde_json::Value;

/// What stands for a letter that cannot be printed (U+FFFD, the replacement character).
const STAND_IN: char = '\u{FFFD}';

/// The family that stands behind all others.
const BEHIND: &str = "noto sans";

/// Whether running text can print a letter, or passes over it.
pub(crate) fn printable(letter: char) -> bool {
    let passed_over = matches!(letter,
        '\u{AD}' | '\u{200B}'..='\u{200F}' | '\u{2028}'..='\u{202E}' | '\u{2060}'..='\u{2064}'
        | '\u{FE00}'..='\u{FE0F}' | '\u{FEFF}');
    let book = &shelf().book;
    passed_over
        || letter.is_whitespace()
        || book
            .select_family(BEHIND)
            .filter_map(|index| book.info(index))
            .any(|info| info.coverage.contains(u32::from(letter)))
}

/// The text with a stand-in for each letter that cannot be printed; `None` when all can.
pub(crate) fn cleaned(text: &str) -> Option<String> {
    if text.is_ascii() || text.chars().all(printable) {
        return None;
    }
    Some(text.chars().map(|c| if printable(c) { c } else { STAND_IN }).collect())
}

/// The same for all texts of some data.
pub(crate) fn clean(data: &Value) -> Value {
    match data {
        Value::String(text) => Value::from(cleaned(text).unwrap_or_else(|| text.clone())),
        Value::Array(items) => items.iter().map(clean).collect(),
        Value::Object(entries) => {
            Value::Object(entries.iter().map(|(key, entry)| (key.clone(), clean(entry))).collect())
        }
        other => other.clone(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn letters_of_many_languages_pass_and_signs_get_a_stand_in() {
        assert_eq!(cleaned("Écueil, Ärger, łódź, Ωμέγα – “so”…"), None);
        assert_eq!(cleaned("Snow \u{2603}\u{FE0F}!").as_deref(), Some("Snow \u{FFFD}\u{FE0F}!"));
        assert!(printable(STAND_IN));
    }
}

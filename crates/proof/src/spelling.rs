//! How a word is spelt in a grid: capitals only, one entry a letter.

use unicode_normalization::UnicodeNormalization;
use unicode_normalization::char::is_combining_mark;

/// The letters of a word in capitals; spaces, hyphens and apostrophes are dropped,
/// an accent stays with its letter, ß becomes SS. None when something else stands in the word.
pub fn capitals(word: &str) -> Option<Vec<String>> {
    let mut out: Vec<String> = Vec::new();
    for c in word.nfc().flat_map(char::to_uppercase) {
        match (c, out.last_mut()) {
            (' ' | '\u{a0}' | '-' | '\u{2010}' | '\u{2011}' | '–' | '\'' | '’' | 'ʼ', _) => {}
            (c, Some(before)) if is_combining_mark(c) => before.push(c),
            (c, _) if c.is_alphabetic() => out.push(c.to_string()),
            _ => return None,
        }
    }
    Some(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spells_as_a_child_would() {
        let spelt = |w: &str| capitals(w).map(|l| l.join("|"));
        assert_eq!(spelt("home scar").as_deref(), Some("H|O|M|E|S|C|A|R"));
        assert_eq!(spelt("sea-hare’s").as_deref(), Some("S|E|A|H|A|R|E|S"));
        assert_eq!(spelt("große").as_deref(), Some("G|R|O|S|S|E"));
        assert_eq!(spelt("bénitier").as_deref(), Some("B|É|N|I|T|I|E|R"));
        // e + combining acute is the same letter as é.
        assert_eq!(spelt("be\u{301}nitier").as_deref(), Some("B|É|N|I|T|I|E|R"));
        assert_eq!(spelt("7-spot"), None);
    }
}

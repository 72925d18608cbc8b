//! Words as letters of a puzzle: capitals, one entry a letter as a reader sees it.

use unicode_normalization::UnicodeNormalization;
use unicode_segmentation::UnicodeSegmentation;

/// The letters of a word in capitals, by its written parts (`home scar` has two).
///
/// Spaces and hyphens part it, apostrophes are dropped, an accent stays with its letter, ß becomes SS.
///
/// # Errors
/// The sign that is no letter.
pub fn parts(word: &str) -> Result<Vec<Vec<String>>, String> {
    let capitals: String = word.trim().nfc().collect::<String>().to_uppercase();
    let mut parts: Vec<Vec<String>> = vec![Vec::new()];
    for sign in capitals.graphemes(true) {
        match sign {
            " " | "\u{a0}" | "-" | "\u{2010}" | "\u{2011}" | "–" => parts.push(Vec::new()),
            "'" | "’" | "ʼ" => {}
            letter if letter.chars().next().is_some_and(char::is_alphabetic) => {
                if let Some(part) = parts.last_mut() {
                    part.push(letter.to_owned());
                }
            }
            other => return Err(other.to_owned()),
        }
    }
    parts.retain(|p| !p.is_empty());
    Ok(parts)
}

/// The letters of a word in capitals, its parts run together.
///
/// # Errors
/// The sign that is no letter.
pub fn letters(word: &str) -> Result<Vec<String>, String> {
    Ok(parts(word)?.concat())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_spellings_agree() {
        // The checkers' own spelling is written another way; they must agree on every word an author may write.
        for word in [
            "limpet",
            "home scar",
            "sea-hare's",
            "große",
            "bénitier",
            "be\u{301}nitier",
            "œuf",
            "’tis",
        ] {
            assert_eq!(letters(word).ok(), proof::spelling::capitals(word), "{word}");
        }
        assert_eq!(letters("7-spot"), Err("7".into()));
        assert_eq!(parts("home  scar").map(|p| p.len()), Ok(2));
    }
}

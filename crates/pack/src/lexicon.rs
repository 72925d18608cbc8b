//! Word lists of the released program: common words, and words unfit for children's grids.

use sheets::Lexicon;
use std::sync::OnceLock;

/// Common English words, written for Battledore. A light list that builds in no time was taken
/// over a spelling library whose build brings a whole tensor library with it.
const COMMON: &str = include_str!("../data/common-words.txt");

/// Words common in science for children that the list of unfit words would otherwise catch.
const FIT: &[&str] =
    &["beaver", "booby", "cock", "hell", "organ", "organs", "tit", "tits", "uterus", "womb"];

/// The lexicon, built once in the life of the program.
pub fn lexicon() -> &'static Lexicon {
    static LEXICON: OnceLock<Lexicon> = OnceLock::new();
    LEXICON.get_or_init(|| {
        let words: Vec<String> = common().map(str::to_owned).collect();
        let unfit = unfit();
        let mut hash = blake3::Hasher::new();
        for word in words.iter().chain(&unfit) {
            hash.update(word.as_bytes());
            hash.update(b"\n");
        }
        Lexicon::new(words, unfit, hash.finalize().to_hex().to_string())
    })
}

fn common() -> impl Iterator<Item = &'static str> {
    COMMON.lines().filter(|l| !l.starts_with('#') && !l.is_empty())
}

/// Single words of the list of `better-profanity` (MIT licence).
fn unfit() -> Vec<String> {
    let list = better_profanity::data::WORDLIST;
    better_profanity::data::read_wordlist(list)
        .map(str::to_lowercase)
        .filter(|w| w.chars().all(char::is_alphabetic) && !FIT.contains(&w.as_str()))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Scrambles that are other words (found in Debian's `wamerican`): the key accepts them.
    #[test]
    fn known_scrambles_are_found() {
        for (word, others) in [
            ("heart", vec!["earth", "hater"]),
            ("leaf", vec!["flea"]),
            ("bat", vec!["tab"]),
            ("owl", vec!["low"]),
            ("snake", vec!["sneak"]),
            ("lion", vec!["loin"]),
            ("cat", vec!["act"]),
            ("seal", vec!["ales", "sale"]),
            ("petals", vec!["palest", "pastel", "plates", "pleats", "staple"]),
        ] {
            let found = lexicon().same_letters(word);
            assert!(others.iter().all(|o| found.contains(&(*o).to_owned())), "{word}: {found:?}");
        }
        for word in ["frog", "tadpole", "lung", "stem", "tiger", "toad"] {
            assert!(lexicon().same_letters(word).is_empty(), "{word}");
        }
    }

    /// Outside judge: the CMU Pronouncing Dictionary (in `syllarust`) knows nearly all of them;
    /// what it lacks are British spellings and plain plurals.
    #[test]
    fn nearly_every_common_word_stands_in_a_dictionary_that_is_not_ours() {
        let all: Vec<&str> = common().collect();
        let unknown: Vec<&&str> =
            all.iter().filter(|w| syllarust::try_count_syllables(w).is_none()).collect();
        assert!(all.len() > 4_000);
        assert!(
            unknown.len() * 10 < all.len(),
            "{} of {}: {:?}",
            unknown.len(),
            all.len(),
            unknown
        );
    }
}

//! Word lists of the released program: a spelling dictionary and a list of words unfit for children's grids.

use sheets::Lexicon;
use std::sync::OnceLock;

/// Words common in science for children that the list of unfit words would otherwise catch.
const FIT: &[&str] = &["beaver", "booby", "cock", "hell", "organ", "organs", "tit", "tits", "uterus", "womb"];

/// The lexicon, built once in the life of the program.
pub fn lexicon() -> &'static Lexicon {
    static LEXICON: OnceLock<Lexicon> = OnceLock::new();
    LEXICON.get_or_init(|| {
        let words = dictionary();
        let unfit = unfit();
        let mut hash = blake3::Hasher::new();
        for word in words.iter().chain(&unfit) {
            hash.update(word.as_bytes());
            hash.update(b"\n");
        }
        Lexicon::new(words, unfit, hash.finalize().to_hex().to_string())
    })
}

/// Single words of the list of `better-profanity` (MIT licence).
fn unfit() -> Vec<String> {
    let list = better_profanity::data::WORDLIST;
    better_profanity::data::read_wordlist(list)
        .map(str::to_lowercase)
        .filter(|w| w.chars().all(char::is_alphabetic) && !FIT.contains(&w.as_str()))
        .collect()
}

/// The curated dictionary of `harper-core` (Apache-2.0 licence), in order.
#[cfg(feature = "lexicon")]
fn dictionary() -> Vec<String> {
    use harper_core::spell::{Dictionary, MutableDictionary};
    let curated = MutableDictionary::curated();
    let mut words: Vec<String> = curated.words_iter().map(|w| w.iter().collect::<String>()).collect();
    // Names and abbreviations carry capitals; only plain words answer a scramble.
    words.retain(|w| w.chars().all(|c| c.is_lowercase()));
    words.sort();
    words.dedup();
    words
}

#[cfg(not(feature = "lexicon"))]
fn dictionary() -> Vec<String> {
    Vec::new()
}

//! Word lists of the released program: a spelling dictionary and a list of words unfit for children's grids.

use sheets::Lexicon;
use std::sync::OnceLock;

/// Words common in science for children that the list of unfit words would otherwise catch.
const FIT: &[&str] =
    &["beaver", "booby", "cock", "hell", "organ", "organs", "tit", "tits", "uterus", "womb"];

/// Version of the dictionary; enters the hash because its words cannot be listed.
const DICTIONARY: &str = "syllarust 0.3";

/// The lexicon, built once in the life of the program.
pub fn lexicon() -> &'static Lexicon {
    static LEXICON: OnceLock<Lexicon> = OnceLock::new();
    LEXICON.get_or_init(|| {
        let unfit = unfit();
        let mut hash = blake3::Hasher::new();
        for word in unfit.iter().map(String::as_str).chain([DICTIONARY]) {
            hash.update(word.as_bytes());
            hash.update(b"\n");
        }
        Lexicon::new([], unfit, hash.finalize().to_hex().to_string()).asking(is_word)
    })
}

/// True for words of the CMU Pronouncing Dictionary (licence of BSD form; its notice stands in the credits).
fn is_word(word: &str) -> bool {
    syllarust::try_count_syllables(word).is_some()
}

/// Single words of the list of `better-profanity` (MIT licence).
fn unfit() -> Vec<String> {
    let list = better_profanity::data::WORDLIST;
    better_profanity::data::read_wordlist(list)
        .map(str::to_lowercase)
        .filter(|w| w.chars().all(char::is_alphabetic) && !FIT.contains(&w.as_str()))
        .collect()
}

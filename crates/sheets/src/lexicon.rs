//! Word lists handed in as values: spelling dictionary and unfit words.

use std::collections::{BTreeMap, BTreeSet};

/// Words that kinds may consult; part of the released program.
#[derive(Debug, Clone, Default)]
pub struct Lexicon {
    /// Hash of all lists; enters the Needs of kinds that consult it.
    pub hash: String,
    /// True when a dictionary is there.
    pub has_words: bool,
    anagrams: BTreeMap<String, Vec<String>>,
    unfit: BTreeSet<String>,
}

impl Lexicon {
    /// Builds a lexicon from a dictionary and a list of unfit words (both in any case).
    pub fn new<W, U>(words: W, unfit: U, hash: String) -> Self
    where
        W: IntoIterator<Item = String>,
        U: IntoIterator<Item = String>,
    {
        let mut anagrams: BTreeMap<String, Vec<String>> = BTreeMap::new();
        for word in words {
            let word = word.to_lowercase();
            if word.chars().count() > 1 && word.chars().all(char::is_alphabetic) {
                let same = anagrams.entry(sorted(&word)).or_default();
                if !same.contains(&word) {
                    same.push(word);
                }
            }
        }
        for same in anagrams.values_mut() {
            same.sort();
        }
        let unfit = unfit.into_iter().map(|w| w.to_lowercase()).collect();
        Self { hash, has_words: !anagrams.is_empty(), anagrams, unfit }
    }

    /// Other dictionary words with the same letters, lower-case, in order.
    pub fn same_letters(&self, word: &str) -> Vec<String> {
        let word = word.to_lowercase();
        let found = self.anagrams.get(&sorted(&word));
        found.into_iter().flatten().filter(|w| **w != word).cloned().collect()
    }

    /// Unfit words of at least three letters, lower-case, in order.
    pub fn unfit(&self) -> impl Iterator<Item = &str> {
        self.unfit.iter().map(String::as_str).filter(|w| w.chars().count() >= 3)
    }

    /// True when the word itself is unfit.
    pub fn is_unfit(&self, word: &str) -> bool {
        self.unfit.contains(&word.to_lowercase())
    }
}

fn sorted(word: &str) -> String {
    let mut letters: Vec<char> = word.chars().collect();
    letters.sort_unstable();
    letters.into_iter().collect()
}

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
    known: Option<fn(&str) -> bool>,
    unfit: BTreeSet<String>,
}

/// Longest word whose letters are tried in every order against a dictionary that can only be asked:
/// 8 letters have 40,320 orders, a few milliseconds; longer words hardly ever have another reading.
const MOST_LETTERS: usize = 8;

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
        Self { hash, has_words: !anagrams.is_empty(), anagrams, known: None, unfit }
    }

    /// Adds a dictionary that can only be asked whether it has a word (lower-case).
    #[must_use]
    pub fn asking(mut self, known: fn(&str) -> bool) -> Self {
        self.known = Some(known);
        self.has_words = true;
        self
    }

    /// Other dictionary words with the same letters, lower-case, in order.
    pub fn same_letters(&self, word: &str) -> Vec<String> {
        let word = word.to_lowercase();
        let listed = self.anagrams.get(&sorted(&word)).into_iter().flatten().cloned();
        let mut found: BTreeSet<String> = listed.collect();
        if let Some(known) = self.known
            && (2..=MOST_LETTERS).contains(&word.chars().count())
        {
            orders(&mut sorted(&word).chars().collect(), &mut String::new(), &mut |order| {
                if known(order) {
                    found.insert(order.to_owned());
                }
            });
        }
        found.remove(&word);
        found.into_iter().collect()
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

/// Every different order of the letters, each once: equal letters stand together in `left`.
fn orders(left: &mut Vec<char>, so_far: &mut String, each: &mut impl FnMut(&str)) {
    if left.is_empty() {
        each(so_far);
    }
    let mut last = None;
    for i in 0..left.len() {
        if last == Some(left[i]) {
            continue;
        }
        let letter = left.remove(i);
        last = Some(letter);
        so_far.push(letter);
        orders(left, so_far, each);
        so_far.pop();
        left.insert(i, letter);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counting(word: &str) -> usize {
        let mut n = 0;
        orders(&mut sorted(word).chars().collect(), &mut String::new(), &mut |_| n += 1);
        n
    }

    /// Number of orders with repeated letters, n! over the product of the repeats' factorials:
    /// the "all" column of the derangement table (Even and Gillis 1976; counts recomputed by hand).
    #[test]
    fn every_order_comes_once() {
        for (word, all) in [("cat", 6), ("frog", 24), ("reef", 12), ("apple", 60), ("banana", 60), ("egg", 3)] {
            assert_eq!(counting(word), all, "{word}");
        }
    }

    #[test]
    fn a_dictionary_that_can_only_be_asked_gives_the_other_words() {
        let lexicon = Lexicon::new([], [], String::new()).asking(|w| ["seal", "sale", "ales"].contains(&w));
        assert_eq!(lexicon.same_letters("Seal"), ["ales", "sale"]);
    }
}

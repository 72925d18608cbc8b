//! Reads words out of a printed grid of letters.

use std::collections::BTreeSet;

/// A cell: row, column, both from 0.
pub type Cell = (usize, usize);

/// The eight ways a word may run: (down, right).
pub const WAYS: [(i32, i32); 8] =
    [(0, 1), (1, 0), (1, 1), (-1, 1), (0, -1), (-1, 0), (1, -1), (-1, -1)];

/// A place where a word can be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// Its cells as a set.
    pub cells: BTreeSet<Cell>,
    /// First letter.
    pub from: Cell,
    /// Last letter.
    pub to: Cell,
    /// Ways in which it can be read there: two for a palindrome.
    pub ways: Vec<(i32, i32)>,
}

/// Every place where the word can be read in the eight directions. Places are told apart by their
/// **sets** of cells, so that a word that reads the same backwards counts once.
pub fn find(rows: &[Vec<String>], word: &[String]) -> Vec<Found> {
    let mut all: Vec<Found> = Vec::new();
    for (r, row) in rows.iter().enumerate() {
        for c in 0..row.len() {
            for way in WAYS {
                let Some(path) = walk(rows, (r, c), way, word) else { continue };
                let cells: BTreeSet<Cell> = path.iter().copied().collect();
                match all.iter_mut().find(|f| f.cells == cells) {
                    Some(before) => before.ways.push(way),
                    None => all.push(Found {
                        from: (r, c),
                        to: *path.last().unwrap_or(&(r, c)),
                        cells,
                        ways: vec![way],
                    }),
                }
            }
        }
    }
    all
}

fn walk(
    rows: &[Vec<String>],
    start: Cell,
    (down, right): (i32, i32),
    word: &[String],
) -> Option<Vec<Cell>> {
    let mut path = Vec::new();
    for (k, letter) in word.iter().enumerate() {
        let r = usize::try_from(start.0 as i32 + down * k as i32).ok()?;
        let c = usize::try_from(start.1 as i32 + right * k as i32).ok()?;
        if rows.get(r)?.get(c)? != letter {
            return None;
        }
        path.push((r, c));
    }
    if path.is_empty() { None } else { Some(path) }
}

/// True when `short` can be read inside `long`, forwards or backwards.
pub fn reads_inside(short: &[String], long: &[String]) -> bool {
    if short.is_empty() || short.len() > long.len() {
        return false;
    }
    let backwards: Vec<String> = short.iter().rev().cloned().collect();
    long.windows(short.len()).any(|w| w == short || w == backwards.as_slice())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn grid(rows: &[&str]) -> Vec<Vec<String>> {
        rows.iter().map(|r| r.chars().map(String::from).collect()).collect()
    }

    fn word(w: &str) -> Vec<String> {
        w.chars().map(String::from).collect()
    }

    /// Number of places of a word of L equal letters in a grid of that letter, counted by sets:
    /// half of the placements of check values 12.1 (12.2: a palindrome is met both ways).
    #[test]
    fn counts_places_as_published() {
        for (r, c, len, placements) in
            [(10, 10, 3, 576), (10, 10, 5, 384), (12, 12, 4, 756), (8, 12, 9, 64)]
        {
            let all = vec![vec!["A".to_owned(); c]; r];
            assert_eq!(2 * find(&all, &vec!["A".to_owned(); len]).len(), placements);
        }
    }

    #[test]
    fn finds_words_in_every_way_and_palindromes_once() {
        let rows = grid(&["LEVEL", "AXXXX", "EXXXX", "SXXXX"]);
        let level = find(&rows, &word("LEVEL"));
        assert_eq!(level.len(), 1);
        assert_eq!(level[0].ways.len(), 2);
        let seal = find(&rows, &word("SEAL"));
        assert_eq!((seal.len(), seal[0].from, seal[0].to), (1, (3, 0), (0, 0)));
        assert!(find(&rows, &word("CRAB")).is_empty());
    }

    #[test]
    fn sees_words_inside_words() {
        assert!(reads_inside(&word("SEA"), &word("SEAL")));
        assert!(reads_inside(&word("RAT"), &word("STAR")));
        assert!(!reads_inside(&word("SEAL"), &word("SEA")));
        assert!(!reads_inside(&word("CAT"), &word("CRAFT")));
    }
}

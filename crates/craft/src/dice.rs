//! Dice that fall the same way on every machine and in every version.

use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// A reproducible source of chance.
///
/// ChaCha8 is a published stream cipher whose output its crate promises never
/// to change; drawing and shuffling are written here so that no other
/// library's choice of algorithm can change a made sheet.
#[derive(Debug, Clone)]
pub struct Dice(ChaCha8Rng);

impl Dice {
    /// Dice for one sheet: hash of study id, sheet id and re-roll number.
    pub fn for_sheet(study: &str, sheet: &str, again: u32) -> Self {
        let mut hash = blake3::Hasher::new();
        for part in [study.as_bytes(), sheet.as_bytes(), &again.to_le_bytes()] {
            // Length first, so that ("ab", "c") and ("a", "bc") differ.
            hash.update(&(part.len() as u64).to_le_bytes());
            hash.update(part);
        }
        Self(ChaCha8Rng::from_seed(*hash.finalize().as_bytes()))
    }

    /// Dice from a plain number, for tests and benches.
    pub fn from_number(seed: u64) -> Self {
        Self(ChaCha8Rng::seed_from_u64(seed))
    }

    /// A number from 0 to `n - 1`, each equally likely; 0 when `n` is 0.
    ///
    /// Rejection sampling, so that there is no bias towards small numbers.
    pub fn below(&mut self, n: usize) -> usize {
        if n < 2 {
            return 0;
        }
        let n = n as u64;
        let limit = u64::MAX - u64::MAX % n;
        loop {
            let roll = self.0.next_u64();
            if roll < limit {
                return (roll % n) as usize;
            }
        }
    }

    /// Puts a slice in a random order, each order equally likely (Fisher and Yates).
    pub fn shuffle<T>(&mut self, items: &mut [T]) {
        for i in (1..items.len()).rev() {
            items.swap(i, self.below(i + 1));
        }
    }

    /// One of the items, or none when there are none.
    pub fn pick<'a, T>(&mut self, items: &'a [T]) -> Option<&'a T> {
        if items.is_empty() { None } else { Some(&items[self.below(items.len())]) }
    }

    /// An index drawn in proportion to whole-number weights, or none when all are 0.
    pub fn weighted(&mut self, weights: &[u32]) -> Option<usize> {
        let total: usize = weights.iter().map(|w| *w as usize).sum();
        if total == 0 {
            return None;
        }
        let mut roll = self.below(total);
        for (i, w) in weights.iter().enumerate() {
            if roll < *w as usize {
                return Some(i);
            }
            roll -= *w as usize;
        }
        None
    }
}

//! Orders of letters: how many there are, and what two orders have in common.

use std::collections::{BTreeMap, BTreeSet};

/// True when both hold the same letters, each as often.
pub fn same_letters<T: Ord>(a: &[T], b: &[T]) -> bool {
    counts(a) == counts(b)
}

/// Letters of `b` that stand where they stand in `a`.
pub fn in_place<T: Eq>(a: &[T], b: &[T]) -> usize {
    a.iter().zip(b).filter(|(x, y)| x == y).count()
}

/// True when the letters can be set out with none in its own place: no letter fills more than half of the places.
pub fn can_leave_place<T: Ord>(letters: &[T]) -> bool {
    counts(letters).values().all(|n| 2 * n <= letters.len())
}

/// Number of different orders with no letter in its own place; none when the word is too long to count.
///
/// Rook polynomial of the blocks of equal letters, which is Even and Gillis' integral (1976) written out:
/// Σ (−1)^k r_k (n − k)! divided by Π m!, with Σ r_k x^k = Π Σ C(m, j)² j! x^j.
pub fn derangements<T: Ord>(letters: &[T]) -> Option<u128> {
    let counts = counts(letters);
    let mut rooks: Vec<i128> = vec![1];
    for m in counts.values() {
        let mut next = vec![0i128; rooks.len() + m];
        for (k, r) in rooks.iter().enumerate() {
            for j in 0..=*m {
                let ways =
                    choose(*m, j)?.checked_mul(choose(*m, j)?)?.checked_mul(factorial(j)?)?;
                next[k + j] = next[k + j].checked_add(r.checked_mul(ways)?)?;
            }
        }
        rooks = next;
    }
    let n = letters.len();
    let mut sum: i128 = 0;
    for (k, r) in rooks.iter().enumerate().take(n + 1) {
        let term = r.checked_mul(factorial(n - k)?)?;
        sum = if k % 2 == 0 { sum.checked_add(term)? } else { sum.checked_sub(term)? };
    }
    for m in counts.values() {
        sum /= factorial(*m)?;
    }
    u128::try_from(sum).ok()
}

/// Every order that a mixed word may show: no letter in its own place where that can be, else any but the word.
/// None for more than seven letters, of which there are too many to list.
pub fn mixed_orders<T: Ord + Clone>(letters: &[T]) -> Option<BTreeSet<Vec<T>>> {
    if letters.len() > 7 {
        return None;
    }
    let mut all: BTreeSet<Vec<T>> = BTreeSet::from([Vec::new()]);
    for letter in letters {
        let longer = |order: &Vec<T>| {
            let order = order.clone();
            (0..=order.len())
                .map(move |i| {
                    let mut next = order.clone();
                    next.insert(i, letter.clone());
                    next
                })
                .collect::<Vec<_>>()
        };
        all = all.iter().flat_map(longer).collect();
    }
    let apart = can_leave_place(letters);
    all.retain(|order| if apart { in_place(letters, order) == 0 } else { order != letters });
    Some(all)
}

fn counts<T: Ord>(letters: &[T]) -> BTreeMap<&T, usize> {
    let mut counts = BTreeMap::new();
    for letter in letters {
        *counts.entry(letter).or_insert(0) += 1;
    }
    counts
}

fn factorial(n: usize) -> Option<i128> {
    (1..=n as i128).try_fold(1i128, i128::checked_mul)
}

fn choose(n: usize, k: usize) -> Option<i128> {
    (0..k).try_fold(1i128, |c, i| Some(c.checked_mul((n - i) as i128)? / (i as i128 + 1)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(word: &str) -> Option<u128> {
        derangements(&word.chars().collect::<Vec<_>>())
    }

    /// check values 12.7: D_0 … D_12 (OEIS A000166, from memory there; confirmed by recurrence).
    #[test]
    fn different_letters() {
        let published =
            [1, 0, 1, 2, 9, 44, 265, 1854, 14_833, 133_496, 1_334_961, 14_684_570, 176_214_841];
        for (n, d) in published.into_iter().enumerate() {
            assert_eq!(derangements(&(0..n).collect::<Vec<_>>()), Some(d), "{n}");
        }
    }

    /// check values 12.8 (Even and Gillis 1976, integral from memory there; confirmed by brute force).
    #[test]
    fn repeated_letters() {
        for (word, d) in [
            ("CAT", 2),
            ("FROG", 9),
            ("REEF", 2),
            ("APPLE", 12),
            ("SHELL", 12),
            ("LEVEL", 4),
            ("BANANA", 3),
            ("TADPOLE", 1854),
            ("EGG", 0),
            ("POSSESS", 0),
        ] {
            assert_eq!(count(word), Some(d), "{word}");
            let letters: Vec<char> = word.chars().collect();
            assert_eq!(can_leave_place(&letters), d > 0, "{word}");
            let listed = mixed_orders(&letters).expect("seven letters at most").len() as u128;
            // All orders but the word itself: 3 - 1 for EGG, 210 - 1 for POSSESS.
            assert_eq!(
                listed,
                if d > 0 {
                    d
                } else if word == "EGG" {
                    2
                } else {
                    209
                },
                "{word}"
            );
        }
    }

    #[test]
    fn a_word_too_long_to_count_is_left() {
        assert_eq!(derangements(&(0..60).collect::<Vec<_>>()), None);
    }
}

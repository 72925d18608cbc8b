//! Mixed orders: letters of a word, answers opposite their questions.

use crate::Dice;

/// Shuffles tried before the sure way is taken.
const SHUFFLES: usize = 20_000;

/// The letters in another order: none in its own place where that can be, else only different from the word.
///
/// Shuffling until an order fits gives every fitting order the same chance.
/// `fits` may forbid further orders; none is returned when nothing was found.
pub fn mix<T: Ord + Clone>(
    letters: &[T],
    fits: impl Fn(&[T]) -> bool,
    dice: &mut Dice,
) -> Option<Vec<T>> {
    let apart = can_leave_place(letters);
    let good = |mixed: &[T]| {
        let stays = letters.iter().zip(mixed).filter(|(a, b)| a == b).count();
        (if apart { stays == 0 } else { stays < letters.len() }) && fits(mixed)
    };
    let mut mixed = letters.to_vec();
    for _ in 0..SHUFFLES {
        dice.shuffle(&mut mixed);
        if good(&mixed) {
            return Some(mixed);
        }
    }
    Some(turned(letters)).filter(|mixed| good(mixed))
}

/// An order of `n` numbers with none in its own place, each such order equally likely; none for a single one.
pub fn misplaced(n: usize, dice: &mut Dice) -> Option<Vec<usize>> {
    mix(&(0..n).collect::<Vec<_>>(), |_| true, dice)
}

/// No letter may fill more than half of the places.
fn can_leave_place<T: Ord>(letters: &[T]) -> bool {
    letters.iter().all(|l| 2 * letters.iter().filter(|m| *m == l).count() <= letters.len())
}

/// Letters sorted and turned by the count of the commonest: no equal letters meet.
fn turned<T: Ord + Clone>(letters: &[T]) -> Vec<T> {
    let mut order: Vec<usize> = (0..letters.len()).collect();
    order.sort_by(|a, b| letters[*a].cmp(&letters[*b]));
    let most =
        letters.iter().map(|l| letters.iter().filter(|m| *m == l).count()).max().unwrap_or(0);
    let mut out = letters.to_vec();
    for (k, place) in order.iter().enumerate() {
        out[*place] = letters[order[(k + most) % order.len()]].clone();
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeMap;

    /// Derangement counts of check values 12.7 (OEIS A000166, from memory there) and 12.8.
    #[test]
    fn every_fitting_order_turns_up_and_no_other() {
        for (word, orders) in
            [("FROG", 9), ("REEF", 2), ("LEVEL", 4), ("BANANA", 3), ("CAT", 2), ("SHELL", 12)]
        {
            let letters: Vec<char> = word.chars().collect();
            let mut dice = Dice::from_number(7);
            let mut seen = BTreeMap::new();
            for _ in 0..2000 {
                *seen.entry(mix(&letters, |_| true, &mut dice).expect("a mix")).or_insert(0u32) +=
                    1;
            }
            assert_eq!(seen.len(), orders, "{word}");
            assert!(seen.keys().all(|m| m.iter().zip(&letters).all(|(a, b)| a != b)));
        }
    }

    /// 9 orders of FROG: chi-square with 8 degrees of freedom, 0.1 % point 26.12 (standard table, from memory).
    #[test]
    fn orders_are_equally_likely() {
        let letters: Vec<char> = "FROG".chars().collect();
        let mut dice = Dice::from_number(2026);
        let mut seen: BTreeMap<Vec<char>, u32> = BTreeMap::new();
        for _ in 0..9000 {
            *seen.entry(mix(&letters, |_| true, &mut dice).expect("a mix")).or_default() += 1;
        }
        let chi: f64 = seen.values().map(|n| (f64::from(*n) - 1000.0).powi(2) / 1000.0).sum();
        assert!(chi < 26.12, "chi-square {chi}");
    }

    #[test]
    fn a_word_ruled_by_one_letter_only_differs() {
        for (word, orders) in [("EGG", 2), ("POSSESS", 209)] {
            let letters: Vec<char> = word.chars().collect();
            let mut dice = Dice::from_number(3);
            let seen: std::collections::BTreeSet<_> =
                (0..6000).filter_map(|_| mix(&letters, |_| true, &mut dice)).collect();
            assert_eq!(seen.len(), orders, "{word}");
        }
        assert_eq!(mix(&['A', 'A'], |_| true, &mut Dice::from_number(1)), None);
    }

    #[test]
    fn the_sure_way_leaves_no_letter_in_place() {
        for word in ["AAAABBBB", "BANANA", "ABCABC", "SHELL"] {
            let letters: Vec<char> = word.chars().collect();
            assert!(turned(&letters).iter().zip(&letters).all(|(a, b)| a != b), "{word}");
        }
    }

    #[test]
    fn numbers_leave_their_places() {
        let order = misplaced(8, &mut Dice::from_number(5)).expect("an order");
        assert!(order.iter().enumerate().all(|(i, j)| i != *j));
        assert_eq!(misplaced(1, &mut Dice::from_number(5)), None);
    }
}

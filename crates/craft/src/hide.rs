//! Hides words in a grid of letters and fills the rest so that nothing else can be read.

use crate::Dice;
use crate::lines::{lines, readings};

/// The grid to fill. Letters are numbers: the maker keeps its own table of them.
#[derive(Debug, Clone)]
pub struct Field<'a> {
    /// Rows.
    pub rows: usize,
    /// Columns.
    pub columns: usize,
    /// Steps (down, right) in which words may run.
    pub steps: &'a [(i32, i32)],
    /// Words to hide.
    pub words: &'a [Vec<u16>],
    /// May a word also be read inside the place of a longer one?
    pub inside: bool,
    /// Words that must not be read anywhere but wholly inside a hidden word.
    pub unfit: &'a [Vec<u16>],
    /// Share of each letter among the fillers.
    pub filler: &'a [(u16, u32)],
}

/// A filled grid.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Hidden {
    /// Letters, row by row.
    pub cells: Vec<u16>,
    /// Cells of each word, in the order of the words.
    pub places: Vec<Vec<usize>>,
}

/// Cells with the letters placed so far, and the cells of each word.
type Placed = (Vec<Option<u16>>, Vec<Vec<usize>>);

/// Grids begun before giving up.
const GRIDS: usize = 400;
/// Exchanges of fillers tried in one grid.
const EXCHANGES: usize = 4000;

impl Field<'_> {
    /// Fills the grid, or gives up after many tries.
    pub fn hide(&self, dice: &mut Dice) -> Option<Hidden> {
        let lines = lines(self.rows, self.columns);
        (0..GRIDS).find_map(|_| {
            let (cells, places) = self.place_all(dice)?;
            let cells = self.fill(cells, &places, &lines, dice)?;
            Some(Hidden { cells, places })
        })
    }

    fn place_all(&self, dice: &mut Dice) -> Option<Placed> {
        let mut order: Vec<usize> = (0..self.words.len()).collect();
        dice.shuffle(&mut order);
        // Long words first: they have the fewest places. The sort is stable, so ties stay shuffled.
        order.sort_by_key(|i| std::cmp::Reverse(self.words[*i].len()));
        let mut steps = self.steps.to_vec();
        dice.shuffle(&mut steps);
        let mut cells = vec![None; self.rows * self.columns];
        let mut places: Vec<Vec<usize>> = vec![Vec::new(); self.words.len()];
        for (turn, i) in order.into_iter().enumerate() {
            // Each step gets its turn, so that no direction is forgotten by chance.
            let wanted = steps[turn % steps.len()];
            let place = self.place(&self.words[i], &[wanted], &cells, &places, dice);
            let place =
                place.or_else(|| self.place(&self.words[i], &steps, &cells, &places, dice))?;
            for (cell, letter) in place.iter().zip(&self.words[i]) {
                cells[*cell] = Some(*letter);
            }
            places[i] = place;
        }
        Some((cells, places))
    }

    fn place(
        &self,
        word: &[u16],
        steps: &[(i32, i32)],
        cells: &[Option<u16>],
        taken: &[Vec<usize>],
        dice: &mut Dice,
    ) -> Option<Vec<usize>> {
        let mut runs = Vec::new();
        let mut weights = Vec::new();
        for start in 0..cells.len() {
            for step in steps {
                let Some(run) = self.run(start, *step, word.len()) else { continue };
                let free = run.iter().zip(word).all(|(c, w)| cells[*c].is_none_or(|l| l == *w));
                // Two words along one line may touch but not overlap, so that their rings in the key stay apart.
                if free && taken.iter().all(|t| t.iter().filter(|c| run.contains(c)).count() < 2) {
                    let shared = run.iter().filter(|c| cells[**c].is_some()).count() as u32;
                    weights.push(1 + 3 * shared);
                    runs.push(run);
                }
            }
        }
        dice.weighted(&weights).map(|i| runs.swap_remove(i))
    }

    fn run(&self, start: usize, (down, right): (i32, i32), len: usize) -> Option<Vec<usize>> {
        let (r, c) = ((start / self.columns) as i32, (start % self.columns) as i32);
        let last = len as i32 - 1;
        let inside = |r: i32, c: i32| {
            r >= 0 && c >= 0 && (r as usize) < self.rows && (c as usize) < self.columns
        };
        if !inside(r + down * last, c + right * last) {
            return None;
        }
        Some(
            (0..=last)
                .map(|k| (r + down * k) as usize * self.columns + (c + right * k) as usize)
                .collect(),
        )
    }

    fn fill(
        &self,
        cells: Vec<Option<u16>>,
        places: &[Vec<usize>],
        lines: &[Vec<usize>],
        dice: &mut Dice,
    ) -> Option<Vec<u16>> {
        let open: Vec<usize> = (0..cells.len()).filter(|i| cells[*i].is_none()).collect();
        let mut bag = bag(self.filler, open.len());
        dice.shuffle(&mut bag);
        let mut full: Vec<u16> = cells.iter().map(|c| c.unwrap_or_default()).collect();
        for (cell, letter) in open.iter().zip(bag) {
            full[*cell] = letter;
        }
        for _ in 0..EXCHANGES {
            let Some(run) = self.unwanted(&full, places, lines) else { return Some(full) };
            let loose: Vec<usize> = run.iter().copied().filter(|c| cells[*c].is_none()).collect();
            // Exchanging keeps the share of each letter as it is.
            let (a, b) = (*dice.pick(&loose)?, *dice.pick(&open)?);
            full.swap(a, b);
        }
        None
    }

    /// A run of cells that reads a listed word a second time, or an unfit word.
    fn unwanted<'l>(
        &self,
        cells: &[u16],
        places: &[Vec<usize>],
        lines: &'l [Vec<usize>],
    ) -> Option<&'l [usize]> {
        let within = |run: &[usize], place: &Vec<usize>| run.iter().all(|c| place.contains(c));
        let again = self.words.iter().enumerate().find_map(|(i, word)| {
            readings(cells, lines, word).into_iter().find(|run| {
                let own = within(run, &places[i]);
                let other =
                    self.inside && places.iter().any(|p| p.len() > word.len() && within(run, p));
                !own && !other
            })
        });
        again.or_else(|| {
            self.unfit.iter().find_map(|word| {
                readings(cells, lines, word)
                    .into_iter()
                    .find(|run| !places.iter().any(|p| within(run, p)))
            })
        })
    }
}

/// `n` letters in the given shares, by largest remainder; ties go to the earlier letter.
fn bag(shares: &[(u16, u32)], n: usize) -> Vec<u16> {
    let total: usize = shares.iter().map(|(_, s)| *s as usize).sum();
    if total == 0 {
        return Vec::new();
    }
    let mut counts: Vec<usize> = shares.iter().map(|(_, s)| *s as usize * n / total).collect();
    let mut by_rest: Vec<usize> = (0..shares.len()).collect();
    by_rest.sort_by_key(|i| std::cmp::Reverse(shares[*i].1 as usize * n % total));
    let missing = n - counts.iter().sum::<usize>();
    for i in by_rest.into_iter().take(missing) {
        counts[i] += 1;
    }
    shares
        .iter()
        .zip(counts)
        .flat_map(|((letter, _), count)| std::iter::repeat_n(*letter, count))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    const ALL: [(i32, i32); 8] =
        [(0, 1), (1, 0), (1, 1), (-1, 1), (0, -1), (-1, 0), (-1, -1), (1, -1)];

    #[test]
    fn each_word_is_read_once_and_fillers_keep_their_shares() {
        let words = [vec![1, 2, 3], vec![4, 2, 5, 1], vec![3, 3, 4]];
        let shares = [(1, 2), (2, 2), (3, 3), (4, 2), (5, 1)];
        let field = Field {
            rows: 8,
            columns: 9,
            steps: &ALL,
            words: &words,
            inside: false,
            unfit: &[vec![5, 5]],
            filler: &shares,
        };
        for seed in 0..40 {
            let hidden = field.hide(&mut Dice::from_number(seed)).expect("a grid");
            let lines = lines(8, 9);
            for word in &words {
                assert_eq!(readings(&hidden.cells, &lines, word).len(), 1);
            }
            assert!(readings(&hidden.cells, &lines, &[5, 5]).is_empty());
        }
    }

    #[test]
    fn a_grid_that_cannot_hold_the_words_is_given_up() {
        let words = [vec![1; 9]];
        let field = Field {
            rows: 4,
            columns: 4,
            steps: &ALL,
            words: &words,
            inside: false,
            unfit: &[],
            filler: &[(2, 1)],
        };
        assert_eq!(field.hide(&mut Dice::from_number(1)), None);
    }

    #[test]
    fn the_bag_is_shared_out_to_the_last_letter() {
        assert_eq!(bag(&[(7, 1), (8, 2)], 4), vec![7, 8, 8, 8]);
        assert_eq!(bag(&[(7, 1), (8, 1)], 3), vec![7, 7, 8]);
        assert!(bag(&[], 3).is_empty());
    }
}

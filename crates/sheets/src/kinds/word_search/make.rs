//! Hides the words.

use super::needs::{ALPHABET, Spelt, budget, choose, shortest_first};
use super::{Needs, Sheet};
use craft::{Dice, Field};
use findings::{Finding, Findings};
use std::collections::BTreeMap;

/// Steps (down, right) in the order in which they are added: 2, 4, 6, 8 of them.
const STEPS: [(i32, i32); 8] =
    [(0, 1), (1, 0), (1, 1), (-1, 1), (0, -1), (-1, 0), (-1, -1), (1, -1)];
/// Choices of words tried before the shortest are taken.
const CHOICES: usize = 30;
/// Grids tried until the words run in all the ways that the child is told about.
const TRIES: usize = 12;

/// Numbers for letters, as the makers' tools want them.
struct Letters(BTreeMap<String, u16>);

impl Letters {
    fn of(words: &[&Spelt], extra: &str) -> Self {
        let mut all = BTreeMap::new();
        let own = words.iter().flat_map(|w| w.letters.iter().cloned());
        for letter in own.chain(extra.chars().map(String::from)) {
            let next = all.len() as u16;
            all.entry(letter).or_insert(next);
        }
        Self(all)
    }

    fn numbers(&self, word: &[String]) -> Option<Vec<u16>> {
        word.iter().map(|l| self.0.get(l).copied()).collect()
    }

    fn names(&self) -> BTreeMap<u16, &str> {
        self.0.iter().map(|(name, number)| (*number, name.as_str())).collect()
    }
}

/// Makes the sheet.
pub fn make(needs: &Needs, dice: &mut Dice) -> Result<Sheet, Findings> {
    let chosen = chosen(needs, dice);
    let letters = Letters::of(&chosen, if needs.own_letters { "" } else { ALPHABET });
    let words: Vec<Vec<u16>> = chosen.iter().filter_map(|w| letters.numbers(&w.letters)).collect();
    let unfit: Vec<Vec<u16>> = needs.unfit.iter().filter_map(|w| letters.numbers(w)).collect();
    let filler = shares(&letters, &words, needs.own_letters);
    let field = Field {
        rows: needs.rows,
        columns: needs.columns,
        steps: &STEPS[..usize::from(needs.ways).clamp(1, STEPS.len())],
        words: &words,
        inside: needs.inside,
        unfit: &unfit,
        filler: &filler,
    };
    let hidden = (0..TRIES).find_map(|_| {
        let hidden = field.hide(dice)?;
        told(&hidden.places, needs).then_some(hidden)
    });
    let Some(hidden) = hidden else { return Err(crowded(needs)) };
    let names = letters.names();
    let name = |n: &u16| names.get(n).copied().unwrap_or_default().to_owned();
    let rows =
        hidden.cells.chunks(needs.columns).map(|row| row.iter().map(name).collect()).collect();
    let words = chosen.iter().map(|w| w.word.clone()).collect();
    Ok(Sheet { rows, words, cell: needs.cell, ways: needs.ways })
}

/// The words of this sheet, in the author's order.
fn chosen<'a>(needs: &'a Needs, dice: &mut Dice) -> Vec<&'a Spelt> {
    let letters = budget(needs.rows, needs.columns);
    let mut order: Vec<usize> = (0..needs.pool.len()).collect();
    let full = (0..CHOICES).find_map(|_| {
        dice.shuffle(&mut order);
        let chosen = choose(&needs.pool, &order, needs.count, letters, needs.inside);
        (chosen.len() == needs.count).then_some(chosen)
    });
    let shortest =
        || choose(&needs.pool, &shortest_first(&needs.pool), needs.count, letters, needs.inside);
    let mut chosen = full.unwrap_or_else(shortest);
    chosen.sort_unstable();
    chosen.into_iter().map(|i| &needs.pool[i]).collect()
}

/// Share of each letter among the fillers: the words' own letters hide them best (check values 12.4).
fn shares(letters: &Letters, words: &[Vec<u16>], own: bool) -> Vec<(u16, u32)> {
    let count = |n: u16| words.iter().flatten().filter(|l| **l == n).count() as u32;
    letters.0.values().map(|n| (*n, if own { count(*n) } else { 1 })).collect()
}

/// True when some word slants and some word runs backwards, where the child is told so.
fn told(places: &[Vec<usize>], needs: &Needs) -> bool {
    let step = |place: &Vec<usize>| {
        let cell = |i: usize| {
            place
                .get(i)
                .map_or((0, 0), |c| ((c / needs.columns) as i32, (c % needs.columns) as i32))
        };
        (cell(1).0 - cell(0).0, cell(1).1 - cell(0).1)
    };
    let some = |from: usize, to: usize| places.iter().any(|p| STEPS[from..to].contains(&step(p)));
    (needs.ways < 4 || some(2, 4) || some(6, 8)) && (needs.ways < 6 || some(4, 8))
}

fn crowded(needs: &Needs) -> Findings {
    let (r, c) = (needs.rows, needs.columns);
    Finding::error(
        "grid-crowded",
        format!("no grid of {r} × {c} was found that hides each of the {} words once", needs.count),
    )
    .remedy("set larger `rows` and `columns`, or use fewer words")
    .into()
}

//! Chooses as many sentences of each figure as can be, and mixes them.

use super::needs::ALL;
use super::{Needs, Row, Sentence, Sheet, Task};
use craft::Dice;
use study::{Band, Figure};

/// Throws of the dice before the order is mended by hand.
const THROWS: usize = 200;

/// The page.
pub(super) fn make(needs: &Needs, dice: &mut Dice) -> Sheet {
    let chosen = mixed(choose(needs, dice), dice);
    let figures: Vec<Figure> =
        ALL.into_iter().filter(|f| chosen.iter().any(|r| r.figure == *f)).collect();
    let own = match (needs.band, needs.task) {
        (Band::A, _) | (_, Task::Letter) => Vec::new(),
        (_, Task::Underline) => figures.iter().copied().take(2).collect(),
        (_, Task::Sort) => figures.clone(),
    };
    let sentences =
        chosen.into_iter().zip(1..).map(|(row, n)| Sentence { n, sentence: row.sentence.clone() });
    let lines = if needs.task == Task::Sort { 1 } else { 2 };
    Sheet {
        task: needs.task,
        sentences: sentences.collect(),
        figures,
        own,
        lines,
        picture: needs.picture.clone(),
    }
}

/// One of each figure in turn, until there are enough.
fn choose<'a>(needs: &'a Needs, dice: &mut Dice) -> Vec<&'a Row> {
    let mut piles: Vec<Vec<&Row>> = ALL
        .iter()
        .map(|f| needs.rows.iter().filter(|r| r.figure == *f).collect::<Vec<_>>())
        .filter(|p| !p.is_empty())
        .collect();
    dice.shuffle(&mut piles);
    piles.iter_mut().for_each(|p| dice.shuffle(p));
    let mut out = Vec::new();
    while out.len() < needs.count && piles.iter().any(|p| !p.is_empty()) {
        for pile in &mut piles {
            if out.len() < needs.count {
                out.extend(pile.pop());
            }
        }
    }
    out
}

/// An order in which no figure stands twice running where that can be, and never grouped.
fn mixed<'a>(mut rows: Vec<&'a Row>, dice: &mut Dice) -> Vec<&'a Row> {
    let mut best = rows.clone();
    let mut fewest = usize::MAX;
    for _ in 0..THROWS {
        dice.shuffle(&mut rows);
        let neighbours = rows.windows(2).filter(|w| w[0].figure == w[1].figure).count();
        if neighbours < fewest {
            (best, fewest) = (rows.clone(), neighbours);
        }
        if fewest == 0 {
            break;
        }
    }
    best
}

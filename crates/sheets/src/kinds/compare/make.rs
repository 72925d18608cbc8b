//! Sets out the page of a level.

use super::answers::sayings;
use super::{Needs, Row, Sentence, Sheet, Which};
use craft::Dice;
use study::{CompareRow, Compared};

/// Throws of the dice for a good mixture.
const THROWS: usize = 100;

/// The page.
pub(super) fn make(needs: &Needs, dice: &mut Dice) -> Sheet {
    let (rows, sentences) = match needs.level {
        1 => (Vec::new(), sentences(needs, dice)),
        2 => (gaps(needs, dice), Vec::new()),
        _ => (headings(needs, dice), Vec::new()),
    };
    Sheet {
        level: needs.level,
        first: needs.first.clone(),
        second: needs.second.clone(),
        rows,
        sentences,
        lines: 2,
    }
}

/// As many sentences as are wanted, of each answer in turn, mixed so that the boxes do not come in runs.
fn sentences(needs: &Needs, dice: &mut Dice) -> Vec<Sentence> {
    let said = needs
        .rows
        .iter()
        .flat_map(|row| sayings(row).into_iter().map(move |(which, what)| (row, which, what)));
    let said = said.map(|(row, which, what)| {
        (row, which, Sentence { n: 0, aspect: row.aspect.clone(), what: what.clone() })
    });
    let mut all: Vec<(&CompareRow, Which, Sentence)> = said.collect();
    dice.shuffle(&mut all);
    let mut taken = [0usize; 3];
    let mut turns: Vec<usize> = Vec::new();
    for (_, which, _) in &all {
        let turn = &mut taken[*which as usize];
        turns.push(*turn);
        *turn += 1;
    }
    let mut order: Vec<usize> = (0..all.len()).collect();
    order.sort_by_key(|i| turns[*i]);
    order.truncate(needs.sentences);
    let mut all: Vec<(&CompareRow, Which, Sentence)> =
        order.into_iter().map(|i| all[i].clone()).collect();
    let mut best = all.clone();
    let mut fewest = usize::MAX;
    for _ in 0..THROWS {
        dice.shuffle(&mut all);
        let runs =
            all.windows(2).filter(|w| w[0].1 == w[1].1 || w[0].0.aspect == w[1].0.aspect).count();
        if runs < fewest {
            (best, fewest) = (all.clone(), runs);
        }
    }
    best.into_iter().zip(1..).map(|((_, _, s), n)| Sentence { n, ..s }).collect()
}

/// Differences first, with one side given by turns; then what is alike, every other row given.
fn gaps(needs: &Needs, dice: &mut Dice) -> Vec<Row> {
    let mut differ: Vec<&CompareRow> =
        needs.rows.iter().filter(|r| matches!(r.what, Compared::Each(..))).collect();
    let mut alike: Vec<&CompareRow> =
        needs.rows.iter().filter(|r| matches!(r.what, Compared::Both(_))).collect();
    dice.shuffle(&mut differ);
    dice.shuffle(&mut alike);
    let turn = dice.below(2);
    let given = |(i, row): (usize, &CompareRow)| {
        let first = (i + turn).is_multiple_of(2);
        match &row.what {
            Compared::Each(a, b) => Row {
                aspect: row.aspect.clone(),
                alike: Some(false),
                first: first.then(|| a.clone()),
                second: (!first).then(|| b.clone()),
            },
            Compared::Both(both) => Row {
                aspect: row.aspect.clone(),
                alike: Some(true),
                first: (i % 2 == 1).then(|| both.clone()),
                second: None,
            },
        }
    };
    let rows = differ.into_iter().enumerate().map(given);
    rows.chain(alike.into_iter().enumerate().map(given)).collect()
}

/// Headings only, mixed.
fn headings(needs: &Needs, dice: &mut Dice) -> Vec<Row> {
    let mut rows: Vec<&CompareRow> = needs.rows.iter().collect();
    dice.shuffle(&mut rows);
    rows.into_iter()
        .map(|r| Row { aspect: r.aspect.clone(), alike: None, first: None, second: None })
        .collect()
}

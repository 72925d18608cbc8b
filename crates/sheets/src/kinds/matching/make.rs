//! Chooses the pairs and sets the right column in another order.

use super::{Left, Needs, Sheet, What};
use craft::{Dice, mix};
use findings::{Finding, Findings};

/// Makes the sheet.
pub fn make(needs: &Needs, dice: &mut Dice) -> Result<Sheet, Findings> {
    let mut order: Vec<usize> = (0..needs.pool.len()).collect();
    dice.shuffle(&mut order);
    order.truncate(needs.count);
    let pairs: Vec<_> = order.into_iter().map(|i| &needs.pool[i]).collect();
    let places = mix::misplaced(pairs.len(), dice).ok_or_else(single)?;
    let pictures = needs.what == What::Pictures;
    let left = pairs.iter().map(|p| Left {
        word: (!pictures).then(|| p.word.clone()),
        picture: p.picture.clone().filter(|_| pictures),
    });
    let partner = |i: &usize| {
        let pair = pairs.get(*i)?;
        if pictures { Some(pair.word.clone()) } else { pair.meaning.clone() }
    };
    Ok(Sheet {
        what: needs.what,
        left: left.collect(),
        right: places.iter().filter_map(partner).collect(),
    })
}

fn single() -> Findings {
    Finding::error("pairs-few", "one pair alone cannot be matched")
        .remedy("list at least three words")
        .into()
}

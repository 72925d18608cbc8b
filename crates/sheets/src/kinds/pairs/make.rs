//! Chooses the pairs and deals the cards onto leaves.

use super::needs::Pair;
use super::{Card, Needs, Sheet, What};
use craft::Dice;
use findings::Findings;

/// Makes the sheet.
pub fn make(needs: &Needs, dice: &mut Dice) -> Result<Sheet, Findings> {
    let mut order: Vec<usize> = (0..needs.pool.len()).collect();
    dice.shuffle(&mut order);
    order.truncate(needs.pairs);
    let pairs = order.into_iter().map(|i| &needs.pool[i]).enumerate();
    // The two of a pair stay together, so that a lost leaf loses whole pairs.
    let cards: Vec<Card> = pairs.flat_map(|(i, pair)| two(needs.what, i + 1, pair)).collect();
    let leaf = (needs.cards.columns * needs.cards.rows).max(1);
    Ok(Sheet {
        what: needs.what,
        pairs: needs.pairs,
        ages: needs.ages,
        cards: needs.cards,
        leaves: cards.chunks(leaf).map(<[Card]>::to_vec).collect(),
        cautions: needs.cautions.clone(),
    })
}

fn two(what: What, number: usize, pair: &Pair) -> [Card; 2] {
    let blank = |half: &str, back| Card {
        name: format!("{number}{half}"),
        picture: None,
        word: None,
        meaning: None,
        back,
    };
    let picture = |half, back| Card { picture: pair.picture.clone(), ..blank(half, back) };
    let word = |half, back| Card { word: Some(pair.word.clone()), ..blank(half, back) };
    let meaning = |half, back| Card { meaning: pair.meaning.clone(), ..blank(half, back) };
    match what {
        // One sort of back: each card may be the partner of any other.
        What::PicturePicture => [picture("a", 0), picture("b", 0)],
        What::PictureWord => [picture("a", 0), word("b", 1)],
        What::WordMeaning => [word("a", 0), meaning("b", 1)],
    }
}

//! Mixes the letters.

use super::needs::Mixable;
use super::{Item, Needs, Sheet};
use craft::{Dice, mix};
use findings::{Finding, Findings};

/// Orders tried for one word.
const TRIES: usize = 200;

/// Makes the sheet.
pub fn make(needs: &Needs, dice: &mut Dice) -> Result<Sheet, Findings> {
    let mut order: Vec<usize> = (0..needs.pool.len()).collect();
    dice.shuffle(&mut order);
    // Words with a picture first: a picture helps the child most.
    order.sort_by_key(|i| needs.pool[*i].picture.is_none());
    let mut items = Vec::new();
    let mut stuck = Findings::none();
    for word in order.into_iter().map(|i| &needs.pool[i]) {
        if items.len() == needs.count {
            break;
        }
        match mixed(word, &needs.unfit, dice) {
            Some(letters) => items.push(item(needs, word, letters)),
            None => stuck.push(unmixed(word)),
        }
    }
    if items.len() < needs.count {
        return Err(stuck);
    }
    dice.shuffle(&mut items);
    let pictures = items.iter().any(|i| i.picture.is_some());
    let meanings = items.iter().any(|i| i.clue.is_some());
    Ok(Sheet { items, answer: needs.answer, pictures, meanings })
}

fn item(needs: &Needs, word: &Mixable, letters: Vec<Vec<String>>) -> Item {
    let first = word.parts.first().and_then(|p| p.first()).filter(|_| needs.first_letter);
    Item {
        letters,
        given: first.into_iter().cloned().collect(),
        picture: word.picture.clone(),
        clue: word.clue.clone(),
    }
}

/// Each part mixed; together they read neither an unfit word nor, where that can be, another dictionary word.
fn mixed(word: &Mixable, unfit: &[Vec<String>], dice: &mut Dice) -> Option<Vec<Vec<String>>> {
    let fit = |letters: &[String]| {
        !unfit.iter().any(|u| {
            letters.windows(u.len()).any(|w| w == u.as_slice() || w.iter().eq(u.iter().rev()))
        })
    };
    let taken = |letters: &[String]| word.also.contains(&letters.concat().to_lowercase());
    let try_all = |dice: &mut Dice, strict: bool| {
        (0..TRIES).find_map(|_| {
            let parts: Option<Vec<Vec<String>>> =
                word.parts.iter().map(|p| part(p, dice)).collect();
            let parts = parts?;
            let whole = parts.concat();
            (fit(&whole) && parts != word.parts && !(strict && taken(&whole))).then_some(parts)
        })
    };
    try_all(dice, true).or_else(|| try_all(dice, false))
}

fn part(letters: &[String], dice: &mut Dice) -> Option<Vec<String>> {
    // A part of one letter, or of equal letters, cannot be mixed; the others then make the difference.
    if letters.iter().all(|l| *l == letters[0]) {
        return Some(letters.to_vec());
    }
    mix::mix(letters, |_| true, dice)
}

fn unmixed(word: &Mixable) -> Finding {
    Finding::error(
        "word-unmixed",
        format!("no fit order was found for the letters of `{}`", word.word.plain()),
    )
    .at(&word.word.at)
    .remedy("use another word, or put `no` under `puzzle` in its row")
}

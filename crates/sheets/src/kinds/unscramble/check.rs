//! Solves the printed items with the words of the study and judges each of them.

use super::needs::Mixable;
use super::{Answer, Item, Needs, Sheet, Solved};
use findings::{Finding, Findings};
use proof::arrangement::{can_leave_place, in_place, mixed_orders, same_letters};
use proof::inside::holds;
use proof::meaning::gives_away;
use proof::spelling::capitals;
use proof::{Laid, Mark, Proof};
use std::collections::BTreeSet;

/// Proves the sheet.
pub fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    form(needs, sheet, &mut proof);
    let mut met = BTreeSet::new();
    for (i, item) in sheet.items.iter().enumerate() {
        let n = i + 1;
        let Some(word) = source(needs, item) else {
            proof.fault("item-letters", format!("the letters of item {n} are those of no word"));
            continue;
        };
        let plain = word.word.plain();
        let once = met.insert(plain.clone());
        proof.demand(once, "item-twice", format!("`{plain}` is asked for twice"));
        letters(needs, item, word, n, &mut proof);
        clue(needs, item, word, n, &mut proof);
    }
    proof.count("words", met.len());
    let also: usize = solved(needs, sheet).iter().map(|s| s.also.len()).sum();
    proof.count("other right answers", also);
    proof.findings.append(needs.notes.clone());
    proof
}

/// Number of items, where the child writes, and what the sentence above says of clues.
fn form(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let (items, wanted) = (sheet.items.len(), needs.count);
    let message = format!("the sheet has {items} words, not {wanted}");
    proof.demand(items == wanted, "item-count", message);
    let answer = sheet.answer == needs.answer;
    proof.demand(answer, "item-answer", "the places to write are other than planned");
    let pictures = sheet.items.iter().any(|i| i.picture.is_some());
    let meanings = sheet.items.iter().any(|i| i.clue.is_some());
    let told = (pictures, meanings) == (sheet.pictures, sheet.meanings);
    proof.demand(told, "item-lead", "the sentence above tells of clues that are not there");
}

/// The word whose letters these are, told apart by its clue when several words share their letters.
fn source<'a>(needs: &'a Needs, item: &Item) -> Option<&'a Mixable> {
    let fits = |m: &&Mixable| {
        let spelt = capitals(&m.word.plain()).unwrap_or_default();
        let parts = m.parts.len() == item.letters.len() && m.parts.concat() == spelt;
        parts && m.parts.iter().zip(&item.letters).all(|(a, b)| same_letters(a, b))
    };
    let all: Vec<&Mixable> = needs.pool.iter().filter(fits).collect();
    let by_clue = all.iter().find(|m| m.picture == item.picture && m.clue == item.clue);
    by_clue.or(all.first()).copied()
}

/// The order of the letters.
fn letters(needs: &Needs, item: &Item, word: &Mixable, n: usize, proof: &mut Proof) {
    proof.demand(
        item.letters != word.parts,
        "item-same",
        format!("item {n} shows the word itself"),
    );
    for (part, mixed) in word.parts.iter().zip(&item.letters) {
        let stays = in_place(part, mixed);
        let apart = !can_leave_place(part) || stays == 0;
        proof.demand(
            apart,
            "item-place",
            format!("{stays} letters of item {n} stand in their own places"),
        );
        let moved = part != mixed || part.iter().all(|l| *l == part[0]);
        proof.demand(moved, "item-same", format!("a part of item {n} is not mixed"));
    }
    let whole = item.letters.concat();
    let unfit = needs.unfit.iter().any(|u| reads(&whole, u));
    proof.demand(!unfit, "item-unfit", format!("an unfit word can be read in item {n}"));
    let spells = |letters: &[String]| word.also.contains(&letters.concat().to_lowercase());
    proof.demand(
        !spells(&whole) || !another(word, needs),
        "item-word",
        format!("the letters of item {n} spell another word"),
    );
}

/// True when some order of the letters is neither another word nor holds an unfit one.
fn another(word: &Mixable, needs: &Needs) -> bool {
    // Longer words have so many orders that one is always to be had.
    mixed_orders(&word.parts.concat()).is_none_or(|orders| {
        orders.iter().any(|o| {
            !word.also.contains(&o.concat().to_lowercase())
                && !needs.unfit.iter().any(|u| reads(o, u))
        })
    })
}

/// True when the word can be read in the letters, forwards or backwards.
fn reads(letters: &[String], word: &[String]) -> bool {
    letters.windows(word.len()).any(|w| w == word || w.iter().eq(word.iter().rev()))
}

/// Clue and help.
fn clue(needs: &Needs, item: &Item, word: &Mixable, n: usize, proof: &mut Proof) {
    let own = item.picture == word.picture && item.clue == word.clue;
    proof.demand(
        own,
        "item-clue",
        format!("the clue of item {n} is not that of `{}`", word.word.plain()),
    );
    if let Some(clue) = &item.clue {
        let open = gives_away(&word.word.plain(), &clue.plain());
        proof.demand(!open, "item-clue", format!("the clue of item {n} holds the word itself"));
    }
    let first: Vec<String> =
        word.parts.concat().into_iter().take(usize::from(needs.first_letter)).collect();
    proof.demand(
        item.given == first,
        "item-given",
        format!("the letter given in item {n} is not its first"),
    );
}

/// The answers, in the order printed. Another word counts only when it begins with the letter given.
pub fn solved(needs: &Needs, sheet: &Sheet) -> Vec<Solved> {
    let one = |item: &Item| {
        let word = source(needs, item)?;
        let start = item.given.concat();
        let also =
            word.also.iter().filter(|w| w.to_uppercase().starts_with(&start)).cloned().collect();
        Some(Solved { word: word.word.clone(), also })
    };
    sheet.items.iter().filter_map(one).collect()
}

/// On paper: every mixed letter in its box, in order, and a place to write for each letter.
pub fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let mut out = Findings::none();
    for (i, item) in sheet.items.iter().enumerate() {
        let n = i + 1;
        let letters = item.letters.concat();
        if !in_boxes(&letters, n, laid) {
            out.push(fault(format!("the letters of item {n} are not in their boxes in order")));
        }
        let of_item = |m: &Mark| m.name.split(',').next() == Some(&n.to_string());
        let spaces = laid.marks("space").filter(|(_, m)| of_item(m)).count();
        let wanted = if sheet.answer == Answer::Boxes { letters.len() } else { 1 };
        if spaces != wanted {
            out.push(fault(format!("item {n} has {spaces} places to write, not {wanted}")));
        }
    }
    out
}

/// True when each letter stands in its own box and the boxes run from left to right.
fn in_boxes(letters: &[String], n: usize, laid: &Laid) -> bool {
    let mut middle = i64::MIN;
    letters.iter().enumerate().all(|(k, letter)| {
        let name = format!("{n},{k}");
        laid.marks("letter").find(|(_, m)| m.name == name).is_some_and(|(page, mark)| {
            let after = mark.x > middle;
            middle = mark.x + mark.w / 2;
            after && holds(&laid.pages[page], mark, letter)
        })
    })
}

fn fault(message: String) -> Finding {
    Finding::error("unscramble-page", message)
        .remedy("throw the dice again with `again = 1`; if it stays, set a smaller `how-many`")
}

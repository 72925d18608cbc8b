//! Solves the printed items with the words of the study and judges each of them.

use super::needs::Mixable;
use super::{Answer, Item, Needs, Sheet, Solved};
use findings::{Finding, Findings};
use proof::arrangement::{can_leave_place, in_place, mixed_orders, same_letters};
use proof::meaning::gives_away;
use proof::spelling::capitals;
use proof::{Laid, Proof};
use std::collections::BTreeSet;

/// Proves the sheet.
pub fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let items = sheet.items.len();
    proof.demand(items == needs.count, "item-count", format!("the sheet has {items} words, not {}", needs.count));
    proof.demand(sheet.answer == needs.answer, "item-answer", "the places to write are other than planned");
    let shown = (sheet.items.iter().any(|i| i.picture.is_some()), sheet.items.iter().any(|i| i.clue.is_some()));
    proof.demand(shown == (sheet.pictures, sheet.meanings), "item-lead", "the sentence above tells of clues that are not there");
    let mut met = BTreeSet::new();
    for (i, item) in sheet.items.iter().enumerate() {
        match source(needs, item) {
            None => proof.fault("item-letters", format!("the letters of item {} are those of no word", i + 1)),
            Some(word) => {
                let once = met.insert(word.word.plain());
                proof.demand(once, "item-twice", format!("`{}` is asked for twice", word.word.plain()));
                letters(needs, item, word, i + 1, &mut proof);
                clue(needs, item, word, i + 1, &mut proof);
            }
        }
    }
    proof.count("words", met.len());
    proof.count("other right answers", solved(needs, sheet).iter().map(|s| s.also.len()).sum::<usize>());
    proof.findings.append(needs.notes.clone());
    proof
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
    proof.demand(item.letters != word.parts, "item-same", format!("item {n} shows the word itself"));
    for (part, mixed) in word.parts.iter().zip(&item.letters) {
        let stays = in_place(part, mixed);
        let apart = !can_leave_place(part) || stays == 0;
        proof.demand(apart, "item-place", format!("{stays} letters of item {n} stand in their own places"));
        let moved = part != mixed || part.iter().all(|l| *l == part[0]);
        proof.demand(moved, "item-same", format!("a part of item {n} is not mixed"));
    }
    let whole = item.letters.concat();
    let unfit = needs.unfit.iter().any(|u| reads(&whole, u));
    proof.demand(!unfit, "item-unfit", format!("an unfit word can be read in item {n}"));
    let spells = |letters: &[String]| word.also.contains(&letters.concat().to_lowercase());
    proof.demand(!spells(&whole) || !another(word, needs), "item-word", format!("the letters of item {n} spell another word"));
}

/// True when some order of the letters is neither another word nor holds an unfit one.
fn another(word: &Mixable, needs: &Needs) -> bool {
    // Longer words have so many orders that one is always to be had.
    mixed_orders(&word.parts.concat()).is_none_or(|orders| {
        orders.iter().any(|o| !word.also.contains(&o.concat().to_lowercase()) && !needs.unfit.iter().any(|u| reads(o, u)))
    })
}

/// True when the word can be read in the letters, forwards or backwards.
fn reads(letters: &[String], word: &[String]) -> bool {
    letters.windows(word.len()).any(|w| w == word || w.iter().eq(word.iter().rev()))
}

/// Clue and help.
fn clue(needs: &Needs, item: &Item, word: &Mixable, n: usize, proof: &mut Proof) {
    let own = item.picture == word.picture && item.clue == word.clue;
    proof.demand(own, "item-clue", format!("the clue of item {n} is not that of `{}`", word.word.plain()));
    if let Some(clue) = &item.clue {
        let open = gives_away(&word.word.plain(), &clue.plain());
        proof.demand(!open, "item-clue", format!("the clue of item {n} holds the word itself"));
    }
    let first: Vec<String> = word.parts.concat().into_iter().take(usize::from(needs.first_letter)).collect();
    proof.demand(item.given == first, "item-given", format!("the letter given in item {n} is not its first"));
}

/// The answers, in the order printed. Another word counts only when it begins with the letter given.
pub fn solved(needs: &Needs, sheet: &Sheet) -> Vec<Solved> {
    let one = |item: &Item| {
        let word = source(needs, item)?;
        let start = item.given.concat();
        let also = word.also.iter().filter(|w| w.to_uppercase().starts_with(&start)).cloned().collect();
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
        let mut row = 0;
        for (k, letter) in letters.iter().enumerate() {
            let name = format!("{n},{k}");
            let mut marks = laid.marks("letter").filter(|(_, m)| m.name == name);
            let Some((page, mark)) = marks.next() else {
                out.push(fault(format!("a letter of item {n} is not on the page")));
                break;
            };
            let held = laid.pages[page].texts.iter().any(|t| {
                let middle = t.x + t.w / 2;
                t.text == *letter && !t.missing && middle > mark.x && middle < mark.x + mark.w && t.y > mark.y && t.y < mark.y + mark.h
            });
            if !held || mark.x < row {
                out.push(fault(format!("the letters of item {n} are not in their boxes in order")));
                break;
            }
            row = mark.x;
        }
        let spaces = laid.marks("space").filter(|(_, m)| m.name.split(',').next() == Some(&n.to_string())).count();
        let wanted = if sheet.answer == Answer::Boxes { letters.len() } else { 1 };
        if spaces != wanted {
            out.push(fault(format!("item {n} has {spaces} places to write, not {wanted}")));
        }
    }
    out
}

fn fault(message: String) -> Finding {
    Finding::error("unscramble-page", message).remedy("make the sheet again; if it stays, set a smaller `count`")
}

//! Pairs the printed cards again and judges them.

use super::needs::{AREA, LEAST_GAP, LONGEST_MEANING, LONGEST_WORD, Pair};
use super::{Card, Needs, Paired, Sheet, What};
use findings::{Finding, Findings};
use proof::duplex::backs_meet_fronts;
use proof::inside::{holds, runs_inside};
use proof::meaning::gives_away;
use proof::{Laid, LaidPage, Mark, Proof};
use std::collections::{BTreeMap, BTreeSet};
use study::Said;

/// Clear edge of a card, µm.
const EDGE: i64 = 3_000;

/// Proves the sheet.
pub fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let planned =
        sheet.what == needs.what && sheet.ages == needs.ages && sheet.cautions == needs.cautions;
    proof.demand(
        planned && !sheet.cautions.is_empty(),
        "pairs-rules",
        "the rules or the cautions are other than planned",
    );
    leaves(needs, sheet, &mut proof);
    faces(needs, sheet, &mut proof);
    backs(sheet, &mut proof);
    proof.count("pairs", sheet.pairs);
    proof.count("cards", sheet.leaves.iter().map(Vec::len).sum::<usize>());
    proof.findings.append(needs.notes.clone());
    proof
}

/// Size of the cards and how they fill the leaves.
fn leaves(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let c = sheet.cards;
    proof.demand(c == needs.cards, "card-size", "the cards have not the planned size");
    let span = |n: usize, side: u32| {
        u64::from(side) * n as u64 + u64::from(c.gap) * (n as u64).saturating_sub(1)
    };
    let inside = span(c.columns, c.width) <= u64::from(AREA.0)
        && span(c.rows, c.height) <= u64::from(AREA.1);
    proof.demand(inside, "card-size", "the cards do not fit the page");
    proof.demand(
        c.gap == 0 || c.gap >= LEAST_GAP,
        "card-gap",
        "the cards stand too close for the laminator",
    );
    let full = c.columns * c.rows;
    let last = sheet.leaves.len().saturating_sub(1);
    let filled = sheet
        .leaves
        .iter()
        .enumerate()
        .all(|(i, l)| !l.is_empty() && (l.len() == full || i == last && l.len() < full));
    proof.demand(filled, "card-leaf", "a page of cards is not filled from its first place");
}

/// Two cards a pair, their faces from one word, no face on two pairs.
fn faces(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let mut pairs: BTreeMap<&str, Vec<&Card>> = BTreeMap::new();
    let mut names = BTreeSet::new();
    for card in sheet.leaves.iter().flatten() {
        let once = names.insert(&card.name);
        proof.demand(once, "card-twice", format!("card `{}` is there twice", card.name));
        pairs.entry(card.name.trim_end_matches(['a', 'b'])).or_default().push(card);
        fits(card, proof);
    }
    let all = pairs.len();
    let planned = all == needs.pairs && sheet.pairs == needs.pairs;
    proof.demand(planned, "pair-count", format!("there are {all} pairs, not {}", needs.pairs));
    let mut words = BTreeSet::new();
    for (number, cards) in &pairs {
        match cards[..] {
            [a, b] => together(needs, number, (a, b), &mut words, proof),
            _ => proof.fault("pair-cards", format!("pair {number} has {} cards", cards.len())),
        }
    }
    let firsts: BTreeSet<String> =
        pairs.values().filter_map(|c| c.first()).map(|c| face(c)).collect();
    let lasts: BTreeSet<String> =
        pairs.values().filter_map(|c| c.last()).map(|c| face(c)).collect();
    let apart = firsts.len() == all && lasts.len() == all;
    proof.demand(apart, "pair-equal", "two pairs show the same face");
}

/// One pair: both faces from one word, which is on no other pair.
fn together(
    needs: &Needs,
    number: &str,
    (a, b): (&Card, &Card),
    words: &mut BTreeSet<String>,
    proof: &mut Proof,
) {
    let Some(pair) = source(needs, a, b) else {
        let message = format!("the cards of pair {number} do not belong together");
        return proof.fault("pair-apart", message);
    };
    let word = pair.word.plain();
    let once = words.insert(word.to_lowercase());
    proof.demand(once, "pair-twice", format!("`{word}` is on two pairs"));
    let tells = b.meaning.as_ref().is_some_and(|m| gives_away(&word, &m.plain()));
    proof.demand(!tells, "pair-tells", format!("the meaning of `{word}` holds the word itself"));
}

/// What a face shows, to compare.
fn face(card: &Card) -> String {
    let text = card.word.as_ref().or(card.meaning.as_ref()).map(|s| s.plain().to_lowercase());
    text.or_else(|| card.picture.as_ref().map(|p| p.hash.clone())).unwrap_or_default()
}

/// The word that both cards belong to, each with the one face that its place in the pair has.
fn source<'a>(needs: &'a Needs, a: &Card, b: &Card) -> Option<&'a Pair> {
    let only = |card: &Card| [card.picture.is_some(), card.word.is_some(), card.meaning.is_some()];
    let (first, second) = match needs.what {
        What::PicturePicture => ([true, false, false], [true, false, false]),
        What::PictureWord => ([true, false, false], [false, true, false]),
        What::WordMeaning => ([false, true, false], [false, false, true]),
    };
    if only(a) != first || only(b) != second {
        return None;
    }
    let holds = |card: &Card, pair: &Pair| {
        card.picture.as_ref().is_none_or(|p| pair.picture.as_ref() == Some(p))
            && card.word.as_ref().is_none_or(|w| pair.word == *w)
            && card.meaning.as_ref().is_none_or(|m| pair.meaning.as_ref() == Some(m))
    };
    needs.pool.iter().find(|pair| holds(a, pair) && holds(b, pair))
}

fn fits(card: &Card, proof: &mut Proof) {
    let length = |text: &Option<Said>| text.as_ref().map_or(0, |t| t.plain().chars().count());
    let fits = length(&card.word) <= LONGEST_WORD && length(&card.meaning) <= LONGEST_MEANING;
    proof.demand(fits, "card-text", format!("the text of card `{}` is too long", card.name));
}

/// Cards of one sort have one sort of back; sorts that are told apart have two.
fn backs(sheet: &Sheet, proof: &mut Proof) {
    let backs = |half: char| -> BTreeSet<u8> {
        sheet.leaves.iter().flatten().filter(|c| c.name.ends_with(half)).map(|c| c.back).collect()
    };
    let (a, b) = (backs('a'), backs('b'));
    let even = a.len() <= 1 && b.len() <= 1;
    let apart = (a == b) == (sheet.what == What::PicturePicture);
    proof.demand(even && apart, "card-backs", "a back tells its card from the others");
}

/// The pairs in the author's order, from the printed cards.
pub fn pairs(needs: &Needs, sheet: &Sheet) -> Vec<Paired> {
    let cards: Vec<&Card> = sheet.leaves.iter().flatten().collect();
    let find = |name: String| cards.iter().find(|c| c.name == name).copied();
    let found: Vec<&Pair> = (1..=sheet.pairs)
        .filter_map(|n| source(needs, find(format!("{n}a"))?, find(format!("{n}b"))?))
        .collect();
    let printed = needs.pool.iter().filter(|p| found.iter().any(|f| f.word == p.word));
    printed.map(|p| Paired { word: p.word.clone(), meaning: p.meaning.clone() }).collect()
}

/// On paper: each card once, as large as planned, apart from the others, its text inside; each back behind its front.
pub fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let mut out = backs_meet_fronts(laid, "card", "back");
    let marks: Vec<(usize, &Mark)> = laid.marks("card").collect();
    let printed: Vec<&str> = marks.iter().map(|(_, m)| m.name.as_str()).collect();
    let wanted: Vec<&str> = sheet.leaves.iter().flatten().map(|c| c.name.as_str()).collect();
    if printed != wanted {
        out.push(fault(format!("{} cards are on the pages, not {}", printed.len(), wanted.len())));
    }
    let near = |a: i64, b: u32| (a - i64::from(b)).abs() <= 50;
    for (i, (page, mark)) in marks.iter().enumerate() {
        if !near(mark.w, sheet.cards.width) || !near(mark.h, sheet.cards.height) {
            out.push(fault(format!("card `{}` is not as large as planned", mark.name)));
        }
        let gap = i64::from(sheet.cards.gap) - 50;
        if marks[i + 1..].iter().any(|(p, other)| p == page && close(mark, other, gap)) {
            out.push(fault(format!("card `{}` lies too close to another", mark.name)));
        }
        spills(&laid.pages[*page], mark, &mut out);
        let card = sheet.leaves.iter().flatten().find(|c| c.name == mark.name);
        let text = card.and_then(|c| c.word.as_ref().or(c.meaning.as_ref()));
        if !holds(&laid.pages[*page], mark, &text.map(Said::plain).unwrap_or_default()) {
            out.push(fault(format!("card `{}` does not show its text", mark.name)));
        }
    }
    out
}

/// True when two marks lie nearer than this both across and down.
fn close(a: &Mark, b: &Mark, gap: i64) -> bool {
    let near =
        |a: i64, a_side: i64, b: i64, b_side: i64| a + a_side + gap > b && b + b_side + gap > a;
    near(a.x, a.w, b.x, b.w) && near(a.y, a.h, b.y, b.h)
}

/// Text on the card must stay clear of the cut.
fn spills(page: &LaidPage, card: &Mark, out: &mut Findings) {
    for text in runs_inside(page, card) {
        let across = text.x >= card.x + EDGE && text.x + text.w <= card.x + card.w - EDGE;
        let down = text.y >= card.y + EDGE && text.y <= card.y + card.h - EDGE;
        if !across || !down {
            out.push(fault(format!("`{}` runs over the edge of its card", text.text)));
        }
    }
}

fn fault(message: String) -> Finding {
    Finding::error("cards-page", message).remedy(
        "throw the dice again with `again = 1`; if it stays, use shorter words and meanings",
    )
}

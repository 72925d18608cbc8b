//! Joins the printed columns again and judges them.

use super::needs::Pair;
use super::{Joined, Left, Needs, Sheet, What};
use findings::{Finding, Findings};
use proof::inside::holds;
use proof::meaning::gives_away;
use proof::{Laid, Mark, Proof};
use std::collections::BTreeSet;
use study::Said;

/// Most rows: letters A to H.
const MOST: usize = 8;

/// Proves the sheet.
pub fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let (l, r) = (sheet.left.len(), sheet.right.len());
    proof.demand(sheet.what == needs.what, "match-what", "other things are matched than planned");
    proof.demand(
        l == needs.count && (2..=MOST).contains(&l),
        "match-rows",
        format!("there are {l} rows, not {}", needs.count),
    );
    proof.demand(l == r, "match-rows", format!("{l} items stand against {r}"));
    let texts: BTreeSet<String> = sheet.right.iter().map(|s| s.plain().to_lowercase()).collect();
    proof.demand(texts.len() == r, "match-twice", "the right column says the same thing twice");
    let mut met = BTreeSet::new();
    for (i, left) in sheet.left.iter().enumerate() {
        let Some(pair) = pair(needs, left) else {
            let message = format!("item {} on the left is none of the study's", i + 1);
            proof.fault("match-item", message);
            continue;
        };
        let word = pair.word.plain();
        let once = met.insert(word.clone());
        proof.demand(once, "match-twice", format!("`{word}` stands on the left twice"));
        row(sheet, pair, i, &mut proof);
    }
    proof.count("pairs joined", answers(needs, sheet).len());
    proof.findings.append(needs.notes.clone());
    proof
}

/// The word's pair, found by what is printed on the left.
fn pair<'a>(needs: &'a Needs, left: &Left) -> Option<&'a Pair> {
    match (&left.word, &left.picture, needs.what) {
        (Some(word), None, What::Meanings) => needs.pool.iter().find(|p| p.word == *word),
        (None, Some(picture), What::Pictures) => {
            needs.pool.iter().find(|p| p.picture.as_ref() == Some(picture))
        }
        _ => None,
    }
}

fn partner(pair: &Pair, what: What) -> Option<&Said> {
    match what {
        What::Pictures => Some(&pair.word),
        What::Meanings => pair.meaning.as_ref(),
    }
}

fn row(sheet: &Sheet, pair: &Pair, i: usize, proof: &mut Proof) {
    let word = pair.word.plain();
    let Some(partner) = partner(pair, sheet.what) else {
        proof.fault("match-partner", format!("`{word}` has no partner"));
        return;
    };
    let times = sheet.right.iter().filter(|s| *s == partner).count();
    proof.demand(
        times == 1,
        "match-partner",
        format!("the partner of `{word}` stands on the right {times} times"),
    );
    proof.demand(
        sheet.right.get(i) != Some(partner),
        "match-opposite",
        format!("`{word}` stands opposite its partner"),
    );
    if sheet.what == What::Meanings {
        proof.demand(
            !gives_away(&word, &partner.plain()),
            "match-tells",
            format!("the meaning of `{word}` holds the word itself"),
        );
    }
}

/// The letter of each number's partner, from the printed columns.
pub fn answers(needs: &Needs, sheet: &Sheet) -> Vec<Joined> {
    let one = |left: &Left| {
        let pair = pair(needs, left)?;
        let at = sheet.right.iter().position(|s| Some(s) == partner(pair, sheet.what))?;
        let letter = char::from(b'A' + u8::try_from(at).ok()?);
        Some(Joined { word: pair.word.clone(), letter: letter.to_string() })
    };
    sheet.left.iter().filter_map(one).collect()
}

/// On paper: a place for each item with its own words in it, rows in order and level, left and right apart.
pub fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let mut out = Findings::none();
    let (left, right) = (side(laid, "left"), side(laid, "right"));
    if left.len() != sheet.left.len() || right.len() != sheet.right.len() {
        let (l, r, n) = (left.len(), right.len(), sheet.left.len());
        out.push(fault(format!("{l} and {r} items are on the page, not {n}")));
        return out;
    }
    for (i, ((page, l), (_, r))) in left.iter().zip(&right).enumerate() {
        let letter = char::from(b'A'.saturating_add(u8::try_from(i).unwrap_or(u8::MAX)));
        let named = l.name == (i + 1).to_string() && r.name == letter.to_string();
        let above =
            |all: &[(usize, &Mark)], m: &Mark| i > 0 && m.y < all[i - 1].1.y + all[i - 1].1.h;
        let apart = (l.y - r.y).abs() <= LEVEL && l.x + l.w <= r.x;
        if !named || !apart || above(&left, l) || above(&right, r) {
            out.push(fault(format!("row {} is out of place", i + 1)));
        }
        let word = sheet.left[i].word.as_ref().map(Said::plain).unwrap_or_default();
        let page = &laid.pages[*page];
        if !holds(page, l, &word) || !holds(page, r, &sheet.right[i].plain()) {
            out.push(fault(format!("row {} does not show its own words", i + 1)));
        }
    }
    out
}

/// How far the two sides of a row may lie from one level, µm.
const LEVEL: i64 = 500;

/// Marked places of one side with the index of their page.
fn side<'a>(laid: &'a Laid, kind: &'a str) -> Vec<(usize, &'a Mark)> {
    laid.marks(kind).collect()
}

fn fault(message: String) -> Finding {
    Finding::error("matching-page", message)
        .remedy("throw the dice again with `again = 1`; if it stays, set a smaller `how-many`")
}

//! Joins the printed columns again and judges them.

use super::needs::Pair;
use super::{Joined, Left, Needs, Sheet, What};
use findings::{Finding, Findings};
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
    proof.demand(l == needs.count && (2..=MOST).contains(&l), "match-rows", format!("there are {l} rows, not {}", needs.count));
    proof.demand(l == r, "match-rows", format!("{l} items stand against {r}"));
    let texts: BTreeSet<String> = sheet.right.iter().map(|s| s.plain().to_lowercase()).collect();
    proof.demand(texts.len() == r, "match-twice", "the right column says the same thing twice");
    let mut met = BTreeSet::new();
    for (i, left) in sheet.left.iter().enumerate() {
        match pair(needs, left) {
            None => proof.fault("match-item", format!("item {} on the left is none of the study's", i + 1)),
            Some(pair) => {
                let once = met.insert(pair.word.plain());
                proof.demand(once, "match-twice", format!("`{}` stands on the left twice", pair.word.plain()));
                row(sheet, pair, i, &mut proof);
            }
        }
    }
    proof.count("pairs joined", answers(needs, sheet).len());
    proof.findings.append(needs.notes.clone());
    proof
}

/// The word's pair, found by what is printed on the left.
fn pair<'a>(needs: &'a Needs, left: &Left) -> Option<&'a Pair> {
    match (&left.word, &left.picture, needs.what) {
        (Some(word), None, What::Meanings) => needs.pool.iter().find(|p| p.word == *word),
        (None, Some(picture), What::Pictures) => needs.pool.iter().find(|p| p.picture.as_ref() == Some(picture)),
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
    proof.demand(times == 1, "match-partner", format!("the partner of `{word}` stands on the right {times} times"));
    proof.demand(sheet.right.get(i) != Some(partner), "match-opposite", format!("`{word}` stands opposite its partner"));
    if sheet.what == What::Meanings {
        proof.demand(!gives_away(&word, &partner.plain()), "match-tells", format!("the meaning of `{word}` holds the word itself"));
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

/// On paper: a marked place for each item, rows in order and level, left and right apart.
pub fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let mut out = Findings::none();
    let side = |kind: &'static str| laid.marks(kind).map(|(_, m)| m).collect::<Vec<&Mark>>();
    let (left, right) = (side("left"), side("right"));
    if left.len() != sheet.left.len() || right.len() != sheet.right.len() {
        out.push(fault(format!("{} and {} items are on the page, not {}", left.len(), right.len(), sheet.left.len())));
        return out;
    }
    for (i, (l, r)) in left.iter().zip(&right).enumerate() {
        let named = l.name == (i + 1).to_string() && r.name == ((b'A' + i as u8) as char).to_string();
        let below = i == 0 || (l.y >= left[i - 1].y + left[i - 1].h && r.y >= right[i - 1].y + right[i - 1].h);
        if !named || !below || (l.y - r.y).abs() > 500 || l.x + l.w > r.x {
            out.push(fault(format!("row {} is out of place", i + 1)));
        }
    }
    for said in &sheet.right {
        let words: Vec<String> = said.plain().split_whitespace().map(str::to_owned).collect();
        let shown = laid.pages.iter().flat_map(|p| &p.texts).any(|t| words.first().is_some_and(|w| t.text.contains(w.as_str())));
        if !shown {
            out.push(fault(format!("`{}` is not on the page", said.plain())));
        }
    }
    out
}

fn fault(message: String) -> Finding {
    Finding::error("matching-page", message).remedy("make the sheet again; if it stays, set a smaller `count`")
}

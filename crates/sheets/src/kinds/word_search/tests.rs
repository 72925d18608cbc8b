//! Fixtures, refused asks and planted faults of `word-search`.

use super::needs::{Needs, needs};
use super::*;
use crate::fixture::Asking;
use crate::lexicon::Lexicon;
use crate::terms::sample::{shore, with_rows};
use crate::tested::{Fault, Tested, keeps_contract};
use proptest::prelude::*;
use study::{Band, Value};

fn unfit(asking: Asking) -> Asking {
    let list = ["tit", "rat", "ape", "loon"].map(str::to_owned);
    Asking { lexicon: Lexicon::new([], list, "h".into()), ..asking }
}

fn number(n: i64) -> Value {
    Value::Number(n)
}

fn text(t: &str) -> Value {
    Value::Text(t.to_owned())
}

fn met(asking: Asking) -> Needs {
    needs(&asking.ask()).expect("needs")
}

fn refused(asking: Asking) -> Result<(), Findings> {
    needs(&asking.ask()).and_then(|n| make::make(&n, &mut Dice::from_number(1))).map(|_| ())
}

const DOZEN: [&str; 12] = [
    "limpet",
    "home scar",
    "cone",
    "foot",
    "grip",
    "trail",
    "radula",
    "groove",
    "snug",
    "muscle",
    "crab",
    "pool",
];

/// Twenty-five words of five letters that differ in two of them.
fn many() -> Asking {
    let words: Vec<String> =
        (0..25u8).map(|i| format!("m{}kr{}", char::from(b'a' + i), char::from(b'a' + i))).collect();
    with_rows(&[]).listing(&words.iter().map(String::as_str).collect::<Vec<_>>())
}

impl Tested for WordSearch {
    fn good() -> Vec<Needs> {
        let nested = with_rows(&[])
            .listing(&["sea", "seal", "crab", "kelp", "gull"])
            .with("allow-inside", Value::Flag(true));
        let accents =
            with_rows(&[]).listing(&["bénitier", "große Flut", "l’eau", "œuf", "algue", "niveau"]);
        let palindromes = with_rows(&[])
            .listing(&["level", "noon", "kayak", "crab", "kelp"])
            .with("directions", text("8"));
        let wide = shore(Band::C, 2)
            .with("rows", number(8))
            .with("columns", number(18))
            .with("how-many", number(9));
        vec![
            met(unfit(shore(Band::A, 1))),
            met(shore(Band::A, 3)),
            met(unfit(shore(Band::B, 2))),
            met(shore(Band::B, 3).listing(&DOZEN)),
            met(shore(Band::C, 2)),
            met(shore(Band::D, 3)),
            met(shore(Band::D, 2)
                .with("rows", number(18))
                .with("columns", number(8))
                .with("how-many", number(8))),
            met(wide),
            met(shore(Band::B, 1).with("fill", text("alphabet"))),
            met(nested),
            met(accents),
            met(palindromes),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let few = with_rows(&[("tide", "", ""), ("reef", "", "")]);
        vec![
            (
                "word longer than the grid",
                refused(
                    shore(Band::B, 1)
                        .listing(&["oystercatcher", "crab", "kelp"])
                        .with("rows", number(9))
                        .with("columns", number(9)),
                ),
            ),
            (
                "too many letters",
                refused(
                    shore(Band::A, 1)
                        .with("how-many", number(16))
                        .with("rows", number(8))
                        .with("columns", number(8)),
                ),
            ),
            ("too few words", refused(few)),
            ("too many words for one list", refused(many())),
            ("fewer words than asked", refused(shore(Band::B, 2).with("how-many", number(20)))),
            ("a word inside another", refused(with_rows(&[]).listing(&["sea", "seal", "crab"]))),
            (
                "a word backwards inside another",
                refused(with_rows(&[]).listing(&["rat", "star", "crab"])),
            ),
            (
                "a word that is another backwards",
                refused(
                    with_rows(&[])
                        .listing(&["tab", "bat", "crab"])
                        .with("allow-inside", Value::Flag(true)),
                ),
            ),
            (
                "the same word twice",
                refused(with_rows(&[]).listing(&["sea star", "seastar", "crab"])),
            ),
            ("a word of two letters", refused(with_rows(&[]).listing(&["ox", "crab", "kelp"]))),
            ("a word with a figure", refused(with_rows(&[]).listing(&["7-spot", "crab", "kelp"]))),
            (
                "a slant that no word has room for",
                refused(
                    with_rows(&[])
                        .listing(&["oystercatcher", "invertebrates", "hermit crab row"])
                        .with("rows", number(8))
                        .with("columns", number(18))
                        .with("directions", text("8")),
                ),
            ),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("dropped letter", |_, s, d| spoil_word(s, d, |_, _| "".into())),
            ("changed letter of a word", |_, s, d| {
                spoil_word(s, d, |l, alphabet| {
                    alphabet.iter().find(|a| *a != l).cloned().unwrap_or_default()
                })
            }),
            ("a word a second time", second_time),
            ("a word listed that is not there", |_, s, _| replace_word(s, "zebra finch")),
            ("a word missing from the list", |_, s, _| s.words.pop().is_some()),
            ("a word listed twice", |_, s, _| {
                let first = s.words[0].clone();
                s.words.pop();
                s.words.push(first);
                true
            }),
            ("misspelt in the list", |_, s, _| {
                let w = s.words[0].plain();
                replace_word(s, &w[1..])
            }),
            ("a row missing", |_, s, _| s.rows.pop().is_some()),
            ("a row too long", |_, s, _| {
                s.rows[0].push("A".into());
                true
            }),
            ("two letters in a cell", |_, s, _| {
                s.rows[0][0].push('A');
                true
            }),
            ("a small letter", |_, s, _| {
                let low = s.rows[1][1].to_lowercase();
                s.rows[1][1] = low;
                true
            }),
            ("cells under 7 mm", |_, s, _| {
                s.cell = 6_900;
                true
            }),
            ("other ways told", |_, s, _| {
                s.ways = if s.ways == 2 { 4 } else { 2 };
                true
            }),
            ("a way not told", |n, s, _| {
                s.rows.iter_mut().for_each(|r| r.reverse());
                n.ways == 2
            }),
            ("an unfit word", unfit_word),
            ("a strange filler", |n, s, _| set_filler(n, s, "Ÿ")),
            ("lopsided fillers", lopsided),
        ]
    }
}

/// Changes one letter of a placed word, except where that only moves the word's place.
fn spoil_word(s: &mut Sheet, dice: &mut Dice, change: fn(&String, &[String]) -> String) -> bool {
    let rings = check::rings(s);
    let ring = &rings[dice.below(rings.len())];
    let alphabet: Vec<String> = s.rows.iter().flatten().cloned().collect();
    let cell = &mut s.rows[ring.from.0][ring.from.1];
    *cell = change(cell, &alphabet);
    true
}

fn replace_word(s: &mut Sheet, word: &str) -> bool {
    let at = s.words[0].at.clone();
    s.words[0] = Said::plain_at(&at, word);
    true
}

/// Writes the shortest word a second time along a row of the grid.
fn second_time(_: &Needs, s: &mut Sheet, dice: &mut Dice) -> bool {
    let shortest = s
        .words
        .iter()
        .map(|w| proof::spelling::capitals(&w.plain()).unwrap_or_default())
        .min_by_key(Vec::len);
    let word = shortest.unwrap_or_default();
    let before = proof::letters::find(&s.rows, &word).len();
    let (r, c) = (dice.below(s.rows.len()), dice.below(s.rows[0].len() + 1 - word.len()));
    s.rows[r].splice(c..c + word.len(), word.iter().cloned());
    proof::letters::find(&s.rows, &word).len() > before
}

fn unfit_word(n: &Needs, s: &mut Sheet, dice: &mut Dice) -> bool {
    let Some(word) = n.unfit.first() else { return false };
    let (r, c) =
        (dice.below(s.rows.len() + 1 - word.len()), dice.below(s.rows[0].len() + 1 - word.len()));
    for (k, letter) in word.iter().enumerate() {
        s.rows[r + k][c + k] = letter.clone();
    }
    true
}

fn filler_cells(s: &Sheet) -> Vec<(usize, usize)> {
    let found = |w: &Said| {
        proof::letters::find(&s.rows, &proof::spelling::capitals(&w.plain()).unwrap_or_default())
    };
    let taken: Vec<_> = s.words.iter().flat_map(found).flat_map(|f| f.cells).collect();
    let all = (0..s.rows.len()).flat_map(|r| (0..s.rows[0].len()).map(move |c| (r, c)));
    all.filter(|cell| !taken.contains(cell)).collect()
}

fn set_filler(_: &Needs, s: &mut Sheet, letter: &str) -> bool {
    let (r, c) = filler_cells(s)[0];
    s.rows[r][c] = letter.into();
    true
}

/// Half of the fillers become one letter.
fn lopsided(_: &Needs, s: &mut Sheet, _: &mut Dice) -> bool {
    let cells = filler_cells(s);
    let letter = s.rows[cells[0].0][cells[0].1].clone();
    for (r, c) in cells.iter().take(cells.len() / 2) {
        s.rows[*r][*c].clone_from(&letter);
    }
    true
}

#[test]
fn contract() {
    keeps_contract(&WordSearch);
}

#[test]
fn the_youngest_read_right_and_down_only() {
    for level in 1..=3 {
        let n = met(shore(Band::A, level));
        assert_eq!(n.ways, 2);
        for seed in 0..20 {
            let sheet = make::make(&n, &mut Dice::from_number(seed)).expect("made");
            assert!(check::rings(&sheet).iter().all(|r| r.from.0 <= r.to.0
                && r.from.1 <= r.to.1
                && (r.from.0 == r.to.0 || r.from.1 == r.to.1)));
        }
    }
}

#[test]
fn a_long_word_makes_the_grid_grow_when_all_are_wanted() {
    let n = met(with_rows(&[]).listing(&["oystercatcher", "limpet", "crab"]).band(Band::A));
    assert_eq!((n.rows, n.columns), (13, 13));
}

#[test]
fn a_word_too_long_for_a_size_she_chose_is_named() {
    let asking = shore(Band::B, 1).with("rows", number(8)).with("columns", number(8));
    let mut rows = asking;
    rows.study.words[0].word = crate::fixture::said("words.csv#0/word", "oystercatcher");
    let n = met(rows);
    let told: Vec<_> = n.notes.iter().map(|f| f.message.as_str()).collect();
    assert_eq!(told, ["`oystercatcher` has 13 letters, and the grid has room for 8"]);
}

#[test]
fn messages_say_how_many_are_missing() {
    let few = with_rows(&[("tide", "", ""), ("reef", "", "")]);
    let found = needs(&few.ask()).expect_err("too few");
    let shown = found.0[0].to_string();
    assert!(
        shown.contains(
            "has 2 words for a word search that do not hold one another, and needs 6: 4 missing"
        ),
        "{shown}"
    );
}

#[test]
fn sea_is_counted_apart_from_seal() {
    let n = met(with_rows(&[])
        .listing(&["sea", "seal", "crab", "kelp", "gull"])
        .with("allow-inside", Value::Flag(true)));
    let sheet = make::make(&n, &mut Dice::from_number(3)).expect("made");
    let proof = check::check(&n, &sheet);
    assert!(
        proof.counted.contains(&("found inside longer words".into(), "1".into())),
        "{:?}",
        proof.counted
    );
    assert_eq!(check::rings(&sheet).len(), 5);
}

/// check values 12.3: a word of three letters turns up by chance 0.05 times in a grid of 12 × 12 filled evenly;
/// 16 words in 100 grids would then be met about 80 times too often, and are not met at all.
#[test]
fn no_word_turns_up_by_chance() {
    let n = met(shore(Band::B, 2).with("fill", text("alphabet")));
    for seed in 0..100 {
        let sheet = make::make(&n, &mut Dice::from_number(seed)).expect("made");
        for word in &sheet.words {
            let spelt = proof::spelling::capitals(&word.plain()).expect("letters");
            assert_eq!(proof::letters::find(&sheet.rows, &spelt).len(), 1);
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn any_seed_gives_a_proved_sheet(seed: u64, band in 0usize..4, level in 1u8..=3) {
        let n = met(unfit(shore(Band::ALL[band], level)));
        let sheet = make::make(&n, &mut Dice::from_number(seed)).expect("made");
        let proof = check::check(&n, &sheet);
        prop_assert!(proof.holds(), "{:?}", proof.findings);
        prop_assert_eq!(check::rings(&sheet).len(), n.count);
    }
}

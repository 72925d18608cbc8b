//! Fixtures, refused asks and planted faults of `matching`.

use super::needs::needs;
use super::*;
use crate::fixture::Asking;
use crate::terms::sample::{shore, with_rows};
use crate::tested::{Fault, Tested, keeps_contract};
use proof::{LaidPage, LaidText, Mark};
use proptest::prelude::*;
use study::{Band, Value};

fn met(asking: Asking) -> Needs {
    needs(&asking.ask()).expect("needs")
}

fn refused(asking: Asking) -> Result<(), Findings> {
    needs(&asking.ask()).and_then(|n| make::make(&n, &mut Dice::from_number(1))).map(|_| ())
}

fn text(t: &str) -> Value {
    Value::Text(t.to_owned())
}

/// Puts the partner of the first item opposite it.
fn opposite(n: &Needs, s: &mut Sheet, _: &mut Dice) -> bool {
    let letter = check::answers(n, s)[0].letter.as_bytes()[0];
    s.right.swap(0, usize::from(letter - b'A'));
    true
}

/// Exchanges two partners with another pair's of the pool.
fn stranger(n: &Needs, s: &mut Sheet, _: &mut Dice) -> bool {
    let mut others = n
        .pool
        .iter()
        .filter_map(|p| if n.what == What::Pictures { Some(&p.word) } else { p.meaning.as_ref() });
    let other = others.find(|&o| !s.right.contains(o)).cloned();
    other.is_some_and(|o| {
        s.right[0] = o;
        true
    })
}

impl Tested for Matching {
    fn good() -> Vec<Needs> {
        let pictures = shore(Band::A, 1).listing(&["limpet", "crab", "pool"]);
        vec![
            met(pictures),
            met(shore(Band::A, 2).with("what", text("meanings"))),
            met(shore(Band::B, 1)),
            met(shore(Band::B, 3)),
            met(shore(Band::C, 2)),
            met(shore(Band::D, 3).with("how-many", Value::Number(3))),
            met(shore(Band::B, 2).with("what", text("pictures"))),
            met(shore(Band::D, 1).listing(&["kelp", "anchor", "Barnacle", "radula", "home scar"])),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let long = "a very long winded meaning that goes on and on for ever and a day and never comes to its end at all, not even here";
        let rows = [
            ("crab", "a crab has ten legs", ""),
            ("kelp", "a seaweed", ""),
            ("gull", long, ""),
            ("reef", "", ""),
            ("wrack", "a seaweed", ""),
            ("tang", "a bite", ""),
        ];
        vec![
            ("too few words", refused(with_rows(&rows[..2]))),
            ("fewer than asked", refused(with_rows(&rows).with("how-many", Value::Number(8)))),
            (
                "a meaning that holds its word",
                refused(with_rows(&rows).listing(&["crab", "kelp", "tang"])),
            ),
            ("a meaning too long", refused(with_rows(&rows).listing(&["gull", "kelp", "tang"]))),
            (
                "a word without a meaning",
                refused(with_rows(&rows).listing(&["reef", "kelp", "tang"])),
            ),
            (
                "the same meaning twice",
                refused(with_rows(&rows).listing(&["kelp", "wrack", "tang"])),
            ),
            (
                "a word that is not in the list",
                refused(with_rows(&rows).listing(&["klep", "wrack", "tang"])),
            ),
            ("the same word twice", refused(with_rows(&rows).listing(&["kelp", "kelp", "tang"]))),
            (
                "a word without a picture",
                refused(
                    shore(Band::A, 1)
                        .listing(&["cone", "crab", "limpet"])
                        .with("what", text("pictures")),
                ),
            ),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("opposite its partner", opposite),
            ("a partner missing", |_, s, _| s.right.pop().is_some()),
            ("an item missing", |_, s, _| s.left.pop().is_some()),
            ("a partner twice", |_, s, _| {
                s.right[0] = s.right[1].clone();
                true
            }),
            ("an item twice", |_, s, _| {
                s.left[0] = s.left[1].clone();
                true
            }),
            ("a stranger's partner", stranger),
            ("a word changed", |_, s, _| {
                let at = s.right[0].at.clone();
                s.right[0] = Said::plain_at(&at, "changed");
                true
            }),
            ("a strange word on the left", |_, s, _| {
                let Some(word) = &mut s.left[0].word else { return false };
                *word = Said::plain_at(&word.at.clone(), "zebra");
                true
            }),
            ("a picture with its word", |n, s, _| {
                let word = check::answers(n, s)[0].word.clone();
                if s.left[0].picture.is_some() {
                    s.left[0].word = Some(word);
                    true
                } else {
                    false
                }
            }),
            ("another picture", |_, s, _| {
                let Some(p) = &mut s.left[0].picture else { return false };
                p.name = "gull".into();
                true
            }),
            ("a row missing", |_, s, _| s.left.pop().is_some() && s.right.pop().is_some()),
            ("other things matched", |_, s, _| {
                s.what = if s.what == What::Pictures { What::Meanings } else { What::Pictures };
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Matching);
}

#[test]
fn the_key_joins_what_belongs_together() {
    let n = met(shore(Band::C, 2));
    let sheet = make::make(&n, &mut Dice::from_number(9)).expect("made");
    for (i, answer) in check::answers(&n, &sheet).iter().enumerate() {
        let right = &sheet.right[usize::from(answer.letter.as_bytes()[0] - b'A')];
        let own = n.pool.iter().find(|p| p.word == answer.word).and_then(|p| p.meaning.as_ref());
        assert_eq!(Some(right), own);
        assert_eq!(sheet.left[i].word.as_ref(), Some(&answer.word));
    }
}

#[test]
fn a_meaning_that_holds_its_word_is_named_even_when_others_do() {
    let rows = [
        ("crab", "a crab has ten legs", ""),
        ("kelp", "a seaweed", ""),
        ("gull", "a bird", ""),
        ("tang", "a bite", ""),
    ];
    let n = met(with_rows(&rows));
    assert_eq!(n.count, 3);
    assert!(n.notes.iter().any(|f| f.message == "the meaning of `crab` holds the word itself"));
}

/// The rows as a page would lay them.
fn laid(sheet: &Sheet) -> Laid {
    let mut page = LaidPage { number: 1, ..LaidPage::default() };
    for (i, right) in sheet.right.iter().enumerate() {
        let y = 50_000 + 20_000 * i as i64;
        let mark = |kind: &str, name: String, x| Mark {
            kind: kind.into(),
            name,
            x,
            y,
            w: 40_000,
            h: 18_000,
        };
        page.marks.push(mark("left", (i + 1).to_string(), 20_000));
        page.marks.push(mark("right", char::from(b'A' + i as u8).to_string(), 110_000));
        let text = |words: String, x| LaidText {
            text: words,
            x,
            y: y + 5_000,
            w: 30_000,
            ..LaidText::default()
        };
        page.texts.push(text(right.plain(), 110_000));
        page.texts.extend(sheet.left[i].word.as_ref().map(|w| text(w.plain(), 20_000)));
    }
    Laid { sheet: "s".into(), pages: vec![page] }
}

#[test]
fn the_laid_out_page_is_judged() {
    let sheet = make::make(&met(shore(Band::B, 2)), &mut Dice::from_number(2)).expect("made");
    assert!(check::check_page(&sheet, &laid(&sheet)).is_empty());
    let spoils: [fn(&mut LaidPage); 6] = [
        |p| {
            p.marks.pop();
        },
        |p| p.marks[2].y += 600,
        |p| p.marks[0].w = 95_000,
        |p| p.marks[1].name = "B".into(),
        |p| p.texts.clear(),
        |p| p.texts[2].text = "another".into(),
    ];
    for (i, spoil) in spoils.into_iter().enumerate() {
        let mut bad = laid(&sheet);
        spoil(&mut bad.pages[0]);
        assert!(!check::check_page(&sheet, &bad).is_empty(), "spoil {i}");
    }
}

#[test]
fn large_print_sets_fewer_words_on_a_page() {
    let asking = shore(Band::C, 2);
    let room = crate::Room { large_print: true, ..crate::Room::PLAIN };
    let n = needs(&Ask { room, ..asking.ask() }).expect("needs");
    assert_eq!(n.count, 6);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn any_seed_gives_a_proved_sheet(seed: u64, band in 0usize..4, level in 1u8..=3) {
        let n = met(shore(Band::ALL[band], level));
        let sheet = make::make(&n, &mut Dice::from_number(seed)).expect("made");
        let proof = check::check(&n, &sheet);
        prop_assert!(proof.holds(), "{:?}", proof.findings);
        prop_assert_eq!(check::answers(&n, &sheet).len(), n.count);
    }
}

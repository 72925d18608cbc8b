//! Fixtures, refused asks and planted faults of `pairs`.

use super::needs::needs;
use super::*;
use crate::fixture::{Asking, said};
use crate::terms::sample::{shore, with_rows};
use crate::tested::{Fault, Tested, keeps_contract};
use proof::{LaidPage, LaidText, Mark};
use proptest::prelude::*;
use study::{Band, Value};

/// The fixture's words, each with a picture of its own.
fn pictured(band: Band, level: u8) -> Asking {
    let mut asking = shore(band, level);
    let crab = asking.study.pictures["crab"].clone();
    for word in &mut asking.study.words {
        let name = word.word.plain().replace(' ', "-");
        let mut picture = crab.clone();
        picture.name.clone_from(&name);
        picture.hash = format!("hash of {name}");
        asking.study.pictures.insert(name.clone(), picture);
        word.picture = Some(name);
    }
    asking
}

fn met(asking: Asking) -> Needs {
    needs(&asking.ask()).expect("needs")
}

fn refused(asking: Asking) -> Result<(), Findings> {
    needs(&asking.ask()).map(|_| ())
}

fn text(t: &str) -> Value {
    Value::Text(t.to_owned())
}

const NINE: [&str; 9] =
    ["crab", "kelp", "anchor", "Barnacle", "radula", "home scar", "snug", "cone", "foot"];

impl Tested for Pairs {
    fn good() -> Vec<Needs> {
        vec![
            met(pictured(Band::A, 1)),
            met(pictured(Band::A, 3).with("gap", Value::Number(4))),
            met(pictured(Band::B, 2)),
            met(shore(Band::B, 2)),
            met(shore(Band::C, 2).with("pairs", Value::Number(13))),
            met(shore(Band::D, 3).with("gap", Value::Number(3))),
            met(pictured(Band::D, 1).with("what", text("picture-word"))),
            met(shore(Band::C, 1).listing(&NINE)),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let tells = |asking: Asking| {
            let mut asking = asking;
            asking.study.words[0].meaning =
                Some(said("words.csv#limpet/meaning", "a limpet on a rock"));
            asking
        };
        let mut same = pictured(Band::A, 1);
        same.study.words[0].picture = Some("crab".into());
        let mut long = shore(Band::C, 1);
        long.study.words[0].word = said("words.csv#0/word", "a very long name of a thing indeed");
        let mut wordy = shore(Band::C, 1);
        wordy.study.words[0].meaning = Some(said("words.csv#limpet/meaning", &"so ".repeat(50)));
        let first_nine: Vec<String> =
            same.study.words.iter().take(9).map(|w| w.word.plain()).collect();
        let mut nine: Vec<&str> = first_nine.iter().map(String::as_str).collect();
        nine[8] = "crab";
        vec![
            (
                "too few words",
                refused(with_rows(&[("crab", "a walker", ""), ("kelp", "a weed", "")])),
            ),
            ("fewer than asked", refused(shore(Band::C, 1).with("pairs", Value::Number(20)))),
            ("too few pictures", refused(shore(Band::A, 1).with("what", text("picture-picture")))),
            ("a gap of 2 mm", refused(shore(Band::C, 1).with("gap", Value::Number(2)))),
            (
                "a meaning that holds its word",
                refused(tells(shore(Band::C, 1)).listing(&[
                    "limpet", "cone", "foot", "grip", "trail", "radula", "groove", "snug",
                ])),
            ),
            ("the same picture twice", refused(same.listing(&nine))),
            (
                "a word without a picture",
                refused(
                    shore(Band::B, 1).listing(&["crab", "cone"]).with("what", text("picture-word")),
                ),
            ),
            ("a word that is not in the list", refused(shore(Band::B, 1).listing(&["zebra"]))),
            (
                "a word too long for a card",
                refused(long.listing(&["a very long name of a thing indeed"])),
            ),
            ("a meaning too long for a card", refused(wordy.listing(&["limpet"]))),
            ("the same word twice", refused(shore(Band::C, 1).listing(&["crab", "crab", "cone"]))),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("a card lost", |_, s, _| s.leaves.last_mut().is_some_and(|l| l.pop().is_some())),
            ("a card twice", |_, s, _| {
                let c = s.leaves[0][0].clone();
                s.leaves[0][1] = c;
                true
            }),
            ("partners exchanged", exchanged),
            ("a third card", |_, s, _| {
                let mut c = s.leaves[0][1].clone();
                c.name = "1c".into();
                s.leaves[0][0].name = "1".into();
                s.leaves[0][2] = c;
                true
            }),
            ("a word on two pairs", twice),
            ("a strange face", |_, s, _| {
                let c = &mut s.leaves[0][0];
                c.picture = None;
                c.meaning = None;
                c.word = Some(said("x#y", "zebra"));
                true
            }),
            ("two faces on a card", |_, s, _| {
                let c = &mut s.leaves[0][0];
                c.word = Some(said("x#y", "zebra"));
                c.picture.is_some()
            }),
            ("an empty card", |_, s, _| {
                let c = &mut s.leaves[0][0];
                c.word = None;
                c.picture = None;
                true
            }),
            ("a back that tells", |_, s, _| {
                s.leaves[0][0].back += 2;
                true
            }),
            ("all backs told apart", |_, s, _| {
                s.leaves
                    .iter_mut()
                    .flatten()
                    .for_each(|c| c.back = u8::from(c.back == 0 && c.name.ends_with('a')));
                s.what == What::PicturePicture
            }),
            ("cards too wide", |_, s, _| {
                s.cards.width += 5_000;
                true
            }),
            ("cards too close to laminate", |_, s, _| {
                s.cards.gap = 1_000;
                true
            }),
            ("a hole in a leaf", |_, s, _| {
                if s.leaves.len() < 2 {
                    return false;
                }
                let c = s.leaves[0].pop();
                s.leaves[1].extend(c);
                true
            }),
            ("no cautions", |_, s, _| {
                s.cautions.clear();
                true
            }),
            ("a pair fewer told", |_, s, _| {
                s.pairs -= 1;
                true
            }),
            ("other ages", |_, s, _| {
                s.ages.from += 1;
                true
            }),
            ("a longer meaning", |_, s, _| {
                let c = s.leaves[0].iter_mut().find(|c| c.meaning.is_some());
                c.is_some_and(|c| {
                    c.meaning = Some(said("x#y", &"so ".repeat(60)));
                    true
                })
            }),
        ]
    }
}

/// Exchanges the second cards of the first two pairs.
fn exchanged(_: &Needs, s: &mut Sheet, _: &mut Dice) -> bool {
    let leaf = &mut s.leaves[0];
    leaf.swap(1, 3);
    let name = leaf[1].name.clone();
    leaf[1].name = std::mem::replace(&mut leaf[3].name, name);
    true
}

/// The first two pairs show the same.
fn twice(_: &Needs, s: &mut Sheet, _: &mut Dice) -> bool {
    for half in 0..2 {
        let name = s.leaves[0][2 + half].name.clone();
        s.leaves[0][2 + half] = Card { name, ..s.leaves[0][half].clone() };
    }
    true
}

#[test]
fn contract() {
    keeps_contract(&Pairs);
}

#[test]
fn bands_choose_what_is_paired_and_how_large() {
    let a = met(pictured(Band::A, 1));
    assert_eq!((a.what, a.cards.width, a.cards.height), (What::PicturePicture, 90_000, 70_000));
    let b = met(pictured(Band::B, 1));
    assert_eq!((b.what, b.cards.width, b.cards.height), (What::PictureWord, 60_000, 52_500));
    let c = met(pictured(Band::C, 1).with("gap", Value::Number(3)));
    assert_eq!((c.what, c.cards.width, c.cards.height), (What::WordMeaning, 58_000, 50_000));
    assert!(
        c.cautions.iter().any(|s| s.contains("laminator"))
            && c.cautions.iter().any(|s| s.contains("scissors"))
    );
}

/// The cards of a sheet as a page would lay them: fronts on odd pages, backs mirrored about the middle of A4 paper
/// (210 mm, ISO 216; check values 9.9).
fn laid(sheet: &Sheet) -> Laid {
    let c = sheet.cards;
    let (w, h, gap) = (i64::from(c.width), i64::from(c.height), i64::from(c.gap));
    let left = (210_000 - w * c.columns as i64 - gap * (c.columns as i64 - 1)) / 2;
    let place = |kind: &str, i: usize, name: &str| {
        let (x, y) = (
            left + (w + gap) * (i % c.columns) as i64,
            50_000 + (h + gap) * (i / c.columns) as i64,
        );
        let x = if kind == "back" { 210_000 - x - w } else { x };
        Mark { kind: kind.into(), name: name.into(), x, y, w, h }
    };
    let text = |kind: &str, i: usize, card: &Card| {
        let said = card.word.as_ref().or(card.meaning.as_ref()).filter(|_| kind == "card")?;
        let m = place(kind, i, &card.name);
        let (x, y) = (m.x + 10_000, m.y + h / 2);
        Some(LaidText { text: said.plain(), x, y, w: w - 20_000, ..LaidText::default() })
    };
    let page = |number, kind: &str, leaf: &Vec<Card>| LaidPage {
        number,
        width: 210_000,
        height: 297_000,
        marks: leaf.iter().enumerate().map(|(i, card)| place(kind, i, &card.name)).collect(),
        texts: leaf.iter().enumerate().flat_map(|(i, card)| text(kind, i, card)).collect(),
        ..LaidPage::default()
    };
    let both = |(i, leaf): (usize, &Vec<Card>)| {
        [page(2 * i as u32 + 3, "card", leaf), page(2 * i as u32 + 4, "back", leaf)]
    };
    Laid { sheet: "s".into(), pages: sheet.leaves.iter().enumerate().flat_map(both).collect() }
}

#[test]
fn the_laid_out_page_is_judged() {
    let sheet = make::make(
        &met(shore(Band::D, 3).with("gap", Value::Number(3))),
        &mut Dice::from_number(4),
    )
    .expect("made");
    let good = laid(&sheet);
    assert!(check::check_page(&sheet, &good).is_empty(), "{:?}", check::check_page(&sheet, &good));
    let spoils: [fn(&mut Laid); 6] = [
        |l| l.pages[0].texts[2].text = "another".into(),
        |l| l.pages[1].marks[0].x += 501,
        |l| l.pages.iter_mut().for_each(|p| p.number += 1),
        |l| {
            l.pages[0].marks.pop();
        },
        |l| l.pages[0].marks[1].x -= 1_000,
        |l| {
            let m = l.pages[0].marks[0].clone();
            l.pages[0].texts.push(LaidText {
                text: "long".into(),
                x: m.x + 1_000,
                y: m.y + 20_000,
                w: m.w - 2_000,
                ..LaidText::default()
            });
        },
    ];
    for (i, spoil) in spoils.into_iter().enumerate() {
        let mut bad = good.clone();
        spoil(&mut bad);
        assert!(!check::check_page(&sheet, &bad).is_empty(), "spoil {i}");
    }
}

#[test]
fn a_meaning_that_holds_its_word_is_left_out_and_named() {
    let mut asking = shore(Band::C, 1);
    asking.study.words[0].meaning = Some(said("words.csv#limpet/meaning", "a limpet on a rock"));
    let n = met(asking);
    assert!(n.notes.iter().any(|f| f.message.contains("`limpet` holds the word itself")));
    assert!(n.pool.iter().all(|p| p.word.plain() != "limpet"));
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn any_seed_gives_a_proved_sheet(seed: u64, band in 0usize..4, level in 1u8..=3) {
        let n = met(pictured(Band::ALL[band], level));
        let sheet = make::make(&n, &mut Dice::from_number(seed)).expect("made");
        let proof = check::check(&n, &sheet);
        prop_assert!(proof.holds(), "{:?}", proof.findings);
        prop_assert_eq!(check::pairs(&n, &sheet).len(), n.pairs);
        prop_assert!(check::check_page(&sheet, &laid(&sheet)).is_empty());
    }
}

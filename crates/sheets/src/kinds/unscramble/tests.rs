//! Fixtures, refused asks and planted faults of `unscramble`.

use super::needs::needs;
use super::*;
use crate::fixture::Asking;
use crate::lexicon::Lexicon;
use crate::terms::sample::{shore, with_rows};
use crate::tested::{Fault, Tested, keeps_contract};
use proof::{LaidPage, LaidText, Mark};
use proptest::prelude::*;
use study::{Band, Value};

/// Words that share their letters: check values 12.9 (word list of Debian's wamerican).
const SHARED: [(&str, &str, &str); 8] = [
    ("heart", "it pumps the blood", ""),
    ("leaf", "it is green and flat", ""),
    ("owl", "a bird of the night", ""),
    ("snake", "an animal without legs", ""),
    ("horse", "it carries a rider", ""),
    ("cat", "it hunts mice", ""),
    ("seal", "it sleeps on the rocks", ""),
    ("petals", "the coloured leaves of a flower", ""),
];

fn lexicon() -> Lexicon {
    let words = "heart earth hater leaf flea bat tab owl low snake sneak horse shore cat act dog god seal sale ales \
                 petals plates staple pastel palest pleats loin lion frog";
    let unfit = ["tit", "ass", "ape"].map(str::to_owned);
    Lexicon::new(words.split_whitespace().map(str::to_owned), unfit, "h".into())
}

fn with_lexicon(asking: Asking) -> Asking {
    Asking { lexicon: lexicon(), ..asking }
}

fn met(asking: Asking) -> Needs {
    needs(&asking.ask()).expect("needs")
}

fn refused(asking: Asking) -> Result<(), Findings> {
    needs(&asking.ask()).and_then(|n| make::make(&n, &mut Dice::from_number(1))).map(|_| ())
}

fn text(t: &str) -> Value {
    Value::Text(t.to_owned())
}

impl Tested for Unscramble {
    fn good() -> Vec<Needs> {
        vec![
            met(with_lexicon(shore(Band::A, 1))),
            met(shore(Band::A, 3)),
            met(with_lexicon(shore(Band::B, 2))),
            met(shore(Band::B, 3)),
            met(shore(Band::C, 1)),
            met(shore(Band::D, 3)),
            met(with_lexicon(with_rows(&SHARED).band(Band::C).level(2))),
            met(with_rows(&[])
                .listing(&["egg", "possess", "sea egg", "banana"])
                .with("answer", text("lines"))),
            met(with_rows(&[]).listing(&["bénitier", "große", "l’eau", "home scar"])),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        vec![
            ("too few words", refused(with_rows(&[("tide", "", ""), ("reef", "", "")]))),
            (
                "fewer than asked",
                refused(
                    shore(Band::B, 2)
                        .listing(&["crab", "kelp", "limpet"])
                        .with("how-many", Value::Number(5)),
                ),
            ),
            ("a word of two letters", refused(with_rows(&[]).listing(&["ox", "crab", "kelp"]))),
            (
                "a word of equal letters",
                refused(with_rows(&[]).listing(&["aaa", "crab", "kelp", "gull"])),
            ),
            (
                "a word too long for its boxes",
                refused(with_rows(&[]).listing(&["ultramicroscopic", "crab", "kelp", "gull"])),
            ),
            (
                "a word with a figure",
                refused(with_rows(&[]).listing(&["7-spot", "crab", "kelp", "gull"])),
            ),
            (
                "the same word twice",
                refused(with_rows(&[]).listing(&["sea star", "seastar", "kelp", "gull"])),
            ),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("dropped letter", |_, s, _| s.items[0].letters[0].pop().is_some()),
            ("a letter too many", |_, s, _| {
                s.items[0].letters[0].push("A".into());
                true
            }),
            ("another letter", |_, s, _| {
                let l = &mut s.items[0].letters[0][0];
                *l = if l == "A" { "B" } else { "A" }.into();
                true
            }),
            ("the word itself", |n, s, _| {
                s.items[0].letters = word_of(n, &s.items[0]);
                true
            }),
            ("a letter back in its place", back_in_place),
            ("one part unmixed", |n, s, _| {
                let i = s.items.iter().position(|i| i.letters.len() > 1);
                i.is_some_and(|i| {
                    s.items[i].letters[0] = word_of(n, &s.items[i])[0].clone();
                    true
                })
            }),
            ("an unfit word", unfit_order),
            ("a word asked twice", |_, s, _| {
                s.items[1] = s.items[0].clone();
                true
            }),
            ("an item missing", |_, s, _| s.items.pop().is_some()),
            ("another word's clue", |_, s, _| {
                let c = s.items[1].clue.clone();
                let other = c != s.items[0].clue && c.is_some() && s.items[0].clue.is_some();
                if other {
                    s.items[0].clue = c;
                }
                other
            }),
            ("a clue that holds the word", |n, s, _| {
                let w = check::solved(n, s)[0].word.plain();
                let at = findings::Place::default();
                s.items[0].clue = Some(Said::plain_at(&at, format!("the {w} itself")));
                true
            }),
            ("a wrong letter given", |n, s, _| {
                s.items[0].given = vec!["Q".into()];
                n.count > 0
            }),
            ("no letter given", |n, s, _| {
                s.items[0].given.clear();
                n.first_letter
            }),
            ("lines for boxes", |_, s, _| {
                s.answer = if s.answer == Answer::Boxes { Answer::Lines } else { Answer::Boxes };
                true
            }),
            ("a picture promised", |_, s, _| {
                s.pictures = !s.pictures;
                true
            }),
            ("another dictionary word", dictionary_word),
            ("parts run together", |_, s, _| {
                let i = s.items.iter().position(|i| i.letters.len() > 1);
                i.is_some_and(|i| {
                    s.items[i].letters = vec![s.items[i].letters.concat()];
                    true
                })
            }),
        ]
    }
}

fn word_of(n: &Needs, item: &Item) -> Vec<Vec<String>> {
    let mut letters = item.letters.concat();
    letters.sort();
    let same = |m: &&needs::Mixable| {
        let mut l = m.parts.concat();
        l.sort();
        l == letters && m.parts.len() == item.letters.len()
    };
    n.pool.iter().find(same).map(|m| m.parts.clone()).unwrap_or_default()
}

/// Puts one letter where it belongs, when no letter need stay there.
fn back_in_place(n: &Needs, s: &mut Sheet, dice: &mut Dice) -> bool {
    let i = dice.below(s.items.len());
    let word = word_of(n, &s.items[i]);
    let part = &mut s.items[i].letters[0];
    let most =
        word[0].iter().map(|l| word[0].iter().filter(|m| *m == l).count()).max().unwrap_or(0);
    let at = part.iter().position(|l| *l == word[0][0]).unwrap_or(0);
    part.swap(0, at);
    2 * most <= word[0].len()
}

fn unfit_order(n: &Needs, s: &mut Sheet, _: &mut Dice) -> bool {
    for item in &mut s.items {
        for unfit in &n.unfit {
            let mut rest = item.letters[0].clone();
            let all = unfit
                .iter()
                .all(|l| rest.iter().position(|r| r == l).map(|i| rest.remove(i)).is_some());
            if all {
                item.letters[0] = unfit.iter().cloned().chain(rest).collect();
                return true;
            }
        }
    }
    false
}

/// Shows `act` for `cat` and the like, where no letter of it stands in its own place.
fn dictionary_word(n: &Needs, s: &mut Sheet, _: &mut Dice) -> bool {
    for item in &mut s.items {
        let word = word_of(n, item).concat();
        let Some(own) = n.pool.iter().find(|m| m.parts.concat() == word) else { continue };
        for also in &own.also {
            let letters: Vec<String> = also.to_uppercase().chars().map(String::from).collect();
            let many = proof::arrangement::derangements(&word).is_some_and(|d| d > 20);
            if many && proof::arrangement::in_place(&word, &letters) == 0 {
                item.letters = vec![letters];
                return true;
            }
        }
    }
    false
}

#[test]
fn contract() {
    keeps_contract(&Unscramble);
}

/// check values 12.9: heart is also earth and hater; every such word is accepted in the key.
#[test]
fn the_key_takes_other_words_of_the_same_letters() {
    let n = met(with_lexicon(with_rows(&SHARED).band(Band::C).level(2)));
    let sheet = make::make(&n, &mut Dice::from_number(1)).expect("made");
    let answers = check::solved(&n, &sheet);
    let also =
        |word: &str| answers.iter().find(|a| a.word.plain() == word).map(|a| a.also.join(" "));
    assert_eq!(also("heart").as_deref(), Some("earth hater"));
    assert_eq!(also("petals").as_deref(), Some("palest pastel plates pleats staple"));
    let given = met(with_lexicon(with_rows(&SHARED).band(Band::C).level(1)));
    let sheet = make::make(&given, &mut Dice::from_number(1)).expect("made");
    let heart = check::solved(&given, &sheet)
        .into_iter()
        .find(|a| a.word.plain() == "heart")
        .expect("heart");
    assert_eq!(heart.also, ["hater"], "earth does not begin with the H that is given");
}

#[test]
fn pictures_help_the_young_and_meanings_the_older() {
    let young = make::make(&met(shore(Band::A, 2)), &mut Dice::from_number(1)).expect("made");
    assert!(young.items.iter().filter(|i| i.picture.is_some()).count() >= 2);
    let older = make::make(&met(shore(Band::C, 2)), &mut Dice::from_number(1)).expect("made");
    assert!(older.items.iter().all(|i| i.picture.is_none() && i.clue.is_some()));
    let hard = make::make(&met(shore(Band::D, 3)), &mut Dice::from_number(1)).expect("made");
    assert!(hard.items.iter().all(|i| i.clue.is_none() && i.given.is_empty()));
}

#[test]
fn a_meaning_that_holds_its_word_is_no_clue_and_is_named() {
    let rows = [
        ("crab", "a crab has ten legs", ""),
        ("kelp", "a seaweed", ""),
        ("gull", "a bird", ""),
        ("reef", "rocks", ""),
    ];
    let n = met(with_rows(&rows).band(Band::C));
    assert!(n.notes.iter().any(|f| f.message.contains("`crab` holds the word itself")));
    assert!(n.pool.iter().any(|m| m.word.plain() == "crab" && m.clue.is_none()));
}

/// The items as a page would lay them.
fn laid(sheet: &Sheet) -> Laid {
    let mut page = LaidPage { number: 1, ..LaidPage::default() };
    for (i, item) in sheet.items.iter().enumerate() {
        for (k, letter) in item.letters.concat().iter().enumerate() {
            let (x, y, name) =
                (60_000 + 9_000 * k as i64, 50_000 + 20_000 * i as i64, format!("{},{k}", i + 1));
            let mark = |kind: &str, y| Mark {
                kind: kind.into(),
                name: name.clone(),
                x,
                y,
                w: 9_000,
                h: 9_000,
            };
            page.marks.push(mark("letter", y));
            if sheet.answer == Answer::Boxes || k == 0 {
                page.marks.push(mark("space", y + 9_000));
            }
            page.texts.push(LaidText {
                text: letter.clone(),
                x: x + 3_000,
                y: y + 6_000,
                w: 3_000,
                ..LaidText::default()
            });
        }
    }
    Laid { sheet: "s".into(), pages: vec![page] }
}

#[test]
fn the_laid_out_page_is_judged() {
    for band in [Band::B, Band::D] {
        let sheet = make::make(&met(shore(band, 2)), &mut Dice::from_number(2)).expect("made");
        assert!(check::check_page(&sheet, &laid(&sheet)).is_empty());
        let spoils: [fn(&mut LaidPage); 4] = [
            |p| p.texts[1].text = "Q9".into(),
            |p| p.texts[1].x += 9_000,
            |p| p.marks.retain(|m| m.kind != "letter" || m.name != "2,0"),
            |p| p.marks.retain(|m| m.kind != "space" || m.name != "1,0"),
        ];
        for (i, spoil) in spoils.into_iter().enumerate() {
            let mut bad = laid(&sheet);
            spoil(&mut bad.pages[0]);
            assert!(!check::check_page(&sheet, &bad).is_empty(), "spoil {i}");
        }
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
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn any_seed_gives_a_proved_sheet(seed: u64, band in 0usize..4, level in 1u8..=3) {
        let n = met(with_lexicon(shore(Band::ALL[band], level)));
        let sheet = make::make(&n, &mut Dice::from_number(seed)).expect("made");
        let proof = check::check(&n, &sheet);
        prop_assert!(proof.holds(), "{:?}", proof.findings);
    }
}

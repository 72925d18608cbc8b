//! What an unscramble sheet is made from: words with their letters, clues and other words of the same letters.

use super::{Answer, WORDS};
use crate::Ask;
use crate::lettering;
use crate::shared::{PictureRef, owner_place, title};
use crate::terms::{Take, Term, Terms, terms, too_few};
use crate::words::words;
use findings::{Finding, Findings};
use proof::meaning::gives_away;
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use study::{Band, Said};

/// Everything the sheet is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// How many words.
    pub count: usize,
    /// Words to choose from.
    pub pool: Vec<Mixable>,
    /// Where the child writes.
    pub answer: Answer,
    /// Is the first letter given?
    pub first_letter: bool,
    /// Unfit words that the letters of some word can spell.
    pub unfit: Vec<Vec<String>>,
    /// Hints for the author.
    pub notes: Findings,
}

/// A word that can be mixed.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Mixable {
    /// In the author's spelling.
    pub word: Said,
    /// In capitals, by its parts.
    pub parts: Vec<Vec<String>>,
    /// Other dictionary words with the same letters, lower-case; for words of one part.
    pub also: Vec<String>,
    /// A picture as a clue.
    pub picture: Option<PictureRef>,
    /// The meaning as a clue.
    pub clue: Option<Said>,
}

/// Fewest letters of a word.
const SHORTEST: usize = 3;
/// Fewest words of a sheet that the program chooses.
const LEAST: usize = 4;
/// Most words of a sheet in large print.
const LARGE_PRINT: usize = 6;

/// Longest meaning that fits beside the letters in three lines (four for the young), in characters; measured on the page.
fn longest_clue(ask: &Ask<'_>) -> usize {
    match (ask.room.large_print, ask.band) {
        (true, _) => 40,
        (false, Band::A) => 50,
        (false, _) => 60,
    }
}

/// Number of words and the most letters of one, by band and level; our own steps.
fn plan(band: Band, level: u8) -> (usize, usize) {
    match (band, level) {
        (Band::A, 1) => (4, 5),
        (Band::A, 2) => (5, 6),
        (Band::A, _) => (5, 8),
        (Band::B, 1) => (6, 7),
        (Band::B, 2) => (8, 9),
        (Band::B, _) => (8, 10),
        (Band::C, 1) => (8, 9),
        (Band::C, 2) => (10, 11),
        (Band::C, _) => (10, 13),
        (Band::D, 1) => (10, 13),
        (Band::D, _) => (12, 13),
    }
}

/// Most words whose letters stay large enough to read on one page.
fn page_holds(band: Band, answer: &Answer) -> usize {
    match (band, answer) {
        (Band::A, _) => 6,
        (Band::B, Answer::Boxes) => 9,
        (_, Answer::Boxes) => 10,
        (_, Answer::Lines) => 12,
    }
}

/// Most letters of a word on any sheet: its boxes fill the main column.
const LONGEST: usize = 13;

/// Works out the Needs.
pub fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let found = terms(ask, ask.texts("words"), Take::Letters)?;
    let (target, longest) = plan(ask.band, ask.level);
    let mut bad = Findings::none();
    let mut notes = Findings::none();
    let all = mixable(ask, &found, &mut bad, &mut notes);
    let wish = ask.number("how-many").and_then(|n| usize::try_from(n).ok());
    let answer = match ask.text("answer") {
        Some("lines") => Answer::Lines,
        Some(_) => Answer::Boxes,
        None if ask.band <= Band::B => Answer::Boxes,
        None => Answer::Lines,
    };
    let asked = wish.unwrap_or(if found.listed { all.len().min(12) } else { target });
    let most = if ask.room.large_print { LARGE_PRINT } else { page_holds(ask.band, &answer) };
    let wanted = asked.min(most);
    if wanted < asked {
        let says =
            format!("a page for ages {} holds {most} mixed words, not {asked}", ask.band.name());
        let hint = Finding::hint("words-more-than-page", says).at(&owner_place(ask));
        notes.push(hint.remedy("for more of them, ask for two sheets with `count = 2`"));
    }
    if all.len() >= wanted {
        // Nothing is missed: no need to tell the author of words left out.
        notes.0.retain(|n| n.code != "word-left-out");
    }
    let pool = if found.listed { all } else { fitting(all, longest, wanted) };
    let least = wish.map_or(if found.listed { SHORTEST } else { LEAST }, |wish| wish.min(most));
    if bad.is_empty() && pool.len() < least {
        bad.push(too_few(ask, "words that can be mixed", pool.len(), least));
    }
    if !bad.is_empty() {
        bad.append(notes);
        return Err(bad);
    }
    let first_letter = ask.flag("first-letter").unwrap_or(ask.level == 1);
    let unfit = unfit(ask, &pool);
    let title = title(ask, &words(WORDS, ask.language));
    Ok(Needs { title, count: wanted.min(pool.len()), pool, answer, first_letter, unfit, notes })
}

/// Words of the level's length; when there are too few of them, the shortest of the longer ones as well.
fn fitting(mut all: Vec<Mixable>, longest: usize, wanted: usize) -> Vec<Mixable> {
    let mut lengths: Vec<usize> = all.iter().map(|m| m.parts.concat().len()).collect();
    lengths.sort_unstable();
    let reach = lengths.get(wanted.saturating_sub(1)).or(lengths.last()).copied().unwrap_or(0);
    all.retain(|m| m.parts.concat().len() <= longest.max(reach));
    all
}

fn mixable(ask: &Ask<'_>, found: &Terms, bad: &mut Findings, notes: &mut Findings) -> Vec<Mixable> {
    let mut pool: Vec<Mixable> = Vec::new();
    for term in &found.all {
        let fault = match lettering::parts(&term.word.plain()) {
            Err(sign) => format!("has a `{sign}`, which is no letter"),
            Ok(parts) if same(&pool, &parts).is_some() => match same(&pool, &parts) {
                Some(other) if other != term.word.plain() => {
                    format!("has the same letters as `{other}`")
                }
                _ => "stands in the list twice".to_owned(),
            },
            Ok(parts) => match unmixable(&parts.concat()) {
                Some(fault) => fault,
                None => {
                    pool.push(clued(ask, term, parts, notes));
                    continue;
                }
            },
        };
        let message = format!("`{}` {fault}", term.word.plain());
        if found.listed {
            let finding = Finding::error("word-unusable", message).at(&term.word.at);
            bad.push(finding.remedy("use another word"));
        } else {
            let remedy = "use another word, or put `no` under `puzzle` in its row";
            notes.push(Finding::hint("word-left-out", message).at(&term.word.at).remedy(remedy));
        }
    }
    pool
}

/// A word of the pool with these letters: mixed, the two could not be told apart.
fn same(pool: &[Mixable], parts: &[Vec<String>]) -> Option<String> {
    let sorted = |parts: &[Vec<String>]| {
        let mut letters = parts.concat();
        letters.sort();
        letters
    };
    pool.iter().find(|m| sorted(&m.parts) == sorted(parts)).map(|m| m.word.plain())
}

fn unmixable(letters: &[String]) -> Option<String> {
    if letters.len() < SHORTEST {
        return Some("is too short to mix: three letters are needed".to_owned());
    }
    if letters.len() > LONGEST {
        return Some(format!("has {} letters, and there is room for {LONGEST}", letters.len()));
    }
    letters
        .iter()
        .all(|l| *l == letters[0])
        .then(|| "has only one sort of letter, so it cannot be mixed".to_owned())
}

/// Adds the clue that band, level or the author asks for.
fn clued(ask: &Ask<'_>, term: &Term, parts: Vec<Vec<String>>, notes: &mut Findings) -> Mixable {
    let (pictures, meanings) = match (ask.text("clue"), ask.band, ask.level) {
        (Some("picture"), ..) => (true, false),
        (Some("meaning"), ..) | (None, Band::B, 3) => (false, true),
        (Some(_), ..) | (None, Band::C | Band::D, 3) => (false, false),
        (None, Band::A | Band::B, _) => (true, true),
        (None, Band::C | Band::D, _) => (false, true),
    };
    let picture = term.picture.clone().filter(|_| pictures);
    let meaning = term.meaning.clone().filter(|_| meanings && picture.is_none());
    let clue = meaning.filter(|m| telling(term, m, longest_clue(ask), notes));
    let also = if parts.len() == 1 {
        ask.lexicon.same_letters(&parts.concat().concat())
    } else {
        Vec::new()
    };
    // Words that nobody would put before a child are no answers either.
    let also = also.into_iter().filter(|w| !ask.lexicon.is_unfit(w)).collect();
    Mixable { word: term.word.clone(), parts, also, picture, clue }
}

/// True when a meaning can be a clue; says why not otherwise.
fn telling(term: &Term, meaning: &Said, longest: usize, notes: &mut Findings) -> bool {
    let (word, plain) = (term.word.plain(), meaning.plain());
    let fault = if gives_away(&word, &plain) {
        format!("the meaning of `{word}` holds the word itself, so it is no clue")
    } else if plain.chars().count() > longest {
        format!("the meaning of `{word}` is too long for a clue")
    } else {
        return true;
    };
    let remedy = format!("say it in other words, with at most {longest} letters and spaces");
    notes.push(Finding::warning("clue-unusable", fault).at(&meaning.at).remedy(remedy));
    false
}

/// Unfit words that could be read in the mixed letters of some word.
fn unfit(ask: &Ask<'_>, pool: &[Mixable]) -> Vec<Vec<String>> {
    let spelt = ask.lexicon.unfit().filter_map(|w| lettering::letters(w).ok());
    let held = |unfit: &Vec<String>, part: &Vec<String>| {
        let count = |of: &Vec<String>, letter: &String| of.iter().filter(|l| *l == letter).count();
        unfit.iter().all(|l| count(unfit, l) <= count(part, l))
    };
    let readable =
        spelt.filter(|u| u.len() >= SHORTEST && pool.iter().any(|m| held(u, &m.parts.concat())));
    readable.collect::<BTreeSet<_>>().into_iter().collect()
}

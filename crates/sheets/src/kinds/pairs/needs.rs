//! What a game of pairs is made from: words with what is paired, the size of the cards, the cautions.

use super::{Cards, WORDS, What};
use crate::Ask;
use crate::cautions::cautions;
use crate::shared::{PictureRef, owner_place, title};
use crate::terms::{Take, Term, Terms, terms, too_few};
use crate::words::words;
use findings::{Finding, Findings, Severity};
use proof::meaning::gives_away;
use serde::{Deserialize, Serialize};
use study::{Ages, Band, Said};

/// Everything the sheet is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// Sentence under the title.
    pub lead: String,
    /// What is paired with what.
    pub what: What,
    /// How many pairs.
    pub pairs: usize,
    /// Words to choose from.
    pub pool: Vec<Pair>,
    /// Size and places of the cards.
    pub cards: Cards,
    /// Ages that the rules name.
    pub ages: Ages,
    /// Sentences of the box "Take care".
    pub cautions: Vec<String>,
    /// Hints for the author.
    pub notes: Findings,
}

/// A word with what is paired.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Pair {
    /// The word.
    pub word: Said,
    /// Its picture, where pictures are paired.
    pub picture: Option<PictureRef>,
    /// Its meaning, where meanings are paired.
    pub meaning: Option<Said>,
}

/// Fewest pairs.
const LEAST: usize = 8;
/// Width and height that the cards of a leaf may fill, µm: the body, less room for the cuts to run out at the sides.
pub const AREA: (u32, u32) = (180_000, 210_000);
/// Least space between cards that are laminated, µm (a sealed edge on both sides; common practice, no source).
pub const LEAST_GAP: u32 = 3_000;
/// Most characters of a meaning on a card; common practice, no source.
pub const LONGEST_MEANING: usize = 110;
/// Most characters of a word on a card; common practice, no source.
pub const LONGEST_WORD: usize = 24;

/// Pairs of a band and level: whole leaves of cards where that can be; our own steps.
fn plan(band: Band, level: u8) -> usize {
    match (band, level) {
        (Band::A, 1 | 2) => 9,
        (Band::A, _) | (Band::B, 1 | 2) | (Band::C, 1) => 12,
        (Band::B, _) | (Band::C, _) | (Band::D, 1 | 2) => 18,
        (Band::D, _) => 24,
    }
}

/// Works out the Needs.
pub fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let found = terms(ask, Take::Rows)?;
    let what = what(ask, &found);
    let mut bad = Findings::none();
    let mut notes = Findings::none();
    let pool = pool(&found, what, &mut bad, &mut notes);
    let wish = ask.number("pairs").and_then(|n| usize::try_from(n).ok());
    let wanted = wish.unwrap_or(if found.listed { pool.len().min(24) } else { plan(ask.band, ask.level) });
    if pool.len() >= wanted {
        // Enough words: only what gives a pair away is worth telling.
        notes.0.retain(|n| n.code == "meaning-tells");
    }
    let least = wish.unwrap_or(LEAST);
    if bad.is_empty() && pool.len() < least {
        let which = if what == What::WordMeaning { "words with a meaning" } else { "words with a picture" };
        bad.push(too_few(ask, which, pool.len(), least));
    }
    let gap = u32::try_from(ask.number("gap").unwrap_or(0)).unwrap_or(0) * 1000;
    if gap > 0 && gap < LEAST_GAP {
        bad.push(narrow(ask));
    }
    if !bad.is_empty() {
        return Err(bad);
    }
    let tags: &[&str] = if gap > 0 { &["cut", "laminate"] } else { &["cut"] };
    let words = words(WORDS, ask.language);
    Ok(Needs {
        title: title(ask, &words),
        lead: words.get("lead").cloned().unwrap_or_default(),
        what,
        pairs: wanted.min(pool.len()),
        pool,
        cards: cards(ask.band, ask.level, gap),
        ages: ask.band.ages(),
        cautions: cautions::<_, &str>(tags, &[], ask.language),
        notes,
    })
}

/// What the author asks for, else what suits the band and is there.
fn what(ask: &Ask<'_>, found: &Terms) -> What {
    let pictured = found.all.iter().filter(|t| t.picture.is_some()).count() >= LEAST;
    match (ask.text("what"), ask.band) {
        (Some("picture-picture"), _) => What::PicturePicture,
        (Some("picture-word"), _) => What::PictureWord,
        (None, Band::A) if pictured => What::PicturePicture,
        (None, Band::B) if pictured => What::PictureWord,
        _ => What::WordMeaning,
    }
}

/// Larger cards for small hands.
fn cards(band: Band, level: u8, gap: u32) -> Cards {
    let (columns, rows) = match (band, level) {
        (Band::A, 1) => (2, 3),
        (Band::A, _) => (3, 3),
        _ => (3, 4),
    };
    // Half millimetres: four rows of 52.5 mm fill the body.
    let side = |whole: u32, n: usize| (whole - gap * (n as u32 - 1)) / n as u32 / 500 * 500;
    Cards { columns, rows, width: side(AREA.0, columns), height: side(AREA.1, rows), gap }
}

fn narrow(ask: &Ask<'_>) -> Finding {
    Finding::error("gap-narrow", "a `gap` of less than 3 mm leaves no edge for the laminator to seal")
        .at(&owner_place(ask))
        .remedy("set `gap` to 3 or more, or leave it out for one shared cut")
}

fn pool(found: &Terms, what: What, bad: &mut Findings, notes: &mut Findings) -> Vec<Pair> {
    let mut pool: Vec<Pair> = Vec::new();
    for term in &found.all {
        match pair(term, what, &pool) {
            Ok(Some(pair)) => pool.push(pair),
            Ok(None) if found.listed => bad.push(partnerless(term, what)),
            Ok(None) => {}
            Err(finding) if found.listed => bad.push(finding),
            Err(finding) => notes.push(Finding { severity: Severity::Warning, ..finding }),
        }
    }
    pool
}

fn partnerless(term: &Term, what: What) -> Finding {
    let missing = if what == What::WordMeaning { "meaning" } else { "picture" };
    Finding::error("word-partner", format!("`{}` has no {missing}", term.word.plain()))
        .at(&term.word.at)
        .remedy(format!("write one under `{missing}` in its row, or take the word out of `words`"))
}

/// The pair of a term, none when it has no partner.
fn pair(term: &Term, what: What, pool: &[Pair]) -> Result<Option<Pair>, Finding> {
    let word = term.word.plain();
    let same = |a: &Said, b: &Said| a.plain().to_lowercase() == b.plain().to_lowercase();
    let refuse = |code, message: String, remedy: &str| Err(Finding::error(code, message).at(&term.word.at).remedy(remedy));
    if pool.iter().any(|p| same(&p.word, &term.word)) {
        return refuse("word-twice", format!("`{word}` stands in the list twice"), "take one of the two out");
    }
    if what != What::PicturePicture && word.chars().count() > LONGEST_WORD {
        return refuse("word-long", format!("`{word}` is too long for a card"), "use a shorter word");
    }
    if what == What::WordMeaning {
        let Some(meaning) = term.meaning.clone() else { return Ok(None) };
        let plain = meaning.plain();
        if gives_away(&word, &plain) {
            return refuse("meaning-tells", format!("the meaning of `{word}` holds the word itself"), "say it in other words");
        }
        if plain.chars().count() > LONGEST_MEANING {
            return refuse("meaning-long", format!("the meaning of `{word}` is too long for a card"), "say it in at most 110 letters and spaces");
        }
        if let Some(other) = pool.iter().find(|p| p.meaning.as_ref().is_some_and(|m| same(m, &meaning))) {
            let message = format!("`{word}` and `{}` have the same meaning", other.word.plain());
            return refuse("meaning-twice", message, "say what sets the two apart");
        }
        return Ok(Some(Pair { word: term.word.clone(), picture: None, meaning: Some(meaning) }));
    }
    let Some(picture) = term.picture.clone() else { return Ok(None) };
    if let Some(other) = pool.iter().find(|p| p.picture.as_ref().is_some_and(|o| o.name == picture.name || o.hash == picture.hash)) {
        let message = format!("`{word}` and `{}` have the same picture", other.word.plain());
        return refuse("picture-twice", message, "give one of them another picture");
    }
    Ok(Some(Pair { word: term.word.clone(), picture: Some(picture), meaning: None }))
}

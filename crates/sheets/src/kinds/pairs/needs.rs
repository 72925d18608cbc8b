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
/// Most pairs.
const MOST: usize = 24;
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
    let found = terms(ask, ask.texts("words"), Take::Rows)?;
    let what = what(ask, &found);
    let mut bad = Findings::none();
    let mut notes = Findings::none();
    let pool = pool(&found, what, &mut bad, &mut notes);
    let pairs = pairs(ask, what, found.listed, pool.len(), &mut bad, &mut notes);
    let gap = u32::try_from(ask.number("gap").unwrap_or(0)).unwrap_or(0) * 1000;
    if gap > 0 && gap < LEAST_GAP {
        bad.push(narrow(ask));
    }
    if !bad.is_empty() {
        bad.append(notes);
        return Err(bad);
    }
    let tags: &[&str] = if gap > 0 { &["cut", "laminate"] } else { &["cut"] };
    let words = words(WORDS, ask.language);
    let lead = words.get("lead").cloned().unwrap_or_default();
    let title = title(ask, &words);
    let cards = cards(ask, gap);
    let cautions = cautions::<_, &str>(tags, &[], ask.language);
    Ok(Needs { title, lead, what, pairs, pool, cards, ages: ask.band.ages(), cautions, notes })
}

/// How many pairs: what the author asks for, else what the band plans and the words give.
fn pairs(
    ask: &Ask<'_>,
    what: What,
    listed: bool,
    have: usize,
    bad: &mut Findings,
    notes: &mut Findings,
) -> usize {
    let wish = ask.number("pairs").and_then(|n| usize::try_from(n).ok());
    let wanted = wish.unwrap_or(if listed { have.min(MOST) } else { plan(ask.band, ask.level) });
    if have >= wanted {
        // Enough words: only what gives a pair away is worth telling.
        notes.0.retain(|n| n.code == "meaning-tells");
    }
    let least = wish.unwrap_or(LEAST);
    if bad.is_empty() && have < least {
        let meanings = what == What::WordMeaning;
        let which = if meanings { "words with a meaning" } else { "words with a picture" };
        bad.push(too_few(ask, which, have, least));
    }
    wanted.min(have)
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

/// Larger cards for small hands and for large print.
fn cards(ask: &Ask<'_>, gap: u32) -> Cards {
    let (columns, rows) = match (ask.band, ask.level) {
        (Band::A, 1) => (2, 3),
        (Band::A, _) => (3, 3),
        _ if ask.room.large_print => (3, 3),
        _ => (3, 4),
    };
    // Half millimetres: four rows of 52.5 mm fill the body.
    let side = |whole: u32, n: usize| (whole - gap * (n as u32 - 1)) / n as u32 / 500 * 500;
    Cards { columns, rows, width: side(AREA.0, columns), height: side(AREA.1, rows), gap }
}

fn narrow(ask: &Ask<'_>) -> Finding {
    Finding::error(
        "gap-narrow",
        "a `gap` of less than 3 mm leaves no edge for the laminator to seal",
    )
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
            Err(slips) if found.listed => bad.append(slips),
            Err(slips) => notes
                .0
                .extend(slips.into_iter().map(|f| Finding { severity: Severity::Warning, ..f })),
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
fn pair(term: &Term, what: What, pool: &[Pair]) -> Result<Option<Pair>, Findings> {
    let word = term.word.plain();
    if pool.iter().any(|p| same(&p.word, &term.word)) {
        let message = format!("`{word}` stands in the list twice");
        return Err(slip(term, "word-twice", message, "take one of the two out"));
    }
    if what != What::PicturePicture && word.chars().count() > LONGEST_WORD {
        let message = format!("`{word}` is too long for a card");
        return Err(slip(term, "word-long", message, "use a shorter word"));
    }
    match what {
        What::WordMeaning => with_meaning(term, pool),
        What::PicturePicture | What::PictureWord => with_picture(term, pool),
    }
}

fn with_meaning(term: &Term, pool: &[Pair]) -> Result<Option<Pair>, Findings> {
    let Some(meaning) = term.meaning.clone() else { return Ok(None) };
    let (word, plain) = (term.word.plain(), meaning.plain());
    if gives_away(&word, &plain) {
        let message = format!("the meaning of `{word}` holds the word itself");
        return Err(slip(term, "meaning-tells", message, "say it in other words"));
    }
    if plain.chars().count() > LONGEST_MEANING {
        let message = format!("the meaning of `{word}` is too long for a card");
        return Err(slip(
            term,
            "meaning-long",
            message,
            "say it in at most 110 letters and spaces",
        ));
    }
    let twin = pool.iter().find(|p| p.meaning.as_ref().is_some_and(|m| same(m, &meaning)));
    if let Some(twin) = twin {
        let message = format!("`{word}` and `{}` have the same meaning", twin.word.plain());
        return Err(slip(term, "meaning-twice", message, "say what sets the two apart"));
    }
    Ok(Some(Pair { word: term.word.clone(), picture: None, meaning: Some(meaning) }))
}

fn with_picture(term: &Term, pool: &[Pair]) -> Result<Option<Pair>, Findings> {
    let Some(picture) = term.picture.clone() else { return Ok(None) };
    let alike = |p: &PictureRef| p.name == picture.name || p.hash == picture.hash;
    if let Some(twin) = pool.iter().find(|p| p.picture.as_ref().is_some_and(alike)) {
        let (word, twin) = (term.word.plain(), twin.word.plain());
        let message = format!("`{word}` and `{twin}` have the same picture");
        return Err(slip(term, "picture-twice", message, "give one of them another picture"));
    }
    Ok(Some(Pair { word: term.word.clone(), picture: Some(picture), meaning: None }))
}

fn same(a: &Said, b: &Said) -> bool {
    a.plain().to_lowercase() == b.plain().to_lowercase()
}

fn slip(term: &Term, code: &str, message: String, remedy: &str) -> Findings {
    Finding::error(code, message).at(&term.word.at).remedy(remedy).into()
}

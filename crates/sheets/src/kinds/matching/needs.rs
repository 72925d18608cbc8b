//! What a matching sheet is made from: words with their partners.

use super::{WORDS, What};
use crate::Ask;
use crate::shared::{PictureRef, title};
use crate::terms::{Take, Term, Terms, terms, too_few};
use crate::words::words;
use findings::{Finding, Findings, Severity};
use proof::meaning::gives_away;
use serde::{Deserialize, Serialize};
use study::{Band, Said};

/// Everything the sheet is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// What is joined with what.
    pub what: What,
    /// How many pairs.
    pub count: usize,
    /// Pairs to choose from.
    pub pool: Vec<Pair>,
    /// Hints for the author.
    pub notes: Findings,
}

/// A word with its partner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Pair {
    /// The word.
    pub word: Said,
    /// Its picture, where pictures are joined with words.
    pub picture: Option<PictureRef>,
    /// Its meaning, where words are joined with meanings.
    pub meaning: Option<Said>,
}

/// Fewest pairs.
const LEAST: usize = 3;
/// Most pairs in large print.
const LARGE_PRINT: usize = 6;
/// Most pairs: letters A to H.
const MOST: usize = 8;

/// Number of pairs by band and level; our own steps.
fn plan(band: Band, level: u8, what: What) -> usize {
    match (band, level) {
        // Meanings in beginners' type take high rows.
        (Band::A, _) if what == What::Meanings => 4,
        (Band::A, level) => 3 + usize::from(level),
        (Band::B, level) => 5 + usize::from(level),
        (Band::C | Band::D, _) => MOST,
    }
}

/// Most characters of a meaning: the lines of a row in the right column's type; measured on the page.
fn longest(ask: &Ask<'_>, rows: usize) -> usize {
    let (beat, line) = match ask.band {
        Band::A => (10_500, 21),
        _ if ask.room.large_print => (8_400, 22),
        Band::B => (7_000, 30),
        Band::C => (6_000, 34),
        Band::D => (5_250, 40),
    };
    // A meaning longer than this is a text to read, whatever room there is.
    ((ROWS_HEIGHT / rows.max(1) / beat).max(1) * line).min(110)
}

/// Height that the rows share, µm.
const ROWS_HEIGHT: usize = 165_000;

/// Works out the Needs.
pub fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let found = terms(ask, ask.texts("words"), Take::Rows)?;
    let what = what(ask, &found);
    let mut bad = Findings::none();
    let mut notes = Findings::none();
    let wish = ask.number("how-many").and_then(|n| usize::try_from(n).ok());
    let most = if ask.room.large_print { LARGE_PRINT } else { MOST };
    let planned = if found.listed { found.all.len() } else { plan(ask.band, ask.level, what) };
    let wanted = wish.unwrap_or(planned).min(most);
    let pool = pairs(&found, what, longest(ask, wanted), &mut bad, &mut notes);
    if pool.len() >= wanted {
        // Enough words: only what gives an answer away is worth telling.
        notes.0.retain(|n| n.code == "meaning-tells");
    }
    let least = wish.unwrap_or(LEAST).min(most);
    if bad.is_empty() && pool.len() < least {
        let which =
            if what == What::Pictures { "words with a picture" } else { "words with a meaning" };
        bad.push(too_few(ask, which, pool.len(), least));
    }
    if !bad.is_empty() {
        bad.append(notes);
        return Err(bad);
    }
    let title = title(ask, &words(WORDS, ask.language));
    Ok(Needs { title, what, count: wanted.min(pool.len()), pool, notes })
}

/// Pictures for the youngest where there are enough of them, else meanings.
fn what(ask: &Ask<'_>, found: &Terms) -> What {
    let pictured = found.all.iter().filter(|t| t.picture.is_some()).count();
    match ask.text("what") {
        Some("pictures") => What::Pictures,
        None if ask.band == Band::A && pictured >= LEAST => What::Pictures,
        _ => What::Meanings,
    }
}

fn pairs(
    found: &Terms,
    what: What,
    longest: usize,
    bad: &mut Findings,
    notes: &mut Findings,
) -> Vec<Pair> {
    let mut pool: Vec<Pair> = Vec::new();
    for term in &found.all {
        match pair(term, what, longest, &pool) {
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
    let (missing, column) =
        if what == What::Pictures { ("picture", "picture") } else { ("meaning", "meaning") };
    Finding::error("word-partner", format!("`{}` has no {missing}", term.word.plain()))
        .at(&term.word.at)
        .remedy(format!("write one under `{column}` in its row, or take the word out of `words`"))
}

/// The pair of a term, none when it has no partner.
fn pair(term: &Term, what: What, longest: usize, pool: &[Pair]) -> Result<Option<Pair>, Findings> {
    let word = term.word.plain();
    if pool.iter().any(|p| same(&p.word, &term.word)) {
        let message = format!("`{word}` stands in the list twice");
        return Err(slip("word-twice", message, &term.word, "take one of the two out"));
    }
    if what == What::Meanings {
        let Some(meaning) = term.meaning.clone() else { return Ok(None) };
        usable(&word, &meaning, longest, pool)?;
        return Ok(Some(Pair { word: term.word.clone(), picture: None, meaning: Some(meaning) }));
    }
    let Some(picture) = term.picture.clone() else { return Ok(None) };
    let twin = pool.iter().find(|p| p.picture.as_ref().is_some_and(|o| o.name == picture.name));
    if let Some(twin) = twin {
        let message = format!("`{word}` and `{}` have the same picture", twin.word.plain());
        return Err(slip("picture-twice", message, &term.word, "give one of them another picture"));
    }
    Ok(Some(Pair { word: term.word.clone(), picture: Some(picture), meaning: None }))
}

/// Says why a meaning cannot stand in the right column.
fn usable(word: &str, meaning: &Said, longest: usize, pool: &[Pair]) -> Result<(), Findings> {
    let plain = meaning.plain();
    if gives_away(word, &plain) {
        let message = format!("the meaning of `{word}` holds the word itself");
        return Err(slip("meaning-tells", message, meaning, "say it in other words"));
    }
    let long = plain.chars().count();
    if long > longest {
        let message =
            format!("the meaning of `{word}` has {long} letters and spaces, too many for its row");
        return Err(slip(
            "meaning-long",
            message,
            meaning,
            &format!("say it in at most {longest}"),
        ));
    }
    if let Some(twin) = pool.iter().find(|p| p.meaning.as_ref().is_some_and(|m| same(m, meaning))) {
        let message = format!("`{word}` and `{}` have the same meaning", twin.word.plain());
        return Err(slip("meaning-twice", message, meaning, "say what sets the two apart"));
    }
    Ok(())
}

fn same(a: &Said, b: &Said) -> bool {
    a.plain().to_lowercase() == b.plain().to_lowercase()
}

fn slip(code: &str, message: String, place: &Said, remedy: &str) -> Findings {
    Finding::error(code, message).at(&place.at).remedy(remedy).into()
}

//! What a word search is made from: words spelt for the grid, its size, the ways they run.

use super::WORDS;
use crate::Ask;
use crate::lettering;
use crate::shared::{owner_place, title};
use crate::terms::{Take, Terms, terms, too_few};
use crate::words::words;
use findings::{Finding, Findings, Severity};
use serde::{Deserialize, Serialize};
use std::collections::BTreeSet;
use study::{Band, Said};

/// Everything the sheet is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// Rows.
    pub rows: usize,
    /// Columns.
    pub columns: usize,
    /// Side of a cell, µm.
    pub cell: u32,
    /// Number of ways in which words run: 2, 4, 6 or 8.
    pub ways: u8,
    /// How many words are hidden.
    pub count: usize,
    /// Words to choose from.
    pub pool: Vec<Spelt>,
    /// May a listed word also be read inside another?
    pub inside: bool,
    /// Are the fillers the words' own letters, or the whole alphabet?
    pub own_letters: bool,
    /// Unfit words that could be read from the letters in use, spelt.
    pub unfit: Vec<Vec<String>>,
    /// Hints for the author.
    pub notes: Findings,
}

/// A word with its letters.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Spelt {
    /// In the author's spelling.
    pub word: Said,
    /// In capitals, as in the grid.
    pub letters: Vec<String>,
}

/// Fewest letters of a word: shorter ones turn up by chance (check values 12.3).
pub const SHORTEST: usize = 3;
/// Smallest cell, µm.
pub const SMALLEST_CELL: u32 = 7_000;
/// Largest cell, µm.
const LARGEST_CELL: u32 = 16_250;
/// Room between the grid and its frame, both sides together, µm.
const FRAME: u32 = 2_000;
/// Height that the sentence above and the task below take, µm.
const AROUND: u32 = 60_000;
/// Most rows or columns.
const LARGEST: usize = 18;
/// Fewest words that an author may list.
const FEWEST: usize = 3;
/// Most words in a list.
const LONGEST_LIST: usize = 24;

/// Size, number of words and ways of a band and level; our own steps.
fn plan(ask: &Ask<'_>) -> (usize, usize, u8) {
    let (side, words, ways) = match (ask.band, ask.level) {
        (Band::A, 1) => (8, 5, 2),
        (Band::A, 2) => (8, 6, 2),
        (Band::A, _) => (9, 8, 2),
        (Band::B, 1) => (10, 8, 2),
        (Band::B, 2) => (12, 10, 4),
        (Band::B, _) => (13, 12, 6),
        (Band::C, 1) => (13, 12, 4),
        (Band::C, 2) => (14, 14, 6),
        (Band::C, _) => (15, 16, 8),
        (Band::D, 1) => (15, 16, 6),
        (Band::D, 2) => (16, 18, 8),
        (Band::D, _) => (18, 20, 8),
    };
    // Cells of 10 mm and more hold letters of 17 pt.
    if ask.room.large_print { (side.min(13), words.min(12), ways) } else { (side, words, ways) }
}

/// Letters that may be hidden: fewer than two cells in three, so that the eye has to search.
pub fn budget(rows: usize, columns: usize) -> usize {
    rows * columns * 2 / 3
}

/// Works out the Needs.
pub fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let found = terms(ask, ask.texts("words"), Take::Letters)?;
    let (mut bad, mut notes) = (Findings::none(), Findings::none());
    let mut pool = spelt(&found, &mut bad, &mut notes);
    let (side, target, ways) = plan(ask);
    let wanted =
        wish(ask.number("how-many")).unwrap_or(if found.listed { pool.len() } else { target });
    let (rows, columns) = size(ask, &pool, side, wanted);
    let long = too_long(ask, &mut pool, rows.max(columns), wanted);
    if pool.len() >= wanted {
        // Nothing is missed: no need to tell the author of words left out.
        notes = Findings::none();
    }
    if long.has_errors() {
        bad.append(long)
    } else {
        notes.append(long)
    }
    let inside = ask.flag("allow-inside").unwrap_or(false);
    if found.listed {
        inside_others(&pool, inside, &mut bad);
    }
    let count = count(ask, &pool, wanted, found.listed, (rows, columns), &mut bad);
    let cell = cell(ask, rows, columns, &mut bad);
    if !bad.is_empty() {
        bad.append(notes);
        return Err(bad);
    }
    let own_letters = ask.text("fill") != Some("alphabet");
    let unfit = unfit(ask, &pool, own_letters, rows.max(columns));
    let ways = ask.text("directions").and_then(|d| d.parse().ok()).unwrap_or(ways);
    let title = title(ask, &words(WORDS, ask.language));
    Ok(Needs { title, rows, columns, cell, ways, count, pool, inside, own_letters, unfit, notes })
}

/// A count that the author wishes.
fn wish(number: Option<i64>) -> Option<usize> {
    number.and_then(|n| usize::try_from(n).ok())
}

/// Spells the words; those that cannot stand in a grid are refused when listed, else left out with a hint.
fn spelt(found: &Terms, bad: &mut Findings, notes: &mut Findings) -> Vec<Spelt> {
    let mut pool: Vec<Spelt> = Vec::new();
    for term in &found.all {
        let plain = term.word.plain();
        let (fault, remedy) = match lettering::letters(&plain) {
            Err(sign) => (
                format!("`{plain}` has a `{sign}`, which is no letter"),
                "write it with letters only",
            ),
            Ok(l) if l.len() < SHORTEST => {
                (format!("`{plain}` is too short to hide"), "use words of three letters or more")
            }
            Ok(l) if pool.iter().any(|p| p.letters == l) => {
                (format!("`{plain}` stands in the list twice"), "take one of the two out")
            }
            Ok(letters) => {
                pool.push(Spelt { word: term.word.clone(), letters });
                continue;
            }
        };
        if found.listed {
            bad.push(Finding::error("word-unusable", fault).at(&term.word.at).remedy(remedy));
        } else {
            let remedy = format!("{remedy}, or put `no` under `puzzle` in its row");
            notes.push(Finding::hint("word-left-out", fault).at(&term.word.at).remedy(remedy));
        }
    }
    pool
}

/// The author's size, or the band's; a grid without a wish grows while every word is wanted and one does not fit.
fn size(ask: &Ask<'_>, pool: &[Spelt], side: usize, wanted: usize) -> (usize, usize) {
    let (rows, columns) = (wish(ask.number("rows")), wish(ask.number("columns")));
    if rows.is_some() || columns.is_some() {
        return (rows.unwrap_or(side), columns.unwrap_or(side));
    }
    let mut side = side;
    if pool.len() <= wanted {
        let longest = pool.iter().map(|p| p.letters.len()).max().unwrap_or(0);
        let letters: usize = pool.iter().map(|p| p.letters.len()).sum();
        while side < LARGEST && (longest > side || letters > budget(side, side)) {
            side += 1;
        }
    }
    (side, side)
}

/// Takes out words that are longer than the grid. The author hears of it when she listed them,
/// when she chose the size herself, and when there are too few others.
fn too_long(ask: &Ask<'_>, pool: &mut Vec<Spelt>, room: usize, wanted: usize) -> Findings {
    let long = |p: &&Spelt| p.letters.len() > room;
    let own_size = ask.number("rows").or(ask.number("columns")).is_some();
    let severity = match (ask.texts("words").is_some(), own_size) {
        (true, _) => Severity::Error,
        (false, true) => Severity::Warning,
        (false, false) => Severity::Hint,
    };
    let short = pool.iter().filter(|p| p.letters.len() <= room).count();
    let told = severity > Severity::Hint || short < wanted;
    let finding = |p: &Spelt| {
        let (word, letters) = (p.word.plain(), p.letters.len());
        let message = format!("`{word}` has {letters} letters, and the grid has room for {room}");
        let remedy = "make the grid larger with `rows` or `columns` (at most 18)";
        Finding::new(severity, "word-too-long", message)
            .at(&p.word.at)
            .remedy(remedy)
            .remedy("or use a shorter word")
    };
    let findings = pool.iter().filter(long).filter(|_| told).map(finding).collect();
    pool.retain(|p| !long(&p));
    findings
}

/// A listed word that can be read inside another.
fn inside_others(pool: &[Spelt], allowed: bool, bad: &mut Findings) {
    for short in pool {
        for long in pool.iter().filter(|l| hides(&short.letters, &l.letters, false)) {
            let (s, l) = (short.word.plain(), long.word.plain());
            if short.letters.len() == long.letters.len() && s < l {
                let fault = format!("`{s}` read backwards is `{l}`");
                bad.push(
                    Finding::error("word-inside", fault)
                        .at(&short.word.at)
                        .remedy("take one of the two out"),
                );
            } else if short.letters.len() < long.letters.len() && !allowed {
                let finding =
                    Finding::error("word-inside", format!("`{s}` can be read inside `{l}`"))
                        .at(&short.word.at);
                let finding = finding.remedy("take one of the two out");
                bad.push(finding.remedy("or set `allow-inside = true`; the child then finds the shorter word by itself as well"));
            }
        }
    }
}

/// True when `short` can be read inside `long`, either way; with `allow` only when both are as long.
fn hides(short: &[String], long: &[String], allow: bool) -> bool {
    let reversed = |w: &[String]| w.iter().eq(short.iter().rev());
    let fits = if allow { short.len() == long.len() } else { short.len() <= long.len() };
    fits && short != long && long.windows(short.len()).any(|w| w == short || reversed(w))
}

/// Chooses `count` words of the pool, tried in this order, that hold no other and fill no more than the budget.
pub fn choose(
    pool: &[Spelt],
    order: &[usize],
    count: usize,
    budget: usize,
    inside: bool,
) -> Vec<usize> {
    let mut taken: Vec<usize> = Vec::new();
    let mut letters = 0;
    for i in order.iter().copied() {
        let word = &pool[i].letters;
        let apart = taken.iter().all(|t| {
            let other = &pool[*t].letters;
            !hides(word, other, inside) && !hides(other, word, inside)
        });
        if taken.len() < count && apart && letters + word.len() <= budget {
            letters += word.len();
            taken.push(i);
        }
    }
    taken
}

/// Order in which the most words fit: shortest first.
pub fn shortest_first(pool: &[Spelt]) -> Vec<usize> {
    let mut order: Vec<usize> = (0..pool.len()).collect();
    order.sort_by_key(|i| pool[*i].letters.len());
    order
}

/// How many words are hidden; says what is missing when they are too few, or too many for the grid.
fn count(
    ask: &Ask<'_>,
    pool: &[Spelt],
    wanted: usize,
    listed: bool,
    (rows, columns): (usize, usize),
    bad: &mut Findings,
) -> usize {
    let inside = ask.flag("allow-inside").unwrap_or(false);
    let order = shortest_first(pool);
    let count = choose(pool, &order, wanted, budget(rows, columns), inside).len();
    let least = match wish(ask.number("how-many")) {
        Some(wish) => wish,
        None if listed => pool.len().max(FEWEST),
        None if ask.band == Band::A => 4,
        None => 6,
    };
    // Words that would do if the grid had room for all their letters.
    let roomless = choose(pool, &order, least, usize::MAX, inside);
    let letters: usize = roomless.iter().map(|i| pool[*i].letters.len()).sum();
    if !bad.is_empty() {
        return count;
    }
    if wanted > LONGEST_LIST {
        bad.push(long_list(ask, wanted));
    } else if count < least && roomless.len() > count {
        bad.push(crowded(ask, roomless.len(), letters, (rows, columns)));
    } else if count < least {
        bad.push(too_few(
            ask,
            "words for a word search that do not hold one another",
            count,
            least,
        ));
    }
    count
}

fn long_list(ask: &Ask<'_>, words: usize) -> Finding {
    Finding::error("words-too-many", format!("{words} words are too many for one list"))
        .at(&owner_place(ask))
        .remedy(format!("list at most {LONGEST_LIST}, or make two word searches"))
}

fn crowded(ask: &Ask<'_>, words: usize, letters: usize, (r, c): (usize, usize)) -> Finding {
    let message =
        format!("{words} words of together {letters} letters are too many for {r} × {c} cells");
    let most = budget(r, c);
    Finding::error("words-too-many", message)
        .at(&owner_place(ask))
        .remedy(format!("hide at most {most} letters: fewer words, or larger `rows` and `columns`"))
}

/// Side of a cell, µm; the largest that the page has room for.
fn cell(ask: &Ask<'_>, rows: usize, columns: usize, bad: &mut Findings) -> u32 {
    let across = ask.room.main_w.saturating_sub(FRAME) / columns.max(1) as u32;
    let down = ask.room.body_h.saturating_sub(AROUND) / rows.max(1) as u32;
    let cell = across.min(down).min(LARGEST_CELL);
    if cell < SMALLEST_CELL {
        let message = format!("a grid of {rows} × {columns} would have cells under 7 mm");
        let finding = Finding::error("cells-small", message).at(&owner_place(ask));
        bad.push(finding.remedy("set smaller `rows` and `columns`"));
    }
    cell
}

/// Unfit words that the letters in use can spell.
fn unfit(ask: &Ask<'_>, pool: &[Spelt], own: bool, longest: usize) -> Vec<Vec<String>> {
    let mut alphabet: BTreeSet<String> =
        pool.iter().flat_map(|p| p.letters.iter().cloned()).collect();
    if !own {
        alphabet.extend(ALPHABET.chars().map(String::from));
    }
    let spelt = ask.lexicon.unfit().filter_map(|w| lettering::letters(w).ok());
    let readable = spelt.filter(|l| {
        (SHORTEST..=longest).contains(&l.len()) && l.iter().all(|c| alphabet.contains(c))
    });
    readable.collect::<BTreeSet<_>>().into_iter().collect()
}

/// Letters of the fill `alphabet`.
pub const ALPHABET: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZ";

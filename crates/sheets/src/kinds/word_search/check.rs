//! Reads the printed letters and finds the printed words again. Knows only what is on the paper.

use super::needs::{ALPHABET, SHORTEST, SMALLEST_CELL};
use super::{Needs, Ring, Sheet};
use findings::{Finding, Findings};
use proof::inside::{letters_of, runs_inside};
use proof::letters::{Cell, WAYS, find, reads_inside};
use proof::spelling::capitals;
use proof::{Found, Laid, LaidPage, LaidText, Mark, Proof};
use std::collections::{BTreeMap, BTreeSet};
use study::Said;

/// How far the middle of a letter may lie from the middle of its cell, µm.
const OFF_CENTRE: i64 = 1_000;

/// Proves the sheet.
pub fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    form(needs, sheet, &mut proof);
    if !proof.holds() {
        return proof;
    }
    let spelt: Vec<Vec<String>> = sheet.words.iter().filter_map(|w| capitals(&w.plain())).collect();
    list(needs, sheet, &spelt, &mut proof);
    let places = places(needs, sheet, &spelt, &mut proof);
    directions(sheet, &places, &mut proof);
    unfit(needs, sheet, &places, &mut proof);
    fillers(needs, sheet, &spelt, &places, &mut proof);
    proof.findings.append(needs.notes.clone());
    proof
}

/// Size of the grid and of its cells.
fn form(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let square =
        sheet.rows.len() == needs.rows && sheet.rows.iter().all(|r| r.len() == needs.columns);
    proof.demand(
        square,
        "grid-size",
        format!("the grid is not {} × {}", needs.rows, needs.columns),
    );
    let one = |cell: &String| capitals(cell).is_some_and(|l| l.len() == 1 && l[0] == *cell);
    let letters = sheet.rows.iter().flatten().all(one);
    proof.demand(letters, "grid-cell", "a cell does not hold one capital letter");
    proof.demand(
        sheet.cell >= SMALLEST_CELL && sheet.cell == needs.cell,
        "grid-cell-size",
        "the cells have not the planned size",
    );
    proof.demand(
        sheet.ways == needs.ways,
        "grid-ways",
        "the child is told of other ways than planned",
    );
    proof.count("cells", needs.rows * needs.columns);
}

/// The printed list: words of the study, each once, as many as planned.
fn list(needs: &Needs, sheet: &Sheet, spelt: &[Vec<String>], proof: &mut Proof) {
    let (all, wanted) = (sheet.words.len(), needs.count);
    proof.demand(all == wanted, "list-length", format!("the list has {all} words, not {wanted}"));
    let fit = spelt.len() == all && spelt.iter().all(|w| w.len() >= SHORTEST);
    proof.demand(fit, "list-word", "a listed word has not three letters or more");
    for word in &sheet.words {
        let known = needs.pool.iter().any(|p| p.word == *word);
        proof.demand(known, "list-word", format!("`{}` is no word of this sheet", word.plain()));
    }
    for (i, a) in spelt.iter().enumerate() {
        for b in spelt.iter().skip(i + 1) {
            let nested = reads_inside(a, b) || reads_inside(b, a);
            // Equal words read inside one another as well, so this also finds a word listed twice.
            let allowed = needs.inside && a.len() != b.len();
            let message = format!("`{}` and `{}` read in one another", a.concat(), b.concat());
            proof.demand(!nested || allowed, "list-inside", message);
        }
    }
    proof.count("words listed", all);
}

/// The one place of each word.
fn places(needs: &Needs, sheet: &Sheet, spelt: &[Vec<String>], proof: &mut Proof) -> Vec<Found> {
    let mut out = Vec::new();
    let mut within = 0;
    for word in spelt {
        let longer =
            spelt.iter().filter(|l| needs.inside && l.len() > word.len() && reads_inside(word, l));
        let longer: Vec<Found> = longer.flat_map(|l| find(&sheet.rows, l)).collect();
        let all = find(&sheet.rows, word);
        let own: Vec<Found> = all
            .iter()
            .filter(|f| !longer.iter().any(|l| f.cells.is_subset(&l.cells)))
            .cloned()
            .collect();
        within += all.len() - own.len();
        let times = own.len();
        proof.demand(
            times == 1,
            "word-times",
            format!("`{}` can be found {times} times", word.concat()),
        );
        out.extend(own.into_iter().take(1));
    }
    proof.count("words found once", out.len());
    if needs.inside {
        proof.count("found inside longer words", within);
    }
    out
}

/// Words run only in the ways named, and in each sort of way named.
fn directions(sheet: &Sheet, places: &[Found], proof: &mut Proof) {
    // The first two are across and down, the next two slant, the rest run backwards.
    let told: &[(i32, i32)] = match sheet.ways {
        2 => &WAYS[..2],
        4 => &WAYS[..4],
        6 => &WAYS[..6],
        _ => &WAYS,
    };
    for place in places {
        let told = place.ways.iter().any(|w| told.contains(w));
        proof.demand(
            told,
            "word-way",
            format!(
                "a word runs from {:?} to {:?}, a way that the child is not told of",
                place.from, place.to
            ),
        );
    }
    let some = |test: fn(&(i32, i32)) -> bool| places.iter().any(|p| p.ways.iter().any(test));
    let slants = sheet.ways < 4 || some(|(down, right)| down * right != 0);
    let backwards =
        sheet.ways < 6 || some(|(down, right)| *right < 0 || (*down < 0 && *right == 0));
    proof.demand(
        slants && backwards,
        "words-ways",
        "the child is told of a way in which no word runs",
    );
}

fn unfit(needs: &Needs, sheet: &Sheet, places: &[Found], proof: &mut Proof) {
    for word in &needs.unfit {
        let shown = find(&sheet.rows, word)
            .into_iter()
            .any(|f| !places.iter().any(|p| f.cells.is_subset(&p.cells)));
        proof.demand(!shown, "word-unfit", "an unfit word can be read in the grid");
    }
    proof.count("unfit words looked for", needs.unfit.len());
}

/// Each letter's share among the fillers is its share in the words (or an even one), to the nearest letter.
fn fillers(
    needs: &Needs,
    sheet: &Sheet,
    spelt: &[Vec<String>],
    places: &[Found],
    proof: &mut Proof,
) {
    let hidden: BTreeSet<Cell> = places.iter().flat_map(|p| p.cells.iter().copied()).collect();
    let mut fill: BTreeMap<&str, usize> = BTreeMap::new();
    for (_, letter) in cells(sheet).filter(|(cell, _)| !hidden.contains(cell)) {
        *fill.entry(letter).or_default() += 1;
    }
    let total: usize = fill.values().sum();
    let share = shares(needs, spelt);
    let whole: usize = share.values().sum();
    for letter in fill.keys().copied().chain(share.keys().map(String::as_str)) {
        let n = fill.get(letter).copied().unwrap_or(0);
        let part = share.get(letter).copied().unwrap_or(0);
        // Largest remainder: a count lies less than one from its share.
        let near = (n * whole).abs_diff(part * total) < whole && (n == 0 || part > 0);
        let message =
            format!("the filler `{letter}` stands {n} times, more or less than its share");
        proof.demand(near, "filler-share", message);
    }
    let enough = total * 4 >= needs.rows * needs.columns;
    proof.demand(enough, "filler-few", "fewer than one cell in four holds a filler");
    proof.count("fillers", total);
}

fn cells(sheet: &Sheet) -> impl Iterator<Item = (Cell, &str)> {
    let rows = sheet.rows.iter().enumerate();
    rows.flat_map(|(r, row)| {
        row.iter().enumerate().map(move |(c, letter)| ((r, c), letter.as_str()))
    })
}

fn shares(needs: &Needs, spelt: &[Vec<String>]) -> BTreeMap<String, usize> {
    let mut share = BTreeMap::new();
    for letter in spelt.iter().flatten() {
        *share.entry(letter.clone()).or_default() += 1;
    }
    if !needs.own_letters {
        share.values_mut().for_each(|n| *n = 1);
        share.extend(ALPHABET.chars().map(|c| (c.to_string(), 1)));
    }
    share
}

/// Where each word lies, read from the printed letters: the place that is not inside a longer word.
pub fn rings(sheet: &Sheet) -> Vec<Ring> {
    let spelt: Vec<Vec<String>> =
        sheet.words.iter().map(|w| capitals(&w.plain()).unwrap_or_default()).collect();
    let mut out = Vec::new();
    for (word, letters) in sheet.words.iter().zip(&spelt) {
        let longer = spelt.iter().filter(|l| l.len() > letters.len() && reads_inside(letters, l));
        let longer: Vec<Found> = longer.flat_map(|l| find(&sheet.rows, l)).collect();
        let own = find(&sheet.rows, letters)
            .into_iter()
            .find(|f| !longer.iter().any(|l| f.cells.is_subset(&l.cells)));
        out.extend(own.map(|f| Ring { word: word.clone(), from: f.from, to: f.to }));
    }
    out
}

/// On paper: every cell once, of the planned size, beside its neighbours, its own letter in its middle.
pub fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let cells: BTreeMap<&str, (usize, &Mark)> =
        laid.marks("cell").map(|(p, m)| (m.name.as_str(), (p, m))).collect();
    let marked = laid.marks("cell").count();
    let mut out = Findings::none();
    if marked != cells.len() || marked != sheet.rows.iter().map(Vec::len).sum::<usize>() {
        out.push(fault(format!(
            "{marked} cells of the grid are on the page, not {}",
            sheet.rows.iter().map(Vec::len).sum::<usize>()
        )));
        return out;
    }
    listed(sheet, laid, &mut out);
    let origin = cells.get("0,0").map_or((0, 0), |(_, m)| (m.x, m.y));
    for ((r, c), letter) in self::cells(sheet) {
        let place = format!("row {}, column {}", r + 1, c + 1);
        let side = i64::from(sheet.cell);
        let (x, y) = (origin.0 + side * c as i64, origin.1 + side * r as i64);
        match cells.get(format!("{r},{c}").as_str()) {
            None => out.push(fault(format!("the cell in {place} is not on the page"))),
            Some((_, mark)) if !stands(mark, x, y, side) => {
                out.push(fault(format!("the cell in {place} is out of place")))
            }
            Some((page, mark)) if !shows(&laid.pages[*page], mark, letter) => {
                out.push(fault(format!("the letter `{letter}` is not in its cell in {place}")));
            }
            Some(_) => {}
        }
    }
    out
}

/// True when the cell lies there, to a twentieth of a millimetre.
fn stands(mark: &Mark, x: i64, y: i64, side: i64) -> bool {
    let near = |a: i64, b: i64| (a - b).abs() <= 50;
    near(mark.x, x) && near(mark.y, y) && near(mark.w, side) && near(mark.h, side)
}

/// True when the cell holds this letter and nothing else, in its middle.
fn shows(page: &LaidPage, cell: &Mark, letter: &str) -> bool {
    let centred = |t: &&LaidText| (t.x + t.w / 2 - cell.x - cell.w / 2).abs() <= OFF_CENTRE;
    let runs = runs_inside(page, cell);
    runs.len() == 1 && runs[0].text == letter && !runs[0].missing && runs.iter().all(centred)
}

/// The words of the list can be read on the page, outside the grid.
fn listed(sheet: &Sheet, laid: &Laid, out: &mut Findings) {
    // A word may be set in several runs, down to one letter: where the hand lacks an accent, the text face steps in.
    let read: String =
        laid.pages.iter().flat_map(outside_the_grid).map(|t| letters_of(&t.text)).collect();
    for word in sheet.words.iter().map(Said::plain).filter(|w| !read.contains(&letters_of(w))) {
        out.push(fault(format!("`{word}` is not in the list on the page")));
    }
}

fn outside_the_grid(page: &LaidPage) -> impl Iterator<Item = &LaidText> {
    let cells: Vec<&Mark> = page.marks.iter().filter(|m| m.kind == "cell").collect();
    let in_grid = move |t: &LaidText| {
        let middle = t.x + t.w / 2;
        cells.iter().any(|m| middle > m.x && middle < m.x + m.w && t.y > m.y && t.y < m.y + m.h)
    };
    page.texts.iter().filter(move |t| !in_grid(t))
}

fn fault(message: String) -> Finding {
    Finding::error("grid-page", message).remedy(
        "throw the dice again with `again = 1`; if it stays, set smaller `rows` and `columns`",
    )
}

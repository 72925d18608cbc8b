//! `words.csv`.

use super::rows::{self, Row};
use crate::files::Files;
use crate::model::Word;
use crate::read::Cx;
use findings::{Finding, Place};
use std::collections::BTreeMap;

/// All words in file order.
pub(super) fn all(files: &Files, cx: &mut Cx) -> Vec<Word> {
    let rows = rows::all(&super::WORDS, files, cx);
    let mut seen: BTreeMap<String, Vec<(Vec<String>, Place)>> = BTreeMap::new();
    rows.iter().filter_map(|row| word(row, &mut seen, cx)).collect()
}

fn word(
    row: &Row,
    seen: &mut BTreeMap<String, Vec<(Vec<String>, Place)>>,
    cx: &mut Cx,
) -> Option<Word> {
    let written = row.said("word", cx)?;
    let wherever = row.wherever(cx);
    let plain = written.plain();
    let others = seen.entry(plain.to_lowercase()).or_default();
    if others.iter().any(|(other, _)| overlap(other, &wherever)) {
        cx.findings.push(
            Finding::error(
                "word-twice",
                format!("the word `{plain}` stands twice in the same place"),
            )
            .at(&row.place("word"))
            .remedy("take one of the two rows out, or name another lesson in its `where`"),
        );
        return None;
    }
    if !others.is_empty() {
        cx.findings.push(
            Finding::hint("word-again", format!("the word `{plain}` stands in a second row"))
                .at(&row.place("word"))
                .remedy("one row can serve several lessons: separate their names in `where` by semicolons"),
        );
    }
    others.push((wherever.clone(), row.place("word")));
    let meaning = row.said("meaning", cx);
    if meaning.is_none() {
        cx.findings.push(
            Finding::hint("word-without-meaning", format!("the word `{plain}` has no meaning yet"))
                .at(&row.place("word"))
                .remedy("sheets that match words with meanings leave it out"),
        );
    }
    let puzzle = row.choice("puzzle", &[("yes", true), ("no", false)], cx).unwrap_or(true);
    Some(Word { word: written, meaning, wherever, picture: row.picture(cx), puzzle })
}

/// Two rows meet when both name a place, or one is the whole study's.
fn overlap(a: &[String], b: &[String]) -> bool {
    a.is_empty() || b.is_empty() || a.iter().any(|name| b.contains(name))
}

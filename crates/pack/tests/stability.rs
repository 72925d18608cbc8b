//! Over the whole demo: what an edit changes, and what it leaves alone.
#![allow(clippy::disallowed_methods)] // reads the demo study

use pack::{Cache, Outcome};
use std::collections::{BTreeMap, BTreeSet};
use std::path::{Path, PathBuf};
use study::{Files, Study};

fn demo() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies/rocky-shore")
}

fn files() -> Files {
    Files::load(&demo()).expect("the demo study")
}

fn study_of(files: &Files) -> Study {
    study::read_files(files).study.expect("a study")
}

/// Page data of every printed sheet that stands for itself (not those that list others), by id.
fn made(files: &Files) -> BTreeMap<String, String> {
    let study = study_of(files);
    let proved = pack::prove(&study, &Cache::none());
    let alone = |o: &&Outcome| !o.planned.about().gathers;
    proved
        .outcomes
        .iter()
        .filter(alone)
        .filter_map(|o| Some((o.planned.id.clone(), o.made.as_ref()?.sheet.to_string())))
        .collect()
}

fn text(files: &Files, path: &str) -> String {
    match &files.entries[path] {
        study::Blob::Bytes(bytes) => String::from_utf8(bytes.to_vec()).expect("UTF-8"),
        other => panic!("{path}: {other:?}"),
    }
}

fn edit(files: &mut Files, path: &str, from: &str, to: &str) {
    let old = text(files, path);
    assert!(old.contains(from), "{path} has no `{from}`");
    files.insert(path, old.replacen(from, to, 1));
}

/// Ids whose sheets differ between two builds, those missing from one included.
fn changed(a: &BTreeMap<String, String>, b: &BTreeMap<String, String>) -> BTreeSet<String> {
    let ids: BTreeSet<&String> = a.keys().chain(b.keys()).collect();
    ids.into_iter().filter(|id| a.get(*id) != b.get(*id)).cloned().collect()
}

fn of_lesson<'a>(study: &'a Study, name: &str) -> Vec<&'a str> {
    let lesson = study.lessons.iter().find(|l| l.name == name).expect("the lesson");
    std::iter::once(lesson.id.as_str())
        .chain(lesson.subjects.iter().map(|s| s.id.as_str()))
        .collect()
}

/// Kinds that a child solves, matches, colours or cuts: no edit elsewhere may touch them.
const PUZZLES: [&str; 8] = [
    "coloring",
    "compare",
    "figures-of-speech",
    "matching",
    "pairs",
    "questions",
    "unscramble",
    "word-search",
];

/// Sheets of the whole study that name or count its lessons may follow an edit; puzzles may not.
fn may_follow(id: &str) -> bool {
    let kind = id.split('.').nth(1).unwrap_or_default();
    id.starts_with("st-") && !PUZZLES.contains(&kind)
}

fn belongs(id: &str, owners: &[&str]) -> bool {
    owners.iter().any(|o| id.starts_with(&format!("{o}.")))
}

#[test]
fn every_sheet_of_the_demo_is_made_and_proved() {
    let files = files();
    let study = study_of(&files);
    let proved = pack::prove(&study, &Cache::none());
    let failed: Vec<String> = proved
        .outcomes
        .iter()
        .filter(|o| o.made.is_none())
        .map(|o| format!("{}: {:?}", o.planned.id, o.findings))
        .collect();
    assert!(failed.is_empty(), "{}", failed.join("\n"));
    assert!(!proved.findings.has_errors(), "{:?}", proved.findings);
}

#[test]
fn removing_a_lesson_leaves_every_other_puzzle_unchanged() {
    let before = made(&files());
    let owners_of = study_of(&files());
    let gone = of_lesson(&owners_of, "slow-hunter");
    let mut less = files();
    less.entries.retain(|path, _| !path.starts_with("parts/middle/slow-hunter"));
    edit(&mut less, "parts/middle/part.toml", ", \"slow-hunter\"", "");
    let after = made(&less);
    for id in changed(&before, &after) {
        // Sheets of the part and the whole study may draw on the lesson's rows; no other lesson's may change.
        let own = belongs(&id, &gone);
        let wide = id.starts_with("pt-") || id.starts_with("st-");
        assert!(own || wide, "{id} changed when another lesson was removed");
    }
    assert!(after.keys().all(|id| !belongs(id, &gone)), "its own sheets are gone");
}

#[test]
fn moving_and_renaming_a_lesson_changes_no_puzzle() {
    let before = made(&files());
    let mut moved = files();
    edit(&mut moved, "study.toml", "\"splash\", \"middle\"", "\"middle\", \"splash\"");
    for id in changed(&before, &made(&moved)) {
        assert!(may_follow(&id), "{id} changed when two parts changed places");
    }

    let mut renamed = files();
    let old = "parts/low/armour";
    let names: Vec<String> =
        renamed.entries.keys().filter(|p| p.starts_with(old)).cloned().collect();
    for path in names {
        let blob = renamed.entries.remove(&path).expect("there");
        renamed.entries.insert(path.replace(old, "parts/low/hard-coat"), blob);
    }
    edit(&mut renamed, "parts/low/part.toml", "\"armour\"", "\"hard-coat\"");
    for list in [
        "words.csv",
        "questions.csv",
        "books.csv",
        "links.csv",
        "prompts.csv",
        "figures.csv",
        "hunt.csv",
        "resources.csv",
    ] {
        // Only whole cells of the `where` columns; the word itself stands in texts too.
        let mut text = text(&renamed, list);
        for (before, after) in
            [(",", ","), (",", ";"), (";", ","), (";", ";"), (",", "\n"), (";", "\n")]
        {
            text = text
                .replace(&format!("{before}armour{after}"), &format!("{before}hard-coat{after}"));
        }
        renamed.insert(list, text);
    }
    let after = made(&renamed);
    let study = study_of(&renamed);
    let own = of_lesson(&study, "hard-coat");
    for id in changed(&before, &after) {
        assert!(
            belongs(&id, &own) || id.starts_with("st-") || id.starts_with("pt-"),
            "{id} changed when a file was renamed"
        );
    }
    let puzzles = |all: &BTreeMap<String, String>| -> BTreeMap<String, serde_json::Value> {
        let is = |id: &str| {
            [".word-search.", ".matching.", ".unscramble."].iter().any(|k| id.contains(k))
        };
        all.iter().filter(|(id, _)| is(id)).map(|(id, s)| (id.clone(), without_places(s))).collect()
    };
    assert_eq!(
        puzzles(&before),
        puzzles(&after),
        "every puzzle as before, the renamed lesson's own included"
    );
}

/// A file's name is part of where a word stands, never of what is printed.
fn without_places(sheet: &str) -> serde_json::Value {
    fn strip(value: &mut serde_json::Value) {
        match value {
            serde_json::Value::Object(map) => {
                map.remove("at");
                map.values_mut().for_each(strip);
            }
            serde_json::Value::Array(all) => all.iter_mut().for_each(strip),
            _ => {}
        }
    }
    let mut value = serde_json::from_str(sheet).expect("JSON");
    strip(&mut value);
    value
}

#[test]
fn adding_a_lesson_changes_no_other() {
    let before = made(&files());
    let mut more = files();
    more.insert(
        "lessons/a-new-one.md",
        "+++\nid = \"ls-00000001\"\ntitle = \"A new one\"\n+++\n## Opening\nNew.\n",
    );
    let after = made(&more);
    for id in changed(&before, &after) {
        assert!(
            id.starts_with("ls-00000001") || may_follow(&id),
            "{id} changed when a lesson was added"
        );
    }
}

#[test]
fn removing_one_of_two_subjects_removes_its_pages_and_no_others() {
    let files_before = files();
    let study = study_of(&files_before);
    let lesson = study.lessons.iter().find(|l| l.name == "star-and-flower").expect("the lesson");
    assert_eq!(lesson.subjects.len(), 2);
    let (kept, gone) = (lesson.subjects[0].id.clone(), lesson.subjects[1].id.clone());
    let lesson_id = lesson.id.clone();
    let before = made(&files_before);
    let mut less = files();
    let path = "parts/low/star-and-flower.md";
    let old = text(&less, path);
    let (head, rest) = split_second_subject(&old);
    less.insert(path, format!("{head}{rest}"));
    let after = made(&less);
    assert!(before.keys().any(|id| id.starts_with(&gone)), "it had pages");
    assert!(after.keys().all(|id| !id.starts_with(&gone)), "its pages are gone");
    let still = |all: &BTreeMap<String, String>| {
        all.keys().filter(|id| id.starts_with(&kept)).cloned().collect::<BTreeSet<_>>()
    };
    assert_eq!(still(&before), still(&after), "the other subject keeps all its pages");
    for id in changed(&before, &after) {
        let near = [&kept, &gone, &lesson_id].iter().any(|o| id.starts_with(&format!("{o}.")));
        let wide = id.starts_with("pt-") || id.starts_with("st-");
        assert!(near || wide, "{id} belongs to another lesson");
    }
}

/// The lesson's text before its second `[[subject]]`, and from the table after it.
fn split_second_subject(text: &str) -> (&str, &str) {
    let first = text.find("[[subject]]").expect("a first subject");
    let second = first + 11 + text[first + 11..].find("[[subject]]").expect("a second subject");
    let rest = &text[second + 11..];
    let end = ["\n[[activity]]", "\n[[compare]]", "\n[pages]", "\n[[subject]]", "\n+++"]
        .iter()
        .filter_map(|mark| rest.find(mark))
        .min()
        .expect("something follows");
    (&text[..second], &rest[end..])
}

#[test]
fn mending_one_word_changes_only_the_sheets_that_use_it() {
    let before = made(&files());
    let study = study_of(&files());
    let word = study
        .words
        .iter()
        .find(|w| {
            w.wherever.iter().all(|n| n == "homeward" || n == "limpet")
                && !w.wherever.is_empty()
                && w.puzzle
                && w.meaning.is_some()
        })
        .expect("a word");
    let (plain, meaning) = (word.word.plain(), word.meaning.as_ref().expect("a meaning").plain());
    let mut mended = files();
    edit(&mut mended, "words.csv", &meaning, &format!("{meaning} indeed"));
    let after = made(&mended);
    let owners_of = study_of(&files());
    let own = of_lesson(&owners_of, "homeward");
    let differing = changed(&before, &after);
    assert!(!differing.is_empty(), "the meaning of `{plain}` is printed somewhere");
    for id in &differing {
        let wide = id.starts_with("pt-") || id.starts_with("st-");
        assert!(belongs(id, &own) || wide, "{id} does not use `{plain}`");
        assert!(
            after[id].contains(&format!("{meaning} indeed")),
            "{id} changed without using the word"
        );
    }
    assert!(
        differing.iter().all(|id| !id.contains(".word-search.")),
        "a grid does not depend on meanings"
    );
}

#[test]
fn a_kept_sheet_survives_edits_and_removals() {
    let files_before = files();
    let study = study_of(&files_before);
    let proved = pack::prove(&study, &Cache::none());
    let own = of_lesson(&study, "homeward");
    let keep = proved
        .outcomes
        .iter()
        .find(|o| o.planned.id.contains(".word-search.") && belongs(&o.planned.id, &own))
        .expect("a word search");
    let sheet = keep.made.as_ref().expect("made").sheet.clone();
    let mut kept = files();
    let stored = serde_json::json!({ "kind": "word-search", "sheet": sheet }).to_string();
    kept.insert(format!("kept/{}.json", keep.planned.id), stored);
    edit(&mut kept, "study.toml", "\"splash\", \"middle\"", "\"middle\", \"splash\"");
    // Another throw of the dice would change it, were it not kept.
    let old = text(&kept, "parts/middle/homeward.md");
    kept.insert("parts/middle/homeward.md", old);
    let again = made(&kept);
    assert_eq!(again[&keep.planned.id], sheet.to_string());
}

#[test]
fn one_thread_or_many_make_the_same_sheets() {
    let pool = |n| rayon::ThreadPoolBuilder::new().num_threads(n).build().expect("a pool");
    let one = pool(1).install(|| made(&files()));
    let four = pool(4).install(|| made(&files()));
    assert_eq!(one, four);
}

#[test]
fn an_unchanged_sheet_is_not_made_twice() {
    let folder = tempfile::tempdir().expect("a folder");
    let study = study_of(&files());
    let first = pack::prove(&study, &Cache::of(folder.path()));
    let second = pack::prove(&study, &Cache::of(folder.path()));
    let made_again: Vec<&str> =
        second.outcomes.iter().filter(|o| !o.remembered).map(|o| o.planned.id.as_str()).collect();
    assert!(made_again.is_empty(), "{made_again:?}");
    assert!(first.outcomes.iter().all(|o| !o.remembered), "nothing was there before");
    let sheets = |p: &pack::Proved| {
        p.outcomes.iter().map(|o| o.made.as_ref().map(|m| m.sheet.clone())).collect::<Vec<_>>()
    };
    assert_eq!(sheets(&first), sheets(&second));
}

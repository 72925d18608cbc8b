//! Tests that hold for all kinds at once: what a new kind owes is checked here, not in its own folder.
#![allow(clippy::disallowed_methods)] // reads the folders of the kinds

use crate::about::{EVERY, OptKind};
use crate::kinds::KINDS;
use crate::words::words;
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("src/kinds")
}

fn folder_of(id: &str) -> PathBuf {
    folder().join(id.replace('-', "_"))
}

fn read(path: &Path) -> String {
    fs::read_to_string(path).unwrap_or_else(|e| panic!("{}: {e}", path.display()))
}

#[test]
fn every_folder_is_registered_and_ids_are_unique_and_sorted() {
    let ids: Vec<&str> = KINDS.iter().map(|k| k.about().id).collect();
    let mut sorted = ids.clone();
    sorted.sort_unstable();
    sorted.dedup();
    assert_eq!(ids, sorted, "KINDS stands in order of id, each once");
    let folders: BTreeSet<String> = fs::read_dir(folder())
        .expect("kinds folder")
        .map(|e| e.expect("entry").file_name().to_string_lossy().replace('_', "-"))
        .collect();
    assert_eq!(folders, ids.iter().map(|s| (*s).to_owned()).collect(), "one folder a kind");
}

#[test]
fn every_kind_explains_itself_under_four_headings() {
    for kind in KINDS {
        let doc: String = kind
            .about()
            .doc
            .lines()
            .take_while(|l| l.starts_with("//!"))
            .collect::<Vec<_>>()
            .join("\n");
        for heading in ["# What it prints", "# What it needs", "# How it is proved", "# Limits"] {
            assert!(doc.contains(heading), "{}: no heading `{heading}`", kind.about().id);
        }
    }
}

#[test]
fn every_kind_keeps_the_contract() {
    let mut broken = Vec::new();
    for kind in KINDS {
        let report = kind.tested();
        let id = kind.about().id;
        if report.good == 0 {
            broken.push(format!("{id}: no good fixture"));
        }
        if report.refused == 0 {
            broken.push(format!("{id}: nothing is ever refused"));
        }
        let distinct: BTreeSet<_> = report.faults.iter().collect();
        if distinct.len() != report.faults.len() {
            broken.push(format!("{id}: a fault class is listed twice"));
        }
        if report.faults.is_empty() {
            broken.push(format!("{id}: no planted fault"));
        }
        broken.extend(report.broken.into_iter().map(|b| format!("{id}: {b}")));
    }
    assert!(broken.is_empty(), "{}", broken.join("\n"));
}

#[test]
fn every_fixed_word_exists_in_every_language() {
    for kind in KINDS {
        let about = kind.about();
        let doc: toml_edit::DocumentMut = about.words.parse().expect("words.toml parses");
        let languages: Vec<&str> = doc.iter().map(|(l, _)| l).collect();
        assert!(languages.contains(&"en"), "{}: English is missing", about.id);
        let english = words(about.words, "en");
        for required in ["name", "says", "explains", "title"] {
            assert!(english.contains_key(required), "{}: no `{required}`", about.id);
        }
        for option in about.options {
            let key = format!("option-{}", option.name);
            assert!(english.contains_key(&key), "{}: no `{key}`", about.id);
        }
        for language in languages {
            let these: BTreeSet<String> = words(about.words, language).into_keys().collect();
            let those: BTreeSet<String> = english.keys().cloned().collect();
            assert_eq!(these, those, "{} in {language}", about.id);
        }
    }
}

/// A template may use only words that its `words.toml` has: `w.name` or `w.at("name")`.
#[test]
fn every_word_that_a_template_uses_exists() {
    for kind in KINDS {
        let about = kind.about();
        let have = words(about.words, "en");
        for used in used_words(about.page) {
            assert!(have.contains_key(&used), "{}: page.typ uses the word `{used}`", about.id);
        }
    }
}

fn used_words(page: &str) -> BTreeSet<String> {
    let name = |rest: &str| {
        rest.chars().take_while(|c| c.is_alphanumeric() || *c == '-').collect::<String>()
    };
    let mut used = BTreeSet::new();
    for (at, _) in page.match_indices("w.") {
        let before = page[..at].chars().next_back();
        if before.is_some_and(|c| c.is_alphanumeric() || c == '-' || c == '.' || c == '_') {
            continue;
        }
        let word = name(&page[at + 2..]);
        if word == "at" {
            // Only a plain `w.at("name")` names a word; one with a default may be absent.
            let call = page[at + 2..].strip_prefix("at(\"").and_then(|r| r.split_once('"'));
            if let Some((word, rest)) = call
                && rest.starts_with(')')
            {
                used.insert(word.to_owned());
            }
        } else if !word.is_empty() && !["len", "keys", "values", "pairs"].contains(&word.as_str()) {
            used.insert(word);
        }
    }
    used
}

#[test]
fn options_have_own_names_and_sensible_ranges() {
    for kind in KINDS {
        let about = kind.about();
        let mut seen: BTreeSet<&str> = EVERY.iter().map(|o| o.name).collect();
        // An entry of a page set uses these words itself, so an option of that name could not be reached.
        seen.extend(["kind", "count", "name", "one-of"]);
        for option in about.options {
            assert!(seen.insert(option.name), "{}: option `{}` twice", about.id, option.name);
            match option.kind {
                OptKind::Number { min, max } => {
                    assert!(min < max, "{}: `{}`", about.id, option.name)
                }
                OptKind::Choice(all) => assert!(all.len() > 1, "{}: `{}`", about.id, option.name),
                OptKind::Flag | OptKind::Text | OptKind::Texts => {}
            }
        }
    }
}

/// Each option in the schema is read somewhere in the kind's own code: an option that nothing reads changes nothing.
#[test]
fn every_option_is_read_by_its_kind() {
    for kind in KINDS {
        let about = kind.about();
        let code: String = ["needs.rs", "make.rs", "mod.rs"]
            .iter()
            .filter_map(|f| fs::read_to_string(folder_of(about.id).join(f)).ok())
            .collect();
        for option in about.options {
            let read = ["number", "text", "flag", "texts"]
                .iter()
                .any(|m| code.contains(&format!("{m}(\"{}\")", option.name)));
            assert!(read, "{}: nothing reads the option `{}`", about.id, option.name);
        }
    }
}

/// Independence of the checkers, which the language cannot enforce.
#[test]
fn no_checker_mentions_a_maker() {
    for kind in KINDS {
        let path = folder_of(kind.about().id).join("check.rs");
        let code = read(&path);
        for line in code.lines().filter(|l| !l.trim_start().starts_with("//")) {
            let words: Vec<&str> = line.split(|c: char| !c.is_alphanumeric() && c != '_').collect();
            for forbidden in ["make", "craft"] {
                assert!(!words.contains(&forbidden), "{}: `{forbidden}` in {line}", path.display());
            }
        }
    }
}

/// What the frame decides is not decided in templates.
#[test]
fn templates_leave_pages_to_the_frame() {
    for kind in KINDS {
        let page: String = kind
            .about()
            .page
            .lines()
            .filter(|l| !l.trim_start().starts_with("//"))
            .collect::<Vec<_>>()
            .join("\n");
        for forbidden in ["set page", "pagebreak", "query("] {
            assert!(!page.contains(forbidden), "{}: `{forbidden}` in page.typ", kind.about().id);
        }
        assert!(page.contains("#let leaves("), "{}: no leaves", kind.about().id);
    }
}

#[test]
fn files_of_kinds_stay_small() {
    for kind in KINDS {
        for entry in fs::read_dir(folder_of(kind.about().id)).expect("folder of the kind") {
            let path = entry.expect("entry").path();
            let lines = read(&path).lines().count();
            assert!(lines <= 400, "{}: {lines} lines", path.display());
        }
    }
}

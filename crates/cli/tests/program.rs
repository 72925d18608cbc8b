//! The program as an author runs it: folders in, files and messages out.
#![allow(clippy::disallowed_methods)] // lays out folders of its own

use assert_cmd::Command;
use serde_json::Value;
use std::fs;
use std::path::Path;
use tempfile::TempDir;

const TWELVE: &str =
    "owl, moth, bat, fox, badger, hedgehog, glow worm, beetle, nightjar, fern, toad, slug";

fn battledore(args: &[&str], at: &Path) -> (i32, String, String) {
    let out = Command::cargo_bin("battledore")
        .expect("built")
        .args(args)
        .current_dir(at)
        .output()
        .expect("runs");
    let text = |bytes: Vec<u8>| String::from_utf8(bytes).expect("UTF-8");
    (out.status.code().unwrap_or(-1), text(out.stdout), text(out.stderr))
}

fn folder() -> TempDir {
    tempfile::tempdir().expect("a folder")
}

fn twelve_words() -> TempDir {
    let at = folder();
    let (code, out, err) = battledore(&["new", "wood", "--words", TWELVE], at.path());
    assert_eq!(code, 0, "{out}{err}");
    at
}

#[test]
fn twelve_words_print_a_word_search_at_once() {
    let at = twelve_words();
    let pdf = fs::read(at.path().join("wood/word-search.pdf")).expect("printed");
    assert!(pdf.starts_with(b"%PDF-"));
}

#[test]
fn a_build_writes_both_papers_and_the_list_of_files() {
    let at = twelve_words();
    let (code, out, err) = battledore(&["build", "wood"], at.path());
    assert_eq!(code, 0, "{out}{err}");
    for paper in ["letter", "a4"] {
        assert!(at.path().join(format!("wood/printed/wood-{paper}.pdf")).exists(), "{out}{err}");
        assert!(out.contains(&format!("wood-{paper}.pdf")), "{out}");
    }
    assert!(err.is_empty(), "quiet when piped: {err}");
}

#[test]
fn one_paper_and_a_chosen_folder() {
    let at = twelve_words();
    let (code, out, err) =
        battledore(&["build", "wood", "--paper", "a4", "--out", "there"], at.path());
    assert_eq!(code, 0, "{out}{err}");
    let names: Vec<_> = fs::read_dir(at.path().join("there"))
        .expect("made")
        .map(|e| e.expect("entry").file_name())
        .collect();
    assert_eq!(names, ["wood-a4.pdf"]);
}

#[test]
fn a_clean_copy_is_refused_with_the_reason_and_a_proof_copy_is_not() {
    let at = twelve_words();
    let study = at.path().join("wood/study.toml");
    let text = fs::read_to_string(&study).expect("settings");
    fs::write(&study, text + "\n[page-set]\nback = [\"word-serch\", \"word-search\", \"key\"]\n")
        .expect("written");
    let (code, out, err) = battledore(&["build", "wood", "--clean"], at.path());
    assert_eq!(code, 1, "{out}{err}");
    assert!(err.contains("there is no type of sheet called `word-serch`"), "{err}");
    assert!(err.contains("did you mean `word-search`?"), "{err}");
    assert!(!at.path().join("wood/printed").exists(), "nothing is written");
    let (code, out, err) = battledore(&["build", "wood"], at.path());
    assert_eq!(code, 1, "{out}{err}");
    assert!(out.contains("proof copy"), "{out}");
    assert!(at.path().join("wood/printed/wood-letter.pdf").exists());
}

#[test]
fn findings_as_json_name_file_and_line() {
    let at = twelve_words();
    fs::write(at.path().join("wood/words.csv"), "word,meaning,where\nowl,a night bird,nowhere\n")
        .expect("written");
    let (code, out, _) = battledore(&["check", "wood", "--json"], at.path());
    assert_eq!(code, 1, "{out}");
    let value: Value = serde_json::from_str(&out).expect("JSON");
    let found = value["findings"].as_array().expect("findings");
    assert!(
        found
            .iter()
            .any(|f| f["place"].as_str().is_some_and(|p| p.starts_with("words.csv#"))
                && f["line"] == 2),
        "{out}"
    );
}

#[test]
fn kinds_are_listed_a_line_each_and_explained() {
    let at = folder();
    let (code, out, _) = battledore(&["kinds"], at.path());
    assert_eq!(code, 0);
    assert_eq!(out.lines().count(), sheets::KINDS.len());
    for (line, kind) in out.lines().zip(sheets::KINDS) {
        assert!(line.starts_with(kind.about().id) && line.ends_with('.'), "{line}");
    }
    for kind in sheets::KINDS {
        let (code, out, _) = battledore(&["kinds", kind.about().id], at.path());
        assert_eq!(code, 0);
        for heading in ["What it prints", "What it needs", "How it is proved", "Limits"] {
            assert!(out.contains(heading), "{out}");
        }
    }
    let (code, _, err) = battledore(&["kinds", "wordsearch"], at.path());
    assert_eq!(code, 2);
    assert!(err.contains("did you mean `word-search`?"), "{err}");
}

#[test]
fn a_page_is_a_picture_another_throw_differs_and_a_kept_one_stays() {
    let at = twelve_words();
    let page = |args: &[&str]| {
        let (code, out, err) = battledore(
            &[&["page", "wood", "word-search", "--out", "p.png", "--ppi", "50"], args].concat(),
            at.path(),
        );
        assert_eq!(code, 0, "{out}{err}");
        fs::read(at.path().join("p.png")).expect("a picture")
    };
    let (first, again, other) = (page(&[]), page(&[]), page(&["--again", "1"]));
    assert!(first.starts_with(&[0x89, b'P', b'N', b'G']));
    assert_eq!(first, again);
    assert_ne!(first, other);
    let (code, out, err) = battledore(&["keep", "wood", "word-search"], at.path());
    assert_eq!(code, 0, "{out}{err}");
    assert_eq!(page(&[]), first);
    let kept: Vec<_> = fs::read_dir(at.path().join("wood/kept")).expect("kept").collect();
    assert_eq!(kept.len(), 1);
    assert_eq!(battledore(&["keep", "wood", "word-search", "--release"], at.path()).0, 0);
    assert_eq!(fs::read_dir(at.path().join("wood/kept")).expect("kept").count(), 0);
}

#[test]
fn todo_names_what_is_wanted() {
    let at = twelve_words();
    fs::write(at.path().join("wood/pictures.txt"), "").expect("written");
    let (code, out, _) = battledore(&["todo", "wood"], at.path());
    assert_eq!(code, 0);
    assert!(!out.is_empty());
}

#[test]
fn check_never_writes() {
    let at = twelve_words();
    let list = || {
        let mut all: Vec<_> = walk(&at.path().join("wood"));
        all.sort();
        all
    };
    let before = list();
    let (code, out, err) = battledore(&["check", "wood"], at.path());
    assert_eq!(code, 0, "{out}{err}");
    assert_eq!(before, list());
}

fn walk(folder: &Path) -> Vec<(String, Vec<u8>)> {
    let mut all = Vec::new();
    for entry in fs::read_dir(folder).expect("a folder") {
        let path = entry.expect("an entry").path();
        if path.is_dir() {
            all.extend(walk(&path));
        } else {
            all.push((path.display().to_string(), fs::read(&path).expect("a file")));
        }
    }
    all
}

#[test]
fn folders_that_cannot_be_read_or_written_are_told_plainly() {
    let at = twelve_words();
    let (code, _, err) = battledore(&["build", "nowhere"], at.path());
    assert_eq!(code, 3);
    assert!(err.contains("nowhere"), "{err}");
    fs::write(at.path().join("file"), "in the way").expect("written");
    let (code, _, err) = battledore(&["build", "wood", "--out", "file"], at.path());
    assert_eq!(code, 3, "{err}");
    assert!(err.contains("could not be written"), "{err}");
    assert_eq!(fs::read_to_string(at.path().join("file")).expect("still there"), "in the way");
    let (code, _, err) = battledore(&["new", "wood", "--words", "owl"], at.path());
    assert_eq!(code, 3, "a folder with a study in it is left alone: {err}");
}

#[test]
fn completions_and_help_exist() {
    let at = folder();
    for shell in ["bash", "zsh", "fish", "powershell"] {
        let (code, out, _) = battledore(&["completions", shell], at.path());
        assert!(code == 0 && out.contains("battledore"), "{shell}");
    }
    let (code, out, _) = battledore(&["--help"], at.path());
    assert!(code == 0 && out.contains("Examples:") && out.contains("Exit codes:"), "{out}");
    assert_eq!(battledore(&["bild"], at.path()).0, 2);
}

//! Ids are minted once; a new study is ready to build.

#![allow(clippy::disallowed_methods)] // reads and writes folders of its own

use findings::{Place, Severity};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use study::{Value, line_of, mint_ids, mint_ids_with, new_study, read, write_field};

fn texts(folder: &Path) -> BTreeMap<String, String> {
    let mut out = BTreeMap::new();
    let mut folders = vec![folder.to_path_buf()];
    while let Some(next) = folders.pop() {
        for entry in fs::read_dir(next).expect("listed") {
            let path = entry.expect("an entry").path();
            if path.is_dir() {
                folders.push(path);
            } else {
                let name =
                    path.strip_prefix(folder).expect("inside").to_string_lossy().into_owned();
                out.insert(name, fs::read_to_string(&path).expect("text"));
            }
        }
    }
    out
}

fn study_without_ids() -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    for (file, text) in [
        (
            "study.toml",
            "# My shore\ntitle = \"Shore\" # the title\n\n[page-set]\nlesson = [\"reading\"]\n",
        ),
        ("parts/middle/part.toml", "[pages]\nadd = [\"maze\"]\n"),
        (
            "parts/middle/homeward.md",
            "+++\r\ntitle = \"Homeward\"\r\n[[subject]]\r\nname = \"limpet\" # the one\r\n\r\n[[subject]]\r\nid = \"sj-keep\"\r\nname = \"scar\"\r\n+++\r\nWords.\r\n",
        ),
        ("parts/middle/homeward.reading-3-6.md", "A reading has no id.\n"),
        ("lessons/edge.md", "## Opening\nHello.\n"),
        ("lessons/broken.md", "+++\ntitle = \n+++\n"),
        ("people/ann.md", "+++\n+++\nAnn.\n"),
    ] {
        let path = folder.path().join(file);
        fs::create_dir_all(path.parent().expect("a parent")).expect("made");
        fs::write(path, text).expect("written");
    }
    folder
}

#[test]
fn ids_are_written_where_they_are_missing_and_nothing_else_changes() {
    let folder = study_without_ids();
    let before = texts(folder.path());
    let findings = mint_ids_with(folder.path(), [7; 16]).expect("opened");
    assert!(findings.is_empty(), "{findings:?}");
    let after = texts(folder.path());
    let id = |file: &str| {
        let line = after[file].lines().find(|l| l.starts_with("id = \"")).expect("an id");
        line.trim_start_matches("id = \"").trim_end_matches('"').to_owned()
    };
    for (file, prefix) in [
        ("study.toml", "st-"),
        ("parts/middle/part.toml", "pt-"),
        ("parts/middle/homeward.md", "ls-"),
        ("lessons/edge.md", "ls-"),
        ("people/ann.md", "pe-"),
    ] {
        let id = id(file);
        let digits = id.strip_prefix(prefix).expect(prefix);
        assert!(digits.len() == 8 && digits.chars().all(|c| c.is_ascii_hexdigit()), "{id}");
    }
    assert_eq!(
        after["study.toml"],
        before["study.toml"].replace("title\n", &format!("title\nid = \"{}\"\n", id("study.toml")))
    );
    assert_eq!(
        after["lessons/edge.md"],
        format!("+++\nid = \"{}\"\n+++\n{}", id("lessons/edge.md"), before["lessons/edge.md"])
    );
    assert_eq!(after["parts/middle/homeward.md"].matches("\r\nid = \"sj-").count(), 2);
    assert_eq!(
        after["parts/middle/homeward.md"].matches('\n').count(),
        after["parts/middle/homeward.md"].matches("\r\n").count()
    );
    for same in ["lessons/broken.md", "parts/middle/homeward.reading-3-6.md"] {
        assert_eq!(after[same], before[same]);
    }
    // Once only, and whatever the chance.
    mint_ids(folder.path()).expect("opened");
    assert_eq!(texts(folder.path()), after);
}

#[test]
fn the_same_chance_gives_the_same_ids_and_another_gives_others() {
    let (a, b, c) = (study_without_ids(), study_without_ids(), study_without_ids());
    mint_ids_with(a.path(), [1; 16]).expect("opened");
    mint_ids_with(b.path(), [1; 16]).expect("opened");
    mint_ids_with(c.path(), [2; 16]).expect("opened");
    assert_eq!(texts(a.path()), texts(b.path()));
    assert_ne!(texts(a.path()), texts(c.path()));
}

#[test]
fn reading_stands_in_for_missing_ids_and_writes_nothing() {
    let folder = study_without_ids();
    let before = texts(folder.path());
    let (one, two) = (read(folder.path()), read(folder.path()));
    let (one, two) = (one.study.expect("a study"), two.study.expect("a study"));
    assert_eq!(one, two);
    assert!(one.id.starts_with("st-") && one.lessons.iter().all(|l| l.id.starts_with("ls-")));
    assert_eq!(texts(folder.path()), before);
}

#[test]
fn a_new_study_is_ready_to_build() {
    let folder = tempfile::tempdir().expect("a folder");
    let folder = folder.path().join("my shore");
    let words: Vec<String> =
        ["tide", "limpet", " ", "Tide", "home scar", "surf, high"].map(String::from).to_vec();
    new_study(&folder, " The \"Shore\" ", &words).expect("laid out");
    let read = read(&folder);
    let worst: Vec<_> = read.findings.iter().filter(|f| f.severity > Severity::Hint).collect();
    assert!(worst.is_empty(), "{worst:?}");
    let study = read.study.expect("a study");
    assert_eq!(study.title.plain(), "The \"Shore\"");
    let listed: Vec<String> = study.words.iter().map(|w| w.word.plain()).collect();
    assert_eq!(listed, ["tide", "limpet", "home scar", "surf, high"]);
    assert!(new_study(&folder, "Again", &[]).is_err());
}

#[test]
fn lines_are_looked_up_when_they_are_asked_for() {
    let folder = study_without_ids();
    let line = |place: &str| line_of(folder.path(), &Place::parse(place));
    assert_eq!(line("study.toml#title"), Some(2));
    assert_eq!(line("study.toml#page-set/lesson/1"), Some(5));
    assert_eq!(line("parts/middle/homeward.md#front/subject/2/name"), Some(8));
    assert_eq!(line("lessons/edge.md#opening/1"), Some(2));
    assert_eq!(line("study.toml#author"), None);
    assert_eq!(line("absent.toml#a"), None);
    write_field(folder.path(), &Place::parse("study.toml#author"), &Value::Text("Ann".into()))
        .expect("written");
    assert_eq!(line("study.toml#page-set/lesson/1"), Some(6));
    assert_eq!(line("study.toml#line 3"), Some(3));
}

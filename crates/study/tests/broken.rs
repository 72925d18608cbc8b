//! Every folder of `studies-broken` holds one fault, and its `expect.txt` the exact words about it.
//! Folders with a `stage.txt` show their fault only when sheets are planned; here they must read without errors.
//!
//! `BATTLEDORE_ACCEPT=1` writes the present words into `expect.txt`; look at every change before it is kept.

#![allow(clippy::disallowed_methods)] // reads and writes folders of its own

use findings::Severity;
use std::fs;
use std::path::{Path, PathBuf};
use study::{read, show};

fn folders() -> Vec<PathBuf> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies-broken");
    let mut all: Vec<PathBuf> = fs::read_dir(root)
        .expect("the folder of faults")
        .map(|e| e.expect("an entry").path())
        .filter(|p| p.is_dir())
        .collect();
    all.sort();
    all
}

#[test]
fn every_fault_is_named_in_the_expected_words() {
    let accept = std::env::var_os("BATTLEDORE_ACCEPT").is_some();
    let mut wrong = Vec::new();
    let mut here = 0;
    for folder in folders() {
        let read = read(&folder);
        let later = folder.join("stage.txt").exists();
        let least = if later { Severity::Error } else { Severity::Warning };
        let shown: String = read
            .findings
            .iter()
            .filter(|f| f.severity >= least)
            .map(|f| show(f, &read.lines) + "\n")
            .collect();
        if later {
            if !shown.is_empty() {
                wrong.push(format!(
                    "{}: its fault should show only later:\n{shown}",
                    folder.display()
                ));
            }
            continue;
        }
        here += 1;
        if accept {
            fs::write(folder.join("expect.txt"), &shown).expect("written");
        }
        let expected = fs::read_to_string(folder.join("expect.txt")).unwrap_or_default();
        if shown != expected || shown.is_empty() {
            wrong.push(format!("{}\n--- expected\n{expected}--- found\n{shown}", folder.display()));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(here >= 28, "only {here} faults");
}

#[test]
fn every_error_and_want_says_what_to_do() {
    for folder in folders() {
        for finding in &read(&folder).findings {
            assert!(
                finding.severity == Severity::Hint || !finding.remedies.is_empty(),
                "{finding}"
            );
            let first = finding.message.chars().next().unwrap_or('A');
            assert!(!first.is_uppercase() && !finding.message.ends_with('.'), "{finding}");
        }
    }
}

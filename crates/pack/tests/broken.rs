//! Faults that show only when sheets are planned: the exact words about them.
//!
//! `BATTLEDORE_ACCEPT=1` writes the present words into `expect.txt`; look at every change before it is kept.
#![allow(clippy::disallowed_methods)] // reads and writes folders of its own

use findings::{Finding, Severity};
use pack::Cache;
use std::fs;
use std::path::{Path, PathBuf};

fn folders() -> Vec<PathBuf> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies-broken");
    let all =
        fs::read_dir(root).expect("the folder of faults").map(|e| e.expect("an entry").path());
    let mut all: Vec<PathBuf> = all.filter(|p| p.join("stage.txt").exists()).collect();
    all.sort();
    all
}

#[test]
fn every_fault_of_the_plan_is_named_in_the_expected_words() {
    let accept = std::env::var_os("BATTLEDORE_ACCEPT").is_some();
    let mut wrong = Vec::new();
    let all = folders();
    for folder in &all {
        let read = study::read(folder);
        let study = read.study.expect("reads without errors");
        let proved = pack::prove(&study, &Cache::none());
        let sorted = proved.findings.sorted();
        let found: Vec<&Finding> =
            sorted.iter().filter(|f| f.severity >= Severity::Warning).collect();
        let shown: String = found.iter().map(|f| study::show(f, &read.lines) + "\n").collect();
        let path = folder.join("expect.txt");
        if accept {
            fs::write(&path, &shown).expect("written");
        }
        let expected = fs::read_to_string(&path).unwrap_or_default();
        if shown != expected || shown.is_empty() {
            wrong.push(format!("{}\n--- expected\n{expected}--- found\n{shown}", folder.display()));
        }
        for finding in found {
            assert!(!finding.remedies.is_empty(), "no remedy: {finding}");
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    assert!(all.len() >= 8, "only {} faults", all.len());
}

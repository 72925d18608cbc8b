//! The sample studies read without errors.
#![allow(clippy::disallowed_methods)] // looks for the sample studies

use findings::Severity;
use std::path::{Path, PathBuf};
use study::{Read, read, show};

fn studies() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies")
}

fn shown(read: &Read) -> String {
    let worst = read.findings.iter().filter(|f| f.severity >= Severity::Warning);
    worst.map(|f| show(f, &read.lines) + "\n").collect()
}

#[test]
fn every_sample_study_reads_without_errors() {
    let mut seen = 0;
    for entry in std::fs::read_dir(studies()).expect("the sample studies") {
        let folder = entry.expect("an entry").path();
        if folder.join("study.toml").exists() {
            let read = read(&folder);
            assert!(!read.findings.has_errors() && read.study.is_some(), "{}", shown(&read));
            seen += 1;
        }
    }
    assert!(seen > 0);
}

#[test]
fn the_rocky_shore_is_ready_for_a_clean_copy() {
    let read = read(&studies().join("rocky-shore"));
    assert_eq!(shown(&read), "");
    let study = read.study.expect("a study without errors");
    assert_eq!((study.lessons.len(), study.parts.len()), (9, 3));
    assert!(study.lessons.iter().all(|l| l.opening.is_some() && !l.readings.is_empty()));
    // Every place of a text leads to a line.
    for said in study
        .lessons
        .iter()
        .filter_map(|l| l.opening.as_ref())
        .flatten()
        .flat_map(study::Block::lines)
    {
        assert!(read.lines.spot(&said.at).is_some(), "{}", said.at);
    }
}

//! The sample studies read without errors.

use findings::Severity;
use std::path::Path;
use study::{read, show};

#[test]
fn the_rocky_shore_reads_without_errors() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies/rocky-shore");
    let read = read(&folder);
    let shown: Vec<String> = read.findings.iter().filter(|f| f.severity >= Severity::Warning).map(|f| show(f, &read.lines)).collect();
    println!("{}", shown.join("\n"));
    let errors = read.findings.count(Severity::Error);
    assert_eq!(errors, 0, "{}", shown.join("\n"));
    let study = read.study.expect("a study without errors");
    assert_eq!(study.lessons.len(), 9);
    assert_eq!(study.parts.len(), 3);
}

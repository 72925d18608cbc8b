//! A new study: a folder that is ready to build.

use crate::mint::mint_ids;
use crate::model::Value;
use crate::write::{append_row, write_field};
use findings::{Finding, Findings, Place};
use std::fs;
use std::path::Path;

/// Lays out a new study with a title and its first words, ready to build.
///
/// # Errors
/// Findings when the folder holds a study already, or the disk refuses.
pub fn new_study(folder: &Path, title: &str, words: &[String]) -> Result<(), Findings> {
    if folder.join("study.toml").exists() {
        let name = folder.file_name().map(|n| n.to_string_lossy().into_owned()).unwrap_or_default();
        return Err(Finding::error(
            "study-there",
            format!("the folder `{name}` holds a study already"),
        )
        .remedy("open that one, or choose another folder")
        .into());
    }
    for inner in ["", "lessons", "pictures"] {
        fs::create_dir_all(folder.join(inner)).map_err(|e| {
            let finding =
                Finding::error("not-written", format!("the folder could not be made: {e}"));
            Findings::from(finding.remedy("choose a folder where you may write"))
        })?;
    }
    let set =
        |field: &str, value: Value| write_field(folder, &Place::new("study.toml", field), &value);
    set("title", Value::Text(title.trim().to_owned()))?;
    set("language", Value::Text("en".into()))?;
    set("ages", Value::List(vec![Value::Number(3), Value::Number(18)]))?;
    let mut seen: Vec<String> = Vec::new();
    for word in words.iter().map(|w| w.trim()).filter(|w| !w.is_empty()) {
        if !seen.contains(&word.to_lowercase()) {
            seen.push(word.to_lowercase());
            append_row(folder, "words.csv", &[("word", word)])?;
        }
    }
    let findings = mint_ids(folder)?;
    if findings.has_errors() { Err(findings) } else { Ok(()) }
}

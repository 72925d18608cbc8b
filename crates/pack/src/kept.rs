//! "Keep this one": a made sheet stored in the study, proved again at each build.

use findings::{Finding, Place};
use serde_json::{Value, json};
use std::fs;
use std::path::Path;

/// Where a kept sheet stands in the study.
pub fn place(sheet: &str) -> Place {
    Place::file(format!("kept/{sheet}.json"))
}

/// The page data inside a kept file.
///
/// # Errors
/// A finding when the file is not what the program wrote.
pub fn sheet(text: &str) -> Result<Value, Finding> {
    let file: Value = serde_json::from_str(text).map_err(|_| damaged())?;
    file.get("sheet").cloned().ok_or_else(damaged)
}

/// Stores a sheet in `kept/`, whole or not at all.
///
/// # Errors
/// A finding when the disk refuses; the study is then as it was.
pub fn keep(folder: &Path, id: &str, kind: &str, sheet: &Value) -> Result<(), Finding> {
    let text = serde_json::to_string_pretty(&json!({ "kind": kind, "sheet": sheet }))
        .map_err(|_| damaged())?;
    let dir = folder.join("kept");
    let write = || -> std::io::Result<()> {
        fs::create_dir_all(&dir)?;
        let mut aside = tempfile::NamedTempFile::new_in(&dir)?;
        std::io::Write::write_all(&mut aside, text.as_bytes())?;
        aside.as_file().sync_all()?;
        aside.persist(dir.join(format!("{id}.json"))).map_err(|e| e.error)?;
        Ok(())
    };
    write().map_err(|e| {
        Finding::error("kept-not-written", format!("the sheet could not be kept ({e})"))
            .at(&place(id))
            .remedy("see that the folder can be written and the disk is not full")
    })
}

/// Lets a kept sheet go; the next build makes it anew.
///
/// # Errors
/// A finding when the disk refuses.
pub fn release(folder: &Path, id: &str) -> Result<(), Finding> {
    match fs::remove_file(folder.join("kept").join(format!("{id}.json"))) {
        Err(e) if e.kind() != std::io::ErrorKind::NotFound => Err(Finding::error(
            "kept-not-released",
            format!("the kept sheet could not be removed ({e})"),
        )
        .at(&place(id))),
        _ => Ok(()),
    }
}

fn damaged() -> Finding {
    Finding::error("kept-damaged", "this kept sheet cannot be read")
        .remedy("delete the file; the sheet is then made anew")
}

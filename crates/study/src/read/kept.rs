//! `kept/`: sheets that the author keeps as they are.

use super::Cx;
use crate::files::Files;
use findings::{Finding, Place};
use std::collections::BTreeMap;

/// Stored sheets by sheet id.
pub(super) fn all(files: &Files, cx: &mut Cx) -> BTreeMap<String, String> {
    let mut kept = BTreeMap::new();
    for (path, name) in files.inside("kept") {
        let Some(id) = name.strip_suffix(".json") else { continue };
        let Some(text) = files.text(path, cx) else { continue };
        if serde_json::from_str::<serde_json::Value>(&text).is_ok() {
            kept.insert(id.to_owned(), text.to_string());
        } else {
            cx.findings.push(
                Finding::error("kept-damaged", format!("the kept sheet `{id}` is damaged"))
                    .at(&Place::file(path))
                    .remedy(
                        "take the file back from a copy, or delete it; the sheet is then made anew",
                    ),
            );
        }
    }
    kept
}

//! The page that stands for a sheet that is not ready: what is wanted, and where.

use findings::{Findings, Severity};
use serde_json::{Value, json};

/// Fixed words of the page, by language.
pub const WORDS: &str = include_str!("wanting.toml");

/// Page data: title, and what is wanted with place and remedies.
pub fn data(title: &str, findings: &Findings) -> Value {
    let wants: Vec<Value> = findings
        .iter()
        .filter(|f| f.severity >= Severity::Warning)
        .map(|f| {
            json!({
                "message": f.message,
                "place": f.place.as_ref().map(|p| p.file.clone()),
                "remedies": f.remedies,
            })
        })
        .collect();
    json!({ "title": title, "wants": wants })
}

//! A finding as a person reads it: severity, fact, file and line, remedy.

use crate::lines::Lines;
use findings::{Finding, Severity};
use std::fmt::Write;

/// A finding in plain lines, its place as file and line.
///
/// ```text
/// error: there is no lesson, part or subject called `homeword`
///   in words.csv, line 3
///   did you mean `homeward`?
/// ```
pub fn show(finding: &Finding, lines: &Lines) -> String {
    let word = match finding.severity {
        Severity::Error => "error",
        Severity::Want => "wanted",
        Severity::Warning => "warning",
        Severity::Hint => "hint",
    };
    let mut out = format!("{word}: {}", finding.message);
    if let Some(place) = &finding.place {
        let spot = if place.field.is_empty() { None } else { lines.spot(place) };
        // Writing to a string cannot fail.
        let _ = match spot {
            Some(spot) => write!(out, "\n  in {}, line {}", place.file, spot.line),
            None => write!(out, "\n  in {}", place.file),
        };
    }
    for remedy in &finding.remedies {
        let _ = write!(out, "\n  {remedy}");
    }
    out
}

//! Findings as the author reads them: file and line, her own words, what to do; or as JSON.

use findings::{Finding, Findings, Severity};
use serde_json::{Value, json};
use std::io::IsTerminal as _;
use study::Lines;

/// Where results go.
pub struct Say {
    json: bool,
}

impl Say {
    /// Plain words, or JSON.
    pub fn new(json: bool) -> Self {
        Self { json }
    }

    /// True when results are wanted as JSON.
    pub fn json(&self) -> bool {
        self.json
    }

    /// Prints a line for people; nothing in JSON.
    pub fn line(&self, text: &str) {
        if !self.json {
            println!("{text}");
        }
    }

    /// Prints findings to standard error, or everything as one JSON object to standard output.
    pub fn findings(&self, findings: &Findings, lines: &Lines, more: Value) {
        if self.json {
            let mut out = json!({ "findings": list(findings, lines) });
            if let (Some(out), Value::Object(more)) = (out.as_object_mut(), more) {
                out.extend(more);
            }
            println!("{out}");
            return;
        }
        for finding in findings.iter().filter(|f| f.severity > Severity::Hint) {
            eprintln!("{}\n", study::show(finding, lines));
        }
        let hints = findings.count(Severity::Hint);
        if let Some(summary) = summary(findings) {
            eprintln!("{summary}");
        }
        if hints > 0 && std::io::stderr().is_terminal() {
            eprintln!(
                "{} more worth knowing; see them with --json",
                counted(hints, "hint", "hints")
            );
        }
    }

    /// Prints one finding that has no study around it.
    pub fn finding(&self, finding: &Finding) {
        let all = Findings::from(finding.clone());
        if self.json {
            println!("{}", json!({ "findings": list(&all, &Lines::default()) }));
        } else {
            eprintln!("{finding}");
        }
    }
}

/// Findings as JSON with their lines.
pub fn list(findings: &Findings, lines: &Lines) -> Vec<Value> {
    let one = |f: &Finding| {
        let mut value = serde_json::to_value(f).unwrap_or(Value::Null);
        let line = f.place.as_ref().and_then(|p| lines.spot(p)).map(|s| s.line);
        if let Some(object) = value.as_object_mut() {
            object.insert("line".into(), json!(line));
        }
        value
    };
    findings.iter().map(one).collect()
}

fn summary(findings: &Findings) -> Option<String> {
    let errors = findings.count(Severity::Error);
    let wants = findings.count(Severity::Want);
    let warnings = findings.count(Severity::Warning);
    let mut parts = Vec::new();
    if errors > 0 {
        parts.push(counted(errors, "thing to mend", "things to mend"));
    }
    if wants > 0 {
        parts.push(counted(
            wants,
            "thing wanted for a clean copy",
            "things wanted for a clean copy",
        ));
    }
    if warnings > 0 {
        parts.push(counted(warnings, "warning", "warnings"));
    }
    (!parts.is_empty()).then(|| parts.join(", "))
}

/// `1 page`, `2 pages`.
pub fn counted(n: usize, one: &str, many: &str) -> String {
    if n == 1 { format!("1 {one}") } else { format!("{n} {many}") }
}

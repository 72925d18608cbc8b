//! What an independent check recomputed, with its findings.

use findings::{Finding, Findings};
use serde::{Deserialize, Serialize};

/// The result of a check: what was recomputed, and what is wrong.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Proof {
    /// What was recomputed, name and value, e.g. (`words found`, `12`).
    pub counted: Vec<(String, String)>,
    /// What is wrong; an error keeps the sheet from printing.
    pub findings: Findings,
}

impl Proof {
    /// An empty proof, to be filled.
    pub fn new() -> Self {
        Self::default()
    }

    /// Notes a recomputed value.
    pub fn count(&mut self, name: &str, value: impl ToString) {
        self.counted.push((name.to_owned(), value.to_string()));
    }

    /// Notes a fault that keeps the sheet from printing.
    pub fn fault(&mut self, code: &str, message: impl Into<String>) {
        self.findings.push(Finding::error(code, message));
    }

    /// Demands a condition.
    pub fn demand(&mut self, holds: bool, code: &str, message: impl Into<String>) {
        if !holds {
            self.fault(code, message);
        }
    }

    /// True when nothing stands against printing.
    pub fn holds(&self) -> bool {
        !self.findings.has_errors()
    }
}

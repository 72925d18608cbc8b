//! What is wrong, where it stands in the author's folder, and what to do about it.

mod place;
pub use place::Place;

use serde::{Deserialize, Serialize};
use std::fmt;

/// How much a finding matters.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Severity {
    /// Good to know; nothing has to change.
    Hint,
    /// Likely a slip; the sheet prints all the same.
    Warning,
    /// A gap such as a missing licence: printed in a proof copy, refused by a clean copy.
    Want,
    /// The sheet (or the study) cannot be printed as it stands.
    Error,
}

/// One fact about the author's content or a made sheet, with its remedy.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
pub struct Finding {
    /// How much it matters.
    pub severity: Severity,
    /// Stable short name such as `picture-missing`, for tools; authors never see it.
    pub code: String,
    /// Where in the author's folder, when it has a place.
    pub place: Option<Place>,
    /// The sheet it concerns, by sheet id, when it concerns one.
    pub sheet: Option<String>,
    /// One fact, lower-case, without a full stop, the author's own word in backticks.
    pub message: String,
    /// What to do, one step an entry.
    pub remedies: Vec<String>,
}

impl Finding {
    /// A finding of any severity; add its place and remedy with the methods below.
    pub fn new(severity: Severity, code: &str, message: impl Into<String>) -> Self {
        Self {
            severity,
            code: code.to_owned(),
            place: None,
            sheet: None,
            message: message.into(),
            remedies: Vec::new(),
        }
    }

    /// Something that stops the sheet or the study from printing.
    pub fn error(code: &str, message: impl Into<String>) -> Self {
        Self::new(Severity::Error, code, message)
    }

    /// A gap that only a clean copy refuses.
    pub fn want(code: &str, message: impl Into<String>) -> Self {
        Self::new(Severity::Want, code, message)
    }

    /// A likely slip.
    pub fn warning(code: &str, message: impl Into<String>) -> Self {
        Self::new(Severity::Warning, code, message)
    }

    /// Good to know.
    pub fn hint(code: &str, message: impl Into<String>) -> Self {
        Self::new(Severity::Hint, code, message)
    }

    /// Adds the place in the author's folder.
    #[must_use]
    pub fn at(mut self, place: &Place) -> Self {
        self.place = Some(place.clone());
        self
    }

    /// Adds the sheet it concerns.
    #[must_use]
    pub fn on(mut self, sheet: &str) -> Self {
        self.sheet = Some(sheet.to_owned());
        self
    }

    /// Adds one step of the remedy.
    #[must_use]
    pub fn remedy(mut self, step: impl Into<String>) -> Self {
        self.remedies.push(step.into());
        self
    }
}

impl fmt::Display for Finding {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let word = match self.severity {
            Severity::Error => "error",
            Severity::Want => "wanted",
            Severity::Warning => "warning",
            Severity::Hint => "hint",
        };
        write!(f, "{word}: {}", self.message)?;
        if let Some(place) = &self.place {
            write!(f, " ({place})")?;
        }
        for step in &self.remedies {
            write!(f, "\n  {step}")?;
        }
        Ok(())
    }
}

/// A collection of findings; none hides another.
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Findings(pub Vec<Finding>);

impl Findings {
    /// No findings yet.
    pub fn none() -> Self {
        Self::default()
    }

    /// Adds one.
    pub fn push(&mut self, finding: Finding) {
        self.0.push(finding);
    }

    /// Adds all of another collection.
    pub fn append(&mut self, other: Findings) {
        self.0.extend(other.0);
    }

    /// True when at least one finding is an error.
    pub fn has_errors(&self) -> bool {
        self.0.iter().any(|f| f.severity == Severity::Error)
    }

    /// True when a clean copy has to be refused.
    pub fn blocks_clean(&self) -> bool {
        self.0.iter().any(|f| f.severity >= Severity::Want)
    }

    /// True when there are none at all.
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// How many there are of one severity.
    pub fn count(&self, severity: Severity) -> usize {
        self.0.iter().filter(|f| f.severity == severity).count()
    }

    /// Iterates over them in the order they were found.
    pub fn iter(&self) -> std::slice::Iter<'_, Finding> {
        self.0.iter()
    }

    /// Worst first, then by place; equal findings once.
    #[must_use]
    pub fn sorted(mut self) -> Self {
        self.0.sort_by(|a, b| {
            b.severity.cmp(&a.severity).then_with(|| a.place.cmp(&b.place)).then_with(|| a.cmp(b))
        });
        self.0.dedup();
        self
    }
}

impl From<Finding> for Findings {
    fn from(finding: Finding) -> Self {
        Self(vec![finding])
    }
}

impl FromIterator<Finding> for Findings {
    fn from_iter<I: IntoIterator<Item = Finding>>(iter: I) -> Self {
        Self(iter.into_iter().collect())
    }
}

impl IntoIterator for Findings {
    type Item = Finding;
    type IntoIter = std::vec::IntoIter<Finding>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'a> IntoIterator for &'a Findings {
    type Item = &'a Finding;
    type IntoIter = std::slice::Iter<'a, Finding>;
    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

//! A stable address in the author's folder: a file and a field in it, never a line number.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;

/// A file of the study and a field in it.
///
/// Lines are looked up only when a finding is shown, so that an inserted row
/// changes no place and invalidates no cache. Written `file#field`, e.g.
/// `words.csv#limpet/meaning` or `parts/middle/homeward.md#reading/2`.
#[derive(Debug, Clone, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Place {
    /// Path inside the study folder, with forward slashes.
    pub file: String,
    /// Path of the field in the file; empty for the whole file.
    pub field: String,
}

impl Place {
    /// A field of a file.
    pub fn new(file: impl Into<String>, field: impl Into<String>) -> Self {
        Self { file: file.into(), field: field.into() }
    }

    /// A whole file.
    pub fn file(file: impl Into<String>) -> Self {
        Self::new(file, "")
    }

    /// A field below this one.
    #[must_use]
    pub fn child(&self, name: impl fmt::Display) -> Self {
        let field =
            if self.field.is_empty() { name.to_string() } else { format!("{}/{name}", self.field) };
        Self { file: self.file.clone(), field }
    }

    /// Reads the written form `file#field`.
    pub fn parse(written: &str) -> Self {
        match written.split_once('#') {
            Some((file, field)) => Self::new(file, field),
            None => Self::file(written),
        }
    }
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.field.is_empty() {
            f.write_str(&self.file)
        } else {
            write!(f, "{}#{}", self.file, self.field)
        }
    }
}

impl Serialize for Place {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Place {
    fn deserialize<D: Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
        Ok(Self::parse(&String::deserialize(d)?))
    }
}

//! Ids: how they look, and stand-ins for those that are not written yet.

use crate::read::Cx;
use findings::{Finding, Place};
use std::collections::BTreeMap;

/// Eight hexadecimal digits from words, each told apart from the next.
pub(crate) fn digits(words: &[&str]) -> String {
    let mut hasher = blake3::Hasher::new();
    for word in words {
        hasher.update(&(word.len() as u64).to_le_bytes());
        hasher.update(word.as_bytes());
    }
    hasher.finalize().to_hex().as_str().chars().take(8).collect()
}

/// The written id, or a stand-in made from where it is missing: the same at each reading.
pub(crate) fn or_stand_in(
    written: Option<String>,
    prefix: &str,
    at: &Place,
    cx: &mut Cx,
) -> String {
    let Some(id) = written else {
        return format!("{prefix}-{}", digits(&[&at.to_string()]));
    };
    if id.chars().all(|c| c.is_ascii_alphanumeric() || c == '-') {
        return id;
    }
    cx.findings.push(
        Finding::error("id-odd", format!("`{id}` is no id"))
            .at(&at.child("id"))
            .remedy("take the line out; the program writes a new one"),
    );
    format!("{prefix}-{}", digits(&[&id]))
}

/// Ids seen so far, to find two that are equal.
#[derive(Debug, Default)]
pub(crate) struct Seen(BTreeMap<String, Place>);

impl Seen {
    /// Notes an id; a second one is a finding.
    pub fn note(&mut self, id: &str, at: &Place, cx: &mut Cx) {
        if let Some(first) = self.0.get(id) {
            let first = first.file.clone();
            cx.findings.push(
                Finding::error("id-twice", format!("the id `{id}` stands here and in {first}"))
                    .at(&at.child("id"))
                    .remedy("take this line out; the program writes a new id"),
            );
        } else {
            self.0.insert(id.to_owned(), at.clone());
        }
    }
}

//! The registry: a new kind is one folder and two lines here, both in order of name.

pub mod unscramble;
pub mod word_search;

use crate::adapter::AnyKind;

/// Every kind, in order of id.
pub static KINDS: &[&dyn AnyKind] = &[&unscramble::Unscramble, &word_search::WordSearch];

/// The kind of that id.
pub fn find(id: &str) -> Option<&'static dyn AnyKind> {
    KINDS.iter().copied().find(|k| k.about().id == id)
}

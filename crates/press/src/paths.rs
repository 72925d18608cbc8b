//! Names of files in memory.
//!
//! The typesetter numbers each distinct path with 16 bits and never frees a number. Paths are
//! therefore made from sheet ids, which stay the same from build to build, and counted here.

use std::collections::BTreeSet;
use std::num::NonZeroU16;
use std::sync::{Mutex, PoisonError};
use typst::syntax::{FileId, RootedPath, VirtualPath, VirtualRoot};

/// How many distinct paths one run of the program may use; the rest of the 65,535 numbers stays
/// free for paths that page templates build themselves.
const ROOM: usize = 60_000;

/// The number of a path.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Path(NonZeroU16);

impl Path {
    /// The number of a path that starts at the root `/`. `None` when it is no path, or when a
    /// long-running program has used up the room.
    pub(crate) fn new(path: &str) -> Option<Self> {
        static USED: Mutex<BTreeSet<String>> = Mutex::new(BTreeSet::new());
        let plain = VirtualPath::new(path).ok()?;
        let mut used = USED.lock().unwrap_or_else(PoisonError::into_inner);
        if !used.contains(plain.get_with_slash()) {
            if used.len() >= ROOM {
                return None;
            }
            used.insert(plain.get_with_slash().to_owned());
        }
        Some(Self::of(RootedPath::new(VirtualRoot::Project, plain).intern()))
    }

    /// The path of a file that the typesetter asks for.
    pub(crate) fn of(id: FileId) -> Self {
        Self(id.into_raw())
    }

    /// The path itself, from the root `/`.
    pub(crate) fn name(self) -> &'static str {
        self.id().get().vpath().get_with_slash()
    }

    /// As the typesetter knows it.
    pub(crate) fn id(self) -> FileId {
        FileId::from_raw(self.0)
    }
}

/// Whether a text can stand in a path and between quotes of a source unchanged.
pub(crate) fn plain(name: &str) -> bool {
    let allowed = |c: char| c.is_alphanumeric() || matches!(c, '-' | '_' | '.');
    !name.is_empty() && !name.starts_with('.') && name.chars().all(allowed)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_same_path_has_the_same_number() {
        let first = Path::new("/sheets/a.typ");
        assert!(first.is_some());
        assert_eq!(first, Path::new("/sheets/a.typ"));
        assert_ne!(first, Path::new("/sheets/b.typ"));
    }

    #[test]
    fn names_that_could_leave_their_folder_are_no_names() {
        assert!(plain("limpet-1_b.2") && plain("été"));
        for bad in ["", "..", "a/b", "a\"b", "a b", "a\\b"] {
            assert!(!plain(bad), "{bad}");
        }
    }
}

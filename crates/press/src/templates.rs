//! The typst sources that every page shares, and the looks, gathered at build time.

use crate::paths::Path;
use std::sync::OnceLock;
use typst::foundations::Bytes;
use typst::syntax::Source;

include!(concat!(env!("OUT_DIR"), "/gathered.rs"));

/// The shared files: sources, parsed once, and lists of words.
pub(crate) struct Shared {
    pub(crate) sources: Vec<(Path, Source)>,
    pub(crate) files: Vec<(Path, Bytes)>,
}

/// The shared files of this program.
pub(crate) fn shared() -> &'static Shared {
    static PARSED: OnceLock<Shared> = OnceLock::new();
    PARSED.get_or_init(|| {
        let mut shared = Shared { sources: Vec::new(), files: Vec::new() };
        for (name, text) in SHARED {
            let Some(path) = Path::new(name) else { continue };
            if name.ends_with(".typ") {
                shared.sources.push((path, Source::new(path.id(), (*text).to_owned())));
            } else {
                shared.files.push((path, Bytes::from_string(*text)));
            }
        }
        shared
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_frame_and_the_kit_are_gathered() {
        let names: Vec<&str> = SHARED.iter().map(|(name, _)| *name).collect();
        assert!(names.contains(&"/frame.typ") && names.contains(&"/kit.typ"), "{names:?}");
        let shared = shared();
        assert_eq!(shared.sources.len() + shared.files.len(), SHARED.len());
        for (path, source) in &shared.sources {
            let (errors, _) = source.root().errors_and_warnings();
            assert!(errors.is_empty(), "{:?}: {errors:?}", path.id());
        }
    }
}

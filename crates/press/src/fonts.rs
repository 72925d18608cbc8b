//! The typefaces: our own hand, built once in memory, and Noto Sans for running text.

use pictures::hand;
use rayon::prelude::*;
use std::sync::OnceLock;
use typst::foundations::Bytes;
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;

/// The fonts that pages may ask for, with the book that finds them by family.
pub(crate) struct Shelf {
    /// Families and variants.
    pub(crate) book: LazyHash<FontBook>,
    /// The fonts, in the order of the book.
    pub(crate) fonts: Vec<Font>,
    /// What could not be built; pages then lack that family, and the reader is told so.
    pub(crate) faults: Vec<String>,
}

/// The family of running text.
const NOTO: [&[u8]; 4] =
    [notosans::REGULAR_TTF, notosans::BOLD_TTF, notosans::ITALIC_TTF, notosans::BOLD_ITALIC_TTF];

/// The shelf of this program, built at the first call (some tenths of a second) and then kept.
pub(crate) fn shelf() -> &'static Shelf {
    static SHELF: OnceLock<Shelf> = OnceLock::new();
    SHELF.get_or_init(build)
}

fn build() -> Shelf {
    let mut fonts = Vec::new();
    let mut faults = Vec::new();
    // The cuts are the one slow part of starting up, and need nothing of each other.
    let cuts: Vec<_> = hand::Cut::ALL.into_par_iter().map(|cut| (cut, hand::font(cut))).collect();
    for (cut, made) in cuts {
        match made {
            Ok(bytes) => fonts.extend(Font::new(Bytes::new(bytes), 0)),
            Err(error) => faults.push(format!("{}: {error}", cut.family())),
        }
    }
    fonts.extend(NOTO.iter().filter_map(|bytes| Font::new(Bytes::new(*bytes), 0)));
    let book = LazyHash::new(FontBook::from_fonts(&fonts));
    Shelf { book, fonts, faults }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_shelf_holds_every_family_that_looks_may_name() {
        let shelf = shelf();
        assert_eq!(shelf.faults, Vec::<String>::new());
        for family in
            ["battledore hand", "battledore hand dotted", "battledore hand hollow", "noto sans"]
        {
            assert!(shelf.book.contains_family(family), "{family}");
        }
        assert_eq!(shelf.fonts.len(), 8);
    }
}

//! Parts the things into pages of nearly equal length.

use super::{Find, Needs, Sheet};
use study::Band;

/// Most things a page.
fn most(band: Band) -> usize {
    match band {
        Band::A => 6,
        Band::B => 8,
        Band::C => 10,
        Band::D => 12,
    }
}

/// The hunt.
pub(super) fn make(needs: &Needs) -> Sheet {
    let large = needs.band == Band::A;
    let count = needs.things.len();
    let pages = count.div_ceil(most(needs.band)).max(1);
    // Two things stand side by side, so that a page holds an even number.
    let each = count.div_ceil(pages).next_multiple_of(2);
    let finds: Vec<Find> = needs
        .things
        .iter()
        .zip(1..)
        .map(|(thing, n)| Find {
            n,
            item: thing.item.clone(),
            picture: thing.picture.clone(),
            hint: thing.hint.clone().filter(|_| !large),
            safe: thing.safe.clone(),
        })
        .collect();
    Sheet { cautions: needs.cautions.clone(), large, pages: finds.chunks(each).map(<[Find]>::to_vec).collect() }
}

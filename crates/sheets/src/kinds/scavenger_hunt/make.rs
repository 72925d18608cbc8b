//! Parts the things into pages of nearly equal length.

use super::{Find, Needs, Sheet};
use study::Band;

/// Most things on the first page, beside the cautions, and on the following ones.
fn most(band: Band, large_print: bool) -> (usize, usize) {
    match band {
        _ if large_print => (4, 6),
        Band::A => (4, 6),
        Band::B => (8, 10),
        Band::C => (8, 12),
        Band::D => (10, 14),
    }
}

/// Sizes of the pages: as few pages as can be, nearly equal, even numbers where two stand side by side.
fn sizes(count: usize, (first, after): (usize, usize)) -> Vec<usize> {
    let mut left = count;
    let pages = 1 + count.saturating_sub(first).div_ceil(after);
    let mut out = Vec::new();
    for page in 0..pages {
        let even = left.div_ceil(pages - page).next_multiple_of(2);
        let size = even.min(if page == 0 { first } else { after }).min(left);
        out.push(size);
        left -= size;
    }
    out
}

/// The hunt.
pub(super) fn make(needs: &Needs) -> Sheet {
    let large = needs.band == Band::A;
    let finds = needs.things.iter().zip(1..).map(|(thing, n)| Find {
        n,
        item: thing.item.clone(),
        picture: thing.picture.clone(),
        hint: thing.hint.clone().filter(|_| !large),
        safe: thing.safe.clone(),
    });
    let mut finds = finds.collect::<Vec<_>>().into_iter();
    let sizes = sizes(needs.things.len(), most(needs.band, needs.large_print));
    let pages = sizes.into_iter().map(|size| finds.by_ref().take(size).collect());
    Sheet { cautions: needs.cautions.clone(), large, pages: pages.collect() }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn pages_hold_everything_and_none_too_much() {
        for count in 1..60 {
            for band in Band::ALL {
                let (first, after) = most(band, false);
                let sizes = sizes(count, (first, after));
                assert_eq!(sizes.iter().sum::<usize>(), count, "{count} {band:?}");
                assert!(
                    sizes[0] <= first && sizes[1..].iter().all(|s| *s <= after && *s > 0),
                    "{count} {sizes:?}"
                );
            }
        }
        assert_eq!(sizes(16, most(Band::B, false)), [8, 8]);
        assert_eq!(sizes(16, most(Band::B, true)), [4, 6, 6]);
        assert_eq!(sizes(15, most(Band::A, false)), [4, 6, 5]);
    }
}

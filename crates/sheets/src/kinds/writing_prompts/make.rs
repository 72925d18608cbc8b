//! Parts the prompts into pages and gives each its lines.

use super::{Needs, Page, Sheet, Slot, Theme};
use crate::estimate::Setting;
use study::Band;

/// Lines that a prompt gets at least.
fn least(band: Band) -> u32 {
    match band {
        Band::A => 1,
        Band::B => 3,
        Band::C => 4,
        Band::D => 6,
    }
}

/// The pages.
pub(super) fn make(needs: &Needs) -> Sheet {
    let count = needs.themes.len();
    let most = usize::try_from(needs.per_page).unwrap_or(1);
    let each = (1..=most)
        .rev()
        .find(|k| {
            needs.themes.iter().all(|t| lines(needs, t, height(needs, *k)) >= least(needs.band))
        })
        .unwrap_or(1);
    let pages = count.div_ceil(each).max(1);
    let mut rest = needs.themes.as_slice();
    let mut n = 0;
    let mut page = |themes: &[Theme]| {
        let height = height(needs, themes.len());
        let slots = themes.iter().map(|theme| {
            n += 1;
            let lines = lines(needs, theme, height);
            Slot {
                n,
                prompt: theme.prompt.clone(),
                picture: theme.picture.clone(),
                lines,
                frame: needs.band == Band::A,
            }
        });
        Page { height, slots: slots.collect() }
    };
    // As even as can be: ten prompts are 3, 3, 2 and 2.
    let sizes = (0..pages).map(|i| count / pages + usize::from(i < count % pages));
    let mut out = Vec::new();
    for size in sizes {
        let (here, after) = rest.split_at(size.min(rest.len()));
        rest = after;
        out.push(page(here));
    }
    Sheet { pages: out }
}

/// Height of the body below the air over its first line, µm: that line's letters stand 0.28 of a beat lower.
fn usable(needs: &Needs) -> u32 {
    let beat = Setting::of(needs.band, needs.room.large_print).beat;
    needs.room.body_h.saturating_sub(beat * 28 / 100 + 1)
}

/// Height of one place when a page has so many, µm.
fn height(needs: &Needs, on_page: usize) -> u32 {
    usable(needs) / u32::try_from(on_page).unwrap_or(1).max(1)
}

/// Lines that fit under a prompt; one beat stays free before the next.
fn lines(needs: &Needs, theme: &Theme, height: u32) -> u32 {
    let setting = Setting::of(needs.band, needs.room.large_print);
    let words = setting.lines(&theme.prompt.plain(), needs.room.main_w) * setting.beat;
    let free = height.saturating_sub(words + setting.beat);
    // The youngest draw: one row of lines, the frame takes the rest.
    if needs.band == Band::A { (free / setting.write).min(1) } else { free / setting.write }
}

//! Lays out the boxes: a strip across the page, pairs of boxes, a large one to draw in.

use super::{Fill, Needs, NotebookBox, Sheet, Use};
use study::Band;

/// Space between boxes, µm.
const GAP: u32 = 6000;
/// Height of the strip for the choice, µm.
const STRIP: u32 = 28_000;
/// The same where the youngest write or draw, µm.
const STRIP_YOUNG: u32 = 34_000;

/// A row of the page: indices of its boxes, and its share of the height in tenths (0 for a strip).
type Row = (Vec<usize>, u32);

/// The page for these boxes.
pub(super) fn make(needs: &Needs) -> Sheet {
    let rows = rows(needs);
    let strip = if needs.band == Band::A { STRIP_YOUNG } else { STRIP };
    let strips = u32::try_from(rows.iter().filter(|r| r.1 == 0).count()).unwrap_or(0);
    let gaps = u32::try_from(rows.len().saturating_sub(1)).unwrap_or(0);
    let free = needs.room.body_h.saturating_sub(strips * strip + gaps * GAP);
    let shares: u32 = rows.iter().map(|r| r.1).sum::<u32>().max(1);
    let mut boxes = Vec::new();
    let mut y = 0;
    for (row, share) in &rows {
        let h = if *share == 0 { strip } else { free * share / shares };
        let w = (needs.room.full_w - if row.len() > 1 { GAP } else { 0 })
            / u32::try_from(row.len()).unwrap_or(1);
        let mut x = 0;
        for i in row {
            let need = &needs.boxes[*i];
            let fill = fill(need.used, needs.band);
            boxes.push(NotebookBox {
                title: need.title.clone(),
                hint: need.hint.clone(),
                fill,
                x,
                y,
                w,
                h,
            });
            x += w + GAP;
        }
        y += h + GAP;
    }
    Sheet { boxes }
}

fn rows(needs: &Needs) -> Vec<Row> {
    let mut rows: Vec<Row> = Vec::new();
    let mut pair: Vec<usize> = Vec::new();
    for (i, need) in needs.boxes.iter().enumerate() {
        if need.used == Use::Write {
            pair.push(i);
            if pair.len() == 2 {
                rows.push((std::mem::take(&mut pair), 10));
            }
            continue;
        }
        if !pair.is_empty() {
            rows.push((std::mem::take(&mut pair), 8));
        }
        rows.push((vec![i], if need.used == Use::Choose { 0 } else { 13 }));
    }
    if !pair.is_empty() {
        rows.push((pair, 8));
    }
    // A page of strips only would stay half empty.
    if rows.iter().all(|r| r.1 == 0) {
        rows.iter_mut().for_each(|r| r.1 = 10);
    }
    rows
}

fn fill(used: Use, band: Band) -> Fill {
    match (used, band) {
        (_, Band::A) | (Use::Draw, Band::B) => Fill::Blank,
        (Use::Draw, Band::C | Band::D) => Fill::Dots,
        (Use::Choose | Use::Write, _) => Fill::Lines,
    }
}

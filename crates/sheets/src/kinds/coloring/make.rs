//! Draws the lines.

use super::{Art, Needs, Sheet};
use findings::{Finding, Findings};
use pictures::outline::{Pen, outline};
use study::Band;

/// Height that the name below the picture takes, µm.
const NAME: u32 = 36_000;

/// Width of the lines, µm: outer, inner.
fn lines(band: Band) -> (u32, u32) {
    match band {
        Band::A => (1600, 1100),
        Band::B | Band::C | Band::D => (1100, 700),
    }
}

/// The page.
pub(super) fn make(needs: &Needs) -> Result<Sheet, Findings> {
    let (box_w, box_h) = (needs.room.full_w, needs.room.body_h.saturating_sub(NAME));
    let p = &needs.picture;
    let mut art = Art {
        name: p.name.clone(),
        alt: p.alt.clone(),
        hash: p.hash.clone(),
        width: p.width,
        height: p.height,
        at: p.at.clone(),
        svg: None,
    };
    if let Some(flat) = &needs.flat {
        let (outer, inner) = lines(needs.band);
        let pen = Pen { outer, inner, box_w, box_h, solid_eyes: needs.solid_eyes };
        let drawn = outline(flat, pen).map_err(|e| {
            let finding = Finding::error(
                "picture-lines",
                format!("no outlines can be drawn from `{}`: {e}", p.name),
            )
            .at(&p.at);
            Findings::from(
                finding.remedy(format!("draw a line picture and call it `{}-line`", p.name)),
            )
        })?;
        art.width = drawn.width;
        art.height = drawn.height;
        art.svg = Some(drawn.svg);
    }
    Ok(Sheet { art, box_w, box_h, letters: needs.letters.clone() })
}

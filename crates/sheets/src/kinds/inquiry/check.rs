//! Is every box on the page, in its place and large enough?

use super::{Fill, Needs, NotebookBox, Sheet, Use};
use findings::{Finding, Findings};
use proof::{Laid, Proof};
use study::Band;

/// Least space between two boxes, µm: a frame must not look like a double line. Common practice, no source.
const CLEAR: u32 = 3000;
/// Smallest box, µm: its name and one line to write on; common practice, no source.
const LEAST_W: u32 = 60_000;
const LEAST_H: u32 = 24_000;
/// Tolerance on paper, µm.
const SLIP: i64 = 200;

/// The proof of a page.
pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    proof.count("boxes", sheet.boxes.len());
    let wanted: Vec<String> = needs.boxes.iter().map(|b| b.title.plain()).collect();
    let printed: Vec<String> = sheet.boxes.iter().map(|b| b.title.plain()).collect();
    proof.demand(
        wanted == printed,
        "boxes-other",
        "the boxes on the page are not the ones that the notebook names, in their order",
    );
    let hints = needs.boxes.iter().zip(&sheet.boxes).all(|(n, b)| n.hint == b.hint);
    proof.demand(hints, "hint-other", "a box has another box's hint");
    for (i, one) in sheet.boxes.iter().enumerate() {
        let name = one.title.plain();
        let inside = one.x + one.w <= needs.room.full_w && one.y + one.h <= needs.room.body_h;
        proof.demand(inside, "box-outside", format!("the box `{name}` runs off the page"));
        proof.demand(
            one.w >= LEAST_W && one.h >= LEAST_H,
            "box-small",
            format!("the box `{name}` is too small to write in"),
        );
        for other in &sheet.boxes[..i] {
            proof.demand(
                apart(one, other),
                "boxes-meet",
                format!("the boxes `{}` and `{name}` meet", other.title.plain()),
            );
        }
    }
    papers(needs, sheet, &mut proof);
    let used: u64 = sheet.boxes.iter().map(|b| u64::from(b.w) * u64::from(b.h)).sum();
    let whole = u64::from(needs.room.full_w) * u64::from(needs.room.body_h);
    proof.count("page used, per cent", used * 100 / whole.max(1));
    proof.demand(
        used * 100 >= whole * 75,
        "page-empty",
        "the boxes leave a quarter of the page empty",
    );
    proof
}

fn apart(a: &NotebookBox, b: &NotebookBox) -> bool {
    a.x + a.w + CLEAR <= b.x
        || b.x + b.w + CLEAR <= a.x
        || a.y + a.h + CLEAR <= b.y
        || b.y + b.h + CLEAR <= a.y
}

/// Lines for those who write, none for those who do not yet, dots only where something is drawn.
fn papers(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    for (need, one) in needs.boxes.iter().zip(&sheet.boxes) {
        let right = match one.fill {
            Fill::Lines => need.used != Use::Draw && needs.band != Band::A,
            Fill::Dots => need.used == Use::Draw && matches!(needs.band, Band::C | Band::D),
            Fill::Blank => {
                needs.band == Band::A || (need.used == Use::Draw && needs.band == Band::B)
            }
        };
        proof.demand(
            right,
            "box-paper",
            format!("the box `{}` has the wrong paper for what is done in it", one.title.plain()),
        );
    }
}

/// Confirms that each box is laid out with its size.
pub(super) fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let marks: Vec<_> = laid.marks("box").map(|(_, m)| m).collect();
    let mut out = Findings::none();
    if marks.len() != sheet.boxes.len() {
        out.push(Finding::error(
            "boxes-laid",
            format!("{} of {} boxes stand on the page", marks.len(), sheet.boxes.len()),
        ));
        return out;
    }
    for (one, mark) in sheet.boxes.iter().zip(marks) {
        let same =
            (mark.w - i64::from(one.w)).abs() <= SLIP && (mark.h - i64::from(one.h)).abs() <= SLIP;
        if !same {
            out.push(Finding::error(
                "box-laid",
                format!("the box `{}` is laid out in another size", one.title.plain()),
            ));
        }
    }
    out
}

//! Is every prompt on the pages once, with enough paper that really fits?

use super::{Needs, Sheet, Slot};
use crate::estimate::Setting;
use findings::{Finding, Findings};
use proof::{Laid, Proof};
use study::Band;

/// Lines that a child of the band needs for an answer of a few sentences; common practice, no source.
fn least(band: Band) -> u32 {
    match band {
        Band::A => 1,
        Band::B => 3,
        Band::C => 4,
        Band::D => 6,
    }
}

/// The proof of the pages.
pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let slots: Vec<&Slot> = sheet.pages.iter().flat_map(|p| &p.slots).collect();
    proof.count("prompts", slots.len());
    proof.count("pages", sheet.pages.len());
    proof.count("lines", slots.iter().map(|s| s.lines).sum::<u32>());
    proof.demand(
        slots.len() == needs.themes.len(),
        "prompts-count",
        "not every prompt stands on the pages once",
    );
    for (i, (slot, theme)) in slots.iter().zip(&needs.themes).enumerate() {
        proof.demand(
            usize::try_from(slot.n) == Ok(i + 1),
            "prompt-number",
            format!("prompt {} has the wrong number", i + 1),
        );
        proof.demand(
            slot.prompt == theme.prompt,
            "prompt-other",
            format!("prompt {} is not printed as written", i + 1),
        );
        proof.demand(
            slot.picture == theme.picture,
            "prompt-picture",
            format!("prompt {} has another picture", i + 1),
        );
        proof.demand(
            slot.frame == (needs.band == Band::A),
            "prompt-frame",
            format!("prompt {} has the wrong paper for the age", i + 1),
        );
        proof.demand(
            slot.lines >= least(needs.band),
            "prompt-lines",
            format!("prompt {} has {} lines to write on", i + 1, slot.lines),
        );
    }
    room(needs, sheet, &mut proof);
    proof
}

/// Each prompt with its lines is no higher than its place, and the places are no higher than the page.
fn room(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let setting = Setting::of(needs.band, needs.room.large_print);
    // The first line of the body hangs below its top: 0.28 of a beat is no room to write in.
    let whole = u64::from(needs.room.body_h.saturating_sub(setting.beat * 28 / 100));
    for page in &sheet.pages {
        let count = u64::try_from(page.slots.len()).unwrap_or(u64::MAX);
        proof.demand(count > 0, "prompts-empty", "a page has no prompt");
        proof.demand(
            count <= u64::from(needs.per_page),
            "prompts-crowded",
            "a page has more prompts than were asked for",
        );
        proof.demand(
            count * u64::from(page.height) <= whole,
            "prompts-outside",
            "the places for the prompts are higher than the page",
        );
        for slot in &page.slots {
            let words = setting.lines(&slot.prompt.plain(), needs.room.main_w) * setting.beat;
            let high = words + slot.lines * setting.write;
            proof.demand(
                high <= page.height,
                "prompt-outside",
                format!("the lines of prompt {} run into the next", slot.n),
            );
        }
    }
}

/// Confirms that every prompt is laid out in order, each inside its place.
pub(super) fn check_page(sheet: &Sheet, laid: &Laid) -> Findings {
    let wanted: Vec<String> =
        sheet.pages.iter().flat_map(|p| &p.slots).map(|s| s.n.to_string()).collect();
    let found: Vec<&str> = laid.marks("prompt").map(|(_, m)| m.name.as_str()).collect();
    if found == wanted {
        return Findings::none();
    }
    Finding::error(
        "prompts-laid",
        format!("{} of {} prompts stand on the pages in order", found.len(), wanted.len()),
    )
    .into()
}

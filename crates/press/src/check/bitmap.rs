//! Whether bitmaps have pixels enough at the size at which they are printed.

use super::{Page, Report, say};
use findings::Finding;
use proof::LaidImage;

/// Pixels an inch that a photograph should have on paper (common practice, no source).
const WANTED: i64 = 200;
/// Pixels an inch below which its squares are seen (common practice, no source).
const LEAST: i64 = 100;
/// µm in an inch.
const INCH: i64 = 25_400;

pub(super) fn check(page: Page<'_>, report: &mut Report) {
    for image in &page.drawn.page.images {
        let Some(density) = density(image).filter(|density| *density < WANTED) else { continue };
        let name = if image.name.is_empty() {
            "a picture".to_owned()
        } else {
            format!("the picture {}", say::quoted(&image.name))
        };
        let across = image.pixels.map_or(0, |(across, _)| i64::from(across));
        let message = format!(
            "{name} has {density} pixels an inch on {}; {WANTED} are wanted",
            say::whereabouts(page)
        );
        let finding = match density < LEAST {
            true => Finding::error("picture-coarse", message),
            false => Finding::warning("picture-coarse", message),
        };
        let widest = say::mm(across * INCH / WANTED);
        let finding =
            finding.remedy(format!("use a larger file, or print this one no wider than {widest}"));
        report.push(page, image.field.as_ref(), finding);
    }
}

/// Pixels an inch in the poorer direction.
fn density(image: &LaidImage) -> Option<i64> {
    let (across, down) = image.pixels?;
    let along = |pixels: u32, um: i64| {
        i64::from(pixels).checked_mul(INCH)?.checked_div(um).filter(|_| um > 0)
    };
    along(across, image.w).min(along(down, image.h))
}

//! Whether texts are printed over each other.

use super::{Page, Report, say};
use crate::drawn::{Area, Ink, What};
use findings::Finding;

/// Share of the smaller text, in hundredths, that may be covered: tails of letters and
/// neighbours set close together touch each other's upright rectangles without harm.
const SHARE: i64 = 20;
/// Width and height in µm that both have to be exceeded.
const TOUCH: (i64, i64) = (250, 400);

pub(super) fn check(page: Page<'_>, report: &mut Report) {
    let mut texts: Vec<(&Ink, &str)> = page
        .drawn
        .inks
        .iter()
        .filter(|ink| ink.upright && !ink.reduced)
        .filter_map(|ink| match ink.what {
            What::Text(n) => Some((ink, page.drawn.page.texts.get(n)?.text.as_str())),
            _ => None,
        })
        .collect();
    texts.sort_by_key(|(ink, _)| (ink.area.top, ink.area.left));
    for (n, (upper, text)) in texts.iter().enumerate() {
        let near = texts[n + 1..].iter().take_while(|(ink, _)| ink.area.top < upper.area.bottom);
        for (lower, other) in near {
            // The same letters twice in one place are drawn so on purpose: hollow under dotted.
            if text != other && collide(upper.area, lower.area) {
                tell(page, report, (upper, text), (lower, other));
            }
        }
    }
}

fn collide(one: Area, other: Area) -> bool {
    let Some(common) = one.common(other) else { return false };
    let size = |area: Area| area.width().max(1) * area.height().max(1);
    common.width() > TOUCH.0
        && common.height() > TOUCH.1
        && size(common) * 100 > size(one).min(size(other)) * SHARE
}

fn tell(page: Page<'_>, report: &mut Report, upper: (&Ink, &str), lower: (&Ink, &str)) {
    let (one, other) = (say::quoted(upper.1), say::quoted(lower.1));
    let message =
        format!("{one} and {other} are printed over each other on {}", say::whereabouts(page));
    let blamed = if upper.0.field.is_some() { upper.0 } else { lower.0 };
    let finding = Finding::error("text-overlap", message).remedy(say::make_room(blamed));
    report.push(page, blamed.field.as_deref(), finding);
}

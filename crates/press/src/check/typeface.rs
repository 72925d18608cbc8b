//! Whether each letter is there and large enough to read.

use super::{Page, Report, say};
use crate::drawn::{Ink, What};
use findings::Finding;
use proof::LaidText;
use serde_json::Value;

/// Smallest type, hundredths of a point (common practice, no source).
const SMALLEST: i64 = 900;
/// Smallest type for a child of 3 to 6, hundredths of a point (common practice, no source).
const SMALLEST_YOUNG: i64 = 1_100;
/// Rounding of a scaled size.
const SLACK: i64 = 5;
/// The age band of the youngest.
const YOUNG: &str = "3-6";

pub(super) fn check(page: Page<'_>, report: &mut Report) {
    let young = page.sheet.is_some_and(|sheet| {
        sheet.word("band") == Some(YOUNG) && sheet.meta.get("adult") != Some(&Value::Bool(true))
    });
    for ink in &page.drawn.inks {
        let What::Text(number) = ink.what else { continue };
        let Some(text) = page.drawn.page.texts.get(number) else { continue };
        let limit = if young && !ink.frame && !ink.adult && !page.drawn.leaf.adult {
            SMALLEST_YOUNG
        } else {
            SMALLEST
        };
        if !ink.reduced && text.size + SLACK < limit {
            report.push(page, ink.field.as_deref(), small(page, text, ink, limit));
        }
    }
    for (number, letters) in &page.drawn.missing {
        let Some(text) = page.drawn.page.texts.get(*number) else { continue };
        report.push(page, text.field.as_ref(), missing(page, text, letters));
    }
}

fn small(page: Page<'_>, text: &LaidText, ink: &Ink, limit: i64) -> Finding {
    let reader = if limit == SMALLEST_YOUNG { "a child of 3 to 6" } else { "anyone" };
    let message = format!(
        "{} is printed at {} pt on {}, too small for {reader}; {} pt is the least",
        say::quoted(&text.text),
        points(text.size),
        say::whereabouts(page),
        points(limit),
    );
    let finding = match limit == SMALLEST_YOUNG && text.size + SLACK >= SMALLEST {
        true => Finding::warning("type-small", message),
        false => Finding::error("type-small", message),
    };
    finding.remedy(say::make_room(ink))
}

fn missing(page: Page<'_>, text: &LaidText, letters: &str) -> Finding {
    let message = format!(
        "the typeface `{}` has no `{letters}`, which {} on {} needs",
        text.font,
        say::quoted(&text.text),
        say::whereabouts(page),
    );
    Finding::error("glyph-missing", message).remedy("write it with letters that the typeface has")
}

/// Points with at most one decimal.
fn points(hundredths: i64) -> String {
    let tenths = (hundredths + 5) / 10;
    match tenths % 10 {
        0 => (tenths / 10).to_string(),
        rest => format!("{}.{rest}", tenths / 10),
    }
}

//! Whether everything lies inside the field, the body's zone, and what home printers reach.

use super::{Page, Report, say};
use crate::drawn::{Area, Ink, What};
use crate::walk::PICTURE;
use findings::Finding;

/// The field that fits both papers, µm (197 × 260 mm).
const FIELD: (i64, i64) = (197_000, 260_000);
/// What home printers leave white at the sides and the top: 0.25 in (common practice, no source).
const MARGIN: i64 = 6_350;
/// What they leave white at the foot: 0.5 in (common practice, no source).
const MARGIN_FOOT: i64 = 12_700;
/// Half the weight of the heaviest rule, for lines drawn on the edge itself.
const SLACK_FIELD: i64 = 200;
/// Rounding.
const SLACK_MARGIN: i64 = 50;
/// How far a base line or a marked item may sink below the body's last line.
const SLACK_BODY: i64 = 500;

pub(super) fn check(page: Page<'_>, report: &mut Report) {
    grown(page, report);
    let zones = Zones::of(page);
    for ink in page.drawn.inks.iter().filter(|ink| !picture_mark(page, ink)) {
        if let Some(finding) = zones.fault(page, ink) {
            report.push(page, ink.field.as_deref(), finding);
        }
    }
}

/// The picture itself follows its mark.
fn picture_mark(page: Page<'_>, ink: &Ink) -> bool {
    let What::Mark(number) = ink.what else { return false };
    page.drawn.page.marks.get(number).is_some_and(|mark| mark.kind == PICTURE)
}

/// A leaf of one page that took two.
fn grown(page: Page<'_>, report: &mut Report) {
    let leaf = &page.drawn.leaf;
    if leaf.said && !leaf.start && !leaf.flow {
        let sheet = say::whereabouts(page);
        let finding = Finding::error("page-grown", format!("{sheet} needs more than its one page"))
            .remedy("give the sheet fewer or shorter items, or make two of it");
        report.push(page, None, finding);
    }
}

struct Zones {
    paper: Area,
    reach: Area,
    field: Option<Area>,
    body_end: Option<i64>,
    foot: Option<i64>,
}

impl Zones {
    fn of(page: Page<'_>) -> Self {
        let laid = &page.drawn.page;
        let leaf = &page.drawn.leaf;
        let (left, top) = (laid.field_x, laid.field_y);
        Self {
            paper: Area { left: 0, top: 0, right: laid.width, bottom: laid.height },
            reach: Area {
                left: MARGIN,
                top: MARGIN,
                right: laid.width - MARGIN,
                bottom: laid.height - MARGIN_FOOT,
            },
            field: leaf.said.then_some(Area {
                left,
                top,
                right: left + FIELD.0,
                bottom: top + FIELD.1,
            }),
            body_end: leaf.body_end.filter(|_| leaf.said && !leaf.flow),
            foot: leaf.foot.filter(|_| leaf.said && !leaf.flow),
        }
    }

    fn fault(&self, page: Page<'_>, ink: &Ink) -> Option<Finding> {
        let (code, what) = if !self.paper.holds(ink.area, SLACK_MARGIN) {
            ("page-overflow", "does not fit on the paper".to_owned())
        } else if !self.reach.holds(ink.area, SLACK_MARGIN) {
            ("page-margin", "stands where home printers do not print".to_owned())
        } else if self.field.is_some_and(|field| !field.holds(ink.area, SLACK_FIELD)) {
            (
                "page-overflow",
                "stands outside the part of the page that fits both papers".to_owned(),
            )
        } else {
            let over = self.below(page, ink).filter(|_| !ink.frame)?;
            ("page-below", format!("runs {} into the foot of the page", say::mm(over)))
        };
        let message = format!("{} {what} on {}", say::item(page, ink), say::whereabouts(page));
        Some(Finding::error(code, message).remedy(say::make_room(ink)))
    }
    /// How far an item sinks below its zone. A text stands on its base line, for the body's last
    /// line is a line to write on; cut lines reach beyond their cards up to the foot.
    fn below(&self, page: Page<'_>, ink: &Ink) -> Option<i64> {
        let over = match ink.what {
            What::Text(n) => page.drawn.page.texts.get(n)?.y - self.body_end?,
            What::Mark(_) | What::Image(_) => ink.area.bottom - self.body_end?,
            What::Shape => ink.area.bottom - self.foot?,
        };
        (over > SLACK_BODY).then_some(over)
    }
}

//! Checks of the laid-out page: what must be true on paper, whatever the kind of sheet.
//!
//! The typesetting library warns neither of a page that runs over nor of a missing letter, and
//! knows nothing of home printers and young eyes.

mod bitmap;
mod edges;
mod overlap;
mod say;
mod typeface;

use crate::drawn::Drawn;
use crate::letters::printable;
use crate::{Document, Job, SheetIn};
use findings::{Finding, Findings, Place};
use std::collections::BTreeSet;

/// Everything that is wrong on the pages.
pub(crate) fn pages(drawn: &[Drawn], job: &Job) -> Findings {
    let mut findings = Findings::none();
    for one in drawn {
        let page = Page { drawn: one, sheet: job.sheet(&one.sheet) };
        let mut report = Report::default();
        edges::check(page, &mut report);
        typeface::check(page, &mut report);
        bitmap::check(page, &mut report);
        overlap::check(page, &mut report);
        findings.append(report.findings);
    }
    findings
}

/// Letters of the study's own lines that cannot be printed: every page would show a stand-in.
pub(crate) fn document(document: &Document) -> Findings {
    let lines = [
        (&document.study, "title"),
        (&document.author, "author"),
        (&document.press, "press"),
        (&document.subject, "subtitle"),
    ];
    let told = lines.into_iter().filter_map(|(line, field)| {
        let letter = line.chars().find(|c| !printable(*c))?;
        let message = format!("no typeface has the `{letter}` of {}", say::quoted(line));
        let finding = Finding::error("glyph-missing", message)
            .at(&Place::new("study.toml", field))
            .remedy("write it with letters that the typeface has");
        Some(finding)
    });
    told.collect()
}

/// A page and the sheet that it belongs to.
#[derive(Clone, Copy)]
struct Page<'a> {
    drawn: &'a Drawn,
    sheet: Option<&'a SheetIn>,
}

/// The findings of one page: each fault once for each field of the author's, for a text that
/// runs over brings all its lines with it.
#[derive(Default)]
struct Report {
    findings: Findings,
    told: BTreeSet<(String, Option<Place>)>,
}

impl Report {
    fn push(&mut self, page: Page<'_>, place: Option<&Place>, finding: Finding) {
        if !self.told.insert((finding.code.clone(), place.cloned())) {
            return;
        }
        let finding = match place {
            Some(place) => finding.at(place),
            None => finding,
        };
        self.findings.push(match page.sheet {
            Some(sheet) => finding.on(&sheet.id),
            None => finding,
        });
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::drawn::LeafFacts;

    fn second_page(flow: bool, start: bool) -> Drawn {
        let leaf = LeafFacts { said: true, flow, start, ..LeafFacts::default() };
        Drawn { leaf, ..Drawn::default() }
    }

    fn codes(drawn: Drawn) -> Vec<String> {
        let mut report = Report::default();
        let page = Page { drawn: &drawn, sheet: None };
        edges::check(page, &mut report);
        report.findings.into_iter().map(|finding| finding.code).collect()
    }

    #[test]
    fn a_fixed_leaf_may_not_grow_a_page_and_a_flowing_one_may() {
        assert_eq!(codes(second_page(false, false)), ["page-grown"]);
        assert!(codes(second_page(true, false)).is_empty());
        assert!(codes(second_page(false, true)).is_empty());
    }
}

//! The order of the steps: plan, needs, make, check, key, press, check_page, files.

use crate::cache::Cache;
use crate::job::{self, Copy, Spoilt};
use crate::lexicon;
use crate::making::{self, Outcome, Workshop};
use crate::plan::{self, Plan};
use findings::{Finding, Findings, Severity};
use press::Pressed;
use proof::Laid;
use sheets::{Gathered, Room};
use std::time::{Duration, Instant};
use study::Study;

/// A study with every sheet made and proved, not yet pressed.
pub struct Proved {
    /// What happened to each planned sheet, in printing order.
    pub outcomes: Vec<Outcome>,
    /// The same sheets as gathering kinds see them.
    pub gathered: Gathered,
    /// Everything found so far, the reader's findings not included.
    pub findings: Findings,
    /// Time for planning, making and proving.
    pub took: Duration,
}

/// A study laid out on one paper.
pub struct Printed {
    /// The pressed file.
    pub pressed: Pressed,
    /// What the page checks found.
    pub findings: Findings,
    /// Time for laying out and checking the pages.
    pub took: Duration,
}

/// Plans, makes and proves everything.
pub fn prove(study: &Study, cache: &Cache) -> Proved {
    let start = Instant::now();
    let Plan { sheets, mut findings } = plan::plan(study);
    let plan = Plan { sheets, findings: Findings::none() };
    if plan.sheets.is_empty() && !findings.has_errors() {
        findings.push(
            Finding::error("nothing-to-print", "there is nothing to print yet")
                .at(&findings::Place::file("study.toml"))
                .remedy("add twelve words to words.csv, or a lesson in lessons/"),
        );
    }
    let shop = Workshop { study, lexicon: lexicon::lexicon(), room: Room::PLAIN, cache };
    let (outcomes, gathered) = making::make_all(&shop, &plan);
    for outcome in &outcomes {
        findings.append(outcome.findings.clone());
    }
    findings.append(job::unused_pictures(study, &gathered));
    Proved { outcomes, gathered, findings, took: start.elapsed() }
}

impl Proved {
    /// Lays the whole study out on a paper and checks the pages. A sheet that fails on the page is
    /// not printed: its place says what is wrong.
    ///
    /// # Errors
    /// Findings when the press cannot lay the pages out at all.
    pub fn print(&self, study: &Study, copy: Copy) -> Result<Printed, Findings> {
        let start = Instant::now();
        let mut spoilt = Spoilt::new();
        loop {
            let job = job::whole(study, &self.outcomes, &self.gathered, &spoilt, copy)?;
            let (pressed, findings) = match press::lay(job) {
                Ok(pressed) => {
                    let findings = self.check_pages(&pressed, &spoilt);
                    (Some(pressed), findings)
                }
                Err(findings) => (None, findings),
            };
            let failed = self.failed(&findings, &spoilt);
            match pressed {
                Some(pressed) if failed.is_empty() => {
                    let mut all: Findings = spoilt.into_values().flatten().collect();
                    all.append(findings);
                    return Ok(Printed { pressed, findings: all.sorted(), took: start.elapsed() });
                }
                None if failed.is_empty() => return Err(findings),
                _ => spoilt.extend(failed),
            }
        }
    }

    /// Sheets that errors name and that are still printed. Each round adds at least one, so the rounds end.
    fn failed(&self, findings: &Findings, spoilt: &Spoilt) -> Spoilt {
        let mut failed = Spoilt::new();
        for finding in findings.iter().filter(|f| f.severity == Severity::Error) {
            let Some(id) = &finding.sheet else { continue };
            let printed = self.outcome(id).is_some_and(|o| o.made.is_some());
            if printed && !spoilt.contains_key(id) {
                failed.entry(id.clone()).or_default().push(finding.clone());
            }
        }
        failed
    }

    /// What is wrong on the laid-out pages: the press's own rules, then each kind's.
    fn check_pages(&self, pressed: &Pressed, spoilt: &Spoilt) -> Findings {
        let mut findings = pressed.findings();
        for outcome in &self.outcomes {
            let Some(made) = &outcome.made else { continue };
            if spoilt.contains_key(&outcome.planned.id) {
                continue;
            }
            let laid = pressed.laid().iter().find(|l| l.sheet == outcome.planned.id);
            findings.append(page_findings(outcome, made, laid));
        }
        findings
    }

    /// The outcome of one sheet by id.
    pub fn outcome(&self, id: &str) -> Option<&Outcome> {
        self.outcomes.iter().find(|o| o.planned.id == id)
    }

    /// Number of a sheet in the key.
    pub fn key_number(&self, id: &str) -> Option<u32> {
        self.gathered.entries.iter().find(|e| e.id == id).and_then(|e| e.key_number)
    }
}

fn page_findings(outcome: &Outcome, made: &sheets::adapter::Made, laid: Option<&Laid>) -> Findings {
    let planned = &outcome.planned;
    let found = match laid {
        Some(laid) => planned.kind.check_page(&made.sheet, laid),
        None => {
            Finding::error("sheet-not-laid", format!("the sheet `{}` has no page", made.head.title))
                .into()
        }
    };
    let named = found.into_iter().map(|mut f| {
        f.sheet.get_or_insert_with(|| planned.id.clone());
        if f.place.is_none() {
            f.place = Some(planned.place.clone());
        }
        f
    });
    named.collect()
}

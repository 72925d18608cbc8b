//! What the command line and the studio ask for: build the files, check everything, print one sheet.

use crate::build::{Printed, Proved, prove};
use crate::cache::Cache;
use crate::job::{self, Copy};
use crate::making::{self, Outcome, Workshop};
use crate::plan::Planned;
use crate::{files, lexicon};
use findings::{Finding, Findings};
use press::{Paper, Pressed};
use sheets::Room;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use study::Study;

/// What a build should write.
#[derive(Debug, Clone)]
pub struct Request {
    /// Papers, one file each.
    pub papers: Vec<Paper>,
    /// Folder for the files.
    pub out: PathBuf,
    /// Refuse to write while something is wanted.
    pub clean: bool,
}

/// A written file.
#[derive(Debug, Clone)]
pub struct Written {
    /// Where it is.
    pub path: PathBuf,
    /// How many pages it has.
    pub pages: usize,
    /// Its size in bytes.
    pub bytes: usize,
}

/// What a build did.
#[derive(Debug, Default)]
pub struct Built {
    /// Files written, in order.
    pub files: Vec<Written>,
    /// Pages of the whole study on the first paper.
    pub pages: usize,
    /// Everything found, the reader's findings included.
    pub findings: Findings,
    /// True when the pages are marked as a proof copy.
    pub proof_copy: bool,
    /// True when a clean copy was asked for and refused.
    pub refused: bool,
    /// True when a file could not be written.
    pub disk_failed: bool,
    /// Where the time went.
    pub times: Vec<(String, Duration)>,
    /// Sheets made in this build.
    pub made: usize,
    /// Sheets that came from the cache or were kept.
    pub remembered: usize,
}

/// Builds the files of a study.
///
/// `found` is what the reader found; `step` is told what is being done.
pub fn build(
    folder: &Path,
    study: &Study,
    found: Findings,
    request: &Request,
    step: &dyn Fn(&str),
) -> Built {
    step("making and proving the sheets");
    let proved = prove(study, &Cache::of(folder));
    let mut built = Built { findings: found, ..Built::default() };
    built.note_making(&proved);
    let proof = built.findings.blocks_clean();
    let mut printed = Vec::new();
    // One paper after the other: side by side they save little time and take twice the memory.
    for paper in &request.papers {
        step(&format!("laying out the pages, {}", name(*paper)));
        let result = print_or_mark(study, &proved, *paper, proof);
        press::forget();
        printed.extend(built.note_paper(*paper, result).map(|pressed| (*paper, pressed)));
    }
    built.proof_copy = built.findings.blocks_clean();
    built.refused = request.clean && built.proof_copy;
    if !built.refused {
        step("writing the files");
        for (paper, pressed) in printed {
            built.write(study, &proved, paper, &pressed, request);
        }
    }
    built.findings = std::mem::take(&mut built.findings).sorted();
    built
}

impl Built {
    fn note_making(&mut self, proved: &Proved) {
        self.findings.append(proved.findings.clone());
        self.remembered = proved.outcomes.iter().filter(|o| o.remembered).count();
        self.made = proved.outcomes.len() - self.remembered;
        self.times.push(("making and proving, wall clock".to_owned(), proved.took));
        for (kind, n, took) in making::by_kind(&proved.outcomes) {
            self.times.push((format!("  {kind} ({n}), summed over threads"), took));
        }
    }

    fn note_paper(&mut self, paper: Paper, result: Result<Printed, Findings>) -> Option<Pressed> {
        match result {
            Ok(printed) => {
                self.findings.append(printed.findings);
                let what = format!("laying out and checking pages, {}", name(paper));
                self.times.push((what, printed.took));
                self.pages = self.pages.max(printed.pressed.page_count());
                Some(printed.pressed)
            }
            Err(findings) => {
                self.findings.append(findings);
                None
            }
        }
    }

    fn write(
        &mut self,
        study: &Study,
        proved: &Proved,
        paper: Paper,
        pressed: &Pressed,
        request: &Request,
    ) {
        let slug = files::slug(&study.title.plain());
        let start = Instant::now();
        self.save(
            &request.out,
            &format!("{slug}-{}.pdf", name(paper)),
            pressed.page_count(),
            pressed.pdf(),
        );
        self.times.push((format!("writing the PDF, {}", name(paper)), start.elapsed()));
        self.write_list(study, proved, paper, pressed, request);
    }

    /// The list of contents to show buyers: one page, with the page numbers of the whole file.
    fn write_list(
        &mut self,
        study: &Study,
        proved: &Proved,
        paper: Paper,
        pressed: &Pressed,
        request: &Request,
    ) {
        let Some(contents) = proved.outcomes.iter().find(|o| o.planned.about().id == "contents")
        else {
            return;
        };
        let mut planned = contents.planned.clone();
        planned.options.insert("short".to_owned(), study::Value::Flag(true));
        let outcome = make_again(study, &Cache::none(), proved, &planned);
        let copy = Copy { paper, proof: self.proof_copy };
        let list = job::alone(study, &outcome, None, page_numbers(pressed), copy);
        let file = format!("{}-contents-{}.pdf", files::slug(&study.title.plain()), name(paper));
        match list.and_then(press::lay) {
            Ok(list) => self.save(&request.out, &file, list.page_count(), list.pdf()),
            Err(findings) => self.findings.append(findings),
        }
    }

    fn save(&mut self, out: &Path, name: &str, pages: usize, pdf: Result<Vec<u8>, Findings>) {
        let bytes = match pdf {
            Ok(bytes) => bytes,
            Err(findings) => return self.findings.append(findings),
        };
        match files::write(out, name, &bytes) {
            Ok(path) => self.files.push(Written { path, pages, bytes: bytes.len() }),
            Err(finding) => {
                self.disk_failed = true;
                self.findings.push(finding);
            }
        }
    }
}

/// Whether a copy has to be marked may turn out only on the laid-out page; then it is laid out again, marked.
fn print_or_mark(
    study: &Study,
    proved: &Proved,
    paper: Paper,
    proof: bool,
) -> Result<Printed, Findings> {
    let printed = proved.print(study, Copy { paper, proof })?;
    if proof || !printed.findings.blocks_clean() {
        return Ok(printed);
    }
    proved.print(study, Copy { paper, proof: true })
}

/// First page of each sheet, as printed.
fn page_numbers(pressed: &Pressed) -> BTreeMap<String, u32> {
    let first =
        |l: &proof::Laid| pressed.pages_of(&l.sheet).map(|pages| (l.sheet.clone(), *pages.start()));
    pressed.laid().iter().filter_map(first).collect()
}

/// The paper as it stands in file names.
fn name(paper: Paper) -> &'static str {
    match paper {
        Paper::Letter => "letter",
        Paper::A4 => "a4",
    }
}

/// What a check found.
#[derive(Debug)]
pub struct Checked {
    /// Everything found.
    pub findings: Findings,
    /// Planned sheets.
    pub sheets: usize,
    /// Sheets whose proof holds, on paper too.
    pub proved: usize,
}

/// Makes, proves and lays out everything on both papers, and writes nothing.
pub fn check(folder: &Path, study: &Study, found: Findings, step: &dyn Fn(&str)) -> Checked {
    step("making and proving the sheets");
    // Reading from the cache would be harmless, but a check must not write to the folder.
    let cache =
        if folder.join(".battledore/cache").is_dir() { Cache::of(folder) } else { Cache::none() };
    let proved = prove(study, &cache);
    let mut findings = found;
    findings.append(proved.findings.clone());
    for paper in [Paper::Letter, Paper::A4] {
        step(&format!("laying out the pages, {}", name(paper)));
        match proved.print(study, Copy { paper, proof: findings.blocks_clean() }) {
            Ok(printed) => findings.append(printed.findings),
            Err(found) => findings.append(found),
        }
        press::forget();
    }
    let findings = findings.sorted();
    let failed = |o: &&Outcome| {
        o.made.is_some()
            && !findings.iter().any(|f| {
                f.severity == findings::Severity::Error && f.sheet.as_ref() == Some(&o.planned.id)
            })
    };
    let good = proved.outcomes.iter().filter(failed).count();
    Checked { sheets: proved.outcomes.len(), proved: good, findings }
}

/// One sheet laid out alone.
pub struct OneSheet {
    /// Its id.
    pub id: String,
    /// Its pages.
    pub pressed: Pressed,
    /// What was found on it.
    pub findings: Findings,
    /// What its proof recomputed.
    pub counted: Vec<(String, String)>,
}

/// Makes and lays out one sheet. `again` throws the dice anew without changing the study.
///
/// # Errors
/// Findings when no sheet is meant by that name, or it cannot be made or laid out.
pub fn one_sheet(
    folder: &Path,
    study: &Study,
    wanted: &str,
    again: Option<u32>,
    paper: Paper,
) -> Result<OneSheet, Findings> {
    let cache = Cache::of(folder);
    let proved = prove(study, &cache);
    let outcome = pick(study, &proved, wanted)?;
    let thrown = again.map(|again| {
        let planned = Planned { again, ..outcome.planned.clone() };
        make_again(study, &cache, &proved, &planned)
    });
    let outcome = thrown.as_ref().unwrap_or(outcome);
    let Some(made) = &outcome.made else { return Err(outcome.findings.clone()) };
    let id = outcome.planned.id.clone();
    let copy = Copy { paper, proof: false };
    let job = job::alone(study, outcome, proved.key_number(&id), BTreeMap::new(), copy)?;
    let pressed = press::lay(job)?;
    let mut findings = outcome.findings.clone();
    findings.append(pressed.findings());
    if let Some(laid) = pressed.laid().first() {
        findings.append(outcome.planned.kind.check_page(&made.sheet, laid));
    }
    Ok(OneSheet { id, pressed, findings: findings.sorted(), counted: made.proof.counted.clone() })
}

/// Makes a sheet that differs from the plan's in its options or its throw of the dice.
fn make_again(study: &Study, cache: &Cache, proved: &Proved, planned: &Planned) -> Outcome {
    let shop = Workshop { study, lexicon: lexicon::lexicon(), room: Room::PLAIN, cache };
    making::make_one(&shop, planned, &proved.gathered)
}

/// The outcome that an author means: a full id, `owner.kind`, `owner.kind.name`, or a kind alone.
///
/// # Errors
/// A finding when none is meant; the first in printing order when several are.
pub fn pick<'a>(study: &Study, proved: &'a Proved, wanted: &str) -> Result<&'a Outcome, Finding> {
    crate::pick::pick(study, &proved.outcomes, wanted)
}

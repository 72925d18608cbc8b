//! Needs, making and proving of all planned sheets: first those that stand alone, then those that gather.

use crate::cache::Cache;
use crate::gather;
use crate::plan::{Plan, Planned};
use craft::Dice;
use findings::{Finding, Findings};
use rayon::prelude::*;
use sheets::adapter::Made;
use sheets::{Ask, Gathered, Lexicon, Room};
use std::collections::BTreeMap;
use std::time::{Duration, Instant};
use study::Study;

/// A planned sheet after making: proved, or with the reasons why not.
pub struct Outcome {
    /// What was planned.
    pub planned: Planned,
    /// The proved sheet; none when it may not be printed.
    pub made: Option<Made>,
    /// What stands against it, or is worth saying.
    pub findings: Findings,
    /// Came from the cache or was kept.
    pub remembered: bool,
    /// Time for needs, making and proving.
    pub took: Duration,
}

/// What making needs besides the plan.
pub struct Workshop<'a> {
    /// The study.
    pub study: &'a Study,
    /// Word lists.
    pub lexicon: &'a Lexicon,
    /// Space on the page.
    pub room: Room,
    /// Made sheets of earlier builds.
    pub cache: &'a Cache,
}

/// Makes and proves every sheet of the plan, in parallel; the order of the result is the plan's.
pub fn make_all(shop: &Workshop<'_>, plan: &Plan) -> (Vec<Outcome>, Gathered) {
    let alone = Gathered::default();
    let first: Vec<Option<Outcome>> = plan
        .sheets
        .par_iter()
        .map(|sheet| (!sheet.about().gathers).then(|| make_one(shop, sheet, &alone)))
        .collect();
    let gathered = gather::entries(shop.study, plan, &first);
    let outcomes = plan
        .sheets
        .par_iter()
        .zip(first)
        .map(|(sheet, done)| done.unwrap_or_else(|| make_one(shop, sheet, &gathered)))
        .collect();
    (outcomes, gathered)
}

/// Makes (or remembers) and proves one sheet.
pub fn make_one(shop: &Workshop<'_>, sheet: &Planned, gathered: &Gathered) -> Outcome {
    let start = Instant::now();
    let (result, remembered) = match ask(shop, sheet, gathered) {
        Ok(needs) => from_needs(shop, sheet, &needs),
        Err(findings) => (Err(findings), false),
    };
    let (made, findings) = match result {
        Ok(made) if made.proof.holds() => {
            let findings = made.proof.findings.clone();
            (Some(made), findings)
        }
        Ok(made) => (None, made.proof.findings),
        Err(findings) => (None, findings),
    };
    let findings = findings.into_iter().map(|f| place(f, sheet)).collect();
    Outcome { planned: sheet.clone(), made, findings, remembered, took: start.elapsed() }
}

fn ask(shop: &Workshop<'_>, sheet: &Planned, gathered: &Gathered) -> Result<String, Findings> {
    sheet.kind.needs(&Ask {
        study: shop.study,
        owner: sheet.owner,
        sheet: &sheet.id,
        options: &sheet.options,
        band: sheet.band,
        level: sheet.level,
        language: &shop.study.language,
        room: shop.room,
        lexicon: shop.lexicon,
        gathered,
    })
}

fn from_needs(shop: &Workshop<'_>, sheet: &Planned, needs: &str) -> (Result<Made, Findings>, bool) {
    if let Some(kept) = shop.study.kept.get(&sheet.id) {
        return (kept_sheet(sheet, kept, needs), true);
    }
    let key = Cache::key(&shop.study.id, sheet, &shop.study.language, needs);
    if let Some(stored) = shop.cache.get(&key)
        && let Ok(made) = sheet.kind.prove(needs, &stored)
        && made.proof.holds()
    {
        return (Ok(made), true);
    }
    let mut dice = Dice::for_sheet(&shop.study.id, &sheet.id, sheet.again);
    let made = sheet.kind.make(needs, &mut dice);
    if let Ok(made) = &made
        && made.proof.holds()
    {
        shop.cache.put(&key, &made.sheet);
    }
    (made, false)
}

fn kept_sheet(sheet: &Planned, kept: &str, needs: &str) -> Result<Made, Findings> {
    let file = crate::kept::place(&sheet.id);
    let stored = crate::kept::sheet(kept).map_err(|finding| Findings::from(finding.at(&file)))?;
    let mut made = sheet.kind.prove(needs, &stored)?;
    if !made.proof.holds() {
        made.proof.findings.push(
            Finding::hint(
                "kept-no-longer-fits",
                "this sheet was kept as it was, and the study has changed since",
            )
            .at(&file)
            .remedy("make another one, or undo the change"),
        );
    }
    Ok(made)
}

/// Every finding names its sheet, and a place even when the kind gave none.
fn place(mut finding: Finding, sheet: &Planned) -> Finding {
    finding.sheet.get_or_insert_with(|| sheet.id.clone());
    if finding.place.is_none() {
        finding.place = Some(sheet.place.clone());
    }
    finding
}

/// Time by kind, for the report: kind, number of sheets, total time.
pub fn by_kind(outcomes: &[Outcome]) -> Vec<(&'static str, usize, Duration)> {
    let mut table: BTreeMap<&'static str, (usize, Duration)> = BTreeMap::new();
    for outcome in outcomes {
        let row = table.entry(outcome.planned.about().id).or_default();
        row.0 += 1;
        row.1 += outcome.took;
    }
    table.into_iter().map(|(kind, (n, t))| (kind, n, t)).collect()
}

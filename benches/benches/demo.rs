//! The demo study measured: making and proving per kind, the press against bare typst on the very
//! same sources, one sheet from edit to picture, peak memory. Figures are ratios or percentiles of one run.
//!
//! `cargo bench --profile dev --bench demo` for the figures, `-- --test` to run all of it once.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, missing_docs)] // times are what a bench is for

#[path = "../../crates/press/benches/press/bare.rs"]
mod bare;

use pack::{Cache, Copy, Paper};
use press::Desk;
use std::path::Path;
use std::time::{Duration, Instant};

fn main() {
    let smoke = std::env::args().any(|a| a == "--test");
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../studies/rocky-shore");
    let study = study::read(&folder).study.unwrap();
    let start = Instant::now();
    let proved = pack::prove(&study, &Cache::none());
    println!("{} sheets made and proved in {:.0} ms", proved.outcomes.len(), ms(start.elapsed()));
    for (kind, n, took) in pack::making::by_kind(&proved.outcomes) {
        println!("  {kind:<20} {n:>3} sheets  {:>8.2} ms a sheet", ms(took) / n as f64);
    }
    let copy = Copy { paper: Paper::Letter, proof: false };
    let job =
        pack::job::whole(&study, &proved.outcomes, &proved.gathered, &Default::default(), copy)
            .unwrap();
    let mut desk = Desk::new(job).unwrap();
    slowest(&desk);
    ratio(&desk, if smoke { 1 } else { 5 });
    edits(&mut desk, if smoke { 2 } else { 60 });
    println!("peak memory {} MB", peak_memory() / 1024);
}

/// The sheets that take longest to lay out alone, each from an empty memory.
fn slowest(desk: &Desk) {
    let mut times: Vec<(f64, String)> = Vec::new();
    for sheet in &desk.job().sheets {
        times.push((timed(|| desk.lay_one(&sheet.id).unwrap().page_count()), sheet.id.clone()));
    }
    times.sort_by(|a, b| b.0.total_cmp(&a.0));
    let all: f64 = times.iter().map(|t| t.0).sum();
    println!("{} sheets laid out one by one: {all:.0} ms; the slowest:", times.len());
    for (time, id) in times.iter().take(12) {
        println!("  {time:>6.0} ms  {id}");
    }
}

/// Press stage (lay, read the pages back, check them, write the PDF) against `typst::compile` and
/// `typst_pdf::pdf` alone; both from an empty memory, in turn, medians.
fn ratio(desk: &Desk, rounds: usize) {
    let world = bare::World::new(desk);
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for _ in 0..rounds {
        ours.push(timed(|| {
            let pressed = desk.lay().unwrap();
            let findings = pressed.findings();
            (pressed.pdf().unwrap().len(), findings.iter().count())
        }));
        theirs.push(timed(|| (world.pdf().len(), 0)));
    }
    let (ours, theirs) = (percentile(&mut ours, 50), percentile(&mut theirs, 50));
    println!("press {ours:.0} ms, bare typst {theirs:.0} ms, ratio {:.3}", ours / theirs);
}

fn timed<T>(work: impl Fn() -> T) -> f64 {
    typst::comemo::evict(0);
    let start = Instant::now();
    std::hint::black_box(work());
    ms(start.elapsed())
}

/// A word of one sheet changes; the sheet is laid out alone and its first page drawn at 100 ppi.
fn edits(desk: &mut Desk, rounds: usize) {
    let ids: Vec<String> = desk.job().sheets.iter().map(|s| s.id.clone()).collect();
    let mut times = Vec::new();
    for n in 0..rounds {
        let id = &ids[n * 7 % ids.len()];
        let mut sheet = desk.job().sheet(id).unwrap().clone();
        sheet.meta["title"] = format!("Edit {n}").into();
        let start = Instant::now();
        desk.replace(sheet).unwrap();
        let pressed = desk.lay_one(id).unwrap();
        std::hint::black_box(pressed.png(1, 100).unwrap().len());
        times.push(ms(start.elapsed()));
    }
    let (p50, p95) = (percentile(&mut times, 50), percentile(&mut times, 95));
    println!("edit to picture over {rounds} edits: p50 {p50:.0} ms, p95 {p95:.0} ms");
}

fn percentile(times: &mut [f64], percent: usize) -> f64 {
    times.sort_by(f64::total_cmp);
    times[(times.len() - 1) * percent / 100]
}

fn ms(time: Duration) -> f64 {
    time.as_secs_f64() * 1000.0
}

/// High-water mark of resident memory in kB, where the system tells it.
fn peak_memory() -> u64 {
    let status = std::fs::read_to_string("/proc/self/status").unwrap_or_default();
    let line = status.lines().find_map(|l| l.strip_prefix("VmHWM:")).unwrap_or("0");
    line.split_whitespace().next().and_then(|n| n.parse().ok()).unwrap_or(0)
}

//! What the press adds to bare typesetting, and how soon an edited sheet is seen.
//!
//! Baseline: `typst::compile` and `typst_pdf::pdf` on the very same generated sources, in the
//! same run and profile, each time with an empty memory of finished parts. The profile of the tests
//! is measured, so that nothing is compiled for this alone: `cargo test -p press --bench press`
//! with `-- --bench` for the figures, `-- --test` to run all of it once on a small file.
// Times are what a bench is for.
#![allow(clippy::unwrap_used, clippy::disallowed_methods, missing_docs)]

mod bare;

use criterion::Criterion;
use press::{Desk, Document, Job, KindIn, Look, Paper, PictureIn, SheetIn};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::hint::black_box;
use std::time::{Duration, Instant};

const PAGE: &str = include_str!("page.typ");
const ART: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"100\" height=\"100\"><circle cx=\"50\" cy=\"50\" r=\"40\"/></svg>";

fn main() {
    let smoke = std::env::args().any(|argument| argument == "--test");
    let (sheets, rounds, edits) = if smoke { (2, 1, 3) } else { (60, 9, 60) };
    ratio(sheets, rounds);
    edit(sheets, edits);
    let mut criterion = Criterion::default().configure_from_args().sample_size(10);
    let desk = Desk::new(job(sheets)).unwrap();
    criterion.bench_function("whole file", |b| b.iter(|| pressed(&desk)));
    criterion.bench_function("one sheet", |b| {
        b.iter(|| {
            empty();
            desk.lay_one("s0").unwrap().page_count()
        });
    });
    criterion.final_summary();
}

/// The press against the bare typesetter, turn and turn about.
fn ratio(sheets: usize, rounds: usize) {
    let desk = Desk::new(job(sheets)).unwrap();
    let world = bare::World::new(&desk);
    let (mut ours, mut theirs) = (Vec::new(), Vec::new());
    for _ in 0..rounds {
        ours.push(timed(|| pressed(&desk)));
        theirs.push(timed(|| {
            empty();
            world.pdf().len()
        }));
    }
    let (ours, theirs) = (share(&mut ours, 50), share(&mut theirs, 50));
    println!(
        "{sheets} sheets: press {ours:?}, bare typesetter {theirs:?}, ratio {:.3}",
        ours.as_secs_f64() / theirs.as_secs_f64()
    );
}

/// Laid out, checked and written, from an empty memory.
fn pressed(desk: &Desk) -> usize {
    empty();
    let pressed = desk.lay().unwrap();
    assert!(pressed.findings().is_empty(), "{:#?}", pressed.findings());
    pressed.pdf().unwrap().len()
}

/// From an edited sheet to its picture at 100 pixels an inch.
fn edit(sheets: usize, edits: usize) {
    let mut desk = Desk::new(job(sheets)).unwrap();
    desk.lay().unwrap();
    let mut times: Vec<Duration> = (0..edits)
        .map(|n| {
            let edited = sheet(n % sheets, &format!("Edited {n} times"));
            timed(|| {
                let id = edited.id.clone();
                desk.replace(edited).unwrap();
                desk.lay_one(&id).unwrap().png(1, 100).unwrap().len()
            })
        })
        .collect();
    println!(
        "edit to picture: half within {:?}, 95 of 100 within {:?}",
        share(&mut times, 50),
        share(&mut times, 95)
    );
}

fn timed<T>(work: impl FnOnce() -> T) -> Duration {
    let start = Instant::now();
    black_box(work());
    start.elapsed()
}

/// The time within which so many of a hundred were done.
fn share(times: &mut [Duration], hundredths: usize) -> Duration {
    times.sort();
    times[(times.len() * hundredths / 100).min(times.len() - 1)]
}

fn empty() {
    typst::comemo::evict(0);
}

fn job(sheets: usize) -> Job {
    let kind = KindIn { page: PAGE.to_owned(), words: json!({}) };
    let picture = PictureIn {
        bytes: ART.as_bytes().into(),
        ext: "svg".to_owned(),
        alt: "A disc".to_owned(),
        width: 100,
        height: 100,
    };
    Job {
        document: Document {
            title: "A study".to_owned(),
            author: "An author".to_owned(),
            language: "en".to_owned(),
            date: Some((2026, 1, 2)),
            paper: Paper::A4,
            study: "A study".to_owned(),
            lessons: 12,
            ..Document::default()
        },
        look: Look::named("strand").unwrap(),
        sheets: (0..sheets)
            .map(|n| sheet(n, "Limpets cling to rocks when the sea goes out"))
            .collect(),
        kinds: BTreeMap::from([("bench".to_owned(), kind)]),
        pictures: BTreeMap::from([("disc".to_owned(), picture)]),
        answers: BTreeSet::new(),
    }
}

/// A page of text with a picture, and a page with a grid of letters.
fn sheet(n: usize, sentence: &str) -> SheetIn {
    let id = format!("s{n}");
    let meta = json!({"id": id, "kind": "bench", "title": format!("Sheet {n}"), "lead": "Find the words.",
        "name-line": false, "card": false, "bare": false, "band": "7-9", "large": false, "what": "Bench",
        "sign": "read", "lesson": {"n": 2, "of": 12, "title": "The low shore"}, "part": null,
        "key": n, "key-sheet": null, "level": 1, "field": "study.toml#title"});
    let letters = |row: usize| -> String {
        (0..12).map(|c| char::from(b'A' + ((row * 7 + c * 11 + n) % 26) as u8)).collect()
    };
    let rows: Vec<String> = (0..12).map(letters).collect();
    let texts: Vec<Value> = (0..12)
        .map(|i| json!({"at": format!("lesson.md#reading/{i}"), "v": format!("{sentence} ({n}, {i}). ").repeat(3)}))
        .collect();
    let picture = json!({"name": "disc", "alt": "A disc", "hash": "", "width": 100, "height": 100, "at": "pictures/disc.toml#alt"});
    let data = json!({"texts": texts, "rows": rows, "picture": picture});
    SheetIn { id, kind: "bench".to_owned(), meta, data }
}

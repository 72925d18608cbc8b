//! The demo on paper: both papers, every sheet on its page, keys, code symbols read back, same bytes.
#![allow(clippy::disallowed_methods)] // reads the demo study

use findings::Severity;
use pack::{Cache, Copy, Paper, Printed, Proved};
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::OnceLock;
use study::Study;

struct Demo {
    study: Study,
    proved: Proved,
    letter: Printed,
    a4: Printed,
}

fn demo() -> &'static Demo {
    static DEMO: OnceLock<Demo> = OnceLock::new();
    DEMO.get_or_init(|| {
        let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies/rocky-shore");
        let study = study::read(&folder).study.expect("a study");
        let proved = pack::prove(&study, &Cache::none());
        let print = |paper| proved.print(&study, Copy { paper, proof: false }).expect("laid out");
        let (letter, a4) = (print(Paper::Letter), print(Paper::A4));
        Demo { letter, a4, proved, study }
    })
}

#[test]
fn the_demo_has_no_errors_wants_or_warnings_on_either_paper() {
    let demo = demo();
    for (paper, printed) in [("letter", &demo.letter), ("a4", &demo.a4)] {
        let found: Vec<String> = printed
            .findings
            .iter()
            .filter(|f| f.severity > Severity::Hint)
            .map(ToString::to_string)
            .collect();
        assert!(found.is_empty(), "{paper}:\n{}", found.join("\n"));
    }
}

#[test]
fn both_papers_share_every_sheet_page_by_page() {
    let demo = demo();
    assert_eq!(demo.letter.pressed.page_count(), demo.a4.pressed.page_count());
    assert!(demo.letter.pressed.page_count() >= 90, "{} pages", demo.letter.pressed.page_count());
    let ids = |p: &Printed| {
        p.pressed.laid().iter().map(|l| (l.sheet.clone(), l.pages.len())).collect::<Vec<_>>()
    };
    assert_eq!(ids(&demo.letter), ids(&demo.a4));
    assert_eq!(demo.proved.outcomes.len(), ids(&demo.letter).len(), "every sheet has a page");
}

#[test]
fn a_sheet_with_answers_stands_in_the_key_and_no_other() {
    let demo = demo();
    let numbers: Vec<u32> =
        demo.proved.gathered.entries.iter().filter_map(|e| e.key_number).collect();
    assert_eq!(
        numbers,
        (1..=u32::try_from(numbers.len()).expect("few")).collect::<Vec<_>>(),
        "numbered in printing order"
    );
    let key = demo.proved.outcomes.iter().find(|o| o.planned.about().id == "key").expect("a key");
    let entries =
        key.made.as_ref().expect("made").sheet["entries"].as_array().expect("entries").clone();
    let printed: BTreeSet<&str> = entries.iter().filter_map(|e| e["id"].as_str()).collect();
    let with_key: BTreeSet<&str> = demo
        .proved
        .outcomes
        .iter()
        .filter(|o| o.made.as_ref().is_some_and(|m| m.key.is_some()))
        .map(|o| o.planned.id.as_str())
        .collect();
    assert_eq!(printed, with_key);
}

/// Code symbols are read back from the rendered page by a reader that is not ours (`rqrr`);
/// ISO/IEC 18004 asks for a quiet zone of 4 modules (quoted by DENSO WAVE).
#[test]
fn every_code_symbol_reads_back_from_the_rendered_page() {
    let demo = demo();
    let mut read = BTreeSet::new();
    for laid in demo.letter.pressed.laid() {
        for page in laid.pages.iter().filter(|p| p.marks.iter().any(|m| m.kind == "code")) {
            let png = demo.letter.pressed.png(page.number, 200).expect("a picture");
            let grey = image::load_from_memory(&png).expect("a PNG").to_luma8();
            let (w, h) = (grey.width() as usize, grey.height() as usize);
            let mut prepared = rqrr::PreparedImage::prepare_from_greyscale(w, h, |x, y| {
                grey.get_pixel(x as u32, y as u32).0[0]
            });
            let found: Vec<String> = prepared
                .detect_grids()
                .iter()
                .filter_map(|g| g.decode().ok())
                .map(|(_, t)| t)
                .collect();
            let marks = page.marks.iter().filter(|m| m.kind == "code").count();
            assert_eq!(found.len(), marks, "page {}: {found:?}", page.number);
            read.extend(found);
        }
    }
    let wanted: BTreeSet<String> = demo.study.links.iter().map(|l| l.address.clone()).collect();
    assert!(!wanted.is_empty());
    assert!(read.is_subset(&wanted), "{:?}", read.difference(&wanted).collect::<Vec<_>>());
    assert!(read.len() >= 5, "{read:?}");
}

/// PDF/UA-1 (ISO 14289-1) judged by `page_validation`; MediaBox sizes from ISO 216 and US Letter.
#[test]
fn the_files_are_accessible_true_to_size_and_repeat_byte_for_byte() {
    let demo = demo();
    for (printed, w, h) in [(&demo.letter, 612.0, 792.0), (&demo.a4, 595.2756, 841.8898)] {
        let pdf = printed.pressed.pdf().expect("a PDF");
        assert_eq!(pdf, printed.pressed.pdf().expect("again"));
        let options = page_validation::ValidationOptions::default()
            .profile(page_validation::ValidationProfile::PdfUa1);
        let verdict = page_validation::validate_pdf_bytes(&pdf, &options).expect("readable");
        assert!(verdict.is_compliant, "{verdict}");
        let read = lopdf::Document::load_mem(&pdf).expect("readable");
        let pages = read.get_pages();
        assert_eq!(pages.len(), printed.pressed.page_count());
        for id in pages.values() {
            let page = read.get_dictionary(*id).expect("a page");
            let size = page
                .get(b"MediaBox")
                .and_then(lopdf::Object::as_array)
                .expect("a MediaBox")
                .clone();
            let number = |i: usize| f64::from(size[i].as_float().expect("a number"));
            assert!((number(2) - w).abs() < 0.01 && (number(3) - h).abs() < 0.01, "{size:?}");
        }
    }
}

/// 72 pt an inch: the ruler of the print guide shows whether a printer keeps true size.
#[test]
fn the_ruler_is_true() {
    let demo = demo();
    let rulers: Vec<i64> = demo
        .letter
        .pressed
        .laid()
        .iter()
        .flat_map(|l| l.marks("ruler").map(|(_, m)| m.w).collect::<Vec<_>>())
        .collect();
    assert!(!rulers.is_empty(), "no ruler in the demo");
    for w in rulers {
        let inch = (w % 25_400).min(25_400 - w % 25_400) <= 4;
        let centimetre = (w % 10_000).min(10_000 - w % 10_000) <= 4;
        assert!(inch || centimetre, "{w} µm is neither whole inches nor whole centimetres");
    }
}

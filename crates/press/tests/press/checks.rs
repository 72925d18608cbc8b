//! Planted faults that the page checks have to find.

use crate::fixture::{bitmap, codes, fixed, job, lay, pressed, sheet, shown, with};
use findings::{Place, Severity};
use press::{Paper, Pressed};
use serde_json::{Value, json};

/// The only finding of a page with these items.
fn only(items: Value) -> findings::Finding {
    let found = pressed(items).findings();
    assert_eq!(found.iter().count(), 1, "{found:#?}");
    found.0[0].clone()
}

#[test]
fn outside_the_field() {
    // On A4 the field begins 14 mm from the top; printers reach nearer.
    let items =
        json!([{"do": "text", "x": 60, "y": -4, "v": "Too high", "at": "words.csv#limpet"}]);
    let pressed = lay(job(Paper::A4, vec![sheet("a", fixed(items))]));
    let found = pressed.findings();
    assert_eq!(codes(&pressed), ["page-overflow"], "{found:#?}");
    assert_eq!(found.0[0].place, Some(Place::new("words.csv", "limpet")));
    assert_eq!(found.0[0].sheet.as_deref(), Some("a"));
    assert_eq!(found.0[0].severity, Severity::Error);
    assert_eq!(found.0[0].remedies, ["shorten this text"]);
}

#[test]
fn where_printers_do_not_print() {
    let item = |x: i64| json!([{"do": "text", "x": x, "y": 60, "v": "Limpets on rocks"}]);
    assert_eq!(only(item(170)).code, "page-margin");
    assert_eq!(only(item(190)).code, "page-overflow");
    assert_eq!(only(item(-6)).code, "page-margin");
    let foot = json!([{"do": "grey", "x": 60, "y": 245, "luma": 50}]);
    assert_eq!(only(foot).code, "page-margin");
}

#[test]
fn a_picture_outside_is_named() {
    let item = json!([{"do": "picture", "x": 180, "y": 60, "w": 40, "picture": shown("disc")}]);
    let found = only(item);
    assert_eq!(found.code, "page-overflow");
    assert!(found.message.starts_with("the picture `disc` does not fit"), "{}", found.message);
    assert_eq!(found.place, Some(Place::new("pictures/disc.toml", "alt")));
}

#[test]
fn into_the_foot_of_a_fixed_page() {
    let item =
        json!([{"do": "text", "x": 120, "y": 245, "v": "Too low", "at": "words.csv#limpet"}]);
    let found = only(item);
    assert_eq!(found.code, "page-below");
    assert!(found.message.contains("`Too low` runs"), "{}", found.message);
    let mark =
        json!([{"do": "mark", "x": 60, "y": 240, "k": "card", "n": "limpet", "w": 60, "h": 15}]);
    let found = only(mark);
    assert_eq!(found.code, "page-below");
    assert!(found.message.starts_with("the card `limpet`"), "{}", found.message);
}

#[test]
fn what_is_cut_off_is_not_seen() {
    let pressed = pressed(json!([{"do": "clipped", "x": 60, "y": 60}]));
    assert!(pressed.findings().is_empty(), "{:#?}", pressed.findings());
}

#[test]
fn a_body_that_is_too_tall_for_its_page() {
    // Items without a place follow each other down the page.
    let tall = |n: usize| json!({"do": "text", "tall": 150, "v": "x", "at": format!("a.md#{n}")});
    let found = pressed(json!([tall(0), tall(1), tall(2)])).findings();
    assert!(
        found
            .iter()
            .any(|f| f.code == "page-overflow" && f.message.contains("does not fit on the paper")),
        "{found:#?}"
    );
}

#[test]
fn a_missing_letter() {
    // U+2603 is in neither typeface.
    let found =
        only(json!([{"do": "text", "x": 60, "y": 60, "v": "Snow \u{2603}", "at": "a.md#b"}]));
    assert_eq!(found.code, "glyph-missing");
    assert!(
        found.message.contains("`\u{2603}`") && found.message.contains("`Noto Sans`"),
        "{}",
        found.message
    );
    assert_eq!(found.place, Some(Place::new("a.md", "b")));
}

#[test]
fn type_too_small() {
    let item =
        |kind: &str, size: f64| json!([{"do": kind, "x": 60, "y": 60, "v": "small", "size": size}]);
    assert_eq!(only(item("text", 8.5)).code, "type-small");
    assert!(codes(&pressed(item("text", 9.0))).is_empty());
    assert!(codes(&pressed(item("reduced", 6.0))).is_empty());
    let young = |size: f64| {
        let one = sheet("a", fixed(item("text", size)));
        lay(job(Paper::Letter, vec![with(one, "band", json!("3-6"))])).findings()
    };
    let found = young(10.0);
    assert_eq!((found.0[0].code.as_str(), found.0[0].severity), ("type-small", Severity::Warning));
    assert_eq!(young(8.0).0[0].severity, Severity::Error);
    assert!(young(11.0).is_empty());
    let source = fixed(json!([{"do": "small", "x": 60, "y": 60, "v": "A source for adults"}]));
    let one = with(sheet("a", source), "band", json!("3-6"));
    assert!(codes(&lay(job(Paper::Letter, vec![one]))).is_empty());
}

fn photo(pixels: u32, mm: u32) -> Pressed {
    let item = json!([{"do": "picture", "x": 60, "y": 60, "w": mm, "picture": shown("square")}]);
    let mut job = job(Paper::Letter, vec![sheet("a", fixed(item))]);
    job.pictures.insert("square".to_owned(), bitmap(pixels, pixels));
    lay(job)
}

/// Pixels an inch = pixels ÷ (mm ÷ 25.4); the limits 200 and 100 are common practice, no source.
#[test]
fn a_coarse_picture() {
    assert!(codes(&photo(400, 50)).is_empty()); // 203
    let warned = photo(300, 50).findings(); // 152
    assert_eq!(
        (warned.0[0].code.as_str(), warned.0[0].severity),
        ("picture-coarse", Severity::Warning)
    );
    assert!(warned.0[0].message.contains("152 pixels an inch"), "{}", warned.0[0].message);
    assert!(warned.0[0].remedies[0].contains("38.1 mm"), "{}", warned.0[0].remedies[0]);
    assert_eq!(photo(100, 50).findings().0[0].severity, Severity::Error); // 51
}

#[test]
fn texts_over_each_other() {
    let two = |y: f64, other: &str| {
        json!([{"do": "text", "x": 60, "y": 60, "v": "Limpets", "at": "a.md#b"},
            {"do": "text", "x": 62, "y": y, "v": other}])
    };
    let found = only(two(61.5, "Mussels"));
    assert_eq!(found.code, "text-overlap");
    assert!(found.message.contains("`Limpets` and `Mussels`"), "{}", found.message);
    assert_eq!(found.place, Some(Place::new("a.md", "b")));
    assert!(codes(&pressed(two(66.0, "Mussels"))).is_empty());
}

#[test]
fn one_fault_is_told_once_for_each_field() {
    let item = |y: i64, at: &str| json!({"do": "text", "x": -20, "y": y, "v": "out", "at": at});
    let items = json!([item(60, "a.md#1"), item(70, "a.md#1"), item(80, "a.md#2")]);
    assert_eq!(codes(&pressed(items)), ["page-overflow", "page-overflow"]);
}

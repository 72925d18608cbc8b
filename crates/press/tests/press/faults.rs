//! What cannot be laid out, told to the author.

use crate::fixture::{drawing, fixed, job, sheet, shown, with};
use findings::{Findings, Place};
use press::{Job, Paper};
use serde_json::json;

fn refused(job: Job) -> Findings {
    match press::lay(job) {
        Ok(_) => panic!("laid out"),
        Err(findings) => findings,
    }
}

#[test]
fn every_faulty_sheet_is_named_and_no_sound_one() {
    let fail = fixed(json!([{"do": "fail", "x": 60, "y": 60}]));
    let sound = fixed(json!([{"do": "text", "x": 60, "y": 60, "v": "sound"}]));
    let sheets = vec![sheet("a", fail.clone()), sheet("b", sound), sheet("c", fail)];
    let found = refused(job(Paper::Letter, sheets));
    let sheets: Vec<_> = found.iter().filter_map(|f| f.sheet.as_deref()).collect();
    assert_eq!(sheets, ["a", "c"], "{found:#?}");
    assert_eq!(found.0[0].message, "`Sheet a` cannot be set on its pages");
    let detail = found.0[0].remedies.last().unwrap();
    assert!(
        detail.contains("kinds/test/page.typ, line ") && detail.contains("planted"),
        "{detail}"
    );
}

#[test]
fn a_broken_page_template_is_told_with_its_line() {
    let mut job = job(Paper::Letter, vec![sheet("a", json!({}))]);
    job.kinds.get_mut("test").unwrap().page = "#let leaves(d, look, w) = (\n".to_owned();
    let found = refused(job);
    assert_eq!(found.0[0].sheet.as_deref(), Some("a"));
    assert!(found.0[0].remedies.last().unwrap().contains("line 1"), "{found:#?}");
}

#[test]
fn a_picture_that_cannot_be_read_is_named_with_its_file() {
    let item = |name: &str| {
        fixed(json!([{"do": "picture", "x": 60, "y": 60, "w": 20, "picture": shown(name)}]))
    };
    let mut job = job(Paper::Letter, vec![sheet("a", item("disc")), sheet("b", item("torn"))]);
    job.pictures
        .insert("torn".to_owned(), drawing("<svg xmlns=\"http://www.w3.org/2000/svg\"><circle"));
    let found = refused(job.clone());
    assert_eq!(found.iter().count(), 1, "{found:#?}");
    assert_eq!(found.0[0].message, "the picture `torn` cannot be read");
    assert_eq!(found.0[0].place, Some(Place::file("pictures/torn.svg")));
    assert_eq!(found.0[0].sheet.as_deref(), Some("b"));
    let mut torn = drawing("\u{89}PNG but not really");
    torn.ext = "png".to_owned();
    job.pictures.insert("torn".to_owned(), torn);
    assert_eq!(refused(job).0[0].message, "the picture `torn` cannot be read");
}

#[test]
fn names_kinds_and_doubles_are_refused_before_any_work() {
    let one = || sheet("a", fixed(json!([])));
    let codes = |job| refused(job).iter().map(|f| f.code.clone()).collect::<Vec<_>>();
    let mut climbing = one();
    climbing.id = "../a".to_owned();
    assert_eq!(codes(job(Paper::Letter, vec![climbing])), ["press-name"]);
    assert_eq!(codes(job(Paper::Letter, vec![one(), one()])), ["press-twice"]);
    let mut strange = one();
    strange.kind = "mazze".to_owned();
    assert_eq!(codes(job(Paper::Letter, vec![strange])), ["kind-unknown"]);
    assert!(press::lay_one(job(Paper::Letter, vec![one()]), "b").is_err());
}

#[test]
fn an_unknown_typeface_is_a_warning() {
    let pressed = press::lay(job(
        Paper::Letter,
        vec![sheet("a", fixed(json!([{"do": "bare", "x": 60, "y": 60}])))],
    ));
    let found = pressed.expect("lays").findings();
    assert!(
        found.iter().any(|f| f.message == "the typeface `nowhere sans` is not at hand"),
        "{found:#?}"
    );
}

#[test]
fn a_file_without_a_title_or_with_a_mute_picture_is_refused() {
    let mut untitled = job(Paper::Letter, vec![sheet("a", fixed(json!([])))]);
    untitled.document.title = String::new();
    let found = press::lay(untitled).expect("lays").pdf().expect_err("no title");
    assert_eq!(found.0[0].code, "title-missing", "{found:#?}");

    let mute = fixed(json!([{"do": "mute", "x": 60, "y": 60, "file": "disc.svg"}]));
    let sheets = vec![sheet("a", fixed(json!([]))), with(sheet("b", mute), "title", json!("Mute"))];
    let found = press::lay(job(Paper::Letter, sheets)).expect("lays").pdf().expect_err("mute");
    assert_eq!(found.0[0].code, "alt-missing", "{found:#?}");
    assert_eq!(found.0[0].sheet.as_deref(), Some("b"));
}

/// U+2603 is in none of the typefaces, and an accessible file may not hold a letter without a shape.
#[test]
fn letters_that_no_typeface_has_do_not_stop_the_page_that_says_so() {
    let wants = json!({"title": "Snow \u{2603}", "wants": [{"message": "the typeface has no `\u{2603}`",
        "place": "words.csv#snow", "remedies": ["write it otherwise"]}]});
    let mut want = with(sheet("b", wants), "title", json!("Snow \u{2603}"));
    want.kind = "wanting".to_owned();
    let mut job = job(Paper::Letter, vec![sheet("a", fixed(json!([]))), want]);
    let page = "#import \"/wanting.typ\": *\n".to_owned();
    job.kinds.insert("wanting".to_owned(), press::KindIn { page, words: json!({}) });
    job.document.study = "Snow \u{2603}".to_owned();
    let pressed = press::lay(job).expect("lays");
    let found = pressed.findings();
    assert_eq!(found.iter().count(), 1, "{found:#?}");
    assert_eq!(found.0[0].place, Some(Place::new("study.toml", "title")));
    assert!(found.0[0].message.contains("`\u{2603}`"), "{}", found.0[0].message);
    assert!(pressed.pdf().is_ok());
}

//! Small jobs to test with.

use press::{Document, Job, KindIn, Look, Paper, PictureIn, Pressed, SheetIn};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// A drawing of a black disc.
pub const DISC: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"100\" height=\"100\"><circle cx=\"50\" cy=\"50\" r=\"40\" fill=\"#000\"/></svg>";

/// A fixed leaf called `main` with these items.
pub fn fixed(items: Value) -> Value {
    json!({"leaves": [{"name": "main", "items": items}]})
}

/// A sheet of the test kind in the band of 7 to 9.
pub fn sheet(id: &str, data: Value) -> SheetIn {
    let meta = json!({"id": id, "kind": "test", "title": format!("Sheet {id}"), "lead": null,
        "name-line": false, "card": false, "bare": false, "band": "7-9", "large": false,
        "what": "Test", "sign": "read", "lesson": {"n": 2, "of": 6, "title": "The low shore"},
        "part": {"n": 1, "title": "Splash"}, "key": 4, "key-sheet": null, "level": 1,
        "field": "study.toml#title"});
    SheetIn { id: id.to_owned(), kind: "test".to_owned(), meta, data }
}

/// The same sheet with another value in its meta data.
pub fn with(mut sheet: SheetIn, key: &str, value: Value) -> SheetIn {
    sheet.meta[key] = value;
    sheet
}

/// A file of these sheets.
pub fn job(paper: Paper, sheets: Vec<SheetIn>) -> Job {
    let page = include_str!("page.typ").to_owned();
    let test = KindIn { page, words: json!({"answer": "Answer"}) };
    Job {
        document: Document {
            title: "The Rocky Shore".to_owned(),
            author: "Ada Example".to_owned(),
            language: "en-GB".to_owned(),
            date: Some((2026, 3, 4)),
            subject: "A unit study".to_owned(),
            keywords: vec!["shore".to_owned()],
            paper,
            issue: "1.0".to_owned(),
            study: "The Rocky Shore".to_owned(),
            lessons: 6,
            ..Document::default()
        },
        look: Look::named("strand").expect("the usual look"),
        sheets,
        kinds: BTreeMap::from([("test".to_owned(), test)]),
        pictures: BTreeMap::from([("disc".to_owned(), drawing(DISC))]),
        answers: BTreeSet::new(),
    }
}

/// A drawing.
pub fn drawing(svg: &str) -> PictureIn {
    let bytes: Arc<[u8]> = svg.as_bytes().into();
    PictureIn { bytes, ext: "svg".to_owned(), alt: "A disc".to_owned(), width: 100, height: 100 }
}

/// A grey bitmap of so many pixels, as PNG.
pub fn bitmap(across: u32, down: u32) -> PictureIn {
    let pixels =
        image::GrayImage::from_fn(across, down, |x, y| image::Luma([((x ^ y) % 251) as u8]));
    let mut bytes = std::io::Cursor::new(Vec::new());
    pixels.write_to(&mut bytes, image::ImageFormat::Png).expect("a bitmap is written");
    let bytes: Arc<[u8]> = bytes.into_inner().into();
    PictureIn {
        bytes,
        ext: "png".to_owned(),
        alt: "A grey square".to_owned(),
        width: across,
        height: down,
    }
}

/// How a template refers to a picture.
pub fn shown(name: &str) -> Value {
    json!({"name": name, "alt": "A disc", "hash": "", "width": 100, "height": 100,
        "at": format!("pictures/{name}.toml#alt")})
}

/// Lays out a file of one sheet with these items on one fixed leaf.
pub fn pressed(items: Value) -> Pressed {
    lay(job(Paper::Letter, vec![sheet("a", fixed(items))]))
}

/// Lays out a file that has to lay out.
pub fn lay(job: Job) -> Pressed {
    match press::lay(job) {
        Ok(pressed) => pressed,
        Err(findings) => panic!("{findings:#?}"),
    }
}

/// The codes of what is found on the pages.
pub fn codes(pressed: &Pressed) -> Vec<String> {
    pressed.findings().iter().map(|finding| finding.code.clone()).collect()
}

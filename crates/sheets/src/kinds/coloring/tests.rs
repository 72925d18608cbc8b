//! Fixtures, refused asks and planted faults of `coloring`.

use super::*;
use crate::ask::Owner;
use crate::fixture::{Asking, asking};
use crate::tested::{Fault, Tested, keeps_contract};
use study::{Band, PictureForm, Value};

const FLAT: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 400 300\">\
<path fill=\"#8DD4E6\" d=\"M10 10H200V200H10Z\"/><path fill=\"#AC993B\" d=\"M100 50H390V290H100Z\"/>\
<path fill=\"#265E39\" d=\"M120 200H300V290H120Z\"/><circle cx=\"300\" cy=\"100\" r=\"9\" fill=\"#121F28\"/></svg>";
const LINES: &str = "<svg xmlns=\"http://www.w3.org/2000/svg\"><path fill=\"none\" stroke=\"#000\" d=\"M0 0H9\"/></svg>";

fn asked(band: Band, svg: &str) -> Asking {
    let mut asking = asking(Owner::Subject(0, 0)).band(band);
    draw(&mut asking, "pool", svg);
    asking
}

fn draw(asking: &mut Asking, name: &str, svg: &str) {
    let mut picture = asking.study.pictures["pool"].clone();
    picture.name = name.into();
    picture.bytes = svg.as_bytes().into();
    asking.study.pictures.insert(name.into(), picture);
}

fn option(mut asking: Asking, name: &str, value: &str) -> Asking {
    asking.options.insert(name.into(), Value::Text(value.into()));
    asking
}

fn bitmap(mut asking: Asking, name: &str, width: u32) -> Asking {
    draw(&mut asking, name, "");
    if let Some(picture) = asking.study.pictures.get_mut(name) {
        (picture.form, picture.width, picture.height) = (PictureForm::Png, width, width);
    }
    asking
}

fn met(asking: &Asking) -> Needs {
    needs::needs(&asking.ask()).expect("needs")
}

fn refuse(asking: &Asking) -> Result<(), Findings> {
    needs::needs(&asking.ask()).map(|_| ())
}

/// Spoils the drawn lines.
fn redrawn(s: &mut Sheet, from: &str, to: &str) -> bool {
    let Some(svg) = &s.art.svg else { return false };
    let other = svg.replacen(from, to, 1);
    let changed = other != *svg;
    s.art.svg = Some(other);
    changed
}

impl Tested for Coloring {
    fn good() -> Vec<Needs> {
        let mut lesson = asked(Band::C, FLAT);
        lesson.owner = Owner::Lesson(0);
        vec![
            met(&asked(Band::A, FLAT)),
            met(&asked(Band::B, FLAT)),
            met(&lesson),
            met(&asked(Band::D, LINES)),
            met(&option(asked(Band::B, FLAT), "eyes", "open")),
            met(&bitmap(asked(Band::B, FLAT), "pool-line", 2000)),
            met(&option(asked(Band::B, FLAT), "letters", "Ebb & flow")),
        ]
    }

    fn refused() -> Vec<(&'static str, Result<(), Findings>)> {
        let mut bare = asked(Band::B, FLAT);
        bare.study.lessons[0].subjects[0].picture = None;
        let mut part = asked(Band::B, FLAT);
        part.owner = Owner::Part(0);
        vec![
            ("no picture", refuse(&bare)),
            ("a part", refuse(&part)),
            ("unknown picture", refuse(&option(asked(Band::B, FLAT), "picture", "poool"))),
            ("a photo", refuse(&bitmap(asked(Band::B, FLAT), "pool", 2000))),
            (
                "letters in the artwork",
                refuse(&asked(
                    Band::B,
                    "<svg xmlns=\"http://www.w3.org/2000/svg\"><text>a</text></svg>",
                )),
            ),
            ("no letters", refuse(&option(asked(Band::B, FLAT), "letters", " "))),
            ("letters the hand lacks", refuse(&option(asked(Band::B, FLAT), "letters", "海"))),
            (
                "too many letters",
                refuse(&option(
                    asked(Band::B, FLAT),
                    "letters",
                    "everything that lives in the pool",
                )),
            ),
        ]
    }

    fn faults() -> &'static [Fault<Self>] {
        &[
            ("shape lost", |_, s, _| redrawn(s, "<path d=\"M100 50H390V290H100Z\"/>", "")),
            ("order changed", |_, s, _| {
                redrawn(s, "M10 10H200V200H10Z", "SWAP")
                    && redrawn(s, "M100 50H390V290H100Z", "M10 10H200V200H10Z")
                    && redrawn(s, "SWAP", "M100 50H390V290H100Z")
            }),
            ("colour left", |_, s, _| redrawn(s, "fill=\"#fff\"", "fill=\"#8DD4E6\"")),
            ("shapes see-through", |_, s, _| redrawn(s, "fill=\"#fff\"", "fill=\"none\"")),
            ("line too thin", |_, s, _| {
                let Some(svg) = &s.art.svg else { return false };
                let width = svg
                    .split("stroke-width=\"")
                    .nth(1)
                    .and_then(|r| r.split('"').next())
                    .unwrap_or_default()
                    .to_owned();
                redrawn(s, &format!("stroke-width=\"{width}\""), "stroke-width=\"0.2\"")
            }),
            ("lines of another age", |_, s, _| {
                let Some(svg) = &s.art.svg else { return false };
                let width = svg
                    .split("stroke-width=\"")
                    .nth(1)
                    .and_then(|r| r.split('"').next())
                    .unwrap_or_default()
                    .to_owned();
                redrawn(s, &format!("stroke-width=\"{width}\""), "stroke-width=\"9\"")
            }),
            ("grey stroke", |_, s, _| redrawn(s, "stroke=\"#000\"", "stroke=\"#777\"")),
            ("colours printed", |_, s, _| s.art.svg.take().is_some()),
            ("line picture drawn again", |_, s, _| {
                let bare = s.art.svg.is_none();
                s.art.svg.get_or_insert_with(|| LINES.to_owned());
                bare
            }),
            ("another picture", |_, s, _| {
                s.art.name = "crab".into();
                true
            }),
            ("an older picture", |_, s, _| {
                s.art.hash = "other".into();
                true
            }),
            ("other alt text", |_, s, _| {
                s.art.alt.clear();
                true
            }),
            ("other letters", |_, s, _| {
                s.letters.push('s');
                true
            }),
            ("too small", |_, s, _| {
                (s.box_w, s.box_h) = (120_000, 120_000);
                true
            }),
            ("off the page", |n, s, _| {
                s.box_h = n.room.body_h + 1;
                true
            }),
        ]
    }
}

#[test]
fn contract() {
    keeps_contract(&Coloring);
}

#[test]
fn a_line_picture_beside_it_comes_first() {
    let mut asking = asked(Band::B, FLAT);
    assert!(met(&asking).flat.is_some());
    draw(&mut asking, "pool-line", LINES);
    let needs = met(&asking);
    assert_eq!((needs.picture.name.as_str(), needs.flat), ("pool-line", None));
    assert_eq!(met(&option(asking, "picture", "pool")).picture.name, "pool");
}

#[test]
fn the_name_is_the_subjects_own() {
    let mut asking = asked(Band::B, FLAT);
    asking.study.lessons[0].subjects[0].name = "rock-pool".into();
    assert_eq!(met(&asking).letters, "rock pool");
    assert_eq!(met(&option(asking, "letters", " Pool ")).letters, "Pool");
}

#[test]
fn a_coarse_bitmap_is_warned_about() {
    let codes = |width| {
        let needs = met(&bitmap(asked(Band::B, FLAT), "pool-line", width));
        let proof = check::check(&needs, &make::make(&needs).expect("made"));
        proof.findings.iter().map(|f| f.code.clone()).collect::<Vec<_>>()
    };
    assert_eq!(codes(500), ["picture-coarse"]);
    assert_eq!(codes(1200), [""; 0]);
}

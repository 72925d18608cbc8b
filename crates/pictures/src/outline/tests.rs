//! Outlines of the sample pictures and of small drawings whose answer is plain.
#![allow(clippy::disallowed_methods)] // reads the sample pictures

use super::*;
use std::fs;
use std::path::Path;

const PEN: Pen = Pen { outer: 1100, inner: 700, box_w: 183_000, box_h: 176_000, solid_eyes: true };

fn drawn(inside: &str) -> Result<Outlined, OutlineError> {
    outline(
        &format!(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 400 400\">{inside}</svg>"
        ),
        PEN,
    )
}

const BODY: &str = "<path fill=\"#8DD4E6\" d=\"M10 10H90V20H10Z\"/><path fill=\"#AC993B\" d=\"M20 20H380V380H20Z\"/>";

#[test]
fn every_sample_picture_keeps_all_its_shapes_in_paint_order() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../studies/rocky-shore/pictures");
    let mut seen = 0;
    for entry in fs::read_dir(folder).expect("pictures of the sample study") {
        let path = entry.expect("entry").path();
        if path.extension().is_none_or(|e| e != "svg") {
            continue;
        }
        let name = path.display().to_string();
        let svg = fs::read_to_string(&path).expect("text");
        let art = outline(&svg, PEN).unwrap_or_else(|e| panic!("{name}: {e}"));
        // Counted in the text itself, not by the reader under test.
        let shapes =
            ["<path", "<circle", "<ellipse"].iter().map(|t| svg.matches(t).count()).sum::<usize>();
        assert_eq!(art.shapes, shapes, "{name}");
        let mut from = 0;
        for d in svg.split(" d=\"").skip(1).filter_map(|r| r.split('"').next()) {
            let found = art.svg[from..]
                .find(d)
                .unwrap_or_else(|| panic!("{name}: a path is missing or out of order"));
            from += found + d.len();
        }
        assert!(!is_line_art(&svg).expect("readable"), "{name}");
        assert!(is_line_art(&art.svg).expect("readable"), "{name}: its outlines are line art");
        seen += 1;
    }
    assert!(seen >= 30, "{seen} pictures");
}

#[test]
fn the_line_is_as_wide_as_asked_on_paper() {
    // 370 units fill 176 mm, so 1.1 mm are 2.31 units.
    let art = drawn(BODY).expect("drawn");
    assert!(art.svg.contains("stroke-width=\"2.31\""), "{}", art.svg);
    assert_eq!((art.width, art.height), (373, 373));
}

#[test]
fn inner_shapes_get_the_thinner_line_and_edges_are_mended() {
    let art = drawn(&format!("{BODY}<path fill=\"#265E39\" d=\"M100 100H200V200H100Z\"/>"))
        .expect("drawn");
    assert_eq!(art.svg.matches("stroke-width=\"1.47\"").count(), 1, "{}", art.svg);
    assert_eq!(art.svg.matches("<path").count(), 3);
    let touching =
        drawn(&format!("{BODY}<path fill=\"#265E39\" d=\"M20 300H380V380H20Z\"/>")).expect("drawn");
    assert_eq!(
        touching.svg.matches("<path").count(),
        4,
        "the body's line is drawn again: {}",
        touching.svg
    );
    let beside = drawn(&format!("{BODY}<path fill=\"#265E39\" d=\"M300 300H399V399H300Z\"/>"))
        .expect("drawn");
    assert!(!beside.svg.contains("1.47"), "{}", beside.svg);
}

#[test]
fn eyes_stay_solid_unless_asked_otherwise() {
    let eye = "<circle cx=\"200\" cy=\"200\" r=\"12\" fill=\"#121F28\"/><circle cx=\"196\" cy=\"196\" r=\"4\" fill=\"#FFFDF7\"/>";
    let art = drawn(&format!("{BODY}{eye}")).expect("drawn");
    assert_eq!(art.solid, 1);
    let open = outline(
        &format!("<svg xmlns=\"http://www.w3.org/2000/svg\">{BODY}{eye}</svg>"),
        Pen { solid_eyes: false, ..PEN },
    );
    assert_eq!(open.expect("drawn").solid, 0);
    let spots: String = (1..5)
        .map(|i| format!("<circle cx=\"{}\" cy=\"100\" r=\"9\" fill=\"#121F28\"/>", 60 * i))
        .collect();
    assert_eq!(
        drawn(&format!("{BODY}{spots}")).expect("drawn").solid,
        0,
        "four dark discs are spots"
    );
    assert_eq!(
        drawn(&format!("{BODY}{spots}<g id=\"eyes\">{eye}</g>")).expect("drawn").solid,
        1,
        "the eye is named"
    );
    let big = drawn(&format!("{BODY}<circle cx=\"200\" cy=\"200\" r=\"60\" fill=\"#121F28\"/>"))
        .expect("drawn");
    assert_eq!(big.solid, 0, "a large dark disc is to be coloured");
}

#[test]
fn shifts_and_inherited_paint_are_followed() {
    let art = drawn("<g transform=\"translate(10 20) scale(2)\" style=\"fill:#123456\"><rect width=\"50\" height=\"40\"/></g>").expect("drawn");
    assert!(art.svg.contains("M10 20"), "{}", art.svg);
    let none = drawn(&format!(
        "{BODY}<g display=\"none\"><rect width=\"9\" height=\"9\"/></g><rect fill=\"none\" width=\"9\" height=\"9\"/>"
    ));
    assert_eq!(none.expect("drawn").shapes, 2);
}

#[test]
fn what_has_no_outline_is_named() {
    let holds = |inside: &str| drawn(inside).expect_err("refused");
    assert_eq!(holds("<image href=\"x.png\"/>"), OutlineError::Holds("image".into()));
    assert_eq!(holds("<text>a</text>"), OutlineError::Holds("text".into()));
    assert_eq!(holds("<use href=\"#a\"/>"), OutlineError::Holds("use".into()));
    assert_eq!(holds("<path d=\"M0 0 what\"/>"), OutlineError::Form("path".into()));
    assert_eq!(
        holds("<g transform=\"turn(3)\"><path d=\"M0 0H9V9Z\"/></g>"),
        OutlineError::Form("transform".into())
    );
    assert_eq!(holds("<g/>"), OutlineError::Empty);
    assert_eq!(outline("<html/>", PEN), Err(OutlineError::Unreadable));
    assert_eq!(outline("<svg", PEN), Err(OutlineError::Unreadable));
}

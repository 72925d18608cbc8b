//! Positions and texts of laid-out pages.

use crate::fixture::{bitmap, fixed, job, lay, pressed, sheet, shown};
use findings::Place;
use press::{Desk, Paper};
use serde_json::json;

/// µm of so many mm.
fn mm(length: f64) -> i64 {
    (length * 1000.0).round() as i64
}

#[test]
fn a_clean_page_has_no_findings() {
    let pressed = pressed(json!([{"do": "text", "x": 60, "y": 50, "v": "Limpets cling"}]));
    assert!(pressed.findings().is_empty(), "{:#?}", pressed.findings());
    assert_eq!(pressed.page_count(), 1);
    assert_eq!(pressed.pages_of("a"), Some(1..=1));
    assert_eq!(pressed.pages_of("b"), None);
}

/// Paper sizes: ISO 216 and ANSI/ASME Y14.1 (A4 210 × 297 mm, Letter 215.9 × 279.4 mm).
#[test]
fn papers_have_their_sizes_and_the_field_stands_within_printers_reach() {
    for (paper, width, height) in [(Paper::Letter, 215.9, 279.4), (Paper::A4, 210.0, 297.0)] {
        let pressed = lay(job(paper, vec![sheet("a", fixed(json!([])))]));
        let page = &pressed.laid()[0].pages[0];
        assert!((page.width - mm(width)).abs() <= 1 && (page.height - mm(height)).abs() <= 1);
        // 0.25 in at the sides and the top, 0.5 in at the foot: common practice, no source.
        assert!(page.field_x >= mm(6.35) && page.field_y >= mm(6.35));
        assert!(page.field_x + mm(197.0) <= page.width - mm(6.35));
        assert!(page.field_y + mm(260.0) <= page.height - mm(12.7) + 1);
    }
}

#[test]
fn marks_stand_where_they_are_put_on_both_papers() {
    for paper in [Paper::Letter, Paper::A4] {
        let item =
            json!([{"do": "mark", "x": 70, "y": 80, "k": "cell", "n": "3,4", "w": 10, "h": 12}]);
        let pressed = lay(job(paper, vec![sheet("a", fixed(item))]));
        let laid = &pressed.laid()[0];
        let (index, mark) = laid.marks("cell").next().expect("the mark");
        let page = &laid.pages[index];
        assert_eq!(mark.name, "3,4");
        let near = |one: i64, other: i64| (one - other).abs() <= 1;
        assert!(near(mark.x, page.field_x + mm(70.0)) && near(mark.y, page.field_y + mm(80.0)));
        assert!(near(mark.w, mm(10.0)) && near(mark.h, mm(12.0)));
    }
}

#[test]
fn a_scaled_group_scales_marks_and_type() {
    let pressed = pressed(json!([{"do": "scaled", "x": 60, "y": 60, "size": 24, "v": "half"}]));
    let page = &pressed.laid()[0].pages[0];
    let mark = page.marks.iter().find(|mark| mark.kind == "half").expect("the mark");
    assert!((mark.w - mm(10.0)).abs() <= 1 && (mark.h - mm(5.0)).abs() <= 1, "{mark:?}");
    let text = page.texts.iter().find(|text| text.text == "half").expect("the text");
    assert_eq!(text.size, 1200);
}

#[test]
fn texts_lead_back_to_the_authors_field_and_the_foot_does_not() {
    let pressed = pressed(json!([
        {"do": "text", "x": 60, "y": 50, "v": "Limpets cling", "at": "words.csv#limpet/meaning"},
        {"do": "text", "x": 60, "y": 70, "v": "No field"},
    ]));
    let page = &pressed.laid()[0].pages[0];
    let of = |text: &str| page.texts.iter().find(|t| t.text == text).expect(text);
    let limpets = of("Limpets cling");
    assert_eq!(limpets.field, Some(Place::new("words.csv", "limpet/meaning")));
    assert_eq!((limpets.size, limpets.font.as_str()), (1200, "Noto Sans"));
    assert!((limpets.x - page.field_x - mm(60.0)).abs() <= 1);
    assert_eq!(of("No field").field, None);
    assert_eq!(of("Sheet a").field, Some(Place::new("study.toml", "title")));
    assert_eq!(of("Sheet a").font, "Battledore Hand");
    assert_eq!(of("Test").field, None);
}

#[test]
fn a_text_that_runs_over_the_pages_end_does_not_lend_its_field_to_the_foot() {
    let long =
        "Limpets cling to rocks when the sea goes out and graze when it comes in. ".repeat(90);
    let data = json!({"leaves": [{"name": "main", "flow": true, "items": [
        {"do": "text", "v": long, "at": "lessons/a.md#reading"}]}]});
    let pressed = lay(job(Paper::A4, vec![sheet("a", data)]));
    assert!(pressed.page_count() >= 2);
    assert!(pressed.findings().is_empty(), "{:#?}", pressed.findings());
    for page in &pressed.laid()[0].pages {
        let what = page.texts.iter().find(|t| t.text == "Test").expect("the foot");
        assert_eq!(what.field, None);
        let reading = Some(Place::new("lessons/a.md", "reading"));
        assert!(page.texts.iter().any(|t| t.field == reading), "page {}", page.number);
    }
}

#[test]
fn pictures_are_known_by_name_size_and_pixels() {
    let mut job = job(
        Paper::Letter,
        vec![sheet(
            "a",
            fixed(json!([
                {"do": "picture", "x": 60, "y": 60, "w": 30, "picture": shown("disc")},
                {"do": "picture", "x": 60, "y": 120, "w": 25, "picture": shown("square")},
            ])),
        )],
    );
    job.pictures.insert("square".to_owned(), bitmap(250, 250));
    let pressed = lay(job);
    let images = &pressed.laid()[0].pages[0].images;
    assert_eq!(images.len(), 2);
    assert_eq!((images[0].name.as_str(), images[0].pixels), ("disc", None));
    assert_eq!((images[1].name.as_str(), images[1].pixels), ("square", Some((250, 250))));
    assert!((images[0].w - mm(30.0)).abs() <= 1 && (images[1].h - mm(25.0)).abs() <= 1);
    assert_eq!(images[0].field, Some(Place::new("pictures/disc.toml", "alt")));
}

#[test]
fn a_blank_page_comes_before_a_front_and_is_called_so() {
    let one = json!({"leaves": [{"name": "main", "items": []}, {"name": "fronts", "start": "recto", "items": []},
        {"name": "backs", "items": []}]});
    let pressed = lay(job(Paper::Letter, vec![sheet("a", one)]));
    let leaves: Vec<_> =
        pressed.laid()[0].pages.iter().map(|p| (p.number, p.leaf.as_str())).collect();
    assert_eq!(leaves, [(1, "main"), (2, "blank"), (3, "fronts"), (4, "backs")]);
}

#[test]
fn pages_point_at_each_other_and_are_silent_alone() {
    let see = |id: &str| fixed(json!([{"do": "see", "x": 60, "y": 60, "id": id}]));
    let sheets = vec![sheet("a", see("b")), sheet("b", see("a"))];
    let desk = Desk::new(job(Paper::Letter, sheets)).expect("lies");
    let whole = desk.lay().expect("lays");
    let said = |pressed: &press::Pressed, sheet: usize| {
        let page = &pressed.laid()[sheet].pages[0];
        page.texts.iter().filter(|t| t.size == 1200).map(|t| t.text.clone()).collect::<Vec<_>>()
    };
    assert_eq!((said(&whole, 0), said(&whole, 1)), (vec!["2".to_owned()], vec!["1".to_owned()]));
    assert_eq!(whole.pages_of("b"), Some(2..=2));
    let alone = desk.lay_one("b").expect("lays");
    assert_eq!(alone.page_count(), 1);
    assert!(said(&alone, 0).is_empty());
}

#[test]
fn an_edited_sheet_is_laid_anew_and_the_others_stay() {
    let text = |v: &str| fixed(json!([{"do": "text", "x": 60, "y": 60, "v": v}]));
    let mut desk =
        Desk::new(job(Paper::Letter, vec![sheet("a", text("old")), sheet("b", text("same"))]))
            .expect("lies");
    let before = desk.lay().expect("lays");
    desk.replace(sheet("a", text("new"))).expect("replaces");
    let after = desk.lay().expect("lays");
    assert_eq!(before.laid()[1], after.laid()[1]);
    assert!(after.laid()[0].pages[0].texts.iter().any(|t| t.text == "new"));
    assert!(desk.replace(sheet("c", text("x"))).is_err());
}

#[test]
fn a_picture_of_a_page_has_the_pixels_asked_for() {
    let pressed = pressed(json!([{"do": "grey", "x": 60, "y": 60, "luma": 0}]));
    let bytes = pressed.png(1, 100).expect("a picture");
    let picture = image::load_from_memory(&bytes).expect("PNG").into_luma8();
    // 8.5 × 11 in at 100 pixels an inch.
    assert_eq!(picture.dimensions(), (850, 1100));
    // The black square starts 60 mm from the field's corner, which is 9.45, 6.7 mm from the paper's.
    let at = |mm: f64| (mm / 25.4 * 100.0) as u32;
    assert_eq!(picture.get_pixel(at(75.0), at(75.0)).0, [0]);
    assert_eq!(picture.get_pixel(at(68.0), at(65.0)).0, [255]);
    assert!(pressed.png(2, 100).is_err() && pressed.png(0, 100).is_err());
}

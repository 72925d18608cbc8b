//! Checks of the built fonts, read back with a reader of another make than the builder.
//!
//! The heights that are expected here are those of the ruling in the design of the hand:
//! ascender 760, capitals 740, x-height 480, base line 0, descender -240.

use std::collections::BTreeMap;

use kurbo::{BezPath, Point};
use ttf_parser::{Face, GlyphId, OutlineBuilder, PlatformId, Tag};

use super::table::Table;
use super::*;

mod shapes;
mod strokes;

/// Every character that the sheets may ask the hand for.
const WANTED: &str = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789\
    .,;:!?'\"‘’“”-–—()/&+=×%#*•…°£$éèêëáàâäãåíìîïóòôöõúùûüñçßæœ¿¡\
    ÉÈÊËÁÀÂÄÃÅÍÌÎÏÓÒÔÖÕÚÙÛÜÑÇÆŒ \u{a0}\u{202f}";

#[derive(Default)]
struct Path {
    contours: Vec<BezPath>,
    open: usize,
}

impl Path {
    fn last(&mut self) -> &mut BezPath {
        if self.contours.is_empty() {
            self.contours.push(BezPath::new());
        }
        self.contours.last_mut().unwrap()
    }
}

fn at(x: f32, y: f32) -> Point {
    Point::new(f64::from(x), f64::from(y))
}

impl OutlineBuilder for Path {
    fn move_to(&mut self, x: f32, y: f32) {
        self.open += 1;
        self.contours.push(BezPath::new());
        self.last().move_to(at(x, y));
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.last().line_to(at(x, y));
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.last().quad_to(at(x1, y1), at(x, y));
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.last().curve_to(at(x1, y1), at(x2, y2), at(x, y));
    }
    fn close(&mut self) {
        self.open -= 1;
        self.last().close_path();
    }
}

fn outline(face: &Face, c: char) -> Path {
    let mut path = Path::default();
    let id = face.glyph_index(c).unwrap_or_else(|| panic!("no glyph for {c:?}"));
    face.outline_glyph(id, &mut path);
    path
}

fn width(face: &Face, c: char) -> u16 {
    face.glyph_hor_advance(face.glyph_index(c).unwrap()).unwrap()
}

fn kern(face: &Face, a: char, b: char) -> i16 {
    use ttf_parser::gpos::{PairAdjustment, PositioningSubtable};
    let (a, b) = (face.glyph_index(a).unwrap(), face.glyph_index(b).unwrap());
    let gpos = face.tables().gpos.unwrap();
    assert_eq!(gpos.features.get(0).unwrap().tag, Tag::from_bytes(b"kern"));
    let lookup = gpos.lookups.get(0).unwrap();
    for i in 0..lookup.subtables.len() {
        let Some(PositioningSubtable::Pair(PairAdjustment::Format1 { coverage, sets })) =
            lookup.subtables.get(i)
        else {
            panic!("kerning is not stored as glyph pairs");
        };
        let set = coverage.get(a).and_then(|at| sets.get(at));
        if let Some((first, _)) = set.and_then(|s| s.get(b)) {
            return first.x_advance;
        }
    }
    0
}

fn each(check: impl Fn(Cut, &Face, char)) {
    for cut in Cut::ALL {
        let bytes = font(cut).unwrap();
        let face = Face::parse(&bytes, 0).unwrap();
        for c in WANTED.chars().chain(Table::ours().unwrap().iter().map(|(c, _)| c)) {
            check(cut, &face, c);
        }
    }
}

#[test]
fn all_wanted_characters_are_there_and_drawn() {
    each(|cut, face, c| {
        assert!(covers(c), "{c:?}");
        let path = outline(face, c);
        assert_eq!(path.contours.is_empty(), c.is_whitespace(), "{cut:?} {c:?}");
        assert!(width(face, c) > 0, "{cut:?} {c:?}");
        assert_eq!(strokes(c).is_some(), !c.is_whitespace());
    });
    assert!(!covers('д'));
    assert!(strokes('д').is_none() && advance('д').is_none());
}

#[test]
fn metrics_say_what_the_ruling_says() {
    for cut in Cut::ALL {
        let bytes = font(cut).unwrap();
        let face = Face::parse(&bytes, 0).unwrap();
        assert_eq!(face.units_per_em(), 1000);
        assert_eq!((face.ascender(), face.descender()), (760, -240));
        assert_eq!(
            (face.typographic_ascender(), face.typographic_descender()),
            (Some(760), Some(-240))
        );
        assert_eq!((face.x_height(), face.capital_height()), (Some(480), Some(740)));
        let all = face.global_bounding_box();
        for id in (0..face.number_of_glyphs()).map(GlyphId) {
            let Some(ink) = face.glyph_bounding_box(id) else { continue };
            assert!(ink.x_min >= all.x_min && ink.x_max <= all.x_max);
            assert!(ink.y_min >= all.y_min && ink.y_max <= all.y_max);
            let mut path = Path::default();
            let drawn = face.outline_glyph(id, &mut path).unwrap();
            // Boxes may be wider than the ink by less than a unit, where curves bulge least.
            assert!((drawn.x_min - ink.x_min).abs() <= 1 && (drawn.y_max - ink.y_max).abs() <= 1);
            assert_eq!(face.glyph_hor_side_bearing(id), Some(ink.x_min));
        }
    }
}

#[test]
fn names_and_weights_tell_the_cuts_apart() {
    let expected = [
        (Cut::Regular, "Battledore Hand", "Regular", 400, false),
        (Cut::Bold, "Battledore Hand", "Bold", 700, true),
        (Cut::Dotted, "Battledore Hand Dotted", "Regular", 400, false),
        (Cut::Hollow, "Battledore Hand Hollow", "Regular", 400, false),
    ];
    for (cut, family, style, weight, bold) in expected {
        let bytes = font(cut).unwrap();
        let face = Face::parse(&bytes, 0).unwrap();
        let names: BTreeMap<u16, String> = face
            .names()
            .into_iter()
            .filter(|n| n.platform_id == PlatformId::Windows)
            .map(|n| (n.name_id, n.to_string().unwrap()))
            .collect();
        assert_eq!((names[&1].as_str(), names[&2].as_str()), (family, style));
        assert_eq!(names[&4], format!("{family} {style}"));
        assert_eq!(names[&6], format!("{}-{style}", family.replace(' ', "")));
        assert_eq!(face.weight().to_number(), weight);
        assert_eq!(face.is_bold(), bold);
        // macStyle, at byte 44 of `head` (OpenType specification), bit 0 = bold.
        let head = face.raw_face().table(Tag::from_bytes(b"head")).unwrap();
        assert_eq!(head[45] & 1, u8::from(bold));
    }
}

#[test]
fn figures_are_equally_wide_and_spaces_fixed() {
    for cut in Cut::ALL {
        let bytes = font(cut).unwrap();
        let face = Face::parse(&bytes, 0).unwrap();
        for c in '0'..='9' {
            assert_eq!(width(&face, c), width(&face, '0'), "{cut:?} {c}");
            assert!(('0'..='9').all(|d| kern(&face, c, d) == 0));
        }
        assert_eq!((width(&face, ' '), width(&face, '\u{a0}')), (300, 300));
        assert!(width(&face, '\u{202f}') < 300);
        assert_eq!(width(&face, 'é'), width(&face, 'e'));
    }
}

#[test]
fn dotted_letters_are_spaced_as_regular_ones_and_hollow_as_bold() {
    for (cut, like) in [(Cut::Dotted, Cut::Regular), (Cut::Hollow, Cut::Bold)] {
        let (a, b) = (font(cut).unwrap(), font(like).unwrap());
        let (a, b) = (Face::parse(&a, 0).unwrap(), Face::parse(&b, 0).unwrap());
        for c in WANTED.chars() {
            assert_eq!(width(&a, c), width(&b, c), "{cut:?} {c:?}");
        }
        assert_eq!(kern(&a, 'T', 'o'), kern(&b, 'T', 'o'));
    }
    let regular = font(Cut::Regular).unwrap();
    let face = Face::parse(&regular, 0).unwrap();
    assert!(WANTED.chars().all(|c| advance(c) == Some(i32::from(width(&face, c)))));
}

#[test]
fn kerning_is_bounded_and_where_it_should_be() {
    for cut in Cut::ALL {
        let bytes = font(cut).unwrap();
        let face = Face::parse(&bytes, 0).unwrap();
        for a in WANTED.chars() {
            for b in WANTED.chars() {
                let by = i32::from(kern(&face, a, b));
                assert!((kerning::CLOSEST..=kerning::WIDEST).contains(&by), "{a}{b} {by}");
            }
        }
        // Pairs with a hole between them, and pairs of upright stems (common practice, no source).
        for pair in ["To", "AV", "Te", "LT", "P.", "r,", "Wa"] {
            let mut c = pair.chars();
            assert!(kern(&face, c.next().unwrap(), c.next().unwrap()) < -20, "{cut:?} {pair}");
        }
        for pair in ["HI", "nn", "ll", "oo", "no", "be", "a "] {
            let mut c = pair.chars();
            assert_eq!(kern(&face, c.next().unwrap(), c.next().unwrap()), 0, "{cut:?} {pair}");
        }
        assert_eq!(kern(&face, 'T', 'é'), kern(&face, 'T', 'e'));
        assert!(kern(&face, '(', 'j') > 0);
    }
}

#[test]
fn the_same_bytes_each_time() {
    for cut in Cut::ALL {
        assert_eq!(font(cut).unwrap(), font(cut).unwrap());
    }
}

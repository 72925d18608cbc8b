//! Checks of the built fonts, read back with a reader of another make than the builder.
//!
//! The heights that are expected here are those of the ruling in the design of the hand:
//! ascender 760, capitals 740, x-height 480, base line 0, descender -240.

use std::collections::BTreeMap;

use kurbo::{BezPath, Point, Shape};
use ttf_parser::{Face, GlyphId, OutlineBuilder, PlatformId, Tag};

use super::table::Table;
use super::*;

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

/// Area of all contours, as the sum that a filler with the nonzero rule sees when none overlap.
fn area(path: &Path) -> f64 {
    -path.contours.iter().map(Shape::area).sum::<f64>()
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
fn glyphs_are_closed_and_never_cross() {
    each(|cut, face, c| {
        let path = outline(face, c);
        assert_eq!(path.open, 0, "{cut:?} {c:?}");
        assert_eq!(crossings(&path.contours), 0, "{cut:?} {c:?}");
    });
}

/// Contours may also overlap without edges that cross properly: then the union, found by the
/// polygon library, has another area than their sum.
#[test]
fn contours_run_the_right_way_and_never_overlap() {
    use i_overlay::core::fill_rule::FillRule;
    use i_overlay::float::simplify::SimplifyShape;
    each(|cut, face, c| {
        let path = outline(face, c);
        let flat: Vec<Vec<[f64; 2]>> = path.contours.iter().map(flattened).collect();
        let union = flat.simplify_shape(FillRule::NonZero);
        let whole: f64 = union.iter().flatten().map(|c| doubled(c)).sum::<f64>() / 2.0;
        let sum = -flat.iter().map(|c| doubled(c)).sum::<f64>() / 2.0;
        assert!((whole - sum).abs() <= 2.0 + sum * 1e-4, "{cut:?} {c:?}: {whole} {sum}");
        assert_eq!(union.iter().flatten().count(), flat.len(), "{cut:?} {c:?}");
    });
}

fn flattened(path: &BezPath) -> Vec<[f64; 2]> {
    let mut points = Vec::new();
    kurbo::flatten(path, 0.05, |el| {
        if let Some(p) = el.end_point() {
            points.push([p.x, p.y]);
        }
    });
    points
}

fn doubled(contour: &[[f64; 2]]) -> f64 {
    let next = contour.iter().cycle().skip(1);
    contour.iter().zip(next).map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum()
}

#[test]
fn a_planted_crossing_is_found() {
    let mut bow = BezPath::new();
    bow.move_to((0.0, 0.0));
    bow.line_to((100.0, 100.0));
    bow.line_to((100.0, 0.0));
    bow.line_to((0.0, 100.0));
    bow.close_path();
    assert_eq!(crossings(&[bow]), 1);
    let mut loops = BezPath::new();
    loops.move_to((0.0, 0.0));
    loops.quad_to((300.0, 200.0), (0.0, 200.0));
    loops.quad_to((300.0, -100.0), (0.0, 0.0));
    loops.close_path();
    assert!(crossings(&[loops]) > 0);
    let square = |x: f64| {
        let mut path = BezPath::new();
        path.move_to((x, x));
        for corner in [(x, x + 100.0), (x + 100.0, x + 100.0), (x + 100.0, x)] {
            path.line_to(corner);
        }
        path.close_path();
        path
    };
    assert_eq!(crossings(&[square(0.0), square(50.0)]), 2);
    assert_eq!(crossings(&[square(0.0), square(200.0)]), 0);
}

/// Middles of a dotted glyph's dots; the reader gives each copy as a contour of its own.
fn middles(path: &Path) -> Vec<Point> {
    path.contours.iter().map(|c| c.bounding_box().center()).collect()
}

#[test]
fn dots_are_round_and_keep_apart() {
    let bytes = font(Cut::Dotted).unwrap();
    let face = Face::parse(&bytes, 0).unwrap();
    for c in WANTED.chars().filter(|c| !c.is_whitespace()) {
        let path = outline(&face, c);
        for contour in &path.contours {
            let size = contour.bounding_box().size();
            assert!((size.width - 32.0).abs() < 0.5 && (size.height - 32.0).abs() < 0.5);
        }
        let dots = middles(&path);
        for (i, a) in dots.iter().enumerate() {
            let nearest =
                dots[i + 1..].iter().map(|b| a.distance(*b)).fold(f64::INFINITY, f64::min);
            assert!(nearest > 38.0, "{c:?}: dots {nearest} apart");
        }
    }
}

/// Nothing of a centre line lies further from a dot than one step and a little.
#[test]
fn dots_leave_no_gap() {
    let bytes = font(Cut::Dotted).unwrap();
    let face = Face::parse(&bytes, 0).unwrap();
    for (c, _) in Table::ours().unwrap().iter() {
        let dots = middles(&outline(&face, c));
        for (x, y) in strokes(c).unwrap().iter().flat_map(Stroke::points) {
            let p = Point::new(f64::from(x), f64::from(y));
            let off = dots.iter().map(|d| d.distance(p)).fold(f64::INFINITY, f64::min);
            assert!(off < 48.0, "{c:?}: ({x}, {y}) is {off} from the next dot");
        }
    }
}

/// How far the ink of letters reaches: their centre line and half the pen. A `z` is flat, so
/// that its middle shows the height exactly.
#[test]
fn heights_stand_on_the_ruling() {
    // Dots need not fall on the very top of a curve.
    for (cut, half, off) in
        [(Cut::Regular, 45.0, 1.0), (Cut::Bold, 75.0, 1.0), (Cut::Dotted, 16.0, 3.0)]
    {
        let bytes = font(cut).unwrap();
        let face = Face::parse(&bytes, 0).unwrap();
        let expect = |letters: &str, low: f64, high: f64| {
            for c in letters.chars() {
                let ink = outline(&face, c)
                    .contours
                    .iter()
                    .map(Shape::bounding_box)
                    .reduce(|a, b| a.union(b));
                let ink = ink.unwrap();
                assert!((ink.y0 - (low - half)).abs() <= off, "{cut:?} {c}: {ink:?}");
                assert!((ink.y1 - (high + half)).abs() <= off, "{cut:?} {c}: {ink:?}");
            }
        };
        expect("acmnoruvxz", 0.0, 480.0);
        expect("bdhkl", 0.0, 760.0);
        expect("ABCDEFGHIKLMNOPRTUVWXYZ", 0.0, 740.0);
        expect("p", -240.0, 480.0);
        expect("gq", -240.0, 480.0);
        // The free ends of 6 and 9 stop a little short of the line that they lean to.
        expect("01234578", 0.0, 740.0);
    }
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

/// No two glyphs of a pair come so near that they touch, kerning included.
#[test]
fn neighbours_keep_apart() {
    let bytes = font(Cut::Bold).unwrap();
    let face = Face::parse(&bytes, 0).unwrap();
    let letters: Vec<char> = WANTED.chars().filter(|c| c.is_alphanumeric()).collect();
    let flat: BTreeMap<char, Vec<BezPath>> =
        letters.iter().map(|c| (*c, outline(&face, *c).contours)).collect();
    for a in letters.iter().filter(|c| c.is_ascii()) {
        for b in &letters {
            let by = f64::from(width(&face, *a)) + f64::from(kern(&face, *a, *b));
            let mut both = flat[a].clone();
            both.extend(flat[b].iter().map(|p| kurbo::Affine::translate((by, 0.0)) * p.clone()));
            assert_eq!(crossings(&both), 0, "{a}{b}");
        }
    }
}

#[test]
fn the_ink_is_as_wide_as_the_pen() {
    // A capital I is a capsule: a bar 740 high and 90 (150) wide with half discs at both ends.
    for (cut, pen) in [(Cut::Regular, 90.0_f64), (Cut::Bold, 150.0)] {
        let bytes = font(cut).unwrap();
        let face = Face::parse(&bytes, 0).unwrap();
        let capsule = 740.0 * pen + std::f64::consts::PI * pen * pen / 4.0;
        let ink = area(&outline(&face, 'I'));
        assert!((ink - capsule).abs() < capsule * 0.004, "{cut:?}: {ink} {capsule}");
    }
    // Hollow: the same capsule less one that is 24 thinner all round.
    let bytes = font(Cut::Hollow).unwrap();
    let face = Face::parse(&bytes, 0).unwrap();
    let full = |pen: f64| 740.0 * pen + std::f64::consts::PI * pen * pen / 4.0;
    let rim = full(150.0) - full(102.0);
    let ink = area(&outline(&face, 'I'));
    assert!((ink - rim).abs() < rim * 0.01, "{ink} {rim}");
}

#[test]
fn the_same_bytes_each_time() {
    for cut in Cut::ALL {
        assert_eq!(font(cut).unwrap(), font(cut).unwrap());
    }
}

#[test]
fn strokes_stand_where_the_dots_are_and_in_writing_order() {
    let strokes = strokes('t').unwrap();
    assert_eq!(strokes.len(), 2);
    let points = strokes[0].points();
    let ((_, top), (_, low)) = (points[0], points[points.len() - 1]);
    assert!(top == 660 && low < 60, "a t is begun at its top");
    let across = strokes[1].points();
    assert!(across[0].0 < across[across.len() - 1].0 && across.iter().all(|p| p.1 == 480));
}

/// Against the machine's own functions, which are right to more digits than are asked for here.
#[test]
fn directions_are_those_of_sine_and_cosine() {
    for tenth in -7300..=7300 {
        let degrees = f64::from(tenth) / 10.0;
        let d = direction::direction(degrees);
        let truth = kurbo::Vec2::from_angle(degrees.to_radians());
        assert!((d - truth).hypot() < 1e-12, "{degrees}");
    }
}

fn fault(text: &str) -> String {
    Table::read(text).unwrap_err().to_string()
}

#[test]
fn faults_in_a_table_are_told_with_their_line() {
    let sound = "# a comment\nI s s : M 0 740 L 0 0\n";
    assert!(Table::read(sound).is_ok());
    let told = fault(&format!("{sound}T s s : M 0 0 L 5"));
    assert_eq!(told, "stroke table, line 3: `L` wants more numbers");
    assert!(fault("I s s : L 0 0").contains("no point to start from"));
    assert!(fault("I s q : M 0 0 L 5 5").contains("side `q`"));
    assert!(fault("I s s : M 0 0 Q 5 5").contains("step `Q`"));
    assert!(fault("I s s : M 0 0 L 5 x").contains("`x` is not a number"));
    assert!(fault("I s s : M 0 0").contains("draws nothing"));
    assert!(fault("I s s : E 0 0 0 5 0 90").contains("radii"));
    assert!(fault("I s s : E 0 0 5 5 0 400").contains("360"));
    assert!(fault("II s s : D 0 0").contains("`II` is not one character"));
    assert!(fault("I s s 1 2 : D 0 0").contains("pen width"));
    assert!(fault("I").contains("expected"));
    assert!(fault(&sound.repeat(2)).contains("line 4: character `I` is drawn twice"));
    assert!(fault("é = e acute 0").contains("no mark `acute`"));
    assert!(fault("mark acute : D 0 0\né = e acute 0").contains("no character `e`"));
}

/// A curve that no pen of that width can follow is refused, not drawn badly.
#[test]
fn a_curve_tighter_than_the_pen_is_refused() {
    let table = Table::read("I s s : E 0 0 200 60 0 180").unwrap();
    let told = glyph::draw('I', table.get('I').unwrap(), Cut::Bold).err().unwrap();
    assert_eq!(told, HandError::Tight { glyph: 'I' });
}

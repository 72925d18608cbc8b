//! Checks of outlines and dots.

use std::collections::BTreeMap;

use kurbo::{BezPath, Point, Shape};
use ttf_parser::Face;

use super::{Path, WANTED, each, kern, outline, width};
use crate::hand::table::Table;
use crate::hand::*;

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

/// Area of all contours, as the sum that a filler with the nonzero rule sees when none overlap.
fn area(path: &Path) -> f64 {
    -path.contours.iter().map(Shape::area).sum::<f64>()
}

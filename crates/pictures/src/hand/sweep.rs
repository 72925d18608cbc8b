//! Draws strokes with a round pen: each piece becomes a polygon, their union the outline.
//!
//! The outline of an arc is sampled from the parallel curve of the ellipse itself, so that it
//! carries no error of a fitted curve; every polygon runs anticlockwise, because pieces that run
//! both ways would cancel each other in the union.

use std::f64::consts::PI;

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::simplify::SimplifyShape;
use i_overlay::float::single::SingleFloatOverlay;
use kurbo::{Point, Vec2};

use super::stroke::{Segment, Stroke};

/// How far a chord may leave the true curve, in units.
const SAG: f64 = 0.04;
/// How much wider a dot is than the pen, because a spot looks smaller than a line.
const DOT: f64 = 1.14;

/// A closed polygon in units.
pub(super) type Contour = Vec<[f64; 2]>;

/// A curve bends more sharply than half the pen and is no part of a circle.
#[derive(Debug)]
pub(super) struct Tight;

/// The outline of strokes drawn with a round pen, `pen` giving each one's width. Outer contours
/// run clockwise and holes anticlockwise, as TrueType wants them.
pub(super) fn sweep(
    strokes: &[Stroke],
    pen: impl Fn(&Stroke) -> f64,
) -> Result<Vec<Contour>, Tight> {
    let mut pieces = Vec::new();
    for stroke in strokes {
        for segment in &stroke.segments {
            piece(segment, pen(stroke) / 2.0, &mut pieces)?;
        }
    }
    Ok(oriented(pieces.simplify_shape(FillRule::NonZero)))
}

/// What is left of `outer` when `inner` is taken away; both as `sweep` returns them.
pub(super) fn without(outer: &[Contour], inner: &[Contour]) -> Vec<Contour> {
    let (outer, inner) = (outer.to_vec(), inner.to_vec());
    oriented(outer.overlay(&inner, OverlayRule::Difference, FillRule::NonZero))
}

/// Twice the area of a contour, positive when it runs anticlockwise, in square units.
pub(super) fn area(contour: &[[f64; 2]]) -> f64 {
    let next = contour.iter().cycle().skip(1);
    let pairs = contour.iter().zip(next);
    pairs.map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum()
}

fn oriented(shapes: Vec<Vec<Contour>>) -> Vec<Contour> {
    let mut out = Vec::new();
    for shape in shapes {
        for (at, mut contour) in shape.into_iter().enumerate() {
            let outer = at == 0;
            if (area(&contour) > 0.0) == outer {
                contour.reverse();
            }
            out.push(contour);
        }
    }
    out
}

fn piece(segment: &Segment, half: f64, out: &mut Vec<Contour>) -> Result<(), Tight> {
    match *segment {
        Segment::Dot { at } => out.push(disc(at, half * DOT)),
        Segment::Line { from, to } => {
            let along = (to - from).atan2();
            let mut capsule = cap(to, half, along - PI / 2.0);
            capsule.extend(cap(from, half, along + PI / 2.0));
            out.push(capsule);
        }
        Segment::Arc {
            centre,
            radii,
            start,
            end,
        } => {
            let (low, high) = (start.min(end).to_radians(), start.max(end).to_radians());
            let ribbon = Ribbon {
                centre,
                radii,
                low,
                high,
                half,
            };
            if ribbon.sharpest() > half {
                out.push(ribbon.polygon());
            } else if (radii.x - radii.y).abs() < 1e-9 {
                ribbon.fan(out);
            } else {
                return Err(Tight);
            }
        }
    }
    Ok(())
}

/// Number of chords that keep an arc of this radius and turn within `SAG`:
/// a chord of angle t leaves its circle by r (1 - cos(t/2)), about r t² / 8.
fn chords(radius: f64, turn: f64) -> usize {
    (turn.abs() / (8.0 * SAG / radius).sqrt()).ceil().max(2.0) as usize
}

fn arc(centre: Point, radius: f64, from: f64, turn: f64) -> Contour {
    let steps = chords(radius, turn);
    let angles = (0..=steps).map(|i| from + turn * i as f64 / steps as f64);
    angles
        .map(|a| {
            let p = centre + Vec2::from_angle(a) * radius;
            [p.x, p.y]
        })
        .collect()
}

fn disc(centre: Point, radius: f64) -> Contour {
    let mut circle = arc(centre, radius, 0.0, 2.0 * PI);
    circle.pop();
    circle
}

/// Half a disc's rim, anticlockwise from an angle.
fn cap(centre: Point, radius: f64, from: f64) -> Contour {
    arc(centre, radius, from, PI)
}

/// What a pen of twice `half` covers along an elliptic arc from angle `low` to `high` (radians).
struct Ribbon {
    centre: Point,
    radii: Vec2,
    low: f64,
    high: f64,
    half: f64,
}

impl Ribbon {
    fn angles(&self) -> impl DoubleEndedIterator<Item = f64> + use<> {
        let steps = chords(
            self.radii.x.max(self.radii.y) + self.half,
            self.high - self.low,
        );
        let (low, span) = (self.low, self.high - self.low);
        (0..=steps).map(move |i| low + span * i as f64 / steps as f64)
    }

    fn point(&self, angle: f64) -> Point {
        self.centre + Vec2::new(self.radii.x * angle.cos(), self.radii.y * angle.sin())
    }

    /// Unit vector away from the ellipse's inside: the gradient of (x/rx)² + (y/ry)².
    fn outward(&self, angle: f64) -> Vec2 {
        Vec2::new(self.radii.y * angle.cos(), self.radii.x * angle.sin()).normalize()
    }

    /// Smallest radius of curvature, (rx² sin² + ry² cos²)^(3/2) / (rx ry).
    fn sharpest(&self) -> f64 {
        let radius = |a: f64| {
            let speed = Vec2::new(self.radii.x * a.sin(), self.radii.y * a.cos()).hypot();
            speed.powi(3) / (self.radii.x * self.radii.y)
        };
        self.angles().map(radius).fold(f64::INFINITY, f64::min)
    }

    fn side(&self, angle: f64, off: f64) -> [f64; 2] {
        let p = self.point(angle) + self.outward(angle) * off;
        [p.x, p.y]
    }

    fn polygon(&self) -> Contour {
        let mut out: Contour = self.angles().map(|a| self.side(a, self.half)).collect();
        out.extend(cap(
            self.point(self.high),
            self.half,
            self.outward(self.high).atan2(),
        ));
        out.extend(self.angles().rev().map(|a| self.side(a, -self.half)));
        let back = self.outward(self.low).atan2() + PI;
        out.extend(cap(self.point(self.low), self.half, back));
        out
    }

    /// A circle smaller than the pen: the sector out to the far rim, and the discs at both ends.
    /// A disc in between reaches half - r beyond the middle, and so do those at the ends.
    fn fan(&self, out: &mut Vec<Contour>) {
        let mut sector: Contour = self.angles().map(|a| self.side(a, self.half)).collect();
        if self.high - self.low < 2.0 * PI - 1e-9 {
            sector.push([self.centre.x, self.centre.y]);
        }
        out.push(sector);
        out.push(disc(self.point(self.low), self.half));
        out.push(disc(self.point(self.high), self.half));
    }
}

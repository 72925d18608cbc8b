//! What a round pen covers along one piece of a stroke, as polygons.
//!
//! The outline of an arc is sampled from the parallel curve of the ellipse itself, so that it
//! carries no error of a fitted curve; every polygon runs anticlockwise, because pieces that run
//! both ways would cancel each other in the union.

use kurbo::{Point, Vec2};

use super::direction::{direction, turned};
use super::stroke::Segment;
use super::sweep::{Contour, SAG};

/// How much wider a dot is than the pen, because a spot looks smaller than a line.
const DOT: f64 = 1.14;

/// A curve bends more sharply than half the pen and is no part of a circle.
#[derive(Debug)]
pub(super) struct Tight;

/// Adds the polygons of a piece drawn with a pen of twice `half`.
pub(super) fn piece(segment: &Segment, half: f64, out: &mut Vec<Contour>) -> Result<(), Tight> {
    match *segment {
        Segment::Dot { at } => out.push(disc(at, half * DOT)),
        Segment::Line { from, to } => {
            let along = (to - from).normalize();
            let right = Vec2::new(along.y, -along.x) * half;
            let mut capsule = cap(to, right);
            capsule.extend(cap(from, -right));
            out.push(capsule);
        }
        Segment::Arc { centre, radii, start, end } => {
            let (low, high) = (start.min(end), start.max(end));
            let ribbon = Ribbon { centre, radii, low, high, half };
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

/// Number of chords that keep an arc of this radius and turn (in degrees) within `SAG`:
/// a chord of angle t leaves its circle by r (1 - cos(t/2)), about r t² / 8.
fn chords(radius: f64, turn: f64) -> usize {
    let each = (8.0 * SAG / radius).sqrt();
    (turn.abs().to_radians() / each).ceil().max(2.0) as usize
}

/// Points of a circle from the end of `radius` anticlockwise by `turn` degrees.
fn arc(centre: Point, radius: Vec2, turn: f64) -> Contour {
    let steps = chords(radius.hypot(), turn);
    let angles = (0..=steps).map(|i| turn * i as f64 / steps as f64);
    angles
        .map(|a| {
            let p = centre + turned(radius, direction(a));
            [p.x, p.y]
        })
        .collect()
}

fn disc(centre: Point, radius: f64) -> Contour {
    let mut circle = arc(centre, Vec2::new(radius, 0.0), 360.0);
    circle.pop();
    circle
}

/// Half a disc's rim, anticlockwise from the end of a radius.
fn cap(centre: Point, radius: Vec2) -> Contour {
    arc(centre, radius, 180.0)
}

/// What a pen of twice `half` covers along an elliptic arc between two angles in degrees.
struct Ribbon {
    centre: Point,
    radii: Vec2,
    low: f64,
    high: f64,
    half: f64,
}

impl Ribbon {
    fn angles(&self) -> impl DoubleEndedIterator<Item = f64> + use<> {
        let steps = chords(self.radii.x.max(self.radii.y) + self.half, self.high - self.low);
        let (low, span) = (self.low, self.high - self.low);
        (0..=steps).map(move |i| low + span * i as f64 / steps as f64)
    }

    fn point(&self, angle: f64) -> Point {
        let d = direction(angle);
        self.centre + Vec2::new(self.radii.x * d.x, self.radii.y * d.y)
    }

    /// Unit vector away from the ellipse's inside: the gradient of (x/rx)² + (y/ry)².
    fn outward(&self, angle: f64) -> Vec2 {
        let d = direction(angle);
        Vec2::new(self.radii.y * d.x, self.radii.x * d.y).normalize()
    }

    /// Smallest radius of curvature, (rx² sin² + ry² cos²)^(3/2) / (rx ry).
    fn sharpest(&self) -> f64 {
        let radius = |angle: f64| {
            let d = direction(angle);
            let speed = Vec2::new(self.radii.x * d.y, self.radii.y * d.x).hypot();
            speed * speed * speed / (self.radii.x * self.radii.y)
        };
        self.angles().map(radius).fold(f64::INFINITY, f64::min)
    }

    fn side(&self, angle: f64, off: f64) -> [f64; 2] {
        let p = self.point(angle) + self.outward(angle) * off;
        [p.x, p.y]
    }

    fn polygon(&self) -> Contour {
        let mut out: Contour = self.angles().map(|a| self.side(a, self.half)).collect();
        out.extend(cap(self.point(self.high), self.outward(self.high) * self.half));
        out.extend(self.angles().rev().map(|a| self.side(a, -self.half)));
        out.extend(cap(self.point(self.low), self.outward(self.low) * -self.half));
        out
    }

    /// A circle smaller than the pen: the sector out to the far rim, and the discs at both ends.
    /// A disc in between reaches half - r beyond the middle, and so do those at the ends.
    fn fan(&self, out: &mut Vec<Contour>) {
        let mut sector: Contour = self.angles().map(|a| self.side(a, self.half)).collect();
        if self.high - self.low < 360.0 - 1e-9 {
            sector.push([self.centre.x, self.centre.y]);
        }
        out.push(sector);
        out.push(disc(self.point(self.low), self.half));
        out.push(disc(self.point(self.high), self.half));
    }
}

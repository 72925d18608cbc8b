//! Turns a swept polygon back into few lines and quadratic curves on whole units.
//!
//! Long edges stay lines, sharp turns stay corners; what lies between is cut at its highest,
//! lowest, leftmost and rightmost points, and each part becomes the quadratic whose control point
//! is where its end tangents meet. A part that strays too far is halved.

use kurbo::{BezPath, Point, Vec2};

use super::direction::bends;

/// An edge longer than this is a straight line of the drawing, in units: the samples of a curve
/// lie closer together.
const LONG: f64 = 40.0;
/// Cosine of the turn that makes a corner: 29 degrees.
const CORNER: f64 = 0.875;
/// How far a curve may stray from the polygon, in units.
const STRAY: f64 = 0.6;
/// Vertices nearer than this say nothing about direction, in units.
const NEAR: f64 = 0.9;

/// The contour as a closed path of lines and quadratics with whole-numbered points.
pub(super) fn refit(contour: &[[f64; 2]]) -> BezPath {
    let ring = Ring::new(contour);
    let breaks = ring.breaks();
    let mut path = Rounded::default();
    path.start(ring.at(breaks[0]));
    for (i, &from) in breaks.iter().enumerate() {
        let to = match breaks.get(i + 1) {
            Some(&next) => next,
            None => breaks[0] + ring.points.len(),
        };
        ring.fit(from, to, ring.leaving(from), ring.arriving(to), &mut path);
    }
    path.close()
}

/// Collects pieces on whole units and leaves out those that rounding made empty.
#[derive(Default)]
struct Rounded {
    path: BezPath,
    first: Point,
    last: Point,
}

impl Rounded {
    fn start(&mut self, p: Point) {
        self.first = p.round();
        self.last = self.first;
        self.path.move_to(self.first);
    }

    fn line(&mut self, p: Point) {
        let p = p.round();
        if p != self.last {
            self.path.line_to(p);
            self.last = p;
        }
    }

    fn quad(&mut self, control: Point, p: Point) {
        let (control, end) = (control.round(), p.round());
        if control == self.last || control == end {
            return self.line(p);
        }
        self.path.quad_to(control, end);
        self.last = end;
    }

    fn close(mut self) -> BezPath {
        self.path.close_path();
        self.path
    }
}

/// A closed polygon; indices run on past its end.
struct Ring {
    points: Vec<Point>,
}

impl Ring {
    fn new(contour: &[[f64; 2]]) -> Ring {
        let mut points: Vec<Point> = Vec::with_capacity(contour.len());
        for p in contour.iter().map(|p| Point::new(p[0], p[1])) {
            if points.last().is_none_or(|last| last.distance(p) > NEAR) {
                points.push(p);
            }
        }
        while points.len() > 3 && points[0].distance(points[points.len() - 1]) <= NEAR {
            points.pop();
        }
        Ring { points }
    }

    fn at(&self, i: usize) -> Point {
        self.points[i % self.points.len()]
    }

    fn before(&self, i: usize) -> usize {
        (i + self.points.len() - 1) % self.points.len()
    }

    /// The edge from point `i` to the next.
    fn edge(&self, i: usize) -> Vec2 {
        self.at(i + 1) - self.at(i)
    }

    fn is_long(&self, i: usize) -> bool {
        self.edge(i).hypot() > LONG
    }

    fn is_corner(&self, i: usize) -> bool {
        let (a, b) = (self.edge(self.before(i)), self.edge(i));
        bends(a, b, CORNER)
    }

    /// Whether the outline turns back in x or in y here.
    fn is_extreme(&self, i: usize) -> bool {
        let (a, b) = (self.edge(self.before(i)), self.edge(i));
        (a.x > 0.0) != (b.x > 0.0) || (a.y > 0.0) != (b.y > 0.0)
    }

    /// Where pieces must end. Never empty: a closed polygon has a highest point.
    fn breaks(&self) -> Vec<usize> {
        let all = 0..self.points.len();
        let found: Vec<usize> = all
            .filter(|&i| {
                let lines = self.is_long(i) || self.is_long(self.before(i));
                lines || self.is_corner(i) || self.is_extreme(i)
            })
            .collect();
        if found.is_empty() { vec![0] } else { found }
    }

    /// Direction in which the outline leaves a break.
    fn leaving(&self, i: usize) -> Vec2 {
        if self.is_long(i) {
            return self.edge(i).normalize();
        }
        if self.is_corner(i) {
            return bent(self.edge(i), self.edge(i + 1));
        }
        self.smooth(i)
    }

    /// Direction in which the outline arrives at a break.
    fn arriving(&self, i: usize) -> Vec2 {
        let last = self.before(i);
        if self.is_long(last) {
            return self.edge(last).normalize();
        }
        if self.is_corner(i) {
            return bent(self.edge(last), self.edge(self.before(last)));
        }
        self.smooth(i)
    }

    /// Direction at a point where the outline does not turn sharply. A neighbouring line decides
    /// it, then an extreme, else the nearer of the two edges counts more.
    fn smooth(&self, i: usize) -> Vec2 {
        let last = self.before(i);
        let (a, b) = (self.edge(last), self.edge(i));
        if self.is_long(last) {
            return a.normalize();
        }
        if self.is_long(i) {
            return b.normalize();
        }
        let mean = (a * (b.hypot() / a.hypot()) + b * (a.hypot() / b.hypot())).normalize();
        if !self.is_extreme(i) {
            return mean;
        }
        match mean.x.abs() > mean.y.abs() {
            true => Vec2::new(mean.x.signum(), 0.0),
            false => Vec2::new(0.0, mean.y.signum()),
        }
    }

    fn fit(&self, from: usize, to: usize, leave: Vec2, arrive: Vec2, path: &mut Rounded) {
        let (a, b) = (self.at(from), self.at(to));
        if to == from + 1 {
            return path.line(b);
        }
        if let Some(control) = meeting(a, leave, b, arrive)
            && self.follows(from, to, control)
        {
            return path.quad(control, b);
        }
        if self.straight(from, to) {
            return path.line(b);
        }
        let middle = self.halfway(from, to);
        let tangent = self.smooth(middle);
        self.fit(from, middle, leave, tangent, path);
        self.fit(middle, to, tangent, arrive, path);
    }

    /// The point nearest to half the length between two others.
    fn halfway(&self, from: usize, to: usize) -> usize {
        let length = |from: usize, to: usize| (from..to).map(|i| self.edge(i).hypot()).sum::<f64>();
        let half = length(from, to) / 2.0;
        let inner = from + 1..to;
        let found = inner.min_by(|&i, &j| {
            let off = |k| (length(from, k) - half).abs();
            off(i).total_cmp(&off(j))
        });
        found.unwrap_or(from + 1)
    }

    fn straight(&self, from: usize, to: usize) -> bool {
        let (a, b) = (self.at(from), self.at(to));
        (from + 1..to).all(|i| distance(self.at(i), a, b) < STRAY / 4.0)
    }

    /// Whether a quadratic stays near the polygon.
    fn follows(&self, from: usize, to: usize, control: Point) -> bool {
        let (a, b) = (self.at(from), self.at(to));
        (1..8).map(|i| f64::from(i) / 8.0).all(|t| {
            let p = a.lerp(control, t).lerp(control.lerp(b, t), t);
            (from..to).any(|i| distance(p, self.at(i), self.at(i + 1)) < STRAY)
        })
    }
}

/// Direction at the beginning of `first`, when `second` follows and the curve bends evenly.
fn bent(first: Vec2, second: Vec2) -> Vec2 {
    let (u, v) = (first.normalize(), second.normalize());
    if bends(u, v, CORNER) {
        return u;
    }
    // Half the turn back from `u`: the mean direction, mirrored in `u`.
    let mean = (u + v).normalize();
    u * (2.0 * u.dot(mean)) - mean
}

/// Where the tangents at both ends of a piece meet, if it lies ahead of one and behind the other.
fn meeting(a: Point, leave: Vec2, b: Point, arrive: Vec2) -> Option<Point> {
    let across = leave.cross(arrive);
    if across.abs() < 0.02 {
        return None;
    }
    let ahead = (b - a).cross(arrive) / across;
    let behind = (b - a).cross(leave) / -across;
    (ahead > 0.0 && behind > 0.0).then(|| a + leave * ahead)
}

fn distance(p: Point, a: Point, b: Point) -> f64 {
    let along = b - a;
    let t = ((p - a).dot(along) / along.hypot2().max(1e-12)).clamp(0.0, 1.0);
    p.distance(a + along * t)
}

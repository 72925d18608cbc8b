//! Centre lines: what the pen draws, before it has a width.

use kurbo::{Point, Vec2};

use super::direction::direction;

/// One piece of a centre line, in units (thousandths of an em), y upwards from the base line.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Segment {
    /// A straight line.
    Line {
        /// Where it begins.
        from: Point,
        /// Where it ends.
        to: Point,
    },
    /// Part of an ellipse with upright axes.
    Arc {
        /// Its middle.
        centre: Point,
        /// Half its width and half its height.
        radii: Vec2,
        /// Angle at which it begins, in degrees: 0 = right, anticlockwise.
        start: f64,
        /// Angle at which it ends, in degrees.
        end: f64,
    },
    /// A dot set with the pen.
    Dot {
        /// Its middle.
        at: Point,
    },
}

/// What the pen draws between being set down and lifted.
#[derive(Clone, Debug, PartialEq)]
pub struct Stroke {
    /// The pieces in writing order; each begins where the one before it ends.
    pub segments: Vec<Segment>,
    /// Width of the pen in heavy cuts, where it is finer than the cut's own, in units.
    pub(super) heavy: Option<f64>,
    /// Belongs to an accent, which spacing ignores.
    pub(super) mark: bool,
}

impl Segment {
    /// Where the pen is at the beginning.
    pub fn start(&self) -> Point {
        match *self {
            Segment::Line { from, .. } => from,
            Segment::Arc { start, .. } => self.on_ellipse(start),
            Segment::Dot { at } => at,
        }
    }

    /// Where the pen is at the end.
    pub fn end(&self) -> Point {
        match *self {
            Segment::Line { to, .. } => to,
            Segment::Arc { end, .. } => self.on_ellipse(end),
            Segment::Dot { at } => at,
        }
    }

    /// The point of an arc's ellipse at an angle in degrees; a line or dot has only its start.
    fn on_ellipse(&self, angle: f64) -> Point {
        match *self {
            Segment::Arc { centre, radii, .. } => {
                let d = direction(angle);
                centre + Vec2::new(radii.x * d.x, radii.y * d.y)
            }
            _ => self.start(),
        }
    }

    /// The same piece somewhere else.
    fn moved(&self, by: Vec2) -> Segment {
        let mut copy = *self;
        match &mut copy {
            Segment::Line { from, to } => {
                *from += by;
                *to += by;
            }
            Segment::Arc { centre, .. } => *centre += by,
            Segment::Dot { at } => *at += by,
        }
        copy
    }

    /// Points along the piece, both ends included, at most `apart` units from one to the next.
    pub(super) fn walk(&self, apart: f64) -> Vec<Point> {
        match *self {
            Segment::Dot { at } => vec![at],
            Segment::Line { from, to } => {
                let steps = (from.distance(to) / apart).ceil().max(1.0) as usize;
                (0..=steps).map(|i| from.lerp(to, i as f64 / steps as f64)).collect()
            }
            Segment::Arc { radii, start, end, .. } => {
                // The longer radius bounds the speed along the ellipse.
                let longest = (end - start).abs().to_radians() * radii.x.max(radii.y);
                let steps = (longest / apart).ceil().max(1.0) as usize;
                (0..=steps)
                    .map(|i| start + (end - start) * i as f64 / steps as f64)
                    .map(|angle| self.on_ellipse(angle))
                    .collect()
            }
        }
    }
}

impl Stroke {
    /// The centre line as whole units, close enough together (about 10 units) to draw with
    /// straight lines. A dot is a single point.
    pub fn points(&self) -> Vec<(i32, i32)> {
        let mut out: Vec<(i32, i32)> = Vec::new();
        for point in self.walk(10.0) {
            let whole = (point.x.round() as i32, point.y.round() as i32);
            if out.last() != Some(&whole) {
                out.push(whole);
            }
        }
        out
    }

    /// Points along the whole stroke, without repeating the joints.
    pub(super) fn walk(&self, apart: f64) -> Vec<Point> {
        let mut out: Vec<Point> = Vec::new();
        for point in self.segments.iter().flat_map(|s| s.walk(apart)) {
            if out.last().is_none_or(|last| last.distance(point) > 1e-6) {
                out.push(point);
            }
        }
        out
    }

    /// The same stroke somewhere else.
    pub(super) fn moved(&self, by: Vec2) -> Stroke {
        Stroke { segments: self.segments.iter().map(|s| s.moved(by)).collect(), ..self.clone() }
    }

    /// Height of the lowest point, in units.
    pub(super) fn lowest(&self) -> f64 {
        let heights = self.walk(10.0).into_iter().map(|p| p.y);
        heights.fold(f64::INFINITY, f64::min)
    }
}

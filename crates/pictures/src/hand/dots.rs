//! Dots along the centre lines, for letters to trace.

use kurbo::{Point, Vec2};

use super::direction::bends;
use super::stroke::{Segment, Stroke};

/// Distance from dot to dot, in units: just under 1 mm when the em is 47 pt.
const STEP: f64 = 56.0;
/// Dots nearer than this part of a step run together and are dropped.
const CROWDED: f64 = 0.7;
/// Centre lines nearer than this touch, in units.
const TOUCH: f64 = 4.0;
/// Distance between the points at which strokes are compared, in units.
const FINE: f64 = 2.0;
/// Cosine of the turn between two fine points that makes a corner: 23 degrees.
const CORNER: f64 = 0.92;

/// Radius of a dot, in units.
pub(super) const RADIUS: i32 = 16;

/// Middles of the dots of a glyph, in whole units. Ends, corners and meeting points come first,
/// so that they survive where dots would crowd; then straight lines, then curves.
pub(super) fn dots(strokes: &[Stroke]) -> Vec<(i32, i32)> {
    let mut ranked: Vec<(u8, Point)> = Vec::new();
    for (at, stroke) in strokes.iter().enumerate() {
        let others = strokes.iter().enumerate().filter(|(i, _)| *i != at).map(|(_, s)| s);
        ranked.extend(along(stroke, others.collect()));
    }
    ranked.sort_by_key(|(rank, _)| *rank);
    let mut kept: Vec<(i32, i32)> = Vec::new();
    for (_, p) in ranked {
        let whole = (p.x.round() as i32, p.y.round() as i32);
        let near = |q: &(i32, i32)| {
            let apart = Vec2::new(f64::from(q.0 - whole.0), f64::from(q.1 - whole.1));
            apart.hypot() < CROWDED * STEP
        };
        if !kept.iter().any(near) {
            kept.push(whole);
        }
    }
    kept
}

/// Dots of one stroke with their ranks: 0 ends, corners, meetings, 1 on lines, 2 on curves.
fn along(stroke: &Stroke, others: Vec<&Stroke>) -> Vec<(u8, Point)> {
    let path = stroke.walk(FINE);
    let mut stops = vec![0, path.len() - 1];
    stops.extend(corners(&path));
    for other in others {
        stops.extend(meetings(&path, &other.walk(FINE)));
    }
    stops.sort_unstable();
    stops.dedup();
    let mut out: Vec<(u8, Point)> = stops.iter().map(|&i| (0, path[i])).collect();
    for run in stops.windows(2) {
        let between = spaced(&path[run[0]..=run[1]]);
        out.extend(between.into_iter().map(|p| (if on_line(stroke, p) { 1 } else { 2 }, p)));
    }
    out
}

fn on_line(stroke: &Stroke, p: Point) -> bool {
    stroke.segments.iter().any(|s| match *s {
        Segment::Line { from, to } => {
            // Off the line by less than half a unit, in the triangle's height.
            let along = to - from;
            let t = (p - from).dot(along) / along.hypot2();
            (0.0..=1.0).contains(&t) && p.distance(from + along * t) < 0.5
        }
        _ => false,
    })
}

fn corners(path: &[Point]) -> Vec<usize> {
    let inner = 1..path.len().saturating_sub(1);
    inner
        .filter(|&i| {
            let (a, b) = (path[i] - path[i - 1], path[i + 1] - path[i]);
            bends(a, b, CORNER)
        })
        .collect()
}

/// Where a path meets another: the middle of each stretch along which they touch.
fn meetings(path: &[Point], other: &[Point]) -> Vec<usize> {
    let touches = |p: &Point| other.iter().any(|q| q.distance(*p) < TOUCH);
    let mut out = Vec::new();
    let mut since = None;
    for (i, p) in path.iter().enumerate() {
        match (touches(p), since) {
            (true, None) => since = Some(i),
            (false, Some(from)) => {
                out.push((from + i - 1) / 2);
                since = None;
            }
            _ => {}
        }
    }
    out.extend(since.map(|from| (from + path.len() - 1) / 2));
    out
}

/// Evenly spaced points inside a run, its two ends left out.
fn spaced(run: &[Point]) -> Vec<Point> {
    let length: f64 = run.windows(2).map(|w| w[0].distance(w[1])).sum();
    let parts = (length / STEP).round().max(1.0);
    let mut out = Vec::new();
    let (mut gone, mut next) = (0.0, length / parts);
    for w in run.windows(2) {
        let step = w[0].distance(w[1]);
        while out.len() + 1 < parts as usize && gone + step >= next {
            out.push(w[0].lerp(w[1], (next - gone) / step));
            next += length / parts;
        }
        gone += step;
    }
    out
}

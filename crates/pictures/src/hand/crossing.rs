//! Looks for places where an outline crosses itself or another contour of the same glyph.

use kurbo::{BezPath, PathEl, Point};

/// Straight pieces that stand for one curve.
const CHORDS: usize = 8;
/// Curve points are rounded to this part of a unit, so that the test itself is exact.
const GRID: f64 = 64.0;

type Cell = (i64, i64);

/// How many pairs of edges cross properly: each edge passes from one side of the other to its
/// other side, which merely touching edges do not. A sound outline has none.
pub fn crossings(outline: &[BezPath]) -> usize {
    let edges: Vec<(Cell, Cell)> = outline.iter().flat_map(edges).collect();
    let mut found = 0;
    for (at, a) in edges.iter().enumerate() {
        let rest = edges[at + 1..].iter();
        found += rest.filter(|b| overlap(a, b) && cross(a, b)).count();
    }
    found
}

fn cell(p: Point) -> Cell {
    ((p.x * GRID).round() as i64, (p.y * GRID).round() as i64)
}

fn edges(path: &BezPath) -> Vec<(Cell, Cell)> {
    let mut points: Vec<Point> = Vec::new();
    for piece in path.elements() {
        let last = points.last().copied().unwrap_or_default();
        let at = |i: usize| i as f64 / CHORDS as f64;
        match *piece {
            PathEl::MoveTo(p) | PathEl::LineTo(p) => points.push(p),
            PathEl::QuadTo(c, p) => points.extend((1..=CHORDS).map(|i| {
                let t = at(i);
                last.lerp(c, t).lerp(c.lerp(p, t), t)
            })),
            PathEl::CurveTo(a, b, p) => points.extend((1..=CHORDS).map(|i| {
                let t = at(i);
                let (ab, bp) =
                    (last.lerp(a, t).lerp(a.lerp(b, t), t), a.lerp(b, t).lerp(b.lerp(p, t), t));
                ab.lerp(bp, t)
            })),
            PathEl::ClosePath => points.extend(points.first().copied()),
        }
    }
    let cells: Vec<Cell> = points.into_iter().map(cell).collect();
    cells.windows(2).map(|w| (w[0], w[1])).filter(|(a, b)| a != b).collect()
}

fn overlap(a: &(Cell, Cell), b: &(Cell, Cell)) -> bool {
    let meet =
        |a0: i64, a1: i64, b0: i64, b1: i64| a0.min(a1) <= b0.max(b1) && b0.min(b1) <= a0.max(a1);
    meet(a.0.0, a.1.0, b.0.0, b.1.0) && meet(a.0.1, a.1.1, b.0.1, b.1.1)
}

/// Which side of the line through `a` a point lies on: the sign of the cross product.
fn turn(a: &(Cell, Cell), p: Cell) -> i64 {
    let (u, v) = ((a.1.0 - a.0.0, a.1.1 - a.0.1), (p.0 - a.0.0, p.1 - a.0.1));
    (u.0 * v.1 - u.1 * v.0).signum()
}

fn cross(a: &(Cell, Cell), b: &(Cell, Cell)) -> bool {
    turn(a, b.0) * turn(a, b.1) < 0 && turn(b, a.0) * turn(b, a.1) < 0
}

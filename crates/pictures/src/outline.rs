//! Line art from flat artwork: every visible shape outlined in black over white paper, in paint order.
//!
//! The line is given in µm on paper, together with the box that the picture
//! will fill, so that a small snail and a tall lighthouse get lines of the same
//! width. A shape that lies wholly inside an earlier one (a rib, a spot, a
//! shade) gets the thinner inner line. Small dark discs are eyes and stay solid.

mod emit;
mod read;
mod transform;

pub use read::OutlineError;

use kurbo::{BezPath, Point, Rect, Shape as _};
use read::{Look, Shape};

/// Width of the lines and of the box on paper that the picture will fill, all in µm.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pen {
    /// Line round a shape, µm.
    pub outer: u32,
    /// Line of a shape inside another, µm.
    pub inner: u32,
    /// Width of the box, µm.
    pub box_w: u32,
    /// Height of the box, µm.
    pub box_h: u32,
    /// Keep small dark discs (eyes) solid?
    pub solid_eyes: bool,
}

/// A picture as lines.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Outlined {
    /// SVG text.
    pub svg: String,
    /// Width of its view box, user units.
    pub width: u32,
    /// Height of its view box, user units.
    pub height: u32,
    /// Number of shapes drawn.
    pub shapes: usize,
    /// How many of them are solid black.
    pub solid: usize,
}

/// A dark disc up to this share of the longer side is an eye when its name says so.
const NAMED_EYE: f64 = 0.1;
/// A dark disc up to this share is an eye in a picture that names none, if there is one or two of them.
const EYE: f64 = 0.04;
/// A first shape that covers this share of the picture is its ground; what stands on it is no inner line.
const GROUND: f64 = 0.6;
/// A closed form this near to a circle (perimeter² over 4π × area) counts as a disc.
const ROUND: f64 = 1.12;
/// Greys darker than this (of 255) print as black when they fill an eye.
const DARK: f64 = 75.0;

/// Draws the outlines of flat art.
///
/// # Errors
/// What the artwork holds that has no outline (bitmaps, letters, copies), or that it holds nothing visible.
pub fn outline(svg: &str, pen: Pen) -> Result<Outlined, OutlineError> {
    let art = read::read(svg)?;
    let bounds = art
        .shapes
        .iter()
        .map(|s| s.path.bounding_box())
        .reduce(|a, b| a.union(b))
        .ok_or(OutlineError::Empty)?;
    let bounds = art.view.map_or(bounds, |view| bounds.intersect(view));
    if bounds.width() <= 0.0 || bounds.height() <= 0.0 {
        return Err(OutlineError::Empty);
    }
    // User units a µm once the drawing fills its box; the line's own width is small beside it.
    let scale = (bounds.width() / f64::from(pen.box_w)).max(bounds.height() / f64::from(pen.box_h));
    let outer = f64::from(pen.outer) * scale;
    let inner = f64::from(pen.inner) * scale;
    let drawn = judge(&art.shapes, bounds, pen.solid_eyes);
    Ok(emit::emit(&art.shapes, &drawn, bounds, outer, inner))
}

/// True when the artwork is line art already: nothing in it is filled but with white or near-black.
///
/// # Errors
/// As for [`outline`].
pub fn is_line_art(svg: &str) -> Result<bool, OutlineError> {
    let art = read::read(svg)?;
    let plain = |look: &Look| {
        look.fill.is_none_or(|f| f.neutral() && (f.grey() >= 245.0 || f.grey() <= DARK))
    };
    Ok(art.shapes.iter().all(|s| plain(&s.look))
        && art
            .shapes
            .iter()
            .any(|s| s.look.stroke || s.look.fill.is_some_and(|f| f.grey() <= DARK)))
}

/// How a shape is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Manner {
    /// White, with the outer line.
    Outer,
    /// White, with the inner line; the index of the shape it lies in, and whether it touches that one's edge.
    Inner(usize, bool),
    /// Black.
    Solid,
    /// White spot on a black one: no line.
    Glint,
    /// A line only.
    Line,
}

fn judge(shapes: &[Shape], bounds: Rect, solid_eyes: bool) -> Vec<Manner> {
    let longer = bounds.width().max(bounds.height());
    let eyes = if solid_eyes { eyes(shapes, longer) } else { Vec::new() };
    // A ground holds everything; from there on only what stands on it can hold an inner shape.
    let ground =
        usize::from(shapes.first().is_some_and(|s| s.path.area().abs() > GROUND * bounds.area()));
    let mut out: Vec<Manner> = Vec::with_capacity(shapes.len());
    for (i, shape) in shapes.iter().enumerate() {
        let manner = if shape.look.fill.is_none() {
            Manner::Line
        } else if eyes.contains(&i) {
            Manner::Solid
        } else if radius(&shape.path).is_some_and(|r| r <= EYE * longer)
            && on_solid(shape, &shapes[..i], &out)
        {
            Manner::Glint
        } else {
            let held = holder(shape, &shapes[ground.min(i)..i], longer);
            held.map_or(Manner::Outer, |(j, touches)| Manner::Inner(j + ground, touches))
        };
        out.push(manner);
    }
    out
}

/// Indices of the small dark discs that are eyes: those named so, or one or two in a picture without names.
fn eyes(shapes: &[Shape], longer: f64) -> Vec<usize> {
    let disc = |shape: &Shape, most: f64| {
        shape.look.fill.is_some_and(|f| f.grey() <= DARK)
            && radius(&shape.path).is_some_and(|r| r <= most * longer)
    };
    let all = |named: bool, most: f64| -> Vec<usize> {
        let found = shapes.iter().enumerate().filter(|(_, s)| (s.eye || !named) && disc(s, most));
        found.map(|(i, _)| i).collect()
    };
    if shapes.iter().any(|s| s.eye) {
        return all(true, NAMED_EYE);
    }
    let found = all(false, EYE);
    if found.len() <= 2 { found } else { Vec::new() }
}

/// Radius of a form that is as good as a disc.
fn radius(path: &BezPath) -> Option<f64> {
    let area = path.area().abs();
    let perimeter = path.perimeter(0.1);
    (area > 0.0 && perimeter * perimeter / (4.0 * std::f64::consts::PI * area) <= ROUND)
        .then(|| (area / std::f64::consts::PI).sqrt())
}

fn on_solid(shape: &Shape, before: &[Shape], manners: &[Manner]) -> bool {
    let centre = shape.path.bounding_box().center();
    before.iter().zip(manners).any(|(s, m)| *m == Manner::Solid && s.path.contains(centre))
}

/// The last earlier shape that wholly holds this one, and whether they share an edge.
fn holder(shape: &Shape, before: &[Shape], longer: f64) -> Option<(usize, bool)> {
    let slack = longer * 0.006;
    let own = shape.path.bounding_box();
    let points = samples(&shape.path);
    let (j, touches) = before.iter().enumerate().rev().find_map(|(j, other)| {
        let room = other.path.bounding_box().inflate(slack, slack);
        let larger = other.path.area().abs() > 1.1 * shape.path.area().abs();
        if other.look.fill.is_none() || !larger || room.union(own) != room {
            return None;
        }
        held(&points, &other.path, slack).map(|touches| (j, touches))
    })?;
    Some((j, touches))
}

/// None when a point lies outside; else whether one lies within the slack of the edge.
fn held(points: &[Point], path: &BezPath, slack: f64) -> Option<bool> {
    let mut touches = false;
    for p in points {
        let near: Vec<bool> = around(*p, slack).map(|q| path.contains(q)).collect();
        if !path.contains(*p) && !near.contains(&true) {
            return None;
        }
        touches |= near.contains(&false);
    }
    Some(touches)
}

fn around(p: Point, slack: f64) -> impl Iterator<Item = Point> {
    // Eight ways: a corner seen along the two axes alone has no neighbour inside.
    let ways = (-1..=1).flat_map(|x| (-1..=1).map(move |y| (x, y))).filter(|w| *w != (0, 0));
    ways.map(move |(x, y)| Point::new(p.x + f64::from(x) * slack, p.y + f64::from(y) * slack))
}

/// Points along the outline, two a segment.
fn samples(path: &BezPath) -> Vec<Point> {
    use kurbo::ParamCurve as _;
    path.segments().flat_map(|s| [s.eval(0.0), s.eval(0.5)]).collect()
}

#[cfg(test)]
mod tests;

//! Draws strokes with a round pen: each piece becomes a polygon, their union the ink.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::float::simplify::SimplifyShape;
use i_overlay::float::single::SingleFloatOverlay;
use i_overlay::mesh::float::outline::offset::OutlineOffset;
use i_overlay::mesh::float::style::{LineJoin, OutlineStyle};
use kurbo::Vec2;

use super::nib::{Tight, piece};
use super::stroke::Stroke;

/// How far a chord may leave the true curve, in units.
pub(super) const SAG: f64 = 0.1;

/// A closed polygon in units.
pub(super) type Contour = Vec<[f64; 2]>;

/// The ink of strokes drawn with a round pen, `pen` giving each one's width.
pub(super) fn sweep(strokes: &[Stroke], pen: impl Fn(&Stroke) -> f64) -> Result<Ink, Tight> {
    let mut pieces = Vec::new();
    for stroke in strokes {
        for segment in &stroke.segments {
            piece(segment, pen(stroke) / 2.0, &mut pieces)?;
        }
    }
    Ok(Ink(pieces.simplify_shape(FillRule::NonZero)))
}

/// Inked areas: in each, the outer contour comes first and runs anticlockwise, then its holes.
pub(super) struct Ink(Vec<Vec<Contour>>);

impl Ink {
    /// Rounds the inner corners where strokes meet to at least this radius, as wet ink does: the
    /// ink grows by the radius and shrinks again, which fills what is narrower. Each area is
    /// treated alone, lest a dot flow into its letter.
    pub fn soften(self, radius: f64) -> Ink {
        let alone = self.0.into_iter().map(|shape| Ink(vec![shape]));
        Ink(alone.flat_map(|ink| ink.grown(radius).grown(-radius).0).collect())
    }

    /// What is left when all but a rim of this thickness is taken away.
    pub fn hollow(self, rim: f64) -> Ink {
        let inner = self.grown(-rim);
        Ink(self.0.overlay(&inner.0, OverlayRule::Difference, FillRule::NonZero))
    }

    /// The contours as TrueType wants them: outer ones clockwise, holes anticlockwise.
    pub fn contours(self) -> Vec<Contour> {
        let mut out = Vec::new();
        for shape in self.0 {
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

    fn grown(&self, by: f64) -> Ink {
        let chord = (8.0 * SAG / by.abs()).sqrt();
        let style = OutlineStyle::new(by).line_join(LineJoin::Round(chord));
        let grown = self.0.outline(&style);
        let thin = |shape: Vec<Contour>| shape.iter().map(|c| thinned(c)).collect();
        Ink(grown.into_iter().map(thin).collect())
    }
}

/// A contour without vertices that hardly bend it. Growing gives each vertex two successors, so
/// that without this a few steps would make thousands; no two neighbours go at once, so that the
/// error stays within `SAG`.
fn thinned(contour: &[[f64; 2]]) -> Contour {
    let mut out: Contour = Vec::with_capacity(contour.len());
    let mut went = true;
    for (at, p) in contour.iter().enumerate() {
        let next = contour[(at + 1) % contour.len()];
        went = !went && out.last().is_some_and(|last| off(*last, *p, next) < SAG);
        if !went {
            out.push(*p);
        }
    }
    out
}

/// How far a point lies off the line between its neighbours.
fn off(a: [f64; 2], p: [f64; 2], b: [f64; 2]) -> f64 {
    let (along, to) = (Vec2::new(b[0] - a[0], b[1] - a[1]), Vec2::new(p[0] - a[0], p[1] - a[1]));
    match along.hypot() {
        0.0 => to.hypot(),
        length => along.cross(to).abs() / length,
    }
}

/// Twice the area of a contour, positive when it runs anticlockwise, in square units.
fn area(contour: &[[f64; 2]]) -> f64 {
    let next = contour.iter().cycle().skip(1);
    let pairs = contour.iter().zip(next);
    pairs.map(|(a, b)| a[0] * b[1] - a[1] * b[0]).sum()
}

//! One glyph of one cut: its outline or its dots, in place.

use kurbo::{BezPath, Vec2};

use super::Cut;
use super::crossing::crossings;
use super::dots::dots;
use super::error::HandError;
use super::refit::refit;
use super::spacing::{Placed, pen, place};
use super::stroke::Stroke;
use super::sweep::sweep;
use super::table::Glyph;

/// Thickness of a hollow letter's line, in units.
const RIM: f64 = 24.0;

/// Radius of inner corners, as a part of the pen's width.
const SOFT: f64 = 0.13;

/// What the font shows for a character.
pub(super) enum Shape {
    /// Closed contours of lines and quadratics on whole units.
    Outline(Vec<BezPath>),
    /// Middles of equal dots.
    Dots(Vec<(i32, i32)>),
}

/// A character ready for the font.
pub(super) struct Drawn {
    pub shape: Shape,
    pub placed: Placed,
}

/// Draws a character in a cut.
pub(super) fn draw(c: char, glyph: &Glyph, cut: Cut) -> Result<Drawn, HandError> {
    let placed = place(c, glyph, cut)?;
    let by = Vec2::new(placed.shift, 0.0);
    let strokes: Vec<Stroke> = glyph.strokes.iter().map(|s| s.moved(by)).collect();
    if cut == Cut::Dotted {
        let shape = Shape::Dots(dots(&strokes));
        return Ok(Drawn { shape, placed });
    }
    let ink = sweep(&strokes, |s| pen(s, cut)).map_err(|_| HandError::Tight { glyph: c })?;
    let soft = ink.soften(SOFT * cut.pen());
    let ink = match cut {
        Cut::Hollow => soft.hollow(RIM),
        _ => soft,
    };
    let outline: Vec<BezPath> = ink.contours().iter().map(|c| refit(c)).collect();
    match crossings(&outline) {
        0 => Ok(Drawn { shape: Shape::Outline(outline), placed }),
        times => Err(HandError::Crossing { glyph: c, times }),
    }
}

//! Our own hand: one table of strokes is the source of letters to trace and of a rounded typeface.
//!
//! Everything is measured in units of a thousandth of an em, y upwards from the base line. The
//! em is the four-line ruling: ascender 760, x-height 480, base line 0, descender -240.

mod crossing;
mod direction;
mod dots;
mod error;
mod font;
mod glyph;
mod header;
mod kerning;
mod names;
mod nib;
mod notation;
mod pairs;
mod refit;
mod spacing;
mod stroke;
mod sweep;
mod table;
#[cfg(test)]
mod tests;

pub use crossing::crossings;
pub use error::HandError;
pub use stroke::{Segment, Stroke};

use table::Table;

/// Units an em.
pub const EM: i32 = 1000;
/// Height of the topmost of the four lines, in units.
pub const ASCENDER: i32 = 760;
/// Height of the centre line of capitals, in units.
pub const CAPITAL: i32 = 740;
/// Height of the middle line, in units.
pub const X_HEIGHT: i32 = 480;
/// Height of the lowest of the four lines, in units.
pub const DESCENDER: i32 = -240;

/// A cut of the typeface.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cut {
    /// Family `Battledore Hand`, weight 400.
    Regular,
    /// Family `Battledore Hand`, weight 700.
    Bold,
    /// Family `Battledore Hand Dotted`: dots along the centre lines, spaced as the regular cut.
    Dotted,
    /// Family `Battledore Hand Hollow`: outlines to colour in, spaced as the bold cut.
    Hollow,
}

impl Cut {
    /// All cuts, in the order in which they are usually loaded.
    pub const ALL: [Cut; 4] = [Cut::Regular, Cut::Bold, Cut::Dotted, Cut::Hollow];

    /// The family name under which a page asks for this cut.
    pub fn family(self) -> &'static str {
        match self {
            Cut::Regular | Cut::Bold => "Battledore Hand",
            Cut::Dotted => "Battledore Hand Dotted",
            Cut::Hollow => "Battledore Hand Hollow",
        }
    }

    /// Width of the pen in units; a single glyph of a heavy cut may ask for a finer one.
    fn pen(self) -> f64 {
        match self {
            Cut::Regular | Cut::Dotted => 90.0,
            Cut::Bold | Cut::Hollow => 150.0,
        }
    }

    fn heavy(self) -> bool {
        matches!(self, Cut::Bold | Cut::Hollow)
    }
}

/// Builds one cut as a TrueType font file. The same program gives the same bytes each time.
///
/// Takes some tens of milliseconds: build each cut once and keep it.
///
/// # Errors
/// When the stroke table cannot be read, or a glyph cannot be drawn or stored.
pub fn font(cut: Cut) -> Result<Vec<u8>, HandError> {
    font::build(Table::ours()?, cut)
}

/// The centre lines of a character in writing order, x measured from the writing position of the
/// regular cut. `None` for a character that has no strokes of its own, such as a space.
pub fn strokes(c: char) -> Option<Vec<Stroke>> {
    let glyph = Table::ours().ok()?.get(c)?;
    let placed = spacing::place(c, glyph, Cut::Regular).ok()?;
    let shift = kurbo::Vec2::new(placed.shift, 0.0);
    Some(glyph.strokes.iter().map(|s| s.moved(shift)).collect())
}

/// How far a character moves the writing position on in the regular and the dotted cut, in units.
pub fn advance(c: char) -> Option<i32> {
    if let Some(width) = spacing::blank(c) {
        return Some(width);
    }
    let glyph = Table::ours().ok()?.get(c)?;
    spacing::place(c, glyph, Cut::Regular).ok().map(|p| p.advance)
}

/// Whether the four cuts can print a character.
pub fn covers(c: char) -> bool {
    spacing::blank(c).is_some() || Table::ours().is_ok_and(|t| t.get(c).is_some())
}

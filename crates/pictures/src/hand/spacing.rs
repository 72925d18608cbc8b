//! Side bearings: how much white a glyph brings along on either side of its ink.

use std::collections::BTreeMap;

use super::Cut;
use super::error::HandError;
use super::stroke::Stroke;
use super::sweep::{Contour, sweep};
use super::table::{Glyph, Side};

/// Height of the bands in which kerning and hanging letters are measured, in units.
pub(super) const BAND: f64 = 20.0;
/// Width of the pen for which the bearings below hold, in units.
const PLAIN: f64 = 90.0;
/// How much narrower a bearing gets with each unit of a wider pen: heavy ink wants less white.
const CLOSER: f64 = 0.2;

/// White that an accent keeps on each side, in units.
const CLEAR: f64 = 12.0;

/// Leftmost and rightmost ink in each band, from the lowest band up, in units.
pub(super) type Profile = BTreeMap<i32, (f64, f64)>;

/// A glyph in its place on the line.
pub(super) struct Placed {
    /// How far the strokes move right of where the table has them, in units.
    pub shift: f64,
    /// How far the writing position moves on, in units.
    pub advance: i32,
    /// Ink by height, already shifted; the accents are left out.
    pub profile: Profile,
    /// White that the sides bring along: left, right.
    pub bearings: (f64, f64),
}

/// Width of a character without ink, in units.
pub(super) fn blank(c: char) -> Option<i32> {
    match c {
        ' ' | '\u{a0}' => Some(300),
        '\u{202f}' => Some(150),
        _ => None,
    }
}

/// Characters without ink that the fonts contain.
pub(super) const BLANKS: [char; 3] = [' ', '\u{a0}', '\u{202f}'];

/// The pen for one stroke in a cut. What wants a much finer pen in the heavy cuts gets three
/// quarters of that in the light ones.
pub(super) fn pen(stroke: &Stroke, cut: Cut) -> f64 {
    match stroke.heavy {
        Some(finer) if cut.heavy() => finer,
        Some(finer) => cut.pen().min(0.75 * finer),
        None => cut.pen(),
    }
}

/// Finds the place of a glyph on the line. Hollow letters stand like bold ones, dotted like
/// regular ones, so that a word keeps its length when it changes into what is to be filled.
pub(super) fn place(c: char, glyph: &Glyph, cut: Cut) -> Result<Placed, HandError> {
    let (marks, letter): (Vec<Stroke>, _) = glyph.strokes.iter().cloned().partition(|s| s.mark);
    let ink = |strokes| match sweep(strokes, |s| pen(s, cut)) {
        Ok(ink) => Ok(profile(&ink.contours())),
        Err(_) => Err(HandError::Tight { glyph: c }),
    };
    let (mut profile, marks) = (ink(&letter)?, ink(&marks)?);
    let (left, right) = (zone(&profile, glyph.left).0, zone(&profile, glyph.right).1);
    let wider = cut.pen() - PLAIN;
    let bearings = match c.is_ascii_digit() {
        // All figures are equally wide, so that columns of numbers line up.
        true => {
            let white = (600.0 + 0.8 * wider).round() - (right - left);
            (white / 2.0, white / 2.0)
        }
        false => (bearing(glyph.left) - CLOSER * wider, bearing(glyph.right) - CLOSER * wider),
    };
    // An accent may overhang its letter, but keeps off its neighbours.
    let over = zone(&marks, Side::Round);
    let bearings = (bearings.0.max(left - over.0 + CLEAR), bearings.1.max(over.1 - right + CLEAR));
    let shift = (bearings.0 - left).round();
    let advance = (shift + right + bearings.1).round() as i32;
    for edges in profile.values_mut() {
        *edges = (edges.0 + shift, edges.1 + shift);
    }
    Ok(Placed { shift, advance, profile, bearings })
}

fn bearing(side: Side) -> f64 {
    match side {
        Side::Straight => 88.0,
        Side::Round => 56.0,
        Side::Open => 44.0,
        Side::Tail => 30.0,
        Side::Diagonal => 24.0,
        Side::Hanging => 125.0,
    }
}

/// Leftmost and rightmost ink that counts for a side.
fn zone(profile: &Profile, side: Side) -> (f64, f64) {
    let top = (f64::from(super::X_HEIGHT) / BAND) as i32;
    let bands =
        profile.iter().filter(|(band, _)| side != Side::Hanging || (0..top).contains(*band));
    bands.fold((f64::INFINITY, f64::NEG_INFINITY), |(l, r), (_, e)| (l.min(e.0), r.max(e.1)))
}

fn profile(ink: &[Contour]) -> Profile {
    let mut out = Profile::new();
    for contour in ink {
        let next = contour.iter().cycle().skip(1);
        for (a, b) in contour.iter().zip(next) {
            // Steps of a quarter band leave no band of a long edge out.
            let steps = ((b[1] - a[1]).abs() / (BAND / 4.0)).ceil().max(1.0) as usize;
            for i in 0..=steps {
                let t = i as f64 / steps as f64;
                let (x, y) = (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t);
                let band = out.entry((y / BAND).floor() as i32).or_insert((x, x));
                *band = (band.0.min(x), band.1.max(x));
            }
        }
    }
    out
}

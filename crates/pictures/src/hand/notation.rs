//! The notation of single strokes in the table. Errors say what is wrong, without the line.

use kurbo::{Point, Vec2};

use super::stroke::{Segment, Stroke};
use super::table::Side;

/// A character by itself or by its code.
pub(super) fn character(name: &str) -> Result<char, String> {
    let coded = name
        .strip_prefix("U+")
        .and_then(|hex| u32::from_str_radix(hex, 16).ok())
        .and_then(char::from_u32);
    let mut chars = name.chars();
    match (coded, chars.next(), chars.next()) {
        (Some(c), ..) | (None, Some(c), None) => Ok(c),
        _ => Err(format!("`{name}` is not one character, nor one like U+0023")),
    }
}

/// A side by its letter.
pub(super) fn side(word: &str) -> Result<Side, String> {
    Ok(match word {
        "s" => Side::Straight,
        "r" => Side::Round,
        "o" => Side::Open,
        "t" => Side::Tail,
        "d" => Side::Diagonal,
        "h" => Side::Hanging,
        _ => return Err(format!("side `{word}` is none of s, r, o, t, d, h")),
    })
}

/// The pen width of a head, if it has one.
pub(super) fn pen_width(words: &[&str]) -> Result<Option<f64>, String> {
    match words {
        [] => Ok(None),
        [width] => number(width).map(Some),
        _ => Err("expected at most one pen width after the sides".into()),
    }
}

/// A number of units or degrees.
pub(super) fn number(word: &str) -> Result<f64, String> {
    word.parse::<f64>()
        .ok()
        .filter(|n| n.abs() <= 10_000.0)
        .ok_or_else(|| format!("`{word}` is not a number of units"))
}

/// The strokes after the colon.
pub(super) fn strokes(body: &str, heavy: Option<f64>, mark: bool) -> Result<Vec<Stroke>, String> {
    body.split(" | ")
        .map(|text| {
            let segments = segments(text)?;
            Ok(Stroke { segments, heavy, mark })
        })
        .collect()
}

fn segments(text: &str) -> Result<Vec<Segment>, String> {
    let mut words = text.split_whitespace();
    let mut drawn = Drawn::default();
    while let Some(step) = words.next() {
        let mut next = || {
            let word = words.next();
            word.ok_or_else(|| format!("`{step}` wants more numbers")).and_then(number)
        };
        match step {
            "M" => drawn.pen = Some(Point::new(next()?, next()?)),
            "L" => drawn.line(Point::new(next()?, next()?))?,
            "E" => {
                let (centre, radii) = (Point::new(next()?, next()?), Vec2::new(next()?, next()?));
                drawn.arc(arc(centre, radii, next()?, next()?)?);
            }
            "D" => drawn.segments.push(Segment::Dot { at: Point::new(next()?, next()?) }),
            _ => return Err(format!("step `{step}` is none of M, L, E, D")),
        }
    }
    match drawn.segments.is_empty() {
        true => Err("a stroke draws nothing".into()),
        false => Ok(drawn.segments),
    }
}

/// A stroke being read.
#[derive(Default)]
struct Drawn {
    segments: Vec<Segment>,
    /// Where the pen is, once it is set down.
    pen: Option<Point>,
}

impl Drawn {
    fn line(&mut self, to: Point) -> Result<(), String> {
        let from = self.pen.ok_or("`L` has no point to start from; begin with `M x y`")?;
        self.segments.push(Segment::Line { from, to });
        self.pen = Some(to);
        Ok(())
    }

    fn arc(&mut self, arc: Segment) {
        let to = arc.start();
        // Steps shorter than half a unit come from rounded numbers in the table.
        if let Some(from) = self.pen.filter(|p| p.distance(to) > 0.5) {
            self.segments.push(Segment::Line { from, to });
        }
        self.pen = Some(arc.end());
        self.segments.push(arc);
    }
}

fn arc(centre: Point, radii: Vec2, start: f64, end: f64) -> Result<Segment, String> {
    if radii.x <= 0.0 || radii.y <= 0.0 {
        return Err("both radii of `E` must be more than 0".into());
    }
    if start == end || (end - start).abs() > 360.0 {
        return Err("`E` must turn by more than 0 and at most 360 degrees".into());
    }
    Ok(Segment::Arc { centre, radii, start, end })
}

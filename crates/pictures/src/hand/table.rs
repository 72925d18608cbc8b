//! The stroke table: reads `data/hand.txt` into typed strokes. Its head explains the notation.

use std::collections::BTreeMap;
use std::sync::OnceLock;

use kurbo::Vec2;

use super::error::HandError;
use super::notation::{character, number, pen_width, side, strokes};
use super::stroke::Stroke;

const OURS: &str = include_str!("../../data/hand.txt");

/// How far a mark is raised when it stands over a capital instead of a small letter, in units.
/// A little less than the difference of their heights, so that lines need less room.
const RAISE: f64 = 252.0;

/// Which bearing a side of a glyph gets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    Straight,
    Round,
    Open,
    Tail,
    Diagonal,
    Hanging,
}

/// One character of the table.
#[derive(Clone, Debug)]
pub(super) struct Glyph {
    pub left: Side,
    pub right: Side,
    pub strokes: Vec<Stroke>,
    /// The letter under the accent, whose kerning it shares.
    pub base: Option<char>,
}

/// The whole table.
#[derive(Clone, Debug)]
pub(super) struct Table {
    glyphs: BTreeMap<char, Glyph>,
}

impl Table {
    /// The table that belongs to the program, read once.
    pub fn ours() -> Result<&'static Table, HandError> {
        static TABLE: OnceLock<Result<Table, HandError>> = OnceLock::new();
        TABLE.get_or_init(|| Table::read(OURS)).as_ref().map_err(Clone::clone)
    }

    /// Reads a table; the first line that cannot be read is the error.
    pub fn read(text: &str) -> Result<Table, HandError> {
        let mut reader = Reader::default();
        for (at, line) in text.lines().enumerate() {
            let line = line.trim();
            if line.is_empty() || line == "#" || line.starts_with("# ") {
                continue;
            }
            reader.line(line).map_err(|what| HandError::Table { line: at + 1, what })?;
        }
        Ok(Table { glyphs: reader.glyphs })
    }

    pub fn get(&self, c: char) -> Option<&Glyph> {
        self.glyphs.get(&c)
    }

    pub fn iter(&self) -> impl Iterator<Item = (char, &Glyph)> {
        self.glyphs.iter().map(|(c, g)| (*c, g))
    }
}

#[derive(Default)]
struct Reader {
    glyphs: BTreeMap<char, Glyph>,
    marks: BTreeMap<String, Vec<Stroke>>,
}

impl Reader {
    fn line(&mut self, line: &str) -> Result<(), String> {
        // A colon stands for itself as the first word, so the dividing one has spaces around it.
        if let Some((head, body)) = line.split_once(" : ") {
            let words: Vec<&str> = head.split_whitespace().collect();
            return match words.as_slice() {
                ["mark", name, rest @ ..] => self.mark(name, rest, body),
                [name, left, right, rest @ ..] => self.glyph(name, left, right, rest, body),
                _ => Err("expected a character and its two sides before the colon".into()),
            };
        }
        match line.split_whitespace().collect::<Vec<_>>().as_slice() {
            [name, "=", base, mark, x] => self.compose(name, base, mark, x),
            _ => Err("expected ` : ` and strokes, or `é = e acute 205`".into()),
        }
    }

    fn glyph(
        &mut self,
        name: &str,
        left: &str,
        right: &str,
        pen: &[&str],
        body: &str,
    ) -> Result<(), String> {
        let glyph = Glyph {
            left: side(left)?,
            right: side(right)?,
            strokes: strokes(body, pen_width(pen)?, false)?,
            base: None,
        };
        self.insert(character(name)?, glyph)
    }

    fn mark(&mut self, name: &str, pen: &[&str], body: &str) -> Result<(), String> {
        let drawn = strokes(body, pen_width(pen)?, true)?;
        match self.marks.insert(name.to_owned(), drawn) {
            None => Ok(()),
            Some(_) => Err(format!("mark `{name}` is drawn twice")),
        }
    }

    fn compose(&mut self, name: &str, base: &str, mark: &str, x: &str) -> Result<(), String> {
        let base = character(base)?;
        let drawn = self
            .marks
            .get(mark)
            .ok_or_else(|| format!("no mark `{mark}` is drawn above this line"))?;
        let mut glyph = self
            .glyphs
            .get(&base)
            .ok_or_else(|| format!("no character `{base}` is drawn above this line"))?
            .clone();
        // A cedilla hangs from the base line and stays there.
        let hangs = drawn.iter().all(|s| s.lowest() < 0.0);
        let up = if base.is_uppercase() && !hangs { RAISE } else { 0.0 };
        let by = Vec2::new(number(x)?, up);
        glyph.strokes.extend(drawn.iter().map(|s| s.moved(by)));
        glyph.base = Some(base);
        self.insert(character(name)?, glyph)
    }

    fn insert(&mut self, c: char, glyph: Glyph) -> Result<(), String> {
        match self.glyphs.insert(c, glyph) {
            None => Ok(()),
            Some(_) => Err(format!("character `{c}` is drawn twice")),
        }
    }
}

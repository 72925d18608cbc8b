//! What can go wrong on the way from strokes to a font.

use std::fmt;

/// A fault in the stroke table, or a font that cannot be stored.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum HandError {
    /// A line of the stroke table cannot be read; lines count from 1.
    Table {
        /// Line in the table.
        line: usize,
        /// What is wrong with it, and what to write instead.
        what: String,
    },
    /// A part of an ellipse bends more sharply than half the pen, so that no clean outline exists.
    Tight {
        /// The character.
        glyph: char,
    },
    /// The finished outline crosses itself.
    Crossing {
        /// The character.
        glyph: char,
        /// How often.
        times: usize,
    },
    /// The font file cannot be put together.
    Font(String),
}

impl fmt::Display for HandError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Table { line, what } => write!(f, "stroke table, line {line}: {what}"),
            Self::Tight { glyph } => write!(
                f,
                "a curve of `{glyph}` is tighter than the pen; use a circle, or a finer pen"
            ),
            Self::Crossing { glyph, times } => write!(
                f,
                "the outline of `{glyph}` crosses itself {times} times; change its strokes"
            ),
            Self::Font(what) => write!(f, "the hand cannot be stored as a font: {what}"),
        }
    }
}

impl std::error::Error for HandError {}

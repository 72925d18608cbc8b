//! A careful guess of the room that a text takes, so that a sheet can be parted into pages without the typesetter.
//!
//! Widths of letters are guessed on the large side; what is really laid out is measured after printing.

use serde::{Deserialize, Serialize};
use study::Band;

/// Type of a band, as the page system sets it: one line of text is one beat high.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Setting {
    /// Height of a line of text, µm.
    pub beat: u32,
    /// Size of the text, hundredths of a point.
    pub body: u32,
    /// Height of a line of a note, µm.
    pub note_beat: u32,
    /// Size of a note, hundredths of a point.
    pub note: u32,
    /// Height of a line to write on, µm.
    pub write: u32,
}

/// Average width of a letter with its share of spaces, thousandths of the size of the type.
/// Measured on English text in the text face (about 500) and raised by a tenth for the ends of lines.
const LETTER: u64 = 550;
/// A point in µm, times 100 (25.4 mm / 72).
const POINT: u64 = 35_278;

impl Setting {
    /// The band's type; large print has its own.
    pub fn of(band: Band, large: bool) -> Self {
        let (beat, body, note_beat, note, write) = match (band, large) {
            (Band::A, false) => (10_500, 2000, 7000, 1400, 26_250),
            (Band::B, false) => (7000, 1400, 5250, 1100, 10_500),
            (Band::C, false) => (6000, 1200, 5000, 1000, 9000),
            (Band::D, false) => (5250, 1050, 4200, 900, 7875),
            (Band::A, true) => (10_500, 2200, 8400, 1800, 26_250),
            (_, true) => (8400, 1800, 6300, 1400, 12_600),
        };
        Self { beat, body, note_beat, note, write }
    }

    /// Lines that a text takes in a column `width` µm wide.
    pub fn lines(self, text: &str, width: u32) -> u32 {
        lines(text, self.body, width)
    }

    /// Lines that a note takes in a column `width` µm wide.
    pub fn note_lines(self, text: &str, width: u32) -> u32 {
        lines(text, self.note, width)
    }
}

fn lines(text: &str, size: u32, width: u32) -> u32 {
    let letters = text.chars().count() as u64;
    // µm × 10⁵: hundredths of a point, hundredths of a µm a point, thousandths of the size.
    let long = letters * u64::from(size) * POINT * LETTER;
    let room = u64::from(width).max(1) * 10_000_000;
    u32::try_from(long.div_ceil(room)).unwrap_or(u32::MAX).max(1)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_line_of_the_reference_pages_is_one_line() {
        // "Leave the first bare. Put the cup over the second. Lay" fills 119 mm at 14 pt on the reference page.
        let b = Setting::of(Band::B, false);
        assert_eq!(b.lines("Put one sponge in each saucer. Put the oth", 123_000), 1);
        assert_eq!(b.lines("Leave the first bare. Put the cup over the second. Lay the wet cloth on the third, like seaweed.", 123_000), 3);
        assert_eq!(b.lines("", 123_000), 1);
    }

    #[test]
    fn larger_type_and_narrower_columns_take_more_lines() {
        let text = "The sea has gone out. Draw three things that it left behind and give each of them a name.";
        let lines = |band, large, w| Setting::of(band, large).lines(text, w);
        assert!(lines(Band::A, false, 132_000) > lines(Band::D, false, 132_000));
        assert!(lines(Band::D, true, 132_000) > lines(Band::D, false, 132_000));
        assert!(lines(Band::B, false, 60_000) > lines(Band::B, false, 132_000));
        assert!(
            Setting::of(Band::B, false).note_lines(text, 60_000) < lines(Band::B, false, 60_000)
        );
    }
}

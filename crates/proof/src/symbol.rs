//! Reads a code symbol back from its printed rows (QR Code, ISO/IEC 18004).

use crate::Laid;

/// A code symbol as rows of `0` and `1`, dark modules `1`, without its quiet zone.
pub type Rows = [String];

struct Modules<'a>(Vec<&'a [u8]>);

impl rqrr::BitGrid for Modules<'_> {
    fn size(&self) -> usize {
        self.0.len()
    }

    fn bit(&self, y: usize, x: usize) -> bool {
        self.0.get(y).and_then(|row| row.get(x)).is_some_and(|m| *m == b'1')
    }
}

/// Version of a symbol by its modules per side: 17 + 4 v for v from 1 to 40; none when it is no symbol's size
/// or not square.
pub fn version(rows: &Rows) -> Option<usize> {
    let side = rows.len();
    let square =
        rows.iter().all(|r| r.len() == side && r.bytes().all(|b| matches!(b, b'0' | b'1')));
    let fits = (21..=177).contains(&side) && (side - 17).is_multiple_of(4);
    (square && fits).then(|| (side - 17) / 4)
}

/// The text that a reader gets from the symbol, or none when it cannot be read.
pub fn read(rows: &Rows) -> Option<String> {
    version(rows)?;
    let modules = Modules(rows.iter().map(String::as_bytes).collect());
    rqrr::Grid::new(modules).decode().ok().map(|(_, text)| text)
}

/// True when the three finder squares are drawn as they must be.
///
/// [`read`] is told where the symbol lies and so never looks for them, but a camera does.
pub fn finders_hold(rows: &Rows) -> bool {
    let Some(_) = version(rows) else { return false };
    let last = rows.len() - 7;
    [(0, 0), (0, last), (last, 0)].into_iter().all(|(top, left)| {
        (0..7).all(|y| (0..7).all(|x| dark(rows, top + y, left + x) == finder(x, y)))
    })
}

fn dark(rows: &Rows, y: usize, x: usize) -> bool {
    rows.get(y).and_then(|r| r.as_bytes().get(x)).is_some_and(|m| *m == b'1')
}

/// Least side of a module, µm: DENSO WAVE asks for four dots of the printer (0.33 mm at 300 dots an
/// inch); half a millimetre for home printers and old telephones is common practice, no source.
const MODULE: i64 = 500;
/// Quiet zone on every side, in modules (ISO/IEC 18004; DENSO WAVE).
const QUIET: i64 = 4;
/// Rounding of lengths, µm.
const TOLERANCE: i64 = 4;

/// What is wrong with a symbol of so many modules a side on the laid-out page, if anything.
///
/// Its mark `code` of that name covers the quiet zone too, so it is `modules + 8` modules wide.
pub fn fault_on_page(laid: &Laid, name: &str, modules: usize) -> Option<&'static str> {
    let Some((page, mark)) = laid.marks("code").find(|(_, m)| m.name == name) else {
        return Some("is not on the page");
    };
    let across = i64::try_from(modules).unwrap_or(i64::MAX / 1_000_000) + 2 * QUIET;
    if mark.w + TOLERANCE < across * MODULE || mark.h + TOLERANCE < across * MODULE {
        return Some("is printed too small to be read");
    }
    let within =
        |from: i64, size: i64, at: i64| (from + TOLERANCE..from + size - TOLERANCE).contains(&at);
    let inside = |x: i64, y: i64| within(mark.x, mark.w, x) && within(mark.y, mark.h, y);
    let crowded = laid.pages[page].texts.iter().any(|t| inside(t.x, t.y) || inside(t.x + t.w, t.y));
    crowded.then_some("has words in its margin")
}

/// A finder square: a dark frame of 7, a light one of 5, a dark square of 3.
fn finder(x: usize, y: usize) -> bool {
    let ring = x.abs_diff(3).max(y.abs_diff(3));
    ring != 2
}

#[cfg(test)]
mod tests {
    use super::*;

    /// `HELLO WORLD`, version 1-Q: data and error correction words of the published
    /// worked example (20 5B 0B 78 D1 72 DC 4D 43 40 EC 11 EC + A8 48 16 52 D9 36 9C 00 2E 0F B4 7A 10).
    const WORDS: [u8; 26] = [
        0x20, 0x5B, 0x0B, 0x78, 0xD1, 0x72, 0xDC, 0x4D, 0x43, 0x40, 0xEC, 0x11, 0xEC, 0xA8, 0x48,
        0x16, 0x52, 0xD9, 0x36, 0x9C, 0x00, 0x2E, 0x0F, 0xB4, 0x7A, 0x10,
    ];

    /// Lays those words out by the standard's own rules (version 1, level Q, mask 0), written here apart from any library.
    fn hello_world() -> Vec<String> {
        let mut grid = [[0u8; 21]; 21];
        let mut fixed = [[false; 21]; 21];
        for y in 0..21 {
            for x in 0..21 {
                let corner = (y < 9 && !(9..=12).contains(&x)) || (x < 9 && y > 12);
                fixed[y][x] = corner || x == 6 || y == 6;
                if x == 6 || y == 6 {
                    grid[y][x] = u8::from((x + y) % 2 == 0);
                }
            }
        }
        for (top, left) in [(0, 0), (0, 14), (14, 0)] {
            for y in 0..8 {
                for x in 0..8 {
                    let (row, column) =
                        (top + y - usize::from(top > 0), left + x - usize::from(left > 0));
                    grid[row][column] = 0;
                }
            }
            for y in 0..7 {
                for x in 0..7 {
                    grid[top + y][left + x] = u8::from(finder(x, y));
                }
            }
        }
        // Format information of level Q, mask 0: data 11 000, by generator 10100110111 and mask 101010000010010.
        let data: u32 = 0b11000;
        let mut rest = data << 10;
        for bit in (10..15).rev() {
            if rest >> bit & 1 == 1 {
                rest ^= 0b10100110111 << (bit - 10);
            }
        }
        let format = (data << 10 | rest) ^ 0b101010000010010;
        let first = [
            (8, 0),
            (8, 1),
            (8, 2),
            (8, 3),
            (8, 4),
            (8, 5),
            (8, 7),
            (8, 8),
            (7, 8),
            (5, 8),
            (4, 8),
            (3, 8),
            (2, 8),
            (1, 8),
            (0, 8),
        ];
        for (i, (y, x)) in first.into_iter().enumerate() {
            grid[y][x] = (format >> (14 - i) & 1) as u8;
        }
        for i in 0..7 {
            grid[20 - i][8] = (format >> (14 - i) & 1) as u8;
        }
        for i in 7..15 {
            grid[8][6 + i] = (format >> (14 - i) & 1) as u8;
        }
        grid[13][8] = 1;
        let mut bits = WORDS.iter().flat_map(|w| (0..8).rev().map(move |b| w >> b & 1));
        let mut up = true;
        for right in [20, 18, 16, 14, 12, 10, 8, 5, 3, 1] {
            for step in 0..21 {
                let y = if up { 20 - step } else { step };
                for x in [right, right - 1] {
                    if !fixed[y][x] {
                        let mask = u8::from((x + y) % 2 == 0);
                        grid[y][x] = bits.next().expect("208 bits") ^ mask;
                    }
                }
            }
            up = !up;
        }
        grid.iter()
            .map(|row| row.iter().map(|b| if *b == 1 { '1' } else { '0' }).collect())
            .collect()
    }

    #[test]
    fn the_worked_example_is_read() {
        let rows = hello_world();
        assert_eq!(version(&rows), Some(1));
        assert!(finders_hold(&rows));
        assert_eq!(read(&rows).as_deref(), Some("HELLO WORLD"));
    }

    #[test]
    fn sizes_follow_the_standard() {
        // 17 + 4 v: v1 21, v2 25, v7 45, v40 177 (ISO/IEC 18004).
        for (side, v) in [(21, 1), (25, 2), (45, 7), (177, 40)] {
            assert_eq!(version(&vec!["0".repeat(side); side]), Some(v));
        }
        for side in [0, 17, 20, 22, 23, 24, 181] {
            assert_eq!(version(&vec!["0".repeat(side); side]), None, "{side}");
        }
        assert_eq!(version(&vec!["0".repeat(20); 21]), None);
    }

    #[test]
    fn a_spoilt_symbol_is_not_read_as_the_same() {
        let mut rows = hello_world();
        rows.swap(9, 12);
        rows.swap(10, 11);
        rows.swap(13, 17);
        assert_ne!(read(&rows).as_deref(), Some("HELLO WORLD"));
        let mut rows = hello_world();
        rows[0].replace_range(0..1, "0");
        assert!(!finders_hold(&rows));
    }
}

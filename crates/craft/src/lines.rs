//! Straight lines of a grid, and what can be read along them.

/// Every line of a grid of `rows` × `columns` cells as cell indices (row by row from 0):
/// rows, columns and both slants, each line in one of its two directions.
pub fn lines(rows: usize, columns: usize) -> Vec<Vec<usize>> {
    let cell = |r: usize, c: usize| r * columns + c;
    let mut all: Vec<Vec<usize>> =
        (0..rows).map(|r| (0..columns).map(|c| cell(r, c)).collect()).collect();
    all.extend((0..columns).map(|c| (0..rows).map(|r| cell(r, c)).collect()));
    for sum in 0..(rows + columns).saturating_sub(1) {
        // Rising slants share r + c; falling ones share r + (columns - 1 - c).
        let inside = (0..rows).filter(|r| sum >= *r && sum - r < columns);
        all.push(inside.clone().map(|r| cell(r, sum - r)).collect());
        all.push(inside.map(|r| cell(r, columns - 1 - (sum - r))).collect());
    }
    all
}

/// Where a word can be read along the lines, forwards or backwards: one run of cells each place,
/// so that a word that reads the same both ways counts once.
pub fn readings<'a>(cells: &[u16], lines: &'a [Vec<usize>], word: &[u16]) -> Vec<&'a [usize]> {
    let reads = |run: &[usize]| {
        run.iter().zip(word).all(|(i, w)| cells.get(*i) == Some(w))
            || run.iter().rev().zip(word).all(|(i, w)| cells.get(*i) == Some(w))
    };
    if word.is_empty() {
        return Vec::new();
    }
    lines.iter().flat_map(|line| line.windows(word.len())).filter(|run| reads(run)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Number of placements of a word of `len` different letters in 8 directions:
    /// check values 12.1 gives the formula and the values below.
    fn placements(rows: usize, columns: usize, len: usize) -> usize {
        2 * lines(rows, columns).iter().map(|l| (l.len() + 1).saturating_sub(len)).sum::<usize>()
    }

    #[test]
    fn placements_agree_with_the_published_counts() {
        for (r, c, len, count) in [
            (10, 10, 3, 576),
            (10, 10, 5, 384),
            (12, 12, 3, 880),
            (12, 12, 4, 756),
            (15, 15, 3, 1456),
            (15, 15, 7, 864),
            (8, 12, 9, 64),
        ] {
            assert_eq!(placements(r, c, len), count, "{r}x{c}, {len} letters");
        }
    }

    #[test]
    fn a_palindrome_is_read_once() {
        let cells = [1, 2, 1, 3, 3, 3];
        let lines = lines(2, 3);
        assert_eq!(readings(&cells, &lines, &[1, 2, 1]), vec![&[0, 1, 2][..]]);
    }
}

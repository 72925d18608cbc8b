//! Book numbers: the check digit of ISBN-10 and ISBN-13 (ISO 2108).

/// True when the digits of a written ISBN, hyphens and spaces aside, end in their own check digit.
///
/// Ten digits: weights 10 to 1, sum divisible by 11, `X` is 10. Thirteen:
/// weights 1 and 3 in turn, sum divisible by 10, beginning 978 or 979.
/// It finds every single wrong digit; in thirteen digits it may miss two
/// neighbours that changed places.
pub fn isbn_holds(written: &str) -> bool {
    let digits: Vec<char> =
        written.chars().filter(|c| !matches!(c, '-' | ' ' | '‐' | '–')).collect();
    match digits.len() {
        10 => ten(&digits),
        13 => thirteen(&digits),
        _ => false,
    }
}

fn ten(digits: &[char]) -> bool {
    let mut sum = 0;
    for (i, c) in digits.iter().enumerate() {
        let value = match c {
            'X' | 'x' if i == 9 => 10,
            c => match c.to_digit(10) {
                Some(d) => d,
                None => return false,
            },
        };
        sum += value * (10 - u32::try_from(i).unwrap_or(0));
    }
    sum.is_multiple_of(11)
}

fn thirteen(digits: &[char]) -> bool {
    let values: Option<Vec<u32>> = digits.iter().map(|c| c.to_digit(10)).collect();
    let Some(values) = values else { return false };
    let sum: u32 =
        values.iter().enumerate().map(|(i, d)| if i % 2 == 0 { *d } else { 3 * d }).sum();
    values.starts_with(&[9, 7]) && values[2] >= 8 && sum.is_multiple_of(10)
}

#[cfg(test)]
mod tests {
    use super::*;

    // Worked values of the ISBN rules: 978-0-306-40615-7, 978-3-16-148410-0, 978-1-86197-271-2
    // and 0-306-40615-2, 3-16-148410-X, 0-8044-2957-X, 0-8436-1072-7 (ISO 2108; published examples).
    const GOOD: [&str; 7] = [
        "978-0-306-40615-7",
        "978-3-16-148410-0",
        "978-1-86197-271-2",
        "0-306-40615-2",
        "3-16-148410-X",
        "0-8044-2957-X",
        "0-8436-1072-7",
    ];

    #[test]
    fn published_numbers_hold() {
        for isbn in GOOD {
            assert!(isbn_holds(isbn), "{isbn}");
        }
        assert!(isbn_holds("9780306406157"));
    }

    #[test]
    fn every_single_wrong_digit_is_found() {
        // All 117 single-digit errors of 978-0-306-40615-7 (13 places, 9 other digits each).
        let digits: Vec<char> = "9780306406157".chars().collect();
        let mut tried = 0;
        for place in 0..13 {
            for other in ('0'..='9').filter(|c| *c != digits[place]) {
                let mut wrong = digits.clone();
                wrong[place] = other;
                assert!(!isbn_holds(&wrong.iter().collect::<String>()), "{wrong:?}");
                tried += 1;
            }
        }
        assert_eq!(tried, 117);
        // One swap of neighbours that differ by five is missed, as the rule foretells (the 6 and the 1).
        assert!(isbn_holds("9780306401657"));
    }

    #[test]
    fn other_texts_are_no_numbers() {
        for text in
            ["", "978", "97803064061577", "978030640615X", "X306406152", "unknown", "1234567890123"]
        {
            assert!(!isbn_holds(text), "{text}");
        }
    }
}

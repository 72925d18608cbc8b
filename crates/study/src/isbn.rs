//! ISBN check digits, by ISO 2108.

/// What is wrong with an ISBN.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum IsbnFault {
    /// Neither ten nor thirteen digits.
    Length(usize),
    /// A sign that is no digit (an X may only stand last in ten).
    Sign(char),
    /// Thirteen digits that begin with neither 978 nor 979.
    Prefix,
    /// The last digit is not the one that follows from the others.
    CheckDigit {
        /// The one that follows from the others.
        expected: char,
    },
}

/// Checks an ISBN-10 or ISBN-13; hyphens and spaces are skipped. `None` when it is right.
///
/// ISBN-13 weighs the digits 1, 3, 1, 3 … to a multiple of 10; ISBN-10 weighs
/// them 10 down to 1 to a multiple of 11, with X for ten (ISO 2108). A swap of
/// neighbours that differ by five passes in thirteen digits.
pub fn isbn_fault(written: &str) -> Option<IsbnFault> {
    let signs: Vec<char> = written
        .chars()
        .filter(|c| !matches!(c, '-' | '–' | '\u{2010}' | '\u{2011}' | ' '))
        .collect();
    let last = signs.len().saturating_sub(1);
    let mut digits = Vec::with_capacity(signs.len());
    for (i, sign) in signs.iter().enumerate() {
        match sign.to_digit(10) {
            Some(digit) => digits.push(digit),
            None if matches!(sign, 'X' | 'x') && i == last && signs.len() == 10 => digits.push(10),
            None => return Some(IsbnFault::Sign(*sign)),
        }
    }
    let expected = match digits.as_slice() {
        [head @ .., _] if digits.len() == 10 => check_digit_ten(head),
        [9, 7, 8 | 9, ..] if digits.len() == 13 => check_digit_thirteen(digits.get(..12)?),
        _ if digits.len() == 13 => return Some(IsbnFault::Prefix),
        _ => return Some(IsbnFault::Length(digits.len())),
    };
    let wrong = digits.last() != Some(&expected);
    wrong.then(|| IsbnFault::CheckDigit {
        expected: if expected == 10 { 'X' } else { char::from_digit(expected, 10).unwrap_or('0') },
    })
}

fn check_digit_ten(head: &[u32]) -> u32 {
    let sum: u32 = head.iter().zip((2..=10).rev()).map(|(digit, weight)| digit * weight).sum();
    (11 - sum % 11) % 11
}

fn check_digit_thirteen(head: &[u32]) -> u32 {
    let sum: u32 =
        head.iter().zip([1, 3].into_iter().cycle()).map(|(digit, weight)| digit * weight).sum();
    (10 - sum % 10) % 10
}

#[cfg(test)]
mod tests {
    use super::{IsbnFault, isbn_fault};

    /// ISBN-13 examples of ISO 2108 as quoted in public explanations of the check digit.
    #[test]
    fn thirteen_digits() {
        for good in ["978-0-306-40615-7", "978-3-16-148410-0", "978-1-86197-271-2", "9780306406157"]
        {
            assert_eq!(isbn_fault(good), None, "{good}");
        }
        assert_eq!(isbn_fault("978-0-306-40615-8"), Some(IsbnFault::CheckDigit { expected: '7' }));
        assert_eq!(isbn_fault("977-0-306-40615-7"), Some(IsbnFault::Prefix));
    }

    /// ISBN-10 examples of ISO 2108 as quoted in public explanations of the check digit.
    #[test]
    fn ten_digits() {
        for good in
            ["0-306-40615-2", "3-16-148410-X", "0-8044-2957-X", "0-8436-1072-7", "316148410x"]
        {
            assert_eq!(isbn_fault(good), None, "{good}");
        }
        assert_eq!(isbn_fault("0-306-40615-3"), Some(IsbnFault::CheckDigit { expected: '2' }));
        assert_eq!(isbn_fault("3-16-148410-1"), Some(IsbnFault::CheckDigit { expected: 'X' }));
        assert_eq!(isbn_fault("X-306-40615-2"), Some(IsbnFault::Sign('X')));
        assert_eq!(isbn_fault("0-306-4061"), Some(IsbnFault::Length(8)));
        assert_eq!(isbn_fault(""), Some(IsbnFault::Length(0)));
    }

    /// All 9 × 13 single wrong digits are noticed; of the 12 swaps of neighbours
    /// one passes, 6 and 1 (they differ by five): computed from the rule of ISO 2108.
    #[test]
    fn single_errors_are_found_and_one_swap_is_not() {
        let good: Vec<char> = "9780306406157".chars().collect();
        let mut missed = 0;
        for i in 0..13 {
            for d in '0'..='9' {
                let mut bad = good.clone();
                bad[i] = d;
                missed += usize::from(
                    d != good[i] && isbn_fault(&bad.iter().collect::<String>()).is_none(),
                );
            }
        }
        assert_eq!(missed, 0);
        let passed: Vec<(char, char)> = (0..12)
            .filter(|i| good[*i] != good[i + 1])
            .filter_map(|i| {
                let mut bad = good.clone();
                bad.swap(i, i + 1);
                isbn_fault(&bad.iter().collect::<String>())
                    .is_none()
                    .then_some((good[i], good[i + 1]))
            })
            .collect();
        assert_eq!(passed, [('6', '1')]);
    }
}

//! Numbers that stand in a text, as digits or as English words.

use std::collections::BTreeSet;

/// The numbers in a text, written in digits without grouping: `24 hours` gives 24, `1,150` gives 1150,
/// `14.77` itself, and in English `twenty-five` gives 25.
///
/// `one`, `hundred` and larger words are passed over: `one` is mostly a pronoun, and the others multiply.
pub fn numbers(text: &str, language: &str) -> BTreeSet<String> {
    let mut out = digits(text);
    if language.split('-').next() == Some("en") {
        out.extend(words(text));
    }
    out
}

fn digits(text: &str) -> BTreeSet<String> {
    let mut out = BTreeSet::new();
    let mut run = String::new();
    let chars: Vec<char> = text.chars().collect();
    for (i, c) in chars.iter().enumerate() {
        let next_is_digit = chars.get(i + 1).is_some_and(char::is_ascii_digit);
        match c {
            c if c.is_ascii_digit() => run.push(*c),
            '.' if !run.is_empty() && next_is_digit => run.push('.'),
            ',' | '\u{a0}' | '\u{202f}' if !run.is_empty() && groups(&chars[i + 1..]) => {}
            _ if !run.is_empty() => {
                out.insert(std::mem::take(&mut run));
            }
            _ => {}
        }
    }
    if !run.is_empty() {
        out.insert(run);
    }
    out
}

/// True when exactly three digits follow: a sign that groups thousands.
fn groups(rest: &[char]) -> bool {
    rest.len() >= 3
        && rest[..3].iter().all(char::is_ascii_digit)
        && !rest.get(3).is_some_and(char::is_ascii_digit)
}

const SMALL: [&str; 20] = [
    "zero",
    "one",
    "two",
    "three",
    "four",
    "five",
    "six",
    "seven",
    "eight",
    "nine",
    "ten",
    "eleven",
    "twelve",
    "thirteen",
    "fourteen",
    "fifteen",
    "sixteen",
    "seventeen",
    "eighteen",
    "nineteen",
];
const TENS: [&str; 8] =
    ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

fn words(text: &str) -> BTreeSet<String> {
    let lower = text.to_lowercase();
    let tokens = lower.split(|c: char| !(c.is_alphanumeric() || c == '-'));
    tokens.filter_map(word).map(|n| n.to_string()).collect()
}

fn word(token: &str) -> Option<usize> {
    let ten = |w: &str| TENS.iter().position(|t| *t == w).map(|i| 10 * (i + 2));
    let small = |w: &str| SMALL.iter().position(|t| *t == w);
    if let Some((a, b)) = token.split_once('-') {
        return Some(ten(a)? + small(b).filter(|n| (1..10).contains(n))?);
    }
    small(token).filter(|n| *n != 1).or_else(|| ten(token))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn found(text: &str) -> Vec<String> {
        numbers(text, "en").into_iter().collect()
    }

    #[test]
    fn digits_and_words_are_the_same_numbers() {
        assert_eq!(found("about 20 years"), ["20"]);
        assert_eq!(found("About twenty years"), ["20"]);
        assert_eq!(found("24 hours and fifty minutes"), ["24", "50"]);
        assert_eq!(found("twenty-five, or 25."), ["25"]);
        assert_eq!(found("1,150 m; 14.77 days"), ["1150", "14.77"]);
        assert_eq!(found("the old one"), [""; 0]);
        assert_eq!(numbers("zwanzig, 20 Jahre", "de").len(), 1);
    }

    #[test]
    fn lists_are_not_grouped() {
        assert_eq!(found("2, 3 and 4"), ["2", "3", "4"]);
        assert_eq!(found("in 1853, 12 parts"), ["12", "1853"]);
    }
}

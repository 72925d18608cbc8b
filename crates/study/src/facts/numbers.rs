//! Numbers in running text: digits and English number words as exact fractions.

/// A number or a word of a text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Token {
    /// A number as a fraction in lowest terms.
    Number(u128, u128),
    /// A lower-case word.
    Word(String),
}

/// Number words up to the tens; their values.
const SMALL: &[(&str, u128)] = &[
    ("zero", 0),
    ("one", 1),
    ("two", 2),
    ("three", 3),
    ("four", 4),
    ("five", 5),
    ("six", 6),
    ("seven", 7),
    ("eight", 8),
    ("nine", 9),
    ("ten", 10),
    ("eleven", 11),
    ("twelve", 12),
    ("thirteen", 13),
    ("fourteen", 14),
    ("fifteen", 15),
    ("sixteen", 16),
    ("seventeen", 17),
    ("eighteen", 18),
    ("nineteen", 19),
    ("twenty", 20),
    ("thirty", 30),
    ("forty", 40),
    ("fifty", 50),
    ("sixty", 60),
    ("seventy", 70),
    ("eighty", 80),
    ("ninety", 90),
    ("once", 1),
    ("twice", 2),
];

/// Words that multiply what stands before them.
const LARGE: &[(&str, u128)] = &[
    ("dozen", 12),
    ("hundred", 100),
    ("thousand", 1_000),
    ("million", 1_000_000),
    ("billion", 1_000_000_000),
];

/// Words for parts of one.
const PARTS: &[(&str, u128)] =
    &[("half", 2), ("halves", 2), ("quarter", 4), ("quarters", 4), ("third", 3), ("thirds", 3)];

/// Signs for parts of one.
const SIGNS: &[(char, u128, u128)] =
    &[('½', 1, 2), ('¼', 1, 4), ('¾', 3, 4), ('⅓', 1, 3), ('⅔', 2, 3)];

fn value(table: &[(&str, u128)], word: &str) -> Option<u128> {
    table.iter().find(|(w, _)| *w == word).map(|(_, v)| *v)
}

/// Numbers and words of a text; number words are read when it is English.
pub(crate) fn tokens(text: &str, english: bool) -> Vec<Token> {
    let raw = raw(text);
    let mut out: Vec<Token> = Vec::new();
    let mut at = 0;
    while let Some(token) = raw.get(at) {
        let taken = if english { number_words(&raw, at) } else { None };
        match (taken, token) {
            (Some((number, step)), _) => {
                out.push(number);
                at += step;
                continue;
            }
            (None, token) => out.push(token.clone()),
        }
        at += 1;
    }
    out
}

/// Splits at everything that is neither letter nor digit.
fn raw(text: &str) -> Vec<Token> {
    let signs: Vec<char> = text.chars().collect();
    let mut out = Vec::new();
    let mut at = 0;
    while let Some(&c) = signs.get(at) {
        if c.is_ascii_digit() {
            let (number, next) = digits(&signs, at);
            out.push(number);
            at = next;
        } else if let Some((_, num, den)) = SIGNS.iter().find(|(s, _, _)| *s == c) {
            let joins = at > 0 && signs.get(at - 1).is_some_and(char::is_ascii_digit);
            push_part(*num, *den, joins, &mut out);
            at += 1;
        } else if c.is_alphabetic() || c == '°' || c == '%' {
            let rest = signs.get(at..).unwrap_or_default();
            let in_word = |c: &&char| c.is_alphabetic() || matches!(c, '\'' | '’');
            let length = rest.iter().take_while(in_word).count().max(1);
            let letters = rest.iter().take(length).filter(|c| !matches!(c, '\'' | '’'));
            out.push(Token::Word(letters.collect::<String>().to_lowercase()));
            at += length;
        } else {
            at += 1;
        }
    }
    out
}

/// Adds a part of one; right behind a whole number it joins that: 2½ is one number.
fn push_part(num: u128, den: u128, joins: bool, out: &mut Vec<Token>) {
    match out.last() {
        Some(Token::Number(whole, 1)) if joins => {
            let sum = fraction(whole.saturating_mul(den).saturating_add(num), den);
            out.pop();
            out.push(sum);
        }
        _ => out.push(Token::Number(num, den)),
    }
}

/// A number in digits from `at`: `1,000`, `1 000` with a narrow or fixed space, `2.5`, `1/3`.
fn digits(signs: &[char], at: usize) -> (Token, usize) {
    let digit = |i: usize| signs.get(i).and_then(|c| c.to_digit(10)).map(u128::from);
    let group = |i: usize| (0..3).all(|k| digit(i + k).is_some()) && digit(i + 3).is_none();
    let (mut number, mut scale, mut at) = (0_u128, 1_u128, at);
    let start = at;
    while let Some(d) = digit(at) {
        number = number.saturating_mul(10).saturating_add(d);
        at += 1;
        let gap =
            signs.get(at).is_some_and(|c| matches!(c, ',' | '\u{202f}' | '\u{a0}' | '\u{2009}'));
        if gap && group(at + 1) && at - start <= 15 {
            at += 1;
        }
    }
    if matches!(signs.get(at), Some('.' | ',')) && digit(at + 1).is_some() {
        at += 1;
        while let Some(d) = digit(at) {
            if scale < 1_000_000_000 {
                number = number.saturating_mul(10).saturating_add(d);
                scale *= 10;
            }
            at += 1;
        }
    } else if signs.get(at) == Some(&'/') {
        let end = (at + 1..signs.len()).find(|i| digit(*i).is_none()).unwrap_or(signs.len());
        let below = (at + 1..end.min(at + 9)).filter_map(digit).fold(0_u128, |n, d| n * 10 + d);
        if below > 0 {
            return (fraction(number, below), end);
        }
    }
    (fraction(number, scale), at)
}

fn fraction(number: u128, below: u128) -> Token {
    let (mut a, mut b) = (number, below.max(1));
    while b != 0 {
        (a, b) = (b, a % b);
    }
    let common = a.max(1);
    Token::Number(number / common, below.max(1) / common)
}

/// A number of one or more words from `at`, and how many words it takes.
fn number_words(raw: &[Token], at: usize) -> Option<(Token, usize)> {
    let word = |i: usize| match raw.get(i) {
        Some(Token::Word(w)) => Some(w.as_str()),
        _ => None,
    };
    let article = matches!(word(at), Some("a" | "an"));
    if let Some(below) = word(at + usize::from(article)).and_then(|w| value(PARTS, w)) {
        // “the third” counts an order, not a part.
        let of_one = article || below == 2;
        return of_one.then(|| (fraction(1, below), 1 + usize::from(article)));
    }
    let (mut whole, mut step) = match raw.get(at)? {
        Token::Number(n, d) if *d != 1 => return scaled(*n, *d, word(at + 1)),
        Token::Number(n, _) => (*n, 1),
        Token::Word(w) => match value(SMALL, w) {
            Some(n) => (n, 1),
            None if article && word(at + 1).and_then(|w| value(LARGE, w)).is_some() => (1, 1),
            None => return value(LARGE, w).map(|n| (Token::Number(n, 1), 1)),
        },
    };
    let mut sum = 0_u128;
    loop {
        let and = usize::from(word(at + step) == Some("and"));
        let Some(next) = word(at + step + and) else { break };
        if let Some(times) = value(LARGE, next).filter(|_| and == 0) {
            if times > 100 && whole == 0 {
                sum = sum.saturating_mul(times);
            } else if times > 100 {
                sum = sum.saturating_add(whole.saturating_mul(times));
                whole = 0;
            } else {
                whole = whole.saturating_mul(times);
            }
        } else if let Some(more) =
            value(SMALL, next).filter(|more| fits(whole, sum, *more, and == 1))
        {
            whole = whole.saturating_add(more);
        } else {
            break;
        }
        step += 1 + and;
    }
    let whole = sum.saturating_add(whole);
    let and_part =
        word(at + step) == Some("and") && matches!(word(at + step + 1), Some("a" | "one"));
    if and_part && let Some(below) = word(at + step + 2).and_then(|w| value(PARTS, w)) {
        return Some((fraction(whole.saturating_mul(below).saturating_add(1), below), step + 3));
    }
    if let Some(below) = word(at + step).and_then(|w| value(PARTS, w)) {
        return Some((fraction(whole, below), step + 1));
    }
    Some((Token::Number(whole, 1), step))
}

/// Does a small number join the one before it: twenty three, a hundred and five, two thousand twelve?
fn fits(whole: u128, sum: u128, more: u128, and: bool) -> bool {
    let tens = whole % 100;
    let after_tens =
        !and && (20..100).contains(&tens) && tens.is_multiple_of(10) && (1..10).contains(&more);
    let after_hundred = whole > 0 && tens == 0 && more > 0;
    let after_thousand = whole == 0 && sum > 0;
    after_tens || after_hundred || after_thousand
}

/// `2.5 million`.
fn scaled(number: u128, below: u128, next: Option<&str>) -> Option<(Token, usize)> {
    let times = next.and_then(|w| value(LARGE, w))?;
    Some((fraction(number.saturating_mul(times), below), 2))
}

#[cfg(test)]
mod tests {
    use super::{Token, tokens};
    use proptest::prelude::*;

    fn numbers(text: &str) -> Vec<(u128, u128)> {
        let number = |t: Token| match t {
            Token::Number(n, d) => Some((n, d)),
            Token::Word(_) => None,
        };
        tokens(text, true).into_iter().filter_map(number).collect()
    }

    #[test]
    fn numbers_in_digits_and_words() {
        for (text, expected) in [
            ("about twenty years", vec![(20, 1)]),
            ("twenty-three", vec![(23, 1)]),
            ("10–20 or 10 to 20", vec![(10, 1), (20, 1), (10, 1), (20, 1)]),
            ("1,000 and a thousand", vec![(1000, 1), (1000, 1)]),
            ("1\u{202f}000", vec![(1000, 1)]),
            ("two hundred and five", vec![(205, 1)]),
            ("two thousand and twelve", vec![(2012, 1)]),
            ("3 million", vec![(3_000_000, 1)]),
            ("2.5 million", vec![(2_500_000, 1)]),
            ("a dozen", vec![(12, 1)]),
            ("half, a third, two thirds, three quarters", vec![(1, 2), (1, 3), (2, 3), (3, 4)]),
            ("one and a half, 1.5, 1½, 3/2", vec![(3, 2), (3, 2), (3, 2), (3, 2)]),
            ("twice a day", vec![(2, 1)]),
            ("12 hours and 25 minutes", vec![(12, 1), (25, 1)]),
            ("the third", vec![]),
            ("19th", vec![(19, 1)]),
            ("one two", vec![(1, 1), (2, 1)]),
            ("six million two hundred thousand", vec![(6_200_000, 1)]),
        ] {
            assert_eq!(numbers(text), expected, "{text}");
        }
    }

    #[test]
    fn number_words_of_other_languages_stay_words() {
        assert_eq!(tokens("one 2", false), [Token::Word("one".into()), Token::Number(2, 1)]);
    }

    proptest! {
        #[test]
        fn never_fails(text in "\\PC{0,60}") {
            tokens(&text, true);
        }

        #[test]
        fn long_numbers_do_not_overflow(text in "[0-9,./½ ]{0,80}( million| dozen){0,40}") {
            tokens(&text, true);
        }
    }
}

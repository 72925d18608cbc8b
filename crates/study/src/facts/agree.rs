//! Does a stretch of text still say what its fact says?

use super::numbers::{Token, tokens};

/// How words stand to the fact they are linked to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Agreement {
    /// The fact's value stands in the words, or the fact has none.
    Agrees,
    /// The words hold another number or another unit of measure.
    Contradicts,
    /// The value does not stand in the words.
    Missing,
}

/// Units of measure that are told apart, each with its short and long forms.
const UNITS: &[&[&str]] = &[
    &["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
    &["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
    &["m", "metre", "metres", "meter", "meters"],
    &["km", "kilometre", "kilometres", "kilometer", "kilometers"],
    &["inch", "inches"],
    &["foot", "feet", "ft"],
    &["mile", "miles"],
    &["second", "seconds"],
    &["minute", "minutes", "min"],
    &["hour", "hours"],
    &["day", "days"],
    &["week", "weeks"],
    &["month", "months"],
    &["year", "years"],
    &["century", "centuries"],
    &["g", "gram", "grams", "gramme", "grammes"],
    &["kg", "kilogram", "kilograms"],
    &["tonne", "tonnes", "ton", "tons"],
    &["ml", "millilitre", "millilitres", "milliliter", "milliliters"],
    &["litre", "litres", "liter", "liters"],
    &["%", "percent"],
    &["°", "degree", "degrees"],
];

/// Compares words with a fact's value and unit.
///
/// Numbers compare as numbers (`twenty` is `20`, `10–20` is `10 to 20`), in
/// order; a value without a number compares word by word, capitals and plurals
/// aside. Number words are read when the text is English. After the last
/// number, a unit of measure other than the fact's contradicts it.
pub fn agreement(value: &str, unit: &str, words: &str, english: bool) -> Agreement {
    let (wanted, said) = (tokens(value, english), tokens(words, english));
    let is_number = |t: &&Token| matches!(t, Token::Number(..));
    let numbers: Vec<&Token> = wanted.iter().filter(is_number).collect();
    if numbers.is_empty() {
        let wanted: Vec<&Token> = wanted.iter().collect();
        let said: Vec<&Token> = said.iter().collect();
        let stands = wanted.is_empty()
            || said.windows(wanted.len()).any(|w| w.iter().zip(&wanted).all(|(a, b)| same(a, b)));
        return if stands { Agreement::Agrees } else { Agreement::Missing };
    }
    let Some(last) = in_order(&numbers, &said) else {
        // “one of them” is seldom meant as a number.
        let other = said.iter().any(|t| matches!(t, Token::Number(n, d) if (*n, *d) != (1, 1)));
        return if other { Agreement::Contradicts } else { Agreement::Missing };
    };
    let mut of_fact = wanted.clone();
    of_fact.extend(tokens(unit, english));
    let after =
        |tokens: &[Token], from: usize| tokens.iter().skip(from + 1).take(2).find_map(measure);
    let own = of_fact.iter().rposition(|t| is_number(&t)).and_then(|at| after(&of_fact, at));
    match (own, after(&said, last)) {
        (Some(own), Some(said)) if own != said => Agreement::Contradicts,
        _ => Agreement::Agrees,
    }
}

/// Index in `said` of the last of the numbers, when all stand there in order.
fn in_order(numbers: &[&Token], said: &[Token]) -> Option<usize> {
    let mut at = 0;
    let mut last = 0;
    for number in numbers {
        last = at + said.get(at..)?.iter().position(|t| t == *number)?;
        at = last + 1;
    }
    Some(last)
}

fn measure(token: &Token) -> Option<usize> {
    match token {
        Token::Word(word) => UNITS.iter().position(|forms| forms.contains(&word.as_str())),
        Token::Number(..) => None,
    }
}

fn same(a: &Token, b: &Token) -> bool {
    match (a, b) {
        (Token::Word(a), Token::Word(b)) => a.trim_end_matches('s') == b.trim_end_matches('s'),
        _ => a == b,
    }
}

#[cfg(test)]
mod tests {
    use super::Agreement::{Agrees, Contradicts, Missing};
    use super::agreement;

    #[test]
    fn words_and_facts() {
        for (value, unit, words, expected) in [
            ("about 20", "years", "about 20 years", Agrees),
            ("about 20", "years", "some twenty years", Agrees),
            ("20", "years", "120 years", Contradicts),
            ("20", "years", "20 days", Contradicts),
            ("20", "", "for a long time", Missing),
            ("10 to 20", "years", "10–20 years", Agrees),
            ("10-20", "years", "between ten and twenty years", Agrees),
            ("10-20", "years", "20 to 10 years", Contradicts),
            ("1,500", "m", "1500 metres", Agrees),
            ("about half", "of the Moon's pull", "only about half as much", Agrees),
            ("two high tides", "", "two high tides a day", Agrees),
            ("sea snail", "", "Sea snails", Agrees),
            ("sea snail", "", "a snail of the sea", Missing),
            ("two", "", "one of them", Missing),
            ("", "", "anything", Agrees),
            ("24 hours and 50 minutes", "", "24 hours and 50 minutes", Agrees),
            ("24 hours and 50 minutes", "", "24 hours and 15 minutes", Contradicts),
            ("0.5", "mm", "half a millimetre", Agrees),
        ] {
            assert_eq!(agreement(value, unit, words, true), expected, "{value} {unit} / {words}");
        }
    }
}

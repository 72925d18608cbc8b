//! `questions.csv`.

use super::rows::{self, Row};
use crate::fields;
use crate::files::Files;
use crate::ids::digits;
use crate::markdown;
use crate::model::{Question, QuestionFor, Range};
use crate::read::Cx;
use findings::Finding;
use std::collections::BTreeSet;

const FOR: &[(&str, QuestionFor)] = &[
    ("write", QuestionFor::Write),
    ("talk", QuestionFor::Talk),
    ("teen", QuestionFor::Teen),
    ("toddler", QuestionFor::Toddler),
];

/// Most lines to write on under one question.
const MOST_LINES: u32 = 40;

/// All questions in file order.
pub(super) fn all(files: &Files, cx: &mut Cx) -> Vec<Question> {
    let mut seen = BTreeSet::new();
    let rows = rows::all(&super::QUESTIONS, files, cx);
    rows.iter().filter_map(|row| question(row, &mut seen, cx)).collect()
}

fn question(row: &Row, seen: &mut BTreeSet<String>, cx: &mut Cx) -> Option<Question> {
    let id = match row.text("id") {
        Some(id) => id.to_owned(),
        None => {
            format!("q-{}", digits(&[row.text("question")?, row.text("where").unwrap_or_default()]))
        }
    };
    if !seen.insert(id.clone()) {
        let finding = if row.text("id").is_some() {
            Finding::error("question-twice", format!("the question id `{id}` stands twice"))
                .remedy("give one of the two another id")
        } else {
            Finding::error("question-twice", "this question stands twice")
                .remedy("take one of the two rows out")
        };
        cx.findings.push(finding.at(&row.at));
        return None;
    }
    let also = row.parts("also").iter().map(|(text, at)| markdown::line(text, at, cx)).collect();
    Some(Question {
        id,
        wherever: row.wherever(cx),
        whom: row.choice("for", FOR, cx).unwrap_or(QuestionFor::Write),
        question: row.said("question", cx)?,
        answer: row.said("answer", cx),
        also,
        range: range(row, cx),
        lines: lines(row, cx),
        fact: row.text("fact").and_then(|id| cx.fact(id, &row.place("fact"))),
        band: row.text("band").and_then(|text| fields::band(cx, text, &row.place("band"))),
    })
}

/// The range that is right, its ends compared as exact decimals.
fn range(row: &Row, cx: &mut Cx) -> Option<Range> {
    let (low, high) = match (row.text("low"), row.text("high")) {
        (None, None) => return None,
        (Some(low), Some(high)) => (low, high),
        (low, _) => {
            let missing = if low.is_some() { "high" } else { "low" };
            cx.findings.push(
                Finding::error("range-half", format!("this range has no `{missing}`"))
                    .at(&row.place(missing))
                    .remedy("give both ends; for one right number write it twice"),
            );
            return None;
        }
    };
    for (column, text) in [("low", low), ("high", high)] {
        if decimal(text).is_none() {
            cx.findings.push(
                Finding::error("range-no-number", format!("`{text}` is no number"))
                    .at(&row.place(column))
                    .remedy("write digits, with a point for parts: 2.5; the unit has a column of its own"),
            );
        }
    }
    if decimal(low)? > decimal(high)? {
        cx.findings.push(
            Finding::error("range-turned", format!("the range runs from `{low}` down to `{high}`"))
                .at(&row.place("low"))
                .remedy("swap `low` and `high`"),
        );
        return None;
    }
    Some(Range { low: low.to_owned(), high: high.to_owned(), unit: row.words("unit") })
}

/// A decimal number in millionths; none when it is no number or too large.
fn decimal(text: &str) -> Option<i128> {
    let (sign, digits) = match text.strip_prefix(['-', '−']) {
        Some(rest) => (-1, rest),
        None => (1, text),
    };
    let digits = digits.replace(',', "");
    let (whole, part) = digits.split_once('.').unwrap_or((&digits, ""));
    let all_digits = |s: &str| s.chars().all(|c| c.is_ascii_digit());
    if whole.is_empty()
        || whole.len() > 18
        || part.len() > 6
        || !all_digits(whole)
        || !all_digits(part)
    {
        return None;
    }
    let millionths = format!("{part:0<6}").parse::<i128>().ok()?;
    Some(sign * (whole.parse::<i128>().ok()? * 1_000_000 + millionths))
}

fn lines(row: &Row, cx: &mut Cx) -> Option<u32> {
    let text = row.text("lines")?;
    let lines = text.parse().ok().filter(|n| *n <= MOST_LINES);
    if lines.is_none() {
        fields::wrong(
            cx,
            &row.place("lines"),
            "lines",
            &format!("a whole number from 0 to {MOST_LINES}, like 2"),
        );
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::decimal;

    #[test]
    fn decimals_compare_exactly() {
        assert_eq!(decimal("2.5"), Some(2_500_000));
        assert_eq!(decimal("1,000"), Some(1_000_000_000));
        assert!(decimal("-3") < decimal("-2.999999"));
        assert!(decimal("0.1") < decimal("0.11"));
        for no in ["", ".5", "2.5.1", "two", "1e3", "12:50", "1.1234567"] {
            assert_eq!(decimal(no), None, "{no}");
        }
    }
}

//! Counts the questions again, and weighs answers against their ranges.

use super::{Asked, Item, Needs, Sheet};
use findings::Finding;
use proof::Proof;
use proof::numbers::numbers;
use study::QuestionFor;

pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let numbered = sheet.items.iter().enumerate().all(|(i, item)| item.n == i + 1);
    proof.demand(numbered, "question-number", "the questions are not numbered one after the other");
    proof.demand(
        sheet.items.len() == needs.asked.len(),
        "question-count",
        "a question is lost or printed twice",
    );
    for (asked, item) in needs.asked.iter().zip(&sheet.items) {
        same(&mut proof, asked, item);
        lines(&mut proof, needs, asked, item);
        range(&mut proof, needs, asked);
        told(&mut proof, asked, item);
    }
    for (i, item) in sheet.items.iter().enumerate() {
        let twice = sheet.items[..i].iter().any(|o| o.question.plain() == item.question.plain());
        if twice {
            let finding =
                Finding::error("question-twice", format!("question {} is asked twice", item.n));
            proof.findings.push(
                finding
                    .at(&item.question.at)
                    .remedy("ask something else, or take one of the two away"),
            );
        }
    }
    let answered = needs.asked.iter().filter(|a| a.answer.is_some() || a.range.is_some()).count();
    proof.count("questions", sheet.items.len());
    proof.count("with an answer", answered);
    proof
}

fn same(proof: &mut Proof, asked: &Asked, item: &Item) {
    let right = item.question == asked.question && item.whom == asked.whom;
    proof.demand(right, "question-changed", format!("question {} is not the author's", item.n));
    proof.demand(
        !item.question.plain().trim().is_empty(),
        "question-empty",
        format!("question {} has no words", item.n),
    );
    if asked.whom == QuestionFor::Write && asked.answer.is_none() && asked.range.is_none() {
        let finding = Finding::hint(
            "question-without-answer",
            format!("question {} has no model answer", item.n),
        );
        proof.findings.push(finding.at(&asked.question.at).remedy("fill in its `answer` column"));
    }
}

fn lines(proof: &mut Proof, needs: &Needs, asked: &Asked, item: &Item) {
    let enough = match item.whom {
        QuestionFor::Write => item.lines >= needs.least_lines && item.lines >= asked.lines,
        QuestionFor::Teen => item.lines == asked.lines,
        QuestionFor::Talk | QuestionFor::Toddler => item.lines == 0,
    };
    proof.demand(
        enough,
        "question-lines",
        format!("question {} has the wrong number of lines", item.n),
    );
}

/// The range runs upwards, and no number of the model answer lies outside it.
fn range(proof: &mut Proof, needs: &Needs, asked: &Asked) {
    let Some(range) = &asked.range else { return };
    let (Some(low), Some(high)) = (value(&range.low), value(&range.high)) else { return };
    let fault = |message: String| {
        Finding::error("answer-range", message)
            .at(&asked.question.at)
            .remedy("mend `low` and `high`, or the answer, in questions.csv")
    };
    if low > high {
        proof.findings.push(fault(format!(
            "the right answers run from {} down to {}",
            range.low, range.high
        )));
    }
    let given = asked.answer.iter().flat_map(|a| numbers(&a.plain(), &needs.language));
    let values: Vec<f64> = given.filter_map(|n| value(&n)).collect();
    if !values.is_empty() && !values.iter().any(|v| (low..=high).contains(v)) {
        let answer = asked.answer.as_ref().map(study::Said::plain).unwrap_or_default();
        proof.findings.push(fault(format!(
            "the answer `{answer}` lies outside {} to {}",
            range.low, range.high
        )));
    }
}

fn value(written: &str) -> Option<f64> {
    written.trim().replace([',', ' '], "").parse().ok()
}

/// A question that holds its own answer is a slip; short answers such as "yes" may well stand in one.
fn told(proof: &mut Proof, asked: &Asked, item: &Item) {
    let Some(answer) = &asked.answer else { return };
    let plain = |s: &str| {
        s.to_lowercase()
            .split(|c: char| !c.is_alphanumeric())
            .filter(|w| !w.is_empty())
            .collect::<Vec<_>>()
            .join(" ")
    };
    let (answer_words, question) = (plain(&answer.plain()), plain(&item.question.plain()));
    if answer_words.len() >= 6 && format!(" {question} ").contains(&format!(" {answer_words} ")) {
        let finding = Finding::warning(
            "question-tells",
            format!("question {} holds its own answer `{}`", item.n, answer.plain()),
        );
        proof.findings.push(finding.at(&asked.question.at).remedy("word the question without it"));
    }
}

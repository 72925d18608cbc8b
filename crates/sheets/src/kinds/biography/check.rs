//! Does the page tell the life as written, in order, with its sources?

use super::needs::used_facts;
use super::{Answer, Needs, Sheet};
use crate::shared::SourceLine;
use findings::Finding;
use proof::Proof;
use study::Said;

/// The key, worked out from the printed questions.
pub(super) fn answers(needs: &Needs, sheet: &Sheet) -> Vec<Answer> {
    let known = sheet.questions.iter().filter_map(|asked| {
        let (_, answer) = needs.person.questions.iter().find(|(q, _)| *q == asked.question)?;
        Some(Answer { n: asked.n, answer: answer.clone() })
    });
    known.collect()
}

/// The proof of a page.
pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let person = &needs.person;
    proof.demand(sheet.name == person.name, "person-other", "the page is about somebody else");
    let years = sheet.born == person.born && sheet.died == person.died;
    proof.demand(years, "person-years", "the years of the life are not printed as written");
    proof.demand(
        sheet.known_for == person.known_for,
        "person-known",
        "what the person is known for is not printed as written",
    );
    proof.demand(
        sheet.picture == needs.picture,
        "person-picture",
        "the page shows another picture",
    );
    proof.demand(sheet.text == person.text, "person-text", "the text is not printed as written");
    timeline(needs, sheet, &mut proof);
    questions(needs, sheet, &mut proof);
    sources(needs, sheet, &mut proof);
    proof
}

/// The first whole number of four digits or fewer that is written; none for years before Christ.
pub(super) fn year(written: &Said) -> Option<i32> {
    let plain = written.plain();
    if ["BC", "B.C"].iter().any(|b| plain.to_uppercase().contains(b)) {
        return None;
    }
    plain.split(|c: char| !c.is_ascii_digit()).find(|d| !d.is_empty() && d.len() <= 4)?.parse().ok()
}

fn timeline(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let person = &needs.person;
    proof.count("events", sheet.timeline.len());
    let wanted: Vec<(&Said, &Said)> = person.timeline.iter().map(|(y, w)| (y, w)).collect();
    let printed: Vec<(&Said, &Said)> = sheet.timeline.iter().map(|e| (&e.year, &e.what)).collect();
    proof.demand(wanted == printed, "time-other", "the line of time is not printed as written");
    let dated: Vec<(i32, &Said)> =
        sheet.timeline.iter().filter_map(|e| Some((year(&e.year)?, &e.year))).collect();
    for pair in dated.windows(2).filter(|w| w[0].0 > w[1].0) {
        let message = format!(
            "`{}` stands before `{}` on the line of time",
            pair[0].1.plain(),
            pair[1].1.plain()
        );
        proof.findings.push(
            Finding::warning("time-order", message)
                .at(&pair[1].1.at)
                .remedy("put the earlier year first"),
        );
    }
    let born = person.born.as_ref().and_then(year);
    if let (Some(born), Some((first, at))) = (born, dated.first())
        && *first < born
    {
        let message = format!("`{first}` on the line of time comes before the birth in `{born}`");
        proof.findings.push(
            Finding::warning("time-birth", message).at(&at.at).remedy("correct one of the two"),
        );
    }
    if let (Some(born), Some(died)) = (born, person.died.as_ref().and_then(year)) {
        proof.count("years of life", died - born);
        if !(0..=122).contains(&(died - born)) {
            let message = format!("a life from `{born}` to `{died}` cannot be");
            proof.findings.push(
                Finding::warning("life-length", message)
                    .at(&person.place)
                    .remedy("correct `born` or `died`"),
            );
        }
    }
}

fn questions(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    proof.count("questions", sheet.questions.len());
    let wanted: Vec<&Said> = needs.person.questions.iter().map(|(q, _)| q).collect();
    let printed: Vec<&Said> = sheet.questions.iter().map(|q| &q.question).collect();
    proof.demand(
        wanted == printed,
        "questions-other",
        "the questions are not printed as written, each once",
    );
    for (i, asked) in sheet.questions.iter().enumerate() {
        proof.demand(
            usize::try_from(asked.n) == Ok(i + 1),
            "question-number",
            format!("question {} has the wrong number", i + 1),
        );
        proof.demand(
            asked.lines >= 1,
            "question-lines",
            format!("question {} has no line to write on", i + 1),
        );
    }
    let key = answers(needs, sheet);
    proof.demand(
        key.len() == sheet.questions.len(),
        "key-short",
        "a question has no answer in the key",
    );
}

fn sources(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    proof.count("facts", needs.facts.len());
    proof.count("sources", sheet.sources.len());
    for id in used_facts(&needs.person) {
        proof.demand(
            needs.facts.iter().any(|f| f.id == id),
            "fact-unlisted",
            format!("the fact `{id}` is used and not listed"),
        );
    }
    // A fact without a source is the study's to complain about, once for all sheets.
    for (fact, source) in needs.facts.iter().filter_map(|f| Some((f, f.source.as_ref()?))) {
        proof.demand(
            sheet.sources.contains(source),
            "source-missing",
            format!("the source of `{}` is not printed", fact.id),
        );
    }
    let known = |s: &SourceLine| needs.facts.iter().any(|f| f.source.as_ref() == Some(s));
    proof.demand(
        sheet.sources.iter().all(known),
        "source-stranger",
        "a source is printed that no fact of the page has",
    );
    let twice = sheet.sources.iter().enumerate().any(|(i, s)| sheet.sources[..i].contains(s));
    proof.demand(!twice, "source-twice", "a source is printed twice");
}

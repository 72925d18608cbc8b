//! Are the printed sentences the author's, mixed, and does the key name her figures?

use super::needs::{ALL, LEAST, name, same};
use super::{Answer, Needs, Row, Sheet, Task};
use findings::Finding;
use proof::Proof;
use std::collections::BTreeSet;
use study::Figure;

/// The author's row of a printed sentence, when it is hers word for word.
fn row_of<'a>(needs: &'a Needs, printed: &study::Said) -> Option<&'a Row> {
    needs.rows.iter().find(|r| r.sentence == *printed)
}

/// The key, worked out from the printed sentences.
pub(super) fn answers(needs: &Needs, sheet: &Sheet) -> Vec<Answer> {
    let known = sheet.sentences.iter().filter_map(|s| Some((s.n, row_of(needs, &s.sentence)?)));
    known.map(|(n, row)| Answer { n, figure: row.figure, why: row.why.clone() }).collect()
}

/// The proof of a page.
pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    proof.findings.append(needs.notes.clone());
    let answers = answers(needs, sheet);
    proof.count("sentences", sheet.sentences.len());
    proof.demand(
        answers.len() == sheet.sentences.len(),
        "figure-stranger",
        "a sentence on the page is not one of the author's",
    );
    proof.demand(
        sheet.sentences.len() == needs.count && needs.count >= LEAST,
        "figures-count",
        "the page has more or fewer sentences than it should",
    );
    for (i, sentence) in sheet.sentences.iter().enumerate() {
        proof.demand(
            usize::try_from(sentence.n) == Ok(i + 1),
            "figure-number",
            format!("sentence {} has the wrong number", i + 1),
        );
        let again = sheet.sentences[..i].iter().any(|s| same(&s.sentence, &sentence.sentence));
        proof.demand(
            !again,
            "figure-repeated",
            format!("sentence {} stands on the page twice", i + 1),
        );
    }
    let found: Vec<Figure> = answers.iter().map(|a| a.figure).collect();
    balance(needs, &found, &mut proof);
    reminders(needs, sheet, &found, &mut proof);
    proof.demand(
        !grouped(&found),
        "figures-grouped",
        "the sentences stand grouped by figure, which gives the answers away",
    );
    for answer in &answers {
        signs(needs, sheet, answer, &mut proof);
    }
    proof
}

/// Two figures at least, and none more often than another by two while that one had sentences left.
fn balance(needs: &Needs, found: &[Figure], proof: &mut Proof) {
    let here = |figure: Figure| found.iter().filter(|f| **f == figure).count();
    let there = |figure: Figure| needs.rows.iter().filter(|r| r.figure == figure).count();
    let most = ALL.into_iter().map(here).max().unwrap_or(0);
    for figure in ALL {
        proof.count(name(figure), here(figure));
    }
    let uneven = ALL.into_iter().any(|f| here(f) + 1 < most && here(f) < there(f));
    proof.demand(
        !uneven,
        "figures-uneven",
        "one figure has far more sentences on the page than another",
    );
    let kinds: BTreeSet<&Figure> = found.iter().collect();
    proof.demand(kinds.len() >= 2, "figures-one", "all sentences have the same figure");
}

/// The reminders and own sentences are of figures on the page.
fn reminders(needs: &Needs, sheet: &Sheet, found: &[Figure], proof: &mut Proof) {
    let wanted: Vec<Figure> = ALL.into_iter().filter(|f| found.contains(f)).collect();
    proof.demand(
        sheet.figures == wanted,
        "figures-reminded",
        "the reminders are not those of the figures on the page",
    );
    proof.demand(
        sheet.own.iter().all(|f| wanted.contains(f)),
        "figure-own",
        "a sentence is asked for with a figure that the page does not explain",
    );
    proof.demand(
        sheet.task != Task::Sort || needs.band == study::Band::A || sheet.own == wanted,
        "figures-own",
        "not every figure is written by the child",
    );
    proof.demand(
        sheet.task == needs.task,
        "figures-task",
        "the page asks for another task than its level",
    );
    proof.demand(
        sheet.picture == needs.picture,
        "figures-picture",
        "the page shows another picture",
    );
    proof.demand(
        sheet.lines >= 1,
        "figures-lines",
        "there are no lines for the child's own sentence",
    );
}

/// True when equal figures all stand together, or three stand in a row although there is another to part them.
fn grouped(found: &[Figure]) -> bool {
    let changes = found.windows(2).filter(|w| w[0] != w[1]).count();
    let kinds = found.iter().collect::<BTreeSet<_>>().len();
    let most = ALL.iter().map(|f| found.iter().filter(|g| *g == f).count()).max().unwrap_or(0);
    let parted = found.len() - most + 1;
    (found.len() > kinds && changes + 1 == kinds)
        || (most <= 2 * parted && found.windows(3).any(|w| w[0] == w[1] && w[1] == w[2]))
}

/// English signs of a simile: warned about, since a sentence may be right all the same.
fn signs(needs: &Needs, sheet: &Sheet, answer: &Answer, proof: &mut Proof) {
    let Some(row) = needs
        .rows
        .iter()
        .find(|r| sheet.sentences.iter().any(|s| s.n == answer.n && s.sentence == r.sentence))
    else {
        return;
    };
    let plain = row.sentence.plain().to_lowercase();
    let words: Vec<&str> = plain.split(|c: char| !c.is_alphanumeric()).collect();
    let likened = words.contains(&"like")
        || words.iter().filter(|w| **w == "as").count() > 1
        || words.contains(&"as") && words.contains(&"if");
    let doubt = match row.figure {
        Figure::Simile
            if !words.contains(&"like") && !words.contains(&"as") && !words.contains(&"than") =>
        {
            Some("is called a simile, and has neither like nor as")
        }
        Figure::Metaphor if likened => Some("is called a metaphor, and likens with like or as"),
        _ => None,
    };
    if let Some(doubt) = doubt {
        let finding =
            Finding::warning("figure-sign", format!("`{}` {doubt}", row.sentence.plain()))
                .at(&row.sentence.at);
        proof.findings.push(finding.remedy("look at the `figure` in its row again"));
    }
    if words.iter().any(|w| ALL.iter().any(|f| name(*f) == *w)) {
        let finding = Finding::warning(
            "figure-told",
            format!("`{}` names a figure of speech", row.sentence.plain()),
        )
        .at(&row.sentence.at);
        proof.findings.push(finding.remedy("say it in other words"));
    }
}

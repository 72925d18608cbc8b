//! Is everything that the author compares on the page once, and what is to be filled in really empty?

use super::answers::{answers, row_of, sayings};
use super::{Needs, Row, Sheet, Which};
use proof::Proof;
use study::{Compared, Said};

/// The proof of a page.
pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    proof.demand(sheet.level == needs.level, "compare-level", "the page is of another level");
    proof.demand(
        sheet.first == needs.first && sheet.second == needs.second,
        "compare-sides",
        "the page shows other subjects, or in another order",
    );
    match sheet.level {
        1 => ticks(needs, sheet, &mut proof),
        _ => table(needs, sheet, &mut proof),
    }
    proof
}

/// Level 1: every saying once, numbered, mixed, with one box each in the key.
fn ticks(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    proof.count("sentences", sheet.sentences.len());
    proof.demand(
        sheet.rows.is_empty(),
        "compare-answers",
        "the page prints the table as well, which holds the answers",
    );
    proof.demand(
        sheet.sentences.len() == needs.sentences,
        "sentences-count",
        "the page has more or fewer sentences than it should",
    );
    for (i, one) in sheet.sentences.iter().enumerate() {
        proof.demand(
            usize::try_from(one.n) == Ok(i + 1),
            "sentence-number",
            format!("sentence {} has the wrong number", i + 1),
        );
        let again =
            sheet.sentences[..i].iter().any(|s| s.aspect == one.aspect && s.what == one.what);
        proof.demand(
            !again,
            "sentence-twice",
            format!("sentence {} stands on the page twice", i + 1),
        );
    }
    let key = answers(needs, sheet);
    proof.demand(
        key.ticks.len() == sheet.sentences.len(),
        "sentence-stranger",
        "a sentence on the page is not the author's",
    );
    let order: Vec<Which> = key.ticks.iter().map(|t| t.which).collect();
    let kinds =
        [Which::First, Which::Second, Which::Both].iter().filter(|w| order.contains(w)).count();
    let said = |w: &Which| needs.rows.iter().flat_map(sayings).filter(|(x, _)| x == w).count();
    let count = |w: &Which| order.iter().filter(|o| *o == w).count();
    let all = [Which::First, Which::Second, Which::Both];
    let most = all.iter().map(count).max().unwrap_or(0);
    let uneven = all.iter().any(|w| count(w) + 1 < most && count(w) < said(w));
    proof.demand(
        !uneven,
        "sentences-uneven",
        "one of the boxes is ticked far more often than another",
    );
    let changes = order.windows(2).filter(|w| w[0] != w[1]).count();
    proof.demand(
        order.len() <= kinds || changes + 1 > kinds,
        "sentences-grouped",
        "the sentences stand grouped by their answers",
    );
}

/// Levels 2 and 3: every row once, given words the author's, gaps empty and not to be read elsewhere.
fn table(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    proof.count("rows", sheet.rows.len());
    proof.demand(
        sheet.sentences.is_empty(),
        "compare-answers",
        "the page prints the sentences as well, which hold the answers",
    );
    proof.demand(
        sheet.rows.len() == needs.rows.len(),
        "rows-count",
        "not every row stands on the page once",
    );
    proof.demand(sheet.lines >= 1, "compare-lines", "there is no line to write on");
    let mut gaps = [0usize; 3];
    for (i, row) in sheet.rows.iter().enumerate() {
        let name = row.aspect.plain();
        proof.demand(
            !sheet.rows[..i].iter().any(|r| r.aspect == row.aspect),
            "row-twice",
            format!("`{name}` stands on the page twice"),
        );
        let Some(own) = row_of(needs, &row.aspect) else {
            proof.fault("row-stranger", format!("`{name}` is not one of the author's rows"));
            continue;
        };
        one_row(needs, row, &own.what, &mut gaps, proof);
    }
    hidden(needs, sheet, proof);
    let [first, second, both] = gaps;
    proof.count("gaps", first + second + both);
    proof.demand(first + second + both > 0, "gaps-none", "there is nothing to fill in");
    let differ = needs.rows.iter().filter(|r| matches!(r.what, Compared::Each(..))).count();
    proof.demand(
        needs.level == 3 || first.abs_diff(second) <= 1,
        "gaps-one-sided",
        "one subject has far more to fill in than the other",
    );
    proof.demand(
        needs.level == 3 || first + second == differ,
        "gaps-difference",
        "a difference has not one side to fill in",
    );
}

fn one_row(needs: &Needs, row: &Row, own: &Compared, gaps: &mut [usize; 3], proof: &mut Proof) {
    let name = row.aspect.plain();
    let alike = matches!(own, Compared::Both(_));
    let told = if needs.level == 3 { None } else { Some(alike) };
    proof.demand(
        row.alike == told,
        "row-alike",
        format!("`{name}` stands under the wrong heading"),
    );
    let given = |printed: &Option<Said>, own: &Said| printed.as_ref().is_none_or(|p| p == own);
    let right = match own {
        Compared::Both(both) => given(&row.first, both) && row.second.is_none(),
        Compared::Each(a, b) => given(&row.first, a) && given(&row.second, b),
    };
    proof.demand(right, "row-other", format!("what is given for `{name}` is not the author's"));
    proof.demand(
        needs.level < 3 || (row.first.is_none() && row.second.is_none()),
        "row-given",
        format!("`{name}` is filled in already"),
    );
    if alike {
        gaps[2] += usize::from(row.first.is_none());
    } else {
        gaps[0] += usize::from(row.first.is_none());
        gaps[1] += usize::from(row.second.is_none());
    }
}

/// The words of a gap may not be read elsewhere on the page.
fn hidden(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let lower = |s: &Said| s.plain().trim().to_lowercase();
    let printed: Vec<String> = sheet
        .rows
        .iter()
        .flat_map(|r| [Some(&r.aspect), r.first.as_ref(), r.second.as_ref()])
        .flatten()
        .map(lower)
        .collect();
    for row in &sheet.rows {
        let Some(own) = row_of(needs, &row.aspect) else { continue };
        let missing: Vec<&Said> = match &own.what {
            Compared::Both(both) => row.first.is_none().then_some(both).into_iter().collect(),
            Compared::Each(a, b) => row
                .first
                .is_none()
                .then_some(a)
                .into_iter()
                .chain(row.second.is_none().then_some(b))
                .collect(),
        };
        for said in missing {
            let answer = lower(said);
            proof.demand(
                !printed.contains(&answer),
                "gap-told",
                format!("what is to be written for `{}` stands on the page", row.aspect.plain()),
            );
        }
    }
}

//! Which sheet an author means by a short name.

use crate::making::Outcome;
use findings::Finding;
use sheets::Owner;
use study::Study;

/// By full id, then by `owner.kind.name`, `owner.kind`, `kind`; the first in printing order.
pub fn pick<'a>(
    study: &Study,
    outcomes: &'a [Outcome],
    wanted: &str,
) -> Result<&'a Outcome, Finding> {
    let found = outcomes
        .iter()
        .find(|o| o.planned.id == wanted)
        .or_else(|| outcomes.iter().find(|o| names(study, o).iter().any(|n| n == wanted)));
    found.ok_or_else(|| unknown(study, outcomes, wanted))
}

/// The names that a sheet answers to, longest first.
fn names(study: &Study, outcome: &Outcome) -> Vec<String> {
    let kind = outcome.planned.about().id;
    let ordinal = outcome.planned.id.rsplit('.').next().unwrap_or_default();
    let mut all = Vec::new();
    for owner in owner_names(study, outcome.planned.owner) {
        all.push(format!("{owner}.{kind}.{ordinal}"));
        all.push(format!("{owner}.{kind}"));
    }
    all.push(format!("{kind}.{ordinal}"));
    all.push(kind.to_owned());
    all
}

fn owner_names(study: &Study, owner: Owner) -> Vec<&str> {
    match owner {
        Owner::Study => Vec::new(),
        Owner::Part(i) => study.parts.get(i).map(|p| p.name.as_str()).into_iter().collect(),
        Owner::Lesson(i) => study.lessons.get(i).map(|l| l.name.as_str()).into_iter().collect(),
        Owner::Subject(i, j) => {
            let lesson = study.lessons.get(i);
            let subject = lesson.and_then(|l| l.subjects.get(j)).map(|s| s.name.as_str());
            subject.into_iter().chain(lesson.map(|l| l.name.as_str())).collect()
        }
    }
}

fn unknown(study: &Study, outcomes: &[Outcome], wanted: &str) -> Finding {
    let finding =
        Finding::error("sheet-unknown", format!("the study has no sheet called `{wanted}`"));
    let all: Vec<String> = outcomes.iter().flat_map(|o| names(study, o)).collect();
    match study::nearest(wanted, all.iter().map(String::as_str)) {
        Some(near) => finding.remedy(format!("did you mean `{near}`?")),
        None => finding.remedy(
            "name its type, or owner and type with a dot between, as in `homeward.reading`",
        ),
    }
}

//! Is the whole activity on the page as written, with the cautions that it calls for?

use super::needs::supplies;
use super::vocabulary::Vocabulary;
use super::{Group, Needs, Sheet};
use crate::cautions::cautions;
use findings::Finding;
use proof::Proof;
use study::{ActivityForm, Block, Said};

/// Longest time that is believed without a word: a day's outing, a long afternoon; common practice, no source.
const LONGEST: u32 = 240;

/// The proof of a page.
pub(super) fn check(needs: &Needs, sheet: &Sheet) -> Proof {
    let mut proof = Proof::new();
    let activity = &needs.activity;
    proof.demand(
        sheet.form == activity.form,
        "activity-form",
        "the page says that it is something else",
    );
    proof.demand(
        sheet.intro == activity.intro,
        "activity-why",
        "why we do it is not printed as written",
    );
    proof.demand(
        sheet.picture == needs.picture,
        "activity-picture",
        "the page shows another picture",
    );
    proof.count("steps", sheet.steps.len());
    proof.demand(
        sheet.steps == activity.steps,
        "steps-other",
        "the steps are not printed as written, in their order",
    );
    proof.demand(
        sheet.ask == activity.ask,
        "ask-other",
        "what to talk about is not printed as written",
    );
    let idea = activity.idea.clone().unwrap_or_default();
    proof.demand(
        sheet.idea == idea,
        "idea-other",
        "the idea to open with is not printed as written",
    );
    groups(needs, sheet, &mut proof);
    table(needs, sheet, &mut proof);
    untold(needs, sheet, &mut proof);
    careful(needs, sheet, &mut proof);
    time(needs, &mut proof);
    proof
}

fn groups(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let activity = &needs.activity;
    let printed = |group: Group| {
        sheet
            .supplies
            .iter()
            .filter(move |s| s.group == group)
            .flat_map(|s| s.items.clone())
            .collect::<Vec<Said>>()
    };
    let all = [
        (Group::Ready, &activity.supplies),
        (Group::Base, &activity.base),
        (Group::Fillers, &activity.fillers),
        (Group::Tools, &activity.tools),
    ];
    proof.count("supplies", sheet.supplies.iter().map(|s| s.items.len()).sum::<usize>());
    for (group, own) in all {
        proof.demand(
            printed(group) == *own,
            "supplies-other",
            "the things to have ready are not printed as written, each once",
        );
    }
    proof.demand(
        sheet.supplies.iter().all(|s| !s.items.is_empty()),
        "supplies-empty",
        "a list of things to have ready is empty",
    );
}

/// Titles and given cells as written, empty cells empty, something to fill in.
fn table(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let table = &needs.activity.table;
    let head = table.first().cloned().unwrap_or_default();
    proof.demand(
        sheet.head == head,
        "table-head",
        "the titles of the table are not printed as written",
    );
    let rows = table.get(1..).unwrap_or_default();
    proof.demand(
        sheet.rows.len() == rows.len(),
        "table-rows",
        "the table has more or fewer rows than written",
    );
    let mut blank = 0;
    for (printed, own) in sheet.rows.iter().zip(rows) {
        let same = printed.len() == own.len()
            && printed
                .iter()
                .zip(own)
                .all(|(p, o)| p.as_ref().map_or_else(|| o.plain().trim().is_empty(), |p| p == o));
        proof.demand(same, "table-cells", "a row of the table is not printed as written");
        blank += printed.iter().filter(|c| c.is_none()).count();
    }
    if !rows.is_empty() {
        proof.count("cells to fill in", blank);
        if blank == 0 {
            let finding = Finding::warning("table-full", "the table has nothing to fill in")
                .at(&needs.activity.place);
            proof.findings.push(finding.remedy("leave the cells empty that the child fills in"));
        }
    }
    let told = matches!(
        sheet.form,
        ActivityForm::Experiment | ActivityForm::Outing | ActivityForm::Kitchen
    );
    proof.demand(
        !told || !rows.is_empty() || sheet.lines >= 2,
        "activity-lines",
        "there is nowhere to write what happened",
    );
}

/// The answer belongs into the key.
fn untold(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let lower = |s: &Said| s.plain().trim().to_lowercase();
    let answer: Vec<String> =
        needs.activity.answer.iter().flatten().flat_map(Block::lines).map(lower).collect();
    let texts = sheet.intro.iter().chain(&sheet.idea).flat_map(Block::lines);
    let cells = sheet.rows.iter().flatten().flatten();
    let mut printed = sheet.steps.iter().chain(&sheet.ask).chain(texts).chain(cells);
    let told = printed.any(|p| answer.contains(&lower(p)));
    proof.demand(!told, "answer-told", "the answer stands on the page");
}

/// The cautions of the tags, and warnings for those that the words call for.
fn careful(needs: &Needs, sheet: &Sheet, proof: &mut Proof) {
    let activity = &needs.activity;
    let wanted = cautions(&activity.tags, &supplies(activity), &needs.language);
    proof.count("cautions", sheet.cautions.len());
    proof.demand(
        sheet.cautions == wanted,
        "activity-cautions",
        "the cautions are not those that the tags call for, closing sentence last",
    );
    let known = Vocabulary::of(&needs.language);
    for (tag, why) in known.called_for(activity) {
        if !activity.tags.contains(&tag) {
            let message = format!(
                "`{}` speaks of `{why}`, and has no caution `{tag}`",
                activity.title.plain()
            );
            let finding = Finding::warning("tag-missing", message).at(&activity.place);
            proof.findings.push(finding.remedy(format!("add `{tag}` to its `tags`")));
        }
    }
    for (step, thing) in known.not_ready(activity) {
        let message = format!(
            "step {} of `{}` uses `{thing}`, which nobody has got ready",
            step + 1,
            activity.title.plain()
        );
        let place = activity.steps.get(step).map_or(&activity.place, |s| &s.at);
        let finding = Finding::warning("supply-missing", message).at(place);
        proof.findings.push(
            finding
                .remedy("add it under `### Have ready`")
                .remedy("or say the step in other words"),
        );
    }
}

fn time(needs: &Needs, proof: &mut Proof) {
    let activity = &needs.activity;
    match activity.minutes {
        None => {
            let finding = Finding::hint(
                "minutes-unsaid",
                format!("nothing says how long `{}` takes", activity.title.plain()),
            )
            .at(&activity.place);
            proof.findings.push(finding.remedy("write the minutes under `minutes`"));
        }
        Some(minutes) => {
            proof.count("minutes", minutes);
            if minutes > LONGEST {
                let message = format!("`{}` takes {minutes} minutes", activity.title.plain());
                let finding = Finding::warning("minutes-many", message).at(&activity.place);
                proof.findings.push(
                    finding.remedy("check the number; write the working time, not the waiting"),
                );
            }
        }
    }
}

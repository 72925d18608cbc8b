//! Sets out an activity for the page.

use super::{Group, Needs, Sheet, Supplies};
use study::{ActivityForm, Said};

/// The page.
pub(super) fn make(needs: &Needs) -> Sheet {
    let activity = &needs.activity;
    let groups = [
        (Group::Ready, &activity.supplies),
        (Group::Base, &activity.base),
        (Group::Fillers, &activity.fillers),
        (Group::Tools, &activity.tools),
    ];
    let supplies = groups.into_iter().filter(|(_, items)| !items.is_empty());
    let (head, rows) = activity
        .table
        .split_first()
        .map_or((&[] as &[Said], &[] as &[Vec<Said>]), |(h, r)| (h.as_slice(), r));
    let cell = |said: &Said| (!said.plain().trim().is_empty()).then(|| said.clone());
    let told = matches!(
        activity.form,
        ActivityForm::Experiment | ActivityForm::Outing | ActivityForm::Kitchen
    );
    Sheet {
        form: activity.form,
        intro: activity.intro.clone(),
        supplies: supplies.map(|(group, items)| Supplies { group, items: items.clone() }).collect(),
        steps: activity.steps.clone(),
        idea: activity.idea.clone().unwrap_or_default(),
        cautions: needs.cautions.clone(),
        head: head.to_vec(),
        rows: rows.iter().map(|row| row.iter().map(cell).collect()).collect(),
        lines: if told && rows.is_empty() { 4 } else { 0 },
        ask: activity.ask.clone(),
        picture: needs.picture.clone(),
    }
}

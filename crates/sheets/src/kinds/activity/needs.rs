//! What the page is made from: one activity of the lesson, with its cautions.

use super::WORDS;
use crate::ask::Ask;
use crate::cautions::cautions;
use crate::shared::{PictureRef, lesson_of, owner_place, picture};
use crate::words::{Words, words};
use findings::{Finding, Findings};
use serde::{Deserialize, Serialize};
use study::{Activity, ActivityForm, Lesson, Said};

/// Everything the page is made from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Needs {
    /// Title.
    pub title: String,
    /// What it is, how long it takes and whom it is for.
    pub lead: Option<String>,
    /// The activity.
    pub activity: Activity,
    /// Its picture.
    pub picture: Option<PictureRef>,
    /// Language of the cautions.
    pub language: String,
    /// What to take care of.
    pub cautions: Vec<String>,
}

/// Works out the Needs.
pub(super) fn needs(ask: &Ask<'_>) -> Result<Needs, Findings> {
    let words = words(WORDS, ask.language);
    let lesson = lesson_of(ask.owner).and_then(|i| ask.study.lessons.get(i));
    let Some(lesson) = lesson else {
        let finding =
            Finding::error("activity-owner", "only a lesson or its subject has an activity")
                .at(&owner_place(ask));
        return Err(finding.remedy("put `activity` among the sheets of a lesson").into());
    };
    let activity = chosen(ask, lesson)?;
    refuse(activity)?;
    let cautions = cautions(&activity.tags, &supplies(activity), ask.language);
    Ok(Needs {
        title: ask.text("title").map_or_else(|| activity.title.plain(), str::to_owned),
        lead: lead(activity, &words),
        picture: activity.picture.as_deref().and_then(|p| picture(ask.study, p)),
        activity: activity.clone(),
        language: ask.language.to_owned(),
        cautions,
    })
}

/// Everything that is to be got ready, in plain words.
pub(super) fn supplies(activity: &Activity) -> Vec<String> {
    let all = [&activity.supplies, &activity.base, &activity.fillers, &activity.tools];
    all.into_iter().flatten().map(Said::plain).collect()
}

fn chosen<'a>(ask: &Ask<'a>, lesson: &'a Lesson) -> Result<&'a Activity, Findings> {
    let asked = ask.number("activity").and_then(|n| usize::try_from(n).ok());
    let nth = asked.map_or_else(|| ask.nth(), |n| n.saturating_sub(1));
    lesson.activities.get(nth).ok_or_else(|| {
        let title = lesson.title.plain();
        let message = match lesson.activities.len() {
            0 => format!("`{title}` has no activity"),
            1 => format!("`{title}` has one activity, and its sheets ask for number {}", nth + 1),
            n => format!("`{title}` has {n} activities, and its sheets ask for number {}", nth + 1),
        };
        let finding = Finding::error("activity-missing", message).at(&lesson.place);
        let finding = finding.remedy(format!(
            "write an [[activity]] and its section `## Activity` in `{}`",
            lesson.place.file
        ));
        finding.remedy("or leave the sheet out here with `leave-out`").into()
    })
}

/// What keeps an activity from being printed.
pub(super) fn refuse(activity: &Activity) -> Result<(), Findings> {
    let mut bad = Findings::none();
    let title = activity.title.plain();
    let mut say = |code: &str, message: String, remedy: &str| {
        bad.push(Finding::error(code, message).at(&activity.place).remedy(remedy));
    };
    let tray = activity.form == ActivityForm::Tray;
    if title.trim().is_empty() {
        say("activity-nameless", "an activity has no title".into(), "write it under `title`");
    }
    if !tray && activity.steps.is_empty() {
        say("steps-missing", format!("`{title}` has no steps"), "number them under `### Steps`");
    }
    if tray && supplies(activity).is_empty() {
        say(
            "tray-empty",
            format!("nothing lies in the tray of `{title}`"),
            "list it under `### Base`, `### Fillers` and `### Tools`",
        );
    }
    if activity.minutes == Some(0) {
        say(
            "minutes-none",
            format!("`{title}` takes no time at all"),
            "write the minutes under `minutes`, or take the line out",
        );
    }
    if let Some((head, rows)) = activity.table.split_first() {
        if rows.is_empty() || head.is_empty() {
            say(
                "table-rows",
                format!("the table of `{title}` has no rows to fill in"),
                "add a row for each thing to look at",
            );
        }
        if rows.iter().any(|r| r.len() != head.len()) {
            say(
                "table-cells",
                format!("a row of the table of `{title}` has more or fewer cells than the first"),
                "give every row the same number of `|`",
            );
        }
    }
    if bad.is_empty() { Ok(()) } else { Err(bad) }
}

fn lead(activity: &Activity, words: &Words) -> Option<String> {
    let get = |key: &str| words.get(key).cloned();
    let form = get(match activity.form {
        ActivityForm::Experiment => "form-experiment",
        ActivityForm::Building => "form-building",
        ActivityForm::Outing => "form-outing",
        ActivityForm::Kitchen => "form-kitchen",
        ActivityForm::Tray => "form-tray",
    });
    let minutes =
        activity.minutes.and_then(|m| Some(get("minutes")?.replace("{minutes}", &m.to_string())));
    let ages = activity.band.and_then(|b| {
        let ages = b.ages();
        Some(
            get("ages")?
                .replace("{from}", &ages.from.to_string())
                .replace("{to}", &ages.to.to_string()),
        )
    });
    let parts: Vec<String> = [form, minutes, ages].into_iter().flatten().collect();
    (!parts.is_empty()).then(|| parts.join(", "))
}

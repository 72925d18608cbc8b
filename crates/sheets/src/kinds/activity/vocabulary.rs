//! Words for household things and for what is dangerous, by language.

use super::needs::supplies;
use std::collections::{BTreeMap, BTreeSet};
use study::{Activity, ActivityForm, Block, Said, Span};
use toml_edit::{DocumentMut, Item};

const FILE: &str = include_str!("vocabulary.toml");

/// The words of one language; empty for one that has none, so that nothing is warned about.
#[derive(Debug, Default)]
pub(super) struct Vocabulary {
    things: BTreeSet<String>,
    made_by: BTreeSet<String>,
    likened_by: BTreeSet<String>,
    tags: BTreeMap<String, Called>,
}

/// What calls for a tag.
#[derive(Debug, Default)]
struct Called {
    things: Vec<Vec<String>>,
    deeds: Vec<Vec<String>>,
    except: Vec<Vec<String>>,
    only: Option<String>,
}

impl Vocabulary {
    /// The words of a language.
    pub fn of(language: &str) -> Self {
        let doc = FILE.parse::<DocumentMut>().unwrap_or_default();
        let short = language.split('-').next().unwrap_or(language);
        let Some(table) = doc.get(short).and_then(Item::as_table) else { return Self::default() };
        let set = |key: &str| list(table.get(key)).into_iter().collect();
        let mut tags = BTreeMap::new();
        for (tag, item) in
            table.get("tags").and_then(Item::as_table).into_iter().flat_map(|t| t.iter())
        {
            let phrases = |key: &str| list(item.get(key)).iter().map(|p| tokens(p)).collect();
            let only = item.get("only").and_then(Item::as_str).map(str::to_owned);
            tags.insert(
                tag.to_owned(),
                Called {
                    things: phrases("things"),
                    deeds: phrases("deeds"),
                    except: phrases("except"),
                    only,
                },
            );
        }
        Self { things: set("things"), made_by: set("made-by"), likened_by: set("likened-by"), tags }
    }

    /// Tags that the words call for, each with the word that does.
    pub fn called_for(&self, activity: &Activity) -> Vec<(String, String)> {
        let done: Vec<Vec<String>> = done(activity).iter().map(|s| tokens(&s.plain())).collect();
        let ready: Vec<Vec<String>> = supplies(activity).iter().map(|s| tokens(s)).collect();
        let mut out = Vec::new();
        for (tag, called) in &self.tags {
            if called.only.as_deref().is_some_and(|o| o != form(activity.form)) {
                continue;
            }
            let things = called
                .things
                .iter()
                .filter(|p| ready.iter().chain(&done).any(|line| called.meets(p, line)));
            let deeds =
                called.deeds.iter().filter(|p| done.iter().any(|line| called.meets(p, line)));
            if let Some(phrase) = things.chain(deeds).next() {
                out.push((tag.clone(), phrase.join(" ")));
            }
        }
        let linked = done_and_said(activity).iter().any(|s| has_link(&s.spans));
        out.extend(linked.then(|| ("links".to_owned(), "https".to_owned())));
        match activity.form {
            ActivityForm::Kitchen => out.push(("food".to_owned(), "kitchen".to_owned())),
            ActivityForm::Outing => out.push(("outdoors".to_owned(), "outing".to_owned())),
            ActivityForm::Experiment | ActivityForm::Building | ActivityForm::Tray => {}
        }
        out.sort();
        out.dedup_by(|a, b| a.0 == b.0);
        out
    }

    /// Things that a step uses and that are neither ready nor made on the way: (step, thing), each thing once.
    pub fn not_ready(&self, activity: &Activity) -> Vec<(usize, String)> {
        let ready: Vec<String> = supplies(activity).iter().flat_map(|s| tokens(s)).collect();
        let mut made: BTreeSet<String> = BTreeSet::new();
        let mut out: Vec<(usize, String)> = Vec::new();
        for (step, said) in activity.steps.iter().enumerate() {
            let words = tokens(&said.plain());
            for (i, word) in words.iter().enumerate() {
                let Some(thing) = forms(word).into_iter().find(|f| self.things.contains(f)) else {
                    continue;
                };
                let before = &words[i.saturating_sub(4)..i];
                if before.iter().any(|w| self.made_by.contains(w)) {
                    made.insert(thing.clone());
                }
                let likened = before.iter().rev().take(2).any(|w| self.likened_by.contains(w));
                let there = made.contains(&thing) || ready.iter().any(|r| is_a(r, &thing));
                if !there && !likened && !out.iter().any(|(_, t)| *t == thing) {
                    out.push((step, thing));
                }
            }
        }
        out
    }
}

impl Called {
    fn meets(&self, phrase: &[String], line: &[String]) -> bool {
        let within = |p: &[String], at: usize| {
            self.except.iter().any(|e| {
                (0..e.len()).any(|k| {
                    at >= k
                        && line.get(at - k..at - k + e.len()) == Some(e)
                        && k + p.len() <= e.len()
                })
            })
        };
        line.windows(phrase.len().max(1))
            .enumerate()
            .any(|(at, run)| run == phrase && !within(phrase, at))
    }
}

/// What is done: steps and the opening idea.
fn done(activity: &Activity) -> Vec<&Said> {
    activity.steps.iter().chain(activity.idea.iter().flatten().flat_map(Block::lines)).collect()
}

fn done_and_said(activity: &Activity) -> Vec<&Said> {
    let lists =
        [&activity.supplies, &activity.base, &activity.fillers, &activity.tools, &activity.ask];
    let mut all = done(activity);
    all.extend(lists.into_iter().flatten());
    all.extend(activity.intro.iter().flat_map(Block::lines));
    all
}

fn has_link(spans: &[Span]) -> bool {
    spans.iter().any(|s| match s {
        Span::Link { .. } => true,
        Span::Strong { v } | Span::Emph { v } | Span::Fact { v, .. } => has_link(v),
        Span::Text { .. } | Span::Break => false,
    })
}

fn form(form: ActivityForm) -> &'static str {
    match form {
        ActivityForm::Experiment => "experiment",
        ActivityForm::Building => "building",
        ActivityForm::Outing => "outing",
        ActivityForm::Kitchen => "kitchen",
        ActivityForm::Tray => "tray",
    }
}

fn list(item: Option<&Item>) -> Vec<String> {
    let array = item.and_then(Item::as_array);
    array.into_iter().flatten().filter_map(|v| v.as_str()).map(str::to_owned).collect()
}

fn tokens(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    lower
        .split(|c: char| !c.is_alphanumeric())
        .filter(|t| !t.is_empty())
        .map(str::to_owned)
        .collect()
}

/// A word and what it may be the English plural of.
fn forms(word: &str) -> Vec<String> {
    let mut out = vec![word.to_owned()];
    for (ending, instead) in [("ies", "y"), ("ves", "f"), ("ves", "fe"), ("es", ""), ("s", "")] {
        out.extend(
            word.strip_suffix(ending)
                .filter(|s| s.chars().count() > 1)
                .map(|s| format!("{s}{instead}")),
        );
    }
    out
}

/// True when a word of the supplies is that thing, in the plural or at the end of a compound (tablespoon).
fn is_a(supply: &str, thing: &str) -> bool {
    forms(supply).iter().any(|f| f == thing || (thing.chars().count() > 2 && f.ends_with(thing)))
}

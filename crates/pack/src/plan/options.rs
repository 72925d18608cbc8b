//! Checks kinds and options that the author named against the registry, with "did you mean".

use super::{Planned, Planner};
use findings::{Finding, Place};
use sheets::about::EVERY;
use sheets::{About, AnyKind, Opt};
use study::{Changes, Options, Study, Wanted, nearest};

impl Planner<'_> {
    /// The kind of that name, or a finding with the nearest name.
    pub(crate) fn kind(&mut self, name: &str, at: &Place) -> Option<&'static dyn AnyKind> {
        let found = sheets::find(name);
        if found.is_none() {
            let finding = Finding::error(
                "kind-unknown",
                format!("there is no type of sheet called `{name}`"),
            )
            .at(at);
            let known = sheets::KINDS.iter().map(|k| k.about().id);
            let finding = match nearest(name, known) {
                Some(near) => finding.remedy(format!("did you mean `{near}`?")),
                None => finding.remedy("see `battledore kinds` for all of them"),
            };
            self.findings.push(finding);
        }
        found
    }

    pub(crate) fn know_slot(&mut self, all: &[Wanted]) {
        self.in_slots.extend(all.iter().map(|w| w.kind.clone()));
        for wanted in all {
            if sheets::find(&wanted.kind).is_none() {
                self.kind(&wanted.kind, &wanted.at);
            }
        }
    }

    pub(crate) fn know_left_out(&mut self, change: &Changes) {
        for said in &change.leave_out {
            self.kind(&said.plain(), &said.at);
        }
    }

    /// Options of the entry, then those that the owner gives by kind, then by ordinal name.
    pub(crate) fn options(
        &mut self,
        about: &About,
        wanted: &Wanted,
        changes: &[&Changes],
        ordinal: &str,
    ) -> Options {
        let mut all = Options::new();
        self.take(about, &wanted.options, &wanted.at, &mut all);
        for change in changes {
            for key in [about.id.to_owned(), format!("{}-{ordinal}", about.id)] {
                if let Some(own) = change.options.get(&key) {
                    let at = change.at.child(&key);
                    self.take(about, own, &at, &mut all);
                }
            }
        }
        all
    }

    fn take(&mut self, about: &About, given: &Options, at: &Place, all: &mut Options) {
        for (name, value) in given {
            let Some(opt) = option(about, name) else {
                self.findings.push(unknown_option(about, name, &at.child(name)));
                continue;
            };
            if opt.kind.takes(value) {
                all.insert(name.clone(), value.clone());
            } else {
                self.findings.push(
                    Finding::error(
                        "option-value",
                        format!("`{name}` of `{}` takes {}", about.id, opt.kind.says()),
                    )
                    .at(&at.child(name))
                    .remedy("change the value or leave the option out"),
                );
            }
        }
    }

    /// `[pages.word-serch]` names no sheet of its owner.
    pub(crate) fn refuse_unmet_names(&mut self, study: &Study, sheets: &[Planned]) {
        let owners = study.parts.iter().map(|p| (&p.id, &p.pages));
        let owners = owners.chain(study.lessons.iter().map(|l| (&l.id, &l.pages)));
        let subjects = study.lessons.iter().flat_map(|l| &l.subjects);
        let owners = owners.chain(subjects.map(|s| (&s.id, &s.pages)));
        for (id, changes) in owners {
            for key in changes.options.keys() {
                let met = sheets.iter().filter(|s| s.id.starts_with(id.as_str())).any(|s| {
                    let ordinal = s.id.rsplit('.').next().unwrap_or_default();
                    *key == s.about().id || *key == format!("{}-{ordinal}", s.about().id)
                });
                let slot =
                    self.in_slots.iter().any(|k| key == k || key.starts_with(&format!("{k}-")));
                if !met && !slot {
                    self.findings.push(unmet(
                        key,
                        changes,
                        sheets.iter().filter(|s| s.id.starts_with(id.as_str())),
                    ));
                }
            }
        }
    }
}

fn unmet<'a>(key: &str, changes: &Changes, own: impl Iterator<Item = &'a Planned>) -> Finding {
    let finding = Finding::warning("options-unused", format!("no sheet here is called `{key}`"))
        .at(&changes.at.child(key));
    match nearest(key, own.map(|s| s.about().id)) {
        Some(near) => finding.remedy(format!("did you mean `{near}`?")),
        None => finding.remedy("add the sheet to the page set, or take these options away"),
    }
}

/// The option of that name, own or common to all kinds.
pub(crate) fn option<'a>(about: &'a About, name: &str) -> Option<&'a Opt> {
    about.options.iter().chain(EVERY).find(|o| o.name == name)
}

fn unknown_option(about: &About, name: &str, at: &Place) -> Finding {
    let finding =
        Finding::error("option-unknown", format!("`{}` has no option `{name}`", about.id)).at(at);
    match nearest(name, about.options.iter().chain(EVERY).map(|o| o.name)) {
        Some(near) => finding.remedy(format!("did you mean `{near}`?")),
        None => finding.remedy(format!("see `battledore kinds {}` for its options", about.id)),
    }
}

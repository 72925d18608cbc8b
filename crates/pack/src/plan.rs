//! From page sets to the list of sheets in printing order. Names of kinds and options are checked here.

mod options;
mod order;
mod slots;

use findings::{Finding, Findings, Place};
use sheets::{About, AnyKind, Owner, Scope};
use std::collections::BTreeSet;
use study::{Band, Changes, Entry, Options, PrintAt, Study, Value, Wanted};

/// A sheet that the study wants.
#[derive(Clone)]
pub struct Planned {
    /// Owner's id, kind, ordinal name: `ls-4f9a2c71.word-search.a`.
    pub id: String,
    /// Its kind.
    pub kind: &'static dyn AnyKind,
    /// Whose it is.
    pub owner: Owner,
    /// Options of its own, checked against the schema.
    pub options: Options,
    /// Age band it is made for.
    pub band: Band,
    /// Level within the band, 1 to 3.
    pub level: u8,
    /// Where it prints.
    pub print: PrintAt,
    /// Another throw of the dice.
    pub again: u32,
    /// Where the author asked for it.
    pub place: Place,
}

impl Planned {
    /// What the kind says about itself.
    pub fn about(&self) -> &'static About {
        self.kind.about()
    }

    /// Index of the lesson it belongs to.
    pub fn lesson(&self) -> Option<usize> {
        sheets::shared::lesson_of(self.owner)
    }

    /// Index of the part it belongs to.
    pub fn part(&self, study: &Study) -> Option<usize> {
        match self.owner {
            Owner::Part(i) => Some(i),
            _ => self.lesson().and_then(|l| study.lessons.get(l)?.part),
        }
    }
}

/// All sheets in printing order, with what is wrong in the page sets.
pub struct Plan {
    /// Sheets in printing order.
    pub sheets: Vec<Planned>,
    /// Unknown kinds, options out of range, equal names.
    pub findings: Findings,
}

/// Works out which sheets the study gets, and in which order they print.
pub fn plan(study: &Study) -> Plan {
    let chosen;
    let set = match &study.page_set {
        Some(set) => set,
        None => {
            chosen = crate::defaults::page_set(study);
            &chosen
        }
    };
    let mut planner = Planner { study, findings: Findings::none(), in_slots: BTreeSet::new() };
    let mut sheets = order::in_order(&mut planner, set);
    planner.refuse_equal_ids(&mut sheets);
    planner.refuse_unmet_names(study, &sheets);
    Plan { sheets, findings: planner.findings }
}

pub(crate) struct Planner<'a> {
    pub study: &'a Study,
    pub findings: Findings,
    /// Kinds that stand in some slot: options for one may rest unused where the slot took another.
    pub in_slots: BTreeSet<String>,
}

/// The sheets of one owner; `subjects_at` is where the sheets of the lesson's subjects stand.
pub(crate) struct Owned {
    pub sheets: Vec<Planned>,
    pub subjects_at: Option<usize>,
}

impl Planner<'_> {
    /// The sheets of an owner after its own changes.
    pub fn owned(
        &mut self,
        owner: Owner,
        base: &[Entry],
        changes: &[&Changes],
        band: Band,
    ) -> Owned {
        let mut entries: Vec<&Entry> = base.iter().collect();
        let mut left_out: Vec<String> = Vec::new();
        for change in changes {
            if let Some(set) = &change.set {
                entries = set.iter().collect();
            }
            entries.extend(&change.add);
            left_out.extend(change.leave_out.iter().map(study::Said::plain));
            self.know_left_out(change);
        }
        let band = changes.iter().rev().find_map(|c| c.band).unwrap_or(band);
        let mut out = Owned { sheets: Vec::new(), subjects_at: None };
        for entry in entries {
            match entry {
                Entry::Subjects => out.subjects_at = Some(out.sheets.len()),
                Entry::Sheet(wanted) => {
                    self.add(owner, wanted, changes, band, &left_out, &mut out.sheets)
                }
                Entry::OneOf(all) => {
                    let open: Vec<&Wanted> =
                        all.iter().filter(|w| !left_out.contains(&w.kind)).collect();
                    self.know_slot(all);
                    if let Some(one) = slots::choose(self.owner_id(owner), &open) {
                        self.add(owner, one, changes, band, &left_out, &mut out.sheets);
                    }
                }
            }
        }
        out
    }

    fn add(
        &mut self,
        owner: Owner,
        wanted: &Wanted,
        changes: &[&Changes],
        band: Band,
        left_out: &[String],
        out: &mut Vec<Planned>,
    ) {
        if left_out.contains(&wanted.kind) {
            return;
        }
        let Some(kind) = self.kind(&wanted.kind, &wanted.at) else { return };
        if !kind.about().scopes.contains(&scope(owner)) {
            self.findings.push(wrong_scope(kind.about(), owner, &wanted.at));
            return;
        }
        for n in 0..wanted.count.max(1) {
            let ordinal = self.ordinal(owner, wanted, n, out);
            let options = self.options(kind.about(), wanted, changes, &ordinal);
            out.push(self.planned(owner, kind, &ordinal, options, band, &wanted.at));
        }
    }

    fn planned(
        &self,
        owner: Owner,
        kind: &'static dyn AnyKind,
        ordinal: &str,
        mut options: Options,
        band: Band,
        place: &Place,
    ) -> Planned {
        let mut number = |name: &str| match options.remove(name) {
            Some(Value::Number(n)) => Some(n),
            _ => None,
        };
        let (level, again) = (number("level"), number("again"));
        let mut text = |name: &str| match options.remove(name) {
            Some(Value::Text(t)) => Some(t),
            _ => None,
        };
        let own_band = text("band").and_then(|b| Band::parse(&b));
        let print = match text("print").as_deref() {
            Some("part-end") => PrintAt::PartEnd,
            Some("back") => PrintAt::Back,
            _ => PrintAt::Here,
        };
        Planned {
            id: format!("{}.{}.{ordinal}", self.owner_id(owner), kind.about().id),
            kind,
            owner,
            options,
            band: own_band.unwrap_or(band),
            level: level.and_then(|l| u8::try_from(l).ok()).unwrap_or(2),
            print,
            again: again.and_then(|a| u32::try_from(a).ok()).unwrap_or(0),
            place: place.clone(),
        }
    }

    /// `a`, `b` … over all unnamed sheets of the kind that this owner has.
    fn ordinal(&self, owner: Owner, wanted: &Wanted, n: u32, out: &[Planned]) -> String {
        if let Some(name) = &wanted.name {
            return if wanted.count > 1 {
                format!("{name}-{}", letters(n as usize))
            } else {
                name.clone()
            };
        }
        let stem = format!("{}.{}.", self.owner_id(owner), wanted.kind);
        let taken = |o: &str| out.iter().any(|p| p.id.strip_prefix(stem.as_str()) == Some(o));
        (0..).map(letters).find(|o| !taken(o)).unwrap_or_default()
    }

    /// The id that the owner's sheets carry.
    pub fn owner_id(&self, owner: Owner) -> &str {
        let study = self.study;
        let found = match owner {
            Owner::Study => None,
            Owner::Part(i) => study.parts.get(i).map(|p| p.id.as_str()),
            Owner::Lesson(i) => study.lessons.get(i).map(|l| l.id.as_str()),
            Owner::Subject(i, j) => {
                study.lessons.get(i).and_then(|l| l.subjects.get(j)).map(|s| s.id.as_str())
            }
        };
        found.unwrap_or(&study.id)
    }

    fn refuse_equal_ids(&mut self, sheets: &mut Vec<Planned>) {
        let mut seen = BTreeSet::new();
        let findings = &mut self.findings;
        sheets.retain(|sheet| {
            let new = seen.insert(sheet.id.clone());
            if !new {
                let name = sheet.id.rsplit('.').next().unwrap_or_default();
                findings.push(
                    Finding::error(
                        "sheet-name-twice",
                        format!("two `{}` sheets are both named `{name}`", sheet.about().id),
                    )
                    .at(&sheet.place)
                    .remedy("give one of them another `name`"),
                );
            }
            new
        });
    }
}

/// `a` … `z`, then `aa`, `ab` …
fn letters(n: usize) -> String {
    let letter = char::from(b'a' + u8::try_from(n % 26).unwrap_or(0));
    if n < 26 { letter.to_string() } else { format!("{}{letter}", letters(n / 26 - 1)) }
}

fn scope(owner: Owner) -> Scope {
    match owner {
        Owner::Study => Scope::Study,
        Owner::Part(_) => Scope::Part,
        Owner::Lesson(_) => Scope::Lesson,
        Owner::Subject(..) => Scope::Subject,
    }
}

fn scope_word(scope: Scope) -> &'static str {
    match scope {
        Scope::Study => "the study",
        Scope::Part => "a part",
        Scope::Lesson => "a lesson",
        Scope::Subject => "a subject",
    }
}

fn wrong_scope(about: &About, owner: Owner, place: &Place) -> Finding {
    let may: Vec<&str> = about.scopes.iter().map(|s| scope_word(*s)).collect();
    Finding::error(
        "kind-in-wrong-place",
        format!("`{}` cannot be a sheet of {}", about.id, scope_word(scope(owner))),
    )
    .at(place)
    .remedy(format!("put it where {} lists its sheets", may.join(" or ")))
}

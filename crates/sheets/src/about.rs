//! What a kind says about itself: where it may stand, its options, its template and its words.

use study::Value;

/// Fixed description of a kind.
#[derive(Debug, Clone, Copy)]
pub struct About {
    /// Name in page sets, files and code, e.g. `word-search`.
    pub id: &'static str,
    /// Revision; raised whenever a made sheet may come out otherwise. Enters the cache key.
    pub rev: u32,
    /// Who may own such a sheet.
    pub scopes: &'static [Scope],
    /// Drawn sign of what a child does with it.
    pub sign: Sign,
    /// Options of its own, besides `band`, `level`, `print`, `title`, `again`.
    pub options: &'static [Opt],
    /// Page template (`page.typ`).
    pub page: &'static str,
    /// Every fixed word that it prints (`words.toml`).
    pub words: &'static str,
    /// Source of `mod.rs`, whose doc comment explains the kind to engineers.
    pub doc: &'static str,
    /// True when its Needs depend on the other sheets of the study (contents, key, credits, opener).
    pub gathers: bool,
}

/// Who may own a sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Scope {
    /// The study.
    Study,
    /// A part.
    Part,
    /// A lesson.
    Lesson,
    /// A subject of a lesson.
    Subject,
}

/// What a child does with a sheet; printed as a drawn shape in the foot and in the contents.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sign {
    /// Circle.
    Read,
    /// Triangle.
    Play,
    /// Square.
    Make,
    /// Lines.
    Write,
    /// Lozenge: opens a lesson or serves the adult.
    Open,
}

impl Sign {
    /// Name that the templates know.
    pub fn name(self) -> &'static str {
        match self {
            Sign::Read => "read",
            Sign::Play => "play",
            Sign::Make => "make",
            Sign::Write => "write",
            Sign::Open => "open",
        }
    }
}

/// One option of a kind; the schema feeds "did you mean", the command line and the studio's forms.
/// Its label and help stand in `words.toml` under `option-<name>`.
#[derive(Debug, Clone, Copy)]
pub struct Opt {
    /// Name as the author writes it.
    pub name: &'static str,
    /// What it takes.
    pub kind: OptKind,
}

/// What an option takes.
#[derive(Debug, Clone, Copy)]
pub enum OptKind {
    /// A whole number in a range.
    Number {
        /// Lowest.
        min: i64,
        /// Highest.
        max: i64,
    },
    /// One of these words.
    Choice(&'static [&'static str]),
    /// Yes or no.
    Flag,
    /// A line of text.
    Text,
    /// Several lines of text.
    Texts,
}

impl OptKind {
    /// True when a value is of this form.
    pub fn takes(self, value: &Value) -> bool {
        match (self, value) {
            (OptKind::Number { min, max }, Value::Number(n)) => (min..=max).contains(n),
            (OptKind::Choice(all), Value::Text(t)) => all.contains(&t.as_str()),
            (OptKind::Flag, Value::Flag(_)) | (OptKind::Text, Value::Text(_)) => true,
            (OptKind::Texts, Value::List(v)) => v.iter().all(|v| matches!(v, Value::Text(_))),
            _ => false,
        }
    }

    /// Says in plain words what it takes.
    pub fn says(self) -> String {
        match self {
            OptKind::Number { min, max } => format!("a whole number from {min} to {max}"),
            OptKind::Choice(all) => format!("one of {}", all.join(", ")),
            OptKind::Flag => "true or false".into(),
            OptKind::Text => "a line of text".into(),
            OptKind::Texts => "a list of texts".into(),
        }
    }
}

/// Options that every kind takes.
pub const EVERY: &[Opt] = &[
    Opt { name: "band", kind: OptKind::Choice(&["3-6", "7-9", "10-12", "13-18"]) },
    Opt { name: "level", kind: OptKind::Number { min: 1, max: 3 } },
    Opt { name: "print", kind: OptKind::Choice(&["here", "part-end", "back"]) },
    Opt { name: "title", kind: OptKind::Text },
    Opt { name: "again", kind: OptKind::Number { min: 0, max: 100_000 } },
];

//! Page sets and how parts, lessons and subjects change them.

use super::Cx;
use crate::fields::{Fields, unknown, wrong};
use crate::model::{Changes, Entry, Options, PageSet, Said, Value, Wanted};
use crate::names::normal;
use crate::toml_text::Node;
use findings::{Finding, Place};
use toml_edit::{TableLike, Value as Toml};

/// Most sheets of one kind that a single entry may ask for.
const MOST: i64 = 26;

/// Reads `[page-set]`.
pub(super) fn page_set(mut f: Fields<'_>, cx: &mut Cx) -> PageSet {
    let set = PageSet {
        front: list(&mut f, "front", cx).unwrap_or_default(),
        part: list(&mut f, "part", cx).unwrap_or_default(),
        lesson: list(&mut f, "lesson", cx).unwrap_or_default(),
        subject: list(&mut f, "subject", cx).unwrap_or_default(),
        back: list(&mut f, "back", cx).unwrap_or_default(),
    };
    f.finish(cx);
    set
}

/// Reads the table `pages` of a part, lesson or subject; `below` names the page sets that it may
/// set for what stands in it (`lesson`, `subject`).
pub(super) fn changes(f: &mut Fields<'_>, below: &[&'static str], cx: &mut Cx) -> Changes {
    let Some(mut pages) = f.table(cx, "pages") else { return Changes::default() };
    let mut inner = |name: &'static str, pages: &mut Fields<'_>| {
        if below.contains(&name) { list(pages, name, cx) } else { None }
    };
    let (lesson, subject) = (inner("lesson", &mut pages), inner("subject", &mut pages));
    let left_out = pages.texts(cx, "leave-out").into_iter();
    let mut changes = Changes {
        set: list(&mut pages, "set", cx),
        add: list(&mut pages, "add", cx).unwrap_or_default(),
        leave_out: left_out.map(|(kind, at)| Said::plain_at(&at, kind)).collect(),
        band: pages.band(cx, "band"),
        lesson,
        subject,
        at: pages.at.clone(),
        ..Changes::default()
    };
    let known: Vec<&str> =
        ["set", "add", "leave-out", "band"].iter().chain(below).copied().collect();
    for (name, item) in pages.table.iter().filter(|(name, _)| !known.contains(name)) {
        let at = pages.at.child(name);
        match Node::of(item) {
            Some(Node::Table(table)) => {
                changes.options.insert(name.to_owned(), options(table, &at, &[], cx));
            }
            Some(_) => unknown(cx, &at, "setting", name, known.iter().copied()),
            None => {}
        }
    }
    changes
}

fn list(f: &mut Fields<'_>, name: &'static str, cx: &mut Cx) -> Option<Vec<Entry>> {
    let node = f.node(name)?;
    let at = f.place(name);
    match node {
        Node::Value(Toml::Array(items)) => Some(
            items
                .iter()
                .zip(1..)
                .filter_map(|(item, n)| entry(Node::of_value(item), &at.child(n), cx))
                .collect(),
        ),
        Node::Tables(items) => Some(
            items
                .iter()
                .zip(1..)
                .filter_map(|(item, n)| entry(Node::Table(item), &at.child(n), cx))
                .collect(),
        ),
        _ => {
            wrong(
                cx,
                &at,
                name,
                &format!("a list of kinds, like {name} = [\"reading\", \"maze\"]"),
            );
            None
        }
    }
}

fn entry(node: Node<'_>, at: &Place, cx: &mut Cx) -> Option<Entry> {
    match node {
        Node::Value(Toml::String(kind)) if kind.value().trim() == "subjects" => {
            Some(Entry::Subjects)
        }
        Node::Table(table) if table.contains_key("one-of") => slot(table, at, cx),
        other => wanted(other, at, cx).map(Entry::Sheet),
    }
}

fn slot(table: &dyn TableLike, at: &Place, cx: &mut Cx) -> Option<Entry> {
    for (name, _) in table.iter().filter(|(name, _)| *name != "one-of") {
        cx.findings.push(
            Finding::error("slot-setting", format!("`{name}` stands beside `one-of`"))
                .at(&at.child(name))
                .remedy(format!(
                    "give it to the kinds in the list, like {{ kind = \"matching\", {name} = … }}"
                )),
        );
    }
    let at = at.child("one-of");
    let choices: Vec<Wanted> = match table.get("one-of").and_then(Node::of) {
        Some(Node::Value(Toml::Array(items))) => items
            .iter()
            .zip(1..)
            .filter_map(|(item, n)| wanted(Node::of_value(item), &at.child(n), cx))
            .collect(),
        _ => Vec::new(),
    };
    if choices.is_empty() {
        wrong(cx, &at, "one-of", "a list of kinds, like one-of = [\"matching\", \"word-search\"]");
        return None;
    }
    Some(Entry::OneOf(choices))
}

fn wanted(node: Node<'_>, at: &Place, cx: &mut Cx) -> Option<Wanted> {
    match node {
        Node::Value(Toml::String(kind)) if !kind.value().trim().is_empty() => Some(Wanted {
            kind: kind.value().trim().to_owned(),
            count: 1,
            name: None,
            options: Options::new(),
            at: at.clone(),
        }),
        Node::Table(table) => wanted_table(table, at, cx),
        _ => {
            wrong(
                cx,
                at,
                "an entry of a page set",
                "the name of a kind, or a table like { kind = \"maze\", level = 2 }",
            );
            None
        }
    }
}

fn wanted_table(table: &dyn TableLike, at: &Place, cx: &mut Cx) -> Option<Wanted> {
    let mut f = Fields::new(table, at.clone());
    let count = f.number(cx, "count", 1, MOST);
    let name = f.text(cx, "name").and_then(|name| ordinal(name, &f.place("name"), cx));
    if !table.contains_key("kind") {
        cx.findings.push(
            Finding::error("kind-missing", "this entry of a page set names no `kind`")
                .at(at)
                .remedy("write { kind = \"word-search\", … }"),
        );
        return None;
    }
    let kind = f.text(cx, "kind")?;
    let options = options(table, at, &["kind", "count", "name"], cx);
    Some(Wanted { kind, count: count.unwrap_or(1), name, options, at: at.clone() })
}

fn ordinal(name: String, at: &Place, cx: &mut Cx) -> Option<String> {
    let tidy = normal(&name);
    if tidy.is_empty() {
        wrong(
            cx,
            at,
            "name",
            "a short name of letters, digits and hyphens, like name = \"limpets\"",
        );
        return None;
    }
    if tidy != name {
        cx.findings.push(super::spelt(&name, &tidy, at));
    }
    Some(tidy)
}

fn options(table: &dyn TableLike, at: &Place, except: &[&str], cx: &mut Cx) -> Options {
    let mut options = Options::new();
    for (name, item) in
        table.iter().filter(|(name, item)| !except.contains(name) && !item.is_none())
    {
        match Node::of(item).and_then(value) {
            Some(value) => {
                options.insert(name.to_owned(), value);
            }
            None => wrong(
                cx,
                &at.child(name),
                name,
                "a whole number, true or false, words between quotation marks, or a list of these",
            ),
        }
    }
    options
}

fn value(node: Node<'_>) -> Option<Value> {
    let Node::Value(value) = node else { return None };
    match value {
        Toml::String(text) => Some(Value::Text(text.value().clone())),
        Toml::Integer(number) => Some(Value::Number(*number.value())),
        Toml::Boolean(flag) => Some(Value::Flag(*flag.value())),
        Toml::Array(list) => list
            .iter()
            .map(|v| self::value(Node::of_value(v)))
            .collect::<Option<_>>()
            .map(Value::List),
        Toml::Float(_) | Toml::Datetime(_) | Toml::InlineTable(_) => None,
    }
}

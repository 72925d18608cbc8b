//! Settings in TOML: a value exchanged or added as bytes, then read again to prove that nothing else changed.

use super::{line_end, no_place, spliced};
use crate::model::Value;
use crate::toml_text::{self, Node};
use findings::{Finding, Place};
use std::ops::Range;
use toml_edit::{Item, Table, TableLike};

/// The text with one setting exchanged or added.
pub(super) fn set(text: &str, file: &str, field: &str, value: &Value) -> Result<String, Finding> {
    let place = Place::new(file, field);
    let mark = text.len() - text.strip_prefix('\u{feff}').unwrap_or(text).len();
    let (head, body) = text.split_at(mark);
    let parsed = toml_text::parse(body, file, 1)?;
    let old = Node::Table(parsed.as_table()).at(field);
    let changed = match (old, value) {
        (Some(Node::Value(toml_edit::Value::Array(old))), Value::List(new)) => {
            return Ok(format!("{head}{}", list(body, file, field, old.len(), new)?));
        }
        (Some(Node::Value(_)), _) => {
            let bytes =
                toml_text::span(parsed.as_table(), field).ok_or_else(|| no_place(&place))?;
            let raw = body.get(bytes.clone()).unwrap_or_default();
            spliced(body, bytes, &written(value, raw))
        }
        (Some(_), _) => return Err(no_place(&place)),
        (None, _) => {
            added(body, parsed.as_table(), field, value).ok_or_else(|| no_place(&place))?
        }
    };
    let changed = format!("{head}{changed}");
    prove(text, &changed, file, field, value).ok_or_else(|| no_place(&place))?;
    Ok(changed)
}

/// The text with a new setting below the first of the file (or group), as ids are added.
pub(crate) fn set_after_first(
    text: &str,
    file: &str,
    group: &str,
    key: &str,
    value: &str,
) -> Option<String> {
    let mark = text.len() - text.strip_prefix('\u{feff}').unwrap_or(text).len();
    let (head, body) = text.split_at(mark);
    let parsed = toml_text::parse(body, file, 1).ok()?;
    let Node::Table(table) = Node::Table(parsed.as_table()).at(group)? else { return None };
    let value = Value::Text(value.to_owned());
    let field = if group.is_empty() { key.to_owned() } else { format!("{group}/{key}") };
    let changed = match values(table).into_iter().min_by_key(|r| r.end) {
        Some(first) if form(parsed.as_table(), group) != Form::Braces => {
            line_after(body, first.end, key, &value)
        }
        _ => added(body, parsed.as_table(), &field, &value)?,
    };
    let changed = format!("{head}{changed}");
    prove(text, &changed, file, &field, &value)?;
    Some(changed)
}

/// How a group is written.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Form {
    /// Under a heading of its own, or at the top of the file.
    Heading,
    /// In braces.
    Braces,
    /// Only named in the headings of its inner groups.
    Implied,
}

fn form(root: &Table, group: &str) -> Form {
    let mut at = root;
    let mut steps = group.split('/').filter(|s| !s.is_empty());
    while let Some(step) = steps.next() {
        match at.get(step) {
            Some(Item::Table(table)) => at = table,
            Some(Item::ArrayOfTables(list)) => {
                let index = steps
                    .next()
                    .and_then(|s| s.parse::<usize>().ok())
                    .and_then(|n| n.checked_sub(1));
                match index.and_then(|n| list.get(n)) {
                    Some(table) => at = table,
                    None => return Form::Implied,
                }
            }
            Some(Item::Value(_)) => return Form::Braces,
            Some(Item::None) | None => return Form::Implied,
        }
    }
    if at.is_implicit() && !group.is_empty() { Form::Implied } else { Form::Heading }
}

/// Items of a list changed one by one, so that the author's notes between them stay.
fn list(body: &str, file: &str, field: &str, old: usize, new: &[Value]) -> Result<String, Finding> {
    let place = Place::new(file, field);
    let mut text = body.to_owned();
    for (value, n) in new.iter().zip(1..=old) {
        let same = toml_text::parse(&text, file, 1)?;
        let at = format!("{field}/{n}");
        let stands = match Node::Table(same.as_table()).at(&at) {
            Some(Node::Value(v)) => holds(v, value),
            _ => false,
        };
        if !stands {
            text = set(&text, file, &at, value)?;
        }
    }
    for (value, n) in new.iter().skip(old).zip(old + 1..) {
        text = set(&text, file, &format!("{field}/{n}"), value)?;
    }
    for n in (new.len() + 1..=old).rev() {
        let parsed = toml_text::parse(&text, file, 1)?;
        let at = |n: usize| toml_text::span(parsed.as_table(), &format!("{field}/{n}"));
        let whole = toml_text::span(parsed.as_table(), field);
        let (Some(this), Some(whole)) = (at(n), whole) else { return Err(no_place(&place)) };
        let from = if n > 1 { at(n - 1).map_or(this.start, |r| r.end) } else { whole.start + 1 };
        text = spliced(&text, from..this.end, "");
    }
    let whole = Value::List(new.to_vec());
    let parsed = toml_text::parse(&text, file, 1).map_err(|_| no_place(&place))?;
    match Node::Table(parsed.as_table()).at(field) {
        Some(Node::Value(v)) if holds(v, &whole) => Ok(text),
        _ => Err(no_place(&place)),
    }
}

/// A value as TOML writes it, in the quotation marks it had before.
fn written(value: &Value, before: &str) -> String {
    match value {
        Value::Flag(flag) => flag.to_string(),
        Value::Number(number) => number.to_string(),
        Value::List(list) => {
            format!("[{}]", list.iter().map(|v| written(v, "")).collect::<Vec<_>>().join(", "))
        }
        Value::Text(text) => {
            let plain = !text.chars().any(|c| c == '\'' || c.is_control());
            if before.starts_with('\'') && !before.starts_with("'''") && plain {
                return format!("'{text}'");
            }
            let mut out = String::from("\"");
            for c in text.chars() {
                match c {
                    '"' => out.push_str("\\\""),
                    '\\' => out.push_str("\\\\"),
                    '\n' => out.push_str("\\n"),
                    '\t' => out.push_str("\\t"),
                    '\r' => out.push_str("\\r"),
                    c if c.is_control() => out.push_str(&format!("\\u{:04X}", u32::from(c))),
                    c => out.push(c),
                }
            }
            out.push('"');
            out
        }
    }
}

fn key(name: &str) -> String {
    let bare =
        !name.is_empty() && name.chars().all(|c| c.is_ascii_alphanumeric() || c == '-' || c == '_');
    if bare { name.to_owned() } else { written(&Value::Text(name.to_owned()), "") }
}

/// Bytes of all values that stand directly in a table.
fn values(table: &dyn TableLike) -> Vec<Range<usize>> {
    let mut out = Vec::new();
    for (_, item) in table.iter() {
        match item {
            Item::Value(value) => out.extend(value.span()),
            Item::Table(inner) if inner.is_dotted() => out.extend(values(inner)),
            _ => {}
        }
    }
    out
}

fn line_after(body: &str, at: usize, name: &str, value: &Value) -> String {
    let rest = body.get(at..).unwrap_or_default();
    let end = line_end(body);
    let line = format!("{name} = {}", written(value, ""));
    match rest.find('\n') {
        Some(i) => spliced(body, at + i + 1..at + i + 1, &format!("{line}{end}")),
        None => format!("{body}{end}{line}{end}"),
    }
}

/// The text with a setting added to the nearest group that is there.
fn added(body: &str, root: &Table, field: &str, value: &Value) -> Option<String> {
    let steps: Vec<&str> = field.split('/').filter(|s| !s.is_empty()).collect();
    let depth = (0..steps.len())
        .rev()
        .find(|n| Node::Table(root).at(&steps.get(..*n).unwrap_or_default().join("/")).is_some())?;
    let (outer, inner) = steps.split_at(depth);
    let outer_path = outer.join("/");
    let name = inner.iter().map(|s| key(s)).collect::<Vec<_>>().join(".");
    match Node::Table(root).at(&outer_path)? {
        Node::Tables(_) => None,
        Node::Value(toml_edit::Value::Array(array)) => {
            let next = inner.len() == 1 && inner.first()?.parse::<usize>().ok()? == array.len() + 1;
            let whole = toml_text::span(root, &outer_path).filter(|_| next)?;
            let new = written(value, "");
            match array.iter().last().and_then(toml_edit::Value::span) {
                Some(last) => Some(spliced(body, last.end..last.end, &format!(", {new}"))),
                None => Some(spliced(body, whole.start + 1..whole.start + 1, &new)),
            }
        }
        Node::Value(_) => None,
        Node::Table(table) if form(root, &outer_path) == Form::Braces => {
            let whole = toml_text::span(root, &outer_path)?;
            let new = format!("{name} = {}", written(value, ""));
            Some(match values(table).into_iter().max_by_key(|r| r.end) {
                Some(last) => spliced(body, last.end..last.end, &format!(", {new}")),
                None => spliced(body, whole.start + 1..whole.start + 1, &format!(" {new} ")),
            })
        }
        Node::Table(table) => in_group(body, root, table, &outer_path, &name, inner, value),
    }
}

fn in_group(
    body: &str,
    root: &Table,
    table: &dyn TableLike,
    outer: &str,
    name: &str,
    inner: &[&str],
    value: &Value,
) -> Option<String> {
    if let Some(last) = values(table).into_iter().max_by_key(|r| r.end) {
        return Some(line_after(body, last.end, name, value));
    }
    let end = line_end(body);
    if outer.is_empty() {
        return Some(format!("{name} = {}{end}{body}", written(value, "")));
    }
    match toml_text::span(root, outer).filter(|_| form(root, outer) == Form::Heading) {
        Some(heading) => Some(line_after(body, heading.start, name, value)),
        None => {
            // A group that only its inner groups name: it gets a heading of its own at the end.
            let path: Vec<String> = outer
                .split('/')
                .chain(inner.iter().rev().skip(1).rev().copied())
                .map(key)
                .collect();
            let gap = if body.is_empty() || body.ends_with('\n') { "" } else { end };
            let line = format!("{} = {}", key(inner.last()?), written(value, ""));
            Some(format!("{body}{gap}{end}[{}]{end}{line}{end}", path.join(".")))
        }
    }
}

/// Does the text now hold the value, and every other setting as before?
fn prove(before: &str, after: &str, file: &str, field: &str, value: &Value) -> Option<()> {
    let (old, new) =
        (toml_text::parse(before, file, 1).ok()?, toml_text::parse(after, file, 1).ok()?);
    match Node::Table(new.as_table()).at(field)? {
        Node::Value(v) if holds(v, value) => {}
        _ => return None,
    }
    let mut seen = (Vec::new(), Vec::new());
    flat(Node::Table(old.as_table()), "", &mut seen.0);
    flat(Node::Table(new.as_table()), "", &mut seen.1);
    let inside = |path: &str| {
        path == field || path.strip_prefix(field).is_some_and(|rest| rest.starts_with('/'))
    };
    let mut others = seen.1.into_iter().filter(|(path, _)| !inside(path));
    let same = seen
        .0
        .into_iter()
        .filter(|(path, _)| !inside(path))
        .all(|pair| others.next() == Some(pair));
    (same && others.next().is_none()).then_some(())
}

/// Every value of a text with its path, in order of the paths.
fn flat(node: Node<'_>, path: &str, into: &mut Vec<(String, String)>) {
    let below =
        |step: &str| if path.is_empty() { step.to_owned() } else { format!("{path}/{step}") };
    match node {
        Node::Table(table) => {
            let mut names: Vec<&str> = table.iter().map(|(name, _)| name).collect();
            names.sort_unstable();
            names
                .iter()
                .filter_map(|n| Some((*n, node.part(n)?)))
                .for_each(|(n, part)| flat(part, &below(n), into));
        }
        Node::Tables(list) => {
            (1..=list.len())
                .filter_map(|n| Some((n, node.part(&n.to_string())?)))
                .for_each(|(n, part)| flat(part, &below(&n.to_string()), into));
        }
        Node::Value(toml_edit::Value::Array(list)) => {
            (1..=list.len())
                .filter_map(|n| Some((n, node.part(&n.to_string())?)))
                .for_each(|(n, part)| flat(part, &below(&n.to_string()), into));
        }
        Node::Value(value) => {
            into.push((path.to_owned(), value.clone().decorated("", "").to_string()))
        }
    }
}

/// Is the TOML value this value?
fn holds(toml: &toml_edit::Value, value: &Value) -> bool {
    match (toml, value) {
        (toml_edit::Value::Boolean(a), Value::Flag(b)) => a.value() == b,
        (toml_edit::Value::Integer(a), Value::Number(b)) => a.value() == b,
        (toml_edit::Value::String(a), Value::Text(b)) => a.value() == b,
        (toml_edit::Value::Array(a), Value::List(b)) => {
            a.len() == b.len() && a.iter().zip(b).all(|(a, b)| holds(a, b))
        }
        _ => false,
    }
}

//! Settings in TOML: parsing with messages an author understands, and the place of a field in the text.

use findings::{Finding, Place};
use std::ops::Range;
use toml_edit::{ArrayOfTables, Document, Item, Table, TableLike, Value};

/// Parses a TOML text; a fault becomes a finding that names its line in `file`,
/// counted from `first_line` (front matter starts on line 2).
pub(crate) fn parse(
    text: &str,
    file: &str,
    first_line: usize,
) -> Result<Document<String>, Finding> {
    let body = text.strip_prefix('\u{feff}').unwrap_or(text);
    Document::parse(body.to_owned()).map_err(|error| {
        let at = error.span().map_or(0, |s| s.start.min(body.len()));
        let before = body.get(..at).unwrap_or_default();
        let index = before.matches('\n').count();
        let line = body.lines().nth(index).unwrap_or_default().trim();
        let finding = Finding::error(
            "settings-unreadable",
            format!("this line cannot be understood: `{line}`"),
        )
        .at(&Place::new(file, format!("line {}", first_line + index)));
        finding.remedy(remedy(line, error.message()))
    })
}

/// What most likely ails a line of settings.
fn remedy(line: &str, message: &str) -> String {
    let (key, value) = line.split_once('=').map_or((line, ""), |(k, v)| (k.trim(), v.trim()));
    if message.contains("duplicate key") {
        return format!("`{key}` stands twice here; keep one of them");
    }
    if line.contains(['“', '”', '„', '«', '»']) {
        return "use straight quotation marks: \"…\"".into();
    }
    if !line.starts_with('[') && !line.contains('=') {
        return "write a name, an equals sign and a value, like title = \"The Rocky Shore\"".into();
    }
    if line.starts_with('[') && line.matches('[').count() != line.matches(']').count() {
        return "close the bracket".into();
    }
    if line.matches('"').count() % 2 == 1 {
        return "a quotation mark is missing".into();
    }
    if value.chars().next().is_some_and(char::is_alphabetic) {
        return format!("put the words between quotation marks: {key} = \"{value}\"");
    }
    if value.is_empty() && line.contains('=') {
        return format!("write a value after the equals sign, or take the line `{key} =` out");
    }
    "check the quotation marks, commas and brackets of this line and the one before".into()
}

/// Front matter and text of a Markdown file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Front {
    /// Bytes of the settings between the two lines of `+++`; empty when there are none.
    pub settings: Range<usize>,
    /// Line number on which the settings start.
    pub first_line: usize,
    /// Where the text starts.
    pub body: usize,
}

/// Splits a Markdown file into front matter and text.
///
/// # Errors
/// A finding when the front matter is not closed, or is of another kind.
pub(crate) fn split(text: &str, file: &str) -> Result<Front, Finding> {
    let start = if text.starts_with('\u{feff}') { '\u{feff}'.len_utf8() } else { 0 };
    let none = Front { settings: start..start, first_line: 1, body: start };
    let mut at = start;
    let mut settings = None;
    for (index, line) in text.get(start..).unwrap_or_default().split_inclusive('\n').enumerate() {
        let words = line.trim_end();
        match settings {
            None if words == "+++" => settings = Some(at + line.len()),
            None if words == "---" && index == 0 => {
                return Err(Finding::error(
                    "front-matter-dashes",
                    "the settings at the top stand between lines of `---`",
                )
                .at(&Place::new(file, "line 1"))
                .remedy("put them between lines of `+++`, written like title = \"Holding on\""));
            }
            None => return Ok(none),
            Some(from) if words == "+++" => {
                return Ok(Front { settings: from..at, first_line: 2, body: at + line.len() });
            }
            Some(_) => {}
        }
        at += line.len();
    }
    match settings {
        None => Ok(none),
        Some(_) => {
            Err(Finding::error("front-matter-open", "the settings at the top are not closed")
                .at(&Place::new(file, "line 1"))
                .remedy("write a line of `+++` after the last of them"))
        }
    }
}

/// A value, table or list of tables, in one view for block and inline writing.
#[derive(Clone, Copy)]
pub(crate) enum Node<'a> {
    /// A table under its heading, or in braces.
    Table(&'a dyn TableLike),
    /// A list of tables under double brackets.
    Tables(&'a ArrayOfTables),
    /// Anything else.
    Value(&'a Value),
}

impl<'a> Node<'a> {
    /// The view of an item; none for an item that is not there.
    pub fn of(item: &'a Item) -> Option<Self> {
        match item {
            Item::None => None,
            Item::Table(table) => Some(Node::Table(table)),
            Item::ArrayOfTables(list) => Some(Node::Tables(list)),
            Item::Value(value) => Some(Node::of_value(value)),
        }
    }

    /// The view of a value.
    pub fn of_value(value: &'a Value) -> Self {
        match value {
            Value::InlineTable(table) => Node::Table(table),
            other => Node::Value(other),
        }
    }

    /// The part of that name, or of that number counted from one.
    pub fn part(self, step: &str) -> Option<Self> {
        let index = || step.parse::<usize>().ok()?.checked_sub(1);
        match self {
            Node::Table(table) => Node::of(table.get(step)?),
            Node::Tables(list) => Some(Node::Table(list.get(index()?)?)),
            Node::Value(Value::Array(list)) => Some(Node::of_value(list.get(index()?)?)),
            Node::Value(_) => None,
        }
    }

    /// Follows a field's path (`subject/2/title`; lists count from 1).
    pub fn at(self, path: &str) -> Option<Self> {
        path.split('/').filter(|s| !s.is_empty()).try_fold(self, Node::part)
    }
}

/// Bytes of a field in the text: of its value, or of its table's heading.
pub(crate) fn span(root: &Table, path: &str) -> Option<Range<usize>> {
    let mut at: &dyn TableLike = root;
    let mut steps = path.split('/').filter(|s| !s.is_empty());
    let mut found = None;
    while let Some(step) = steps.next() {
        let item = at.get(step)?;
        found = item.span();
        match item {
            Item::ArrayOfTables(list) => {
                let Some(index) = steps.next() else { return found };
                let table = list.get(index.parse::<usize>().ok()?.checked_sub(1)?)?;
                found = table.span();
                at = table;
            }
            Item::Value(value) if value.is_array() => return span_in_list(value, &mut steps),
            other => match other.as_table_like() {
                Some(table) => at = table,
                None => return steps.next().is_none().then_some(found).flatten(),
            },
        }
    }
    found
}

fn span_in_list<'a>(
    value: &Value,
    steps: &mut impl Iterator<Item = &'a str>,
) -> Option<Range<usize>> {
    let Some(step) = steps.next() else { return value.span() };
    match value {
        Value::Array(list) => {
            span_in_list(list.get(step.parse::<usize>().ok()?.checked_sub(1)?)?, steps)
        }
        Value::InlineTable(table) => span_in_list(table.get(step)?, steps),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::{parse, span, split};

    #[test]
    fn faults_get_a_line_and_a_remedy() {
        for (text, line, remedy) in [
            (
                "a = 1\ntitle = The Shore\n",
                2,
                "put the words between quotation marks: title = \"The Shore\"",
            ),
            ("title = “The Shore”\n", 1, "use straight quotation marks: \"…\""),
            ("title = \"The Shore\n", 1, "a quotation mark is missing"),
            ("a = 1\nb = 2\na = 3\n", 3, "`a` stands twice here; keep one of them"),
            (
                "just words\n",
                1,
                "write a name, an equals sign and a value, like title = \"The Rocky Shore\"",
            ),
            ("[pages\n", 1, "close the bracket"),
            ("title =\n", 1, "write a value after the equals sign, or take the line `title =` out"),
        ] {
            let finding = parse(text, "study.toml", 1).expect_err(text);
            assert_eq!(finding.place.expect("a place").field, format!("line {line}"), "{text}");
            assert_eq!(finding.remedies, [remedy], "{text}");
        }
    }

    #[test]
    fn front_matter_is_split_off() {
        let text = "+++\r\ntitle = \"x\"\r\n+++\r\nwords\r\n";
        let front = split(text, "a.md").expect("closed");
        assert_eq!(&text[front.settings], "title = \"x\"\r\n");
        assert_eq!(&text[front.body..], "words\r\n");
        assert_eq!(split("words", "a.md").expect("none").body, 0);
        assert!(split("+++\na = 1\n", "a.md").is_err());
        assert!(split("---\na: 1\n---\n", "a.md").is_err());
    }

    #[test]
    fn fields_are_found_by_path() {
        let text = "a = [1, {b = \"x\"}]\n[[s]]\nn = 1\n[[s]]\nn = 22\n[t.u]\nv = true\n";
        let doc = parse(text, "f", 1).expect("well-formed");
        let at = |path: &str| span(doc.as_table(), path).map(|r| &text[r]);
        assert_eq!(at("a/2/b"), Some("\"x\""));
        assert_eq!(at("s/2/n"), Some("22"));
        assert_eq!(at("t/u/v"), Some("true"));
        assert_eq!(at("s/3/n"), None);
        assert_eq!(at("s/2/n/x"), None);
    }
}

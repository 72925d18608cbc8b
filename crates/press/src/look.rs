//! Looks: the tokens of page design as data.

use crate::templates::LOOKS;
use findings::{Finding, Findings};
use serde_json::{Map, Value};
use toml_edit::{DocumentMut, Item, Value as TomlValue};

/// The tokens of one look: fonts, sizes, colours, places.
#[derive(Debug, Clone, PartialEq)]
pub struct Look {
    name: String,
    tokens: Value,
}

impl Look {
    /// Names of the looks that come with the program, in alphabetical order.
    pub fn names() -> impl Iterator<Item = &'static str> {
        LOOKS.iter().map(|(name, _)| *name)
    }

    /// A look that comes with the program.
    ///
    /// # Errors
    /// When there is no look of this name, with the names that there are.
    pub fn named(name: &str) -> Result<Self, Findings> {
        let Some((_, text)) = LOOKS.iter().find(|(known, _)| *known == name) else {
            let known: Vec<String> = Self::names().map(|n| format!("`{n}`")).collect();
            return Err(Finding::error("look-unknown", format!("there is no look `{name}`"))
                .remedy(format!("choose one of {}", known.join(", ")))
                .into());
        };
        Self::from_toml(name, text)
    }

    /// Reads the tokens of a look.
    ///
    /// # Errors
    /// When the text is not TOML.
    pub fn from_toml(name: &str, text: &str) -> Result<Self, Findings> {
        let document: DocumentMut = text.parse().map_err(|error: toml_edit::TomlError| {
            Finding::error("look-unreadable", format!("the look `{name}` cannot be read"))
                .remedy(format!("mend its file look.toml: {}", error.message()))
        })?;
        Ok(Self { name: name.to_owned(), tokens: table(document.iter()) })
    }

    /// Its name.
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its tokens, as the page templates read them.
    pub fn tokens(&self) -> &Value {
        &self.tokens
    }
}

fn table<'a>(entries: impl Iterator<Item = (&'a str, &'a Item)>) -> Value {
    let map: Map<String, Value> =
        entries.map(|(key, entry)| (key.to_owned(), item(entry))).collect();
    Value::Object(map)
}

fn item(entry: &Item) -> Value {
    match entry {
        Item::None => Value::Null,
        Item::Value(inner) => value(inner),
        Item::Table(inner) => table(inner.iter()),
        Item::ArrayOfTables(inner) => inner.iter().map(|t| table(t.iter())).collect(),
    }
}

fn value(inner: &TomlValue) -> Value {
    match inner {
        TomlValue::String(text) => Value::from(text.value().as_str()),
        TomlValue::Integer(number) => Value::from(*number.value()),
        TomlValue::Float(number) => Value::from(*number.value()),
        TomlValue::Boolean(flag) => Value::from(*flag.value()),
        TomlValue::Datetime(date) => Value::from(date.value().to_string()),
        TomlValue::Array(items) => items.iter().map(value).collect(),
        TomlValue::InlineTable(entries) => {
            let map: Map<String, Value> =
                entries.iter().map(|(key, inner)| (key.to_owned(), value(inner))).collect();
            Value::Object(map)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn tokens_keep_their_types_and_nesting() {
        let text = "a = 1\nb = 2.5\nc = \"4mm\"\nd = [1, \"x\"]\ne = {f = true}\n[g.h]\ni = 3\n[[j]]\nk = 1\n[[j]]\nk = 2\n";
        let look = Look::from_toml("t", text).expect("reads");
        let wanted = json!({"a": 1, "b": 2.5, "c": "4mm", "d": [1, "x"], "e": {"f": true},
            "g": {"h": {"i": 3}}, "j": [{"k": 1}, {"k": 2}]});
        assert_eq!(look.tokens(), &wanted);
    }

    #[test]
    fn an_unknown_look_is_told_with_the_known_ones() {
        let findings = Look::named("strnad").expect_err("unknown");
        assert_eq!(findings.0[0].message, "there is no look `strnad`");
        assert!(findings.0[0].remedies[0].contains("`strand`"));
    }

    #[test]
    fn every_look_of_the_program_reads() {
        for name in Look::names() {
            assert!(Look::named(name).expect("reads").tokens().is_object(), "{name}");
        }
    }
}

//! Reading one table of settings: typed fields, wrong types in plain words,
//! and unknown names with the nearest known one.

use crate::markdown;
use crate::model::{Ages, Band, Date, Said};
use crate::names::nearest;
use crate::read::Cx;
use crate::toml_text::Node;
use findings::{Finding, Place};
use toml_edit::{TableLike, Value};

/// A table being read; every name asked for becomes a known name.
pub(crate) struct Fields<'a> {
    /// The table.
    pub table: &'a dyn TableLike,
    /// Its place.
    pub at: Place,
    asked: Vec<&'static str>,
}

/// A field that is there but of another form.
pub(crate) fn wrong(cx: &mut Cx, at: &Place, name: &str, takes: &str) {
    cx.findings.push(
        Finding::error("wrong-form", format!("`{name}` takes {takes}"))
            .at(at)
            .remedy("write it that way, or take the line out"),
    );
}

impl<'a> Fields<'a> {
    /// Begins to read a table.
    pub fn new(table: &'a dyn TableLike, at: Place) -> Self {
        Self { table, at, asked: Vec::new() }
    }

    /// The place of a field.
    pub fn place(&self, name: &str) -> Place {
        self.at.child(name)
    }

    /// The field, whatever its form.
    pub fn node(&mut self, name: &'static str) -> Option<Node<'a>> {
        self.asked.push(name);
        Node::of(self.table.get(name)?)
    }

    /// A line of plain words; empty ones count as left out.
    pub fn text(&mut self, cx: &mut Cx, name: &'static str) -> Option<String> {
        let node = self.node(name)?;
        let text = match node {
            Node::Value(Value::String(text)) => text.value().trim().to_owned(),
            _ => {
                wrong(
                    cx,
                    &self.place(name),
                    name,
                    &format!("words between quotation marks, like {name} = \"…\""),
                );
                return None;
            }
        };
        (!text.is_empty()).then_some(text)
    }

    /// A line of plain words, or a number such as a year.
    pub fn text_or_number(&mut self, cx: &mut Cx, name: &'static str) -> Option<String> {
        if let Some(Node::Value(Value::Integer(number))) = self.node(name) {
            return Some(number.value().to_string());
        }
        self.text(cx, name)
    }

    /// A line of words with their marks.
    pub fn said(&mut self, cx: &mut Cx, name: &'static str) -> Option<Said> {
        let text = self.text(cx, name)?;
        Some(markdown::line(&text, &self.place(name), cx))
    }

    /// A whole number in a range.
    pub fn number(&mut self, cx: &mut Cx, name: &'static str, min: i64, max: i64) -> Option<u32> {
        let node = self.node(name)?;
        if let Node::Value(Value::Integer(number)) = node
            && (min..=max).contains(number.value())
        {
            return u32::try_from(*number.value()).ok();
        }
        wrong(
            cx,
            &self.place(name),
            name,
            &format!(
                "a whole number from {min} to {max}, like {name} = {}",
                if max < 100 { 2.max(min) } else { 20 }
            ),
        );
        None
    }

    /// A number of tenths from a number in whole units.
    pub fn tenths(&mut self, cx: &mut Cx, name: &'static str) -> Option<i32> {
        let tenths = match self.node(name)? {
            Node::Value(Value::Integer(n)) => {
                n.value().checked_mul(10).and_then(|t| i32::try_from(t).ok())
            }
            Node::Value(Value::Float(f)) => tenths(*f.value()),
            _ => None,
        };
        if tenths.is_none() {
            wrong(
                cx,
                &self.place(name),
                name,
                &format!("a number in the picture's own units, like {name} = 120"),
            );
        }
        tenths
    }

    /// A list of lines of plain words with their places; one line alone counts as a list of one.
    pub fn texts(&mut self, cx: &mut Cx, name: &'static str) -> Vec<(String, Place)> {
        let place = self.place(name);
        match self.node(name) {
            None => Vec::new(),
            Some(Node::Value(Value::String(one))) => one
                .value()
                .split(';')
                .map(str::trim)
                .filter(|t| !t.is_empty())
                .map(|t| (t.to_owned(), place.clone()))
                .collect(),
            Some(node) => texts(cx, node, &place, name),
        }
    }

    /// A list of lines of words with their marks.
    pub fn saids(&mut self, cx: &mut Cx, name: &'static str) -> Vec<Said> {
        let texts = self.texts(cx, name);
        texts.iter().map(|(text, at)| markdown::line(text, at, cx)).collect()
    }

    /// The youngest and oldest age.
    pub fn ages(&mut self, cx: &mut Cx, name: &'static str) -> Option<Ages> {
        let node = self.node(name)?;
        let place = self.place(name);
        let numbers: Option<Vec<u8>> = match node {
            Node::Value(Value::Array(list)) => {
                list.iter().map(|v| v.as_integer().and_then(|n| u8::try_from(n).ok())).collect()
            }
            _ => None,
        };
        match numbers.as_deref() {
            Some(&[from, to]) if from <= to && to <= 99 => return Some(Ages { from, to }),
            Some(&[from, to]) if from > to => cx.findings.push(
                Finding::error("ages-turned", format!("`{name}` runs from {from} down to {to}"))
                    .at(&place)
                    .remedy(format!("write the youngest age first: {name} = [{to}, {from}]")),
            ),
            _ => wrong(cx, &place, name, &format!("two numbers, like {name} = [3, 18]")),
        }
        None
    }

    /// An age band.
    pub fn band(&mut self, cx: &mut Cx, name: &'static str) -> Option<Band> {
        let text = self.text(cx, name)?;
        band(cx, &text, &self.place(name))
    }

    /// A date, between quotation marks or bare.
    pub fn date(&mut self, cx: &mut Cx, name: &'static str) -> Option<Date> {
        let text = match self.node(name)? {
            Node::Value(Value::String(text)) => text.value().trim().to_owned(),
            Node::Value(Value::Datetime(date)) => date.value().to_string(),
            _ => String::new(),
        };
        let date = date(&text);
        if date.is_none() {
            cx.findings.push(
                Finding::error("date-wrong", format!("`{text}` is no date"))
                    .at(&self.place(name))
                    .remedy(format!("write year, month and day, like {name} = \"2026-05-01\"")),
            );
        }
        date
    }

    /// One of several words.
    pub fn choice<T: Copy>(
        &mut self,
        cx: &mut Cx,
        name: &'static str,
        choices: &[(&'static str, T)],
    ) -> Option<T> {
        let text = self.text(cx, name)?;
        let at = self.place(name);
        choice(cx, &text, &at, name, choices)
    }

    /// A table inside this one.
    pub fn table(&mut self, cx: &mut Cx, name: &'static str) -> Option<Fields<'a>> {
        match self.node(name)? {
            Node::Table(table) => Some(Fields::new(table, self.place(name))),
            _ => {
                wrong(
                    cx,
                    &self.place(name),
                    name,
                    &format!("a table of its own, under a line of [{name}]"),
                );
                None
            }
        }
    }

    /// The tables of a list, under double brackets or in braces.
    pub fn tables(&mut self, cx: &mut Cx, name: &'static str) -> Vec<Fields<'a>> {
        let at = self.place(name);
        let found: Option<Vec<&'a dyn TableLike>> = match self.node(name) {
            None => return Vec::new(),
            Some(Node::Tables(list)) => Some(list.iter().map(|t| t as &dyn TableLike).collect()),
            Some(Node::Value(Value::Array(list))) => {
                list.iter().map(|v| v.as_inline_table().map(|t| t as &dyn TableLike)).collect()
            }
            Some(_) => None,
        };
        let Some(tables) = found else {
            wrong(cx, &at, name, &format!("one table an item, each under a line of [[{name}]]"));
            return Vec::new();
        };
        tables.into_iter().zip(1..).map(|(table, n)| Fields::new(table, at.child(n))).collect()
    }

    /// Reports every name that was not asked for.
    pub fn finish(self, cx: &mut Cx) {
        for (name, _) in
            self.table.iter().filter(|(name, item)| !item.is_none() && !self.asked.contains(name))
        {
            unknown(cx, &self.at.child(name), "setting", name, self.asked.iter().copied());
        }
    }
}

/// A name that the format does not know.
pub(crate) fn unknown<'c>(
    cx: &mut Cx,
    at: &Place,
    what: &str,
    name: &str,
    known: impl IntoIterator<Item = &'c str>,
) {
    let known: Vec<&str> = known.into_iter().collect();
    let remedy = match nearest(name, known.iter().copied()) {
        Some(near) => format!("did you mean `{near}`?"),
        None => format!("known here: {}", known.join(", ")),
    };
    cx.findings.push(
        Finding::error("unknown-name", format!("there is no {what} called `{name}` here"))
            .at(at)
            .remedy(remedy),
    );
}

fn texts(cx: &mut Cx, node: Node<'_>, place: &Place, name: &str) -> Vec<(String, Place)> {
    let list: Option<Vec<&str>> = match node {
        Node::Value(Value::Array(list)) => list.iter().map(Value::as_str).collect(),
        _ => None,
    };
    let Some(list) = list else {
        wrong(cx, place, name, &format!("a list of words, like {name} = [\"one\", \"two\"]"));
        return Vec::new();
    };
    let numbered =
        list.into_iter().zip(1..).map(|(text, n)| (text.trim().to_owned(), place.child(n)));
    numbered.filter(|(text, _)| !text.is_empty()).collect()
}

/// A band as the author wrote it, or a finding.
pub(crate) fn band(cx: &mut Cx, text: &str, at: &Place) -> Option<Band> {
    let band = Band::parse(text);
    if band.is_none() {
        cx.findings.push(
            Finding::error("band-unknown", format!("there is no age band `{text}`"))
                .at(at)
                .remedy("write one of 3-6, 7-9, 10-12, 13-18"),
        );
    }
    band
}

/// One of several words, or a finding with the nearest.
pub(crate) fn choice<T: Copy>(
    cx: &mut Cx,
    text: &str,
    at: &Place,
    name: &str,
    choices: &[(&'static str, T)],
) -> Option<T> {
    let lower = text.to_lowercase();
    let found = choices.iter().find(|(word, _)| *word == lower).map(|(_, value)| *value);
    if found.is_none() {
        let words: Vec<&str> = choices.iter().map(|(word, _)| *word).collect();
        let finding =
            Finding::error("choice-unknown", format!("`{name}` cannot be `{text}`")).at(at);
        cx.findings.push(match nearest(&lower, words.iter().copied()) {
            Some(near) => finding.remedy(format!("did you mean `{near}`?")),
            None => finding.remedy(format!("write one of {}", words.join(", "))),
        });
    }
    found
}

/// A calendar date written `2026-05-01` (ISO 8601), leap years by the Gregorian rule.
pub(crate) fn date(text: &str) -> Option<Date> {
    let mut parts = text.split('-');
    let (year, month, day) = (parts.next()?, parts.next()?, parts.next()?);
    if parts.next().is_some() || year.len() != 4 || month.len() != 2 || day.len() != 2 {
        return None;
    }
    let date =
        Date { year: year.parse().ok()?, month: month.parse().ok()?, day: day.parse().ok()? };
    let leap = date.year % 4 == 0 && (date.year % 100 != 0 || date.year % 400 == 0);
    let last = match date.month {
        2 if leap => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        1..=12 => 31,
        _ => return None,
    };
    (date.year > 0 && (1..=last).contains(&date.day)).then_some(date)
}

/// Tenths of a number, rounded; none when it is out of range.
pub(crate) fn tenths(number: f64) -> Option<i32> {
    let tenths = (number * 10.0).round();
    // Within ±1e8 the cast is exact.
    (tenths.abs() <= 1e8).then_some(tenths as i32)
}

#[cfg(test)]
mod tests {
    use super::date;

    /// Leap years by the Gregorian rule; February 2028 has 29 days, 2100 is no leap year (ISO 8601 calendar).
    #[test]
    fn dates_are_days_that_exist() {
        for good in ["2026-05-01", "2028-02-29", "2000-02-29", "2026-12-31"] {
            assert!(date(good).is_some(), "{good}");
        }
        for bad in [
            "2026-02-29",
            "2100-02-29",
            "2026-13-01",
            "2026-04-31",
            "2026-5-1",
            "1 May 2026",
            "2026-05-01-02",
            "",
            "0000-01-01",
        ] {
            assert!(date(bad).is_none(), "{bad}");
        }
    }
}

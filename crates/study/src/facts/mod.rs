//! Facts used in texts: filled in by name, and compared with the words around them.

mod agree;
mod numbers;

pub use agree::{Agreement, agreement};

use crate::model::Span;
use crate::names::{nearest, normal};
use crate::read::Cx;
use findings::{Finding, Place};

/// What a fact says, as far as texts repeat it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Told {
    /// Value as printed.
    pub value: String,
    /// Unit as printed.
    pub unit: String,
}

impl Cx {
    /// The id of a fact used at a place, or a finding when there is none of that name.
    pub(crate) fn fact(&mut self, written: &str, at: &Place) -> Option<String> {
        let id = [written.to_owned(), normal(written)]
            .into_iter()
            .find(|id| self.facts.contains_key(id));
        if let Some(id) = id {
            self.used_facts.entry(id.clone()).or_insert_with(|| at.clone());
            return Some(id);
        }
        if !self.facts_unsure {
            let near = nearest(written, self.facts.keys().map(String::as_str));
            let finding =
                Finding::error("fact-unknown", format!("there is no fact called `{written}`"))
                    .at(at);
            let finding = match near {
                Some(near) => finding.remedy(format!("did you mean `{near}`?")),
                None => finding.remedy("write it into facts.csv, with its source"),
            };
            self.findings.push(finding);
        }
        None
    }

    /// The words that stand for a fact: the author's own, compared with it, or its value and unit.
    pub(crate) fn fact_words(&mut self, id: &str, words: Vec<Span>, at: &Place) -> Vec<Span> {
        let told = self.facts.get(id).cloned().unwrap_or_default();
        let mut plain = String::new();
        crate::model::plain_into(&words, &mut plain);
        if plain.trim().is_empty() {
            return self.filled(id, &told, at);
        }
        let finding = match agreement(&told.value, &told.unit, &plain, self.english) {
            Agreement::Agrees => return words,
            Agreement::Contradicts => Finding::error(
                "fact-contradicted",
                format!(
                    "`{plain}` says otherwise than the fact `{id}`, which is `{}`",
                    told.printed()
                ),
            ),
            Agreement::Missing => Finding::warning(
                "fact-missing",
                format!("`{plain}` does not repeat the fact `{id}`, which is `{}`", told.printed()),
            ),
        };
        self.findings.push(finding.at(at).remedy("mend the words, or the fact in facts.csv"));
        words
    }

    fn filled(&mut self, id: &str, told: &Told, at: &Place) -> Vec<Span> {
        if told.value.is_empty() {
            self.findings.push(
                Finding::error(
                    "fact-without-value",
                    format!("the fact `{id}` has no value to print here"),
                )
                .at(at)
                .remedy("write words between the square brackets, or a value into facts.csv"),
            );
        }
        vec![Span::Text { v: told.printed() }]
    }
}

impl Told {
    fn printed(&self) -> String {
        format!("{} {}", self.value, self.unit).trim().to_owned()
    }
}

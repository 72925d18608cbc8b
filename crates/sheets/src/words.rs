//! Fixed words of a kind, by language, from its `words.toml`.
//!
//! `words.toml` holds one table a language (`[en]`). Required entries:
//! `name` (plain name of the kind), `says` (one sentence), `explains` (a short
//! paragraph for the author), `title` (default title of the sheet), and
//! `option-<name>` for each own option. Everything else is the template's.

use std::collections::BTreeMap;

/// Words of one language by key.
pub type Words = BTreeMap<String, String>;

/// The words of a kind in a language, English when that language is not there.
pub fn words(toml: &str, language: &str) -> Words {
    let Ok(doc) = toml.parse::<toml_edit::DocumentMut>() else {
        return Words::new();
    };
    let short = language.split('-').next().unwrap_or(language);
    let table = [language, short, "en"].into_iter().find_map(|l| doc.get(l)?.as_table().cloned());
    let mut out = Words::new();
    for (key, item) in table.iter().flat_map(|t| t.iter()) {
        if let Some(text) = item.as_str() {
            out.insert(key.to_owned(), text.to_owned());
        }
    }
    out
}

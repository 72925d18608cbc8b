//! Caution sentences by tag of an activity, from `cautions.toml`; for the adult, always closed by the same last sentence.

use std::collections::BTreeSet;
use toml_edit::{DocumentMut, Table};

const FILE: &str = include_str!("cautions.toml");

/// Tags under which food may be among the supplies.
const FOOD_TAGS: [&str; 2] = ["food", "dough"];

/// Entries of `cautions.toml` that are no tags.
const NO_TAGS: [&str; 2] = ["last", "allergens"];

/// The sentences for these tags, in the file's order and each once, the closing sentence last.
///
/// With a `food` or `dough` tag the supplies are searched for allergens, and
/// those found are named. Unknown tags are passed over: the study's reader
/// has already asked about them. English when the language is not there.
pub fn cautions<T: AsRef<str>, S: AsRef<str>>(
    tags: &[T],
    supplies: &[S],
    language: &str,
) -> Vec<String> {
    let Ok(doc) = FILE.parse::<DocumentMut>() else {
        return Vec::new();
    };
    let Some(table) = table(&doc, language) else {
        return Vec::new();
    };
    let asked: BTreeSet<&str> = tags.iter().map(AsRef::as_ref).collect();
    let sentence = |key: &str| table.get(key).and_then(|i| i.as_str()).map(str::to_owned);
    let known = table.iter().filter(|(key, _)| asked.contains(key) && !NO_TAGS.contains(key));
    let mut out: Vec<String> = known.filter_map(|(key, _)| sentence(key)).collect();
    if FOOD_TAGS.iter().any(|t| asked.contains(t)) {
        let found = allergens(table, supplies);
        if let Some(line) = sentence("allergens").filter(|_| !found.is_empty()) {
            out.push(line.replace("{allergens}", &found.join(", ")));
        }
    }
    out.extend(sentence("last"));
    out
}

/// Every tag that has a sentence, in the file's order.
pub fn tags() -> Vec<String> {
    let doc = FILE.parse::<DocumentMut>().unwrap_or_default();
    let table = table(&doc, "en");
    let keys = table.into_iter().flat_map(Table::iter).filter(|(_, item)| item.is_str());
    keys.map(|(key, _)| key.to_owned()).filter(|k| !NO_TAGS.contains(&k.as_str())).collect()
}

fn table<'a>(doc: &'a DocumentMut, language: &str) -> Option<&'a Table> {
    let short = language.split('-').next().unwrap_or(language);
    [language, short, "en"].into_iter().find_map(|l| doc.get(l)?.as_table())
}

/// Names of the allergens whose words stand whole in a supply, once the phrases under `except` are struck out.
fn allergens<S: AsRef<str>>(table: &Table, supplies: &[S]) -> Vec<String> {
    let all = table.get("food-allergens").and_then(|i| i.as_array_of_tables());
    let mut out = Vec::new();
    for allergen in all.into_iter().flatten() {
        let list = |key: &str| -> Vec<String> {
            let array = allergen.get(key).and_then(|i| i.as_array());
            array.into_iter().flatten().filter_map(|v| v.as_str()).map(spaced).collect()
        };
        let (words, except) = (list("words"), list("except"));
        let held = supplies.iter().any(|supply| {
            let mut line = spaced(supply.as_ref());
            for phrase in &except {
                line = line.replace(phrase.as_str(), " ");
            }
            words.iter().any(|w| line.contains(w.as_str()))
        });
        if let Some(name) = allergen.get("name").and_then(|i| i.as_str()).filter(|_| held) {
            out.push(name.to_owned());
        }
    }
    out
}

/// Lower-case words, each with a space on both sides, so that a found word is a whole one.
fn spaced(text: &str) -> String {
    let mut out = String::from(" ");
    for word in text.split(|c: char| !c.is_alphanumeric()).filter(|w| !w.is_empty()) {
        out.push_str(&word.to_lowercase());
        out.push(' ');
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    const NONE: [&str; 0] = [];

    /// The tags of docs/folder.md.
    const TAGS: [&str; 19] = [
        "cut",
        "laminate",
        "magnet",
        "food",
        "dough",
        "animals",
        "outdoors",
        "shore",
        "water",
        "small-parts",
        "cord",
        "knife",
        "heat",
        "glass",
        "chemical",
        "loud",
        "mouthpiece",
        "elastic",
        "links",
    ];

    #[test]
    fn every_tag_has_its_sentence_and_the_last_one_closes() {
        let last = "Local rules and your own judgement come first.";
        for tag in TAGS {
            let lines = cautions(&[tag], &NONE, "en");
            assert_eq!(lines.len(), 2, "{tag}");
            assert_eq!(lines[1], last);
        }
        assert_eq!(cautions(&TAGS, &NONE, "en-GB").len(), TAGS.len() + 1);
        assert_eq!(cautions(&NONE, &NONE, "en"), [last]);
        assert_eq!(cautions(&["last", "allergens", "nonsense"], &NONE, "en"), [last]);
        let mut known = tags();
        known.sort();
        let mut wanted = TAGS.map(String::from).to_vec();
        wanted.sort();
        assert_eq!(known, wanted);
    }

    /// The nine of the FASTER Act (in force since 1 January 2023), one supply each.
    #[test]
    fn each_of_the_nine_allergens_is_named() {
        let nine = [
            ("a cup of milk", "milk"),
            ("two eggs", "eggs"),
            ("a tin of tuna", "fish"),
            ("cooked prawns", "crustacean shellfish"),
            ("chopped walnuts", "tree nuts"),
            ("a jar of peanuts", "peanuts"),
            ("plain flour", "wheat"),
            ("soya sauce", "soybeans"),
            ("tahini", "sesame"),
        ];
        for (supply, name) in nine {
            let lines = cautions(&["food"], &[supply], "en");
            assert!(
                lines.iter().any(|l| l.contains(&format!("hold {name}"))),
                "{supply}: {lines:?}"
            );
        }
    }

    #[test]
    fn look_alikes_are_no_allergens_and_water_play_is_not_searched() {
        for supply in
            ["coconut milk", "an egg cup", "nuts and bolts", "rice flour", "a butterfly net"]
        {
            assert_eq!(cautions(&["food"], &[supply], "en").len(), 2, "{supply}");
        }
        assert_eq!(cautions(&["water"], &["a cup of milk"], "en").len(), 2);
        let both = cautions(&["dough"], &["Flour", "BUTTER (soft)"], "en");
        assert!(both.iter().any(|l| l.contains("milk, wheat")), "{both:?}");
    }

    #[test]
    fn sentences_are_short() {
        // Common practice, no source: at most 25 words a sentence, two sentences a tag.
        for line in cautions(&TAGS, &NONE, "en") {
            for sentence in line.split(['.', ':']) {
                assert!(sentence.split_whitespace().count() <= 25, "{sentence}");
            }
        }
    }
}

//! Names of files, lessons and fields: their normal form, and the nearest one to a slip.

/// The normal form of a name: lower-case letters, digits and single hyphens.
///
/// Spaces, underscores and other marks between letters become a hyphen, so
/// `Holding On` and `holding_on` both read as `holding-on`.
pub fn normal(written: &str) -> String {
    let mut out = String::new();
    for c in written.trim().chars() {
        if c.is_alphanumeric() {
            out.extend(c.to_lowercase());
        } else if c != '\'' && c != '’' && !out.is_empty() && !out.ends_with('-') {
            out.push('-');
        }
    }
    while out.ends_with('-') {
        out.pop();
    }
    out
}

/// The candidate nearest to a misspelt name, when one is near enough to be meant.
///
/// Distance: Damerau–Levenshtein (one insertion, deletion, substitution or
/// swap of neighbours counts one); at most a third of the longer name, at least one.
pub fn nearest<'a>(
    written: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let written = written.to_lowercase();
    let mut best: Option<(usize, &str)> = None;
    for candidate in candidates {
        let distance = strsim::damerau_levenshtein(&written, &candidate.to_lowercase());
        let allowed = (written.chars().count().max(candidate.chars().count()) / 3).max(1);
        if distance <= allowed && best.is_none_or(|(d, _)| distance < d) {
            best = Some((distance, candidate));
        }
    }
    best.map(|(_, candidate)| candidate)
}

/// Words for a person from a name: `holding-on` becomes `Holding on`.
pub(crate) fn title_from(name: &str) -> String {
    let words = name.replace(['-', '_'], " ");
    let mut letters = words.chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => words,
    }
}

/// `one`, `one and two`, `one, two and three`.
pub(crate) fn listed(items: &[String]) -> String {
    match items {
        [] => String::new(),
        [one] => one.clone(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::{listed, nearest, normal};

    #[test]
    fn names_come_out_normal() {
        for (written, name) in [
            ("Holding On", "holding-on"),
            ("holding_on", "holding-on"),
            (" two--ways ", "two-ways"),
            ("Don't touch", "dont-touch"),
            ("Élan 2", "élan-2"),
            ("—", ""),
        ] {
            assert_eq!(normal(written), name);
        }
    }

    #[test]
    fn the_nearest_name_is_found_and_a_far_one_is_not() {
        let names = ["title", "subtitle", "ages", "band"];
        assert_eq!(nearest("titel", names), Some("title"));
        assert_eq!(nearest("Band", names), Some("band"));
        assert_eq!(nearest("picture", names), None);
        assert_eq!(nearest("", []), None);
    }

    #[test]
    fn lists_read_as_words() {
        let s = |v: &[&str]| v.iter().map(|s| (*s).to_owned()).collect::<Vec<_>>();
        assert_eq!(listed(&s(&["a"])), "a");
        assert_eq!(listed(&s(&["a", "b", "c"])), "a, b and c");
    }
}

//! Does a meaning give its own word away?

/// English endings that leave a word recognisable.
const ENDINGS: [&str; 9] = ["", "s", "es", "ed", "d", "ing", "'s", "s'", "er"];

/// True when the words of `term` stand in `meaning` one after another, in any case,
/// the last of them also with an English ending.
pub fn gives_away(term: &str, meaning: &str) -> bool {
    let (term, meaning) = (tokens(term), tokens(meaning));
    let Some((last, before)) = term.split_last() else { return false };
    meaning.windows(term.len()).any(|run| {
        run.split_last().is_some_and(|(end, start)| start == before && is_form_of(last, end))
    })
}

fn is_form_of(word: &str, found: &str) -> bool {
    let stem = word.strip_suffix('e').unwrap_or(word);
    let after = |s: &str| found.strip_prefix(s).is_some_and(|rest| ENDINGS.contains(&rest));
    after(word) || (stem.chars().count() > 2 && found.strip_prefix(stem) == Some("ing"))
}

fn tokens(text: &str) -> Vec<String> {
    let plain = text.to_lowercase().replace('’', "'");
    let split = plain.split(|c: char| !c.is_alphanumeric() && c != '\'');
    split.filter(|t| !t.is_empty()).map(str::to_owned).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn finds_the_word_in_its_meaning() {
        assert!(gives_away("limpet", "what a limpet’s shell rests on"));
        assert!(gives_away("scrape", "it is scraping the rock"));
        assert!(gives_away("home scar", "a ring, the Home scars of the rock"));
        assert!(!gives_away("home scar", "the ring in the rock that fits one animal, its home"));
        assert!(!gives_away("bar", "bare rock"));
        assert!(!gives_away("", "anything"));
    }
}

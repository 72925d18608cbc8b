//! What stands inside a marked place of a laid-out page.

use crate::{LaidPage, LaidText, Mark};

/// Runs of text whose middle lies inside the place.
pub fn runs_inside<'a>(page: &'a LaidPage, mark: &Mark) -> Vec<&'a LaidText> {
    let inside = |t: &&LaidText| {
        let middle = t.x + t.w / 2;
        let across = middle > mark.x && middle < mark.x + mark.w;
        across && t.y > mark.y && t.y < mark.y + mark.h
    };
    page.texts.iter().filter(inside).collect()
}

/// Letters and figures of a text in small letters: how a text is known again when quotes have been curled and lines
/// broken.
pub fn letters_of(text: &str) -> String {
    text.chars().filter(|c| c.is_alphanumeric()).flat_map(char::to_lowercase).collect()
}

/// True when the place holds this text and nothing else, every glyph drawn.
pub fn holds(page: &LaidPage, mark: &Mark, text: &str) -> bool {
    let runs = runs_inside(page, mark);
    let read: String = runs.iter().map(|t| letters_of(&t.text)).collect();
    read == letters_of(text) && runs.iter().all(|t| !t.missing)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn reads_what_stands_inside() {
        let run =
            |text: &str, x, y| LaidText { text: text.into(), x, y, w: 10, ..LaidText::default() };
        let mark = Mark { x: 0, y: 0, w: 100, h: 100, ..Mark::default() };
        let mut page = LaidPage {
            texts: vec![run("a snail’s ", 5, 20), run("tongue", 5, 40), run("far", 200, 20)],
            ..LaidPage::default()
        };
        assert!(holds(&page, &mark, "a snail's tongue"));
        assert!(!holds(&page, &mark, "a snail's"));
        page.texts[1].missing = true;
        assert!(!holds(&page, &mark, "a snail's tongue"));
    }
}

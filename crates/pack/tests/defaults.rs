//! A folder without a page set gets one that fits what is there, and nothing that asks for more.

use pack::Cache;
use study::Files;

const WORDS: &str = "word,meaning,where\nowl,,\nmoth,,\nbat,,\nfox,,\nbadger,,\nhedgehog,,\nbeetle,,\nnightjar,,\nfern,,\ntoad,,\nslug,,\nwillow,,\n";

fn kinds(files: &[(&str, &str)]) -> Vec<(String, bool)> {
    let mut folder = Files::default();
    for (path, text) in files {
        folder.insert(*path, text.as_bytes());
    }
    let study = study::read_files(&folder).study.expect("a study");
    let proved = pack::prove(&study, &Cache::none());
    let kind = |o: &pack::Outcome| (o.planned.about().id.to_owned(), o.made.is_some());
    proved.outcomes.iter().map(kind).collect()
}

fn all_made(expected: &[&str]) -> Vec<(String, bool)> {
    expected.iter().map(|k| ((*k).to_owned(), true)).collect()
}

#[test]
fn twelve_words_print_two_puzzles_and_their_key() {
    let found = kinds(&[("study.toml", "title = \"Wood\"\n"), ("words.csv", WORDS)]);
    assert_eq!(found, all_made(&["word-search", "unscramble", "key"]));
}

#[test]
fn a_first_lesson_keeps_the_puzzles_and_asks_for_nothing() {
    let lesson = "+++\ntitle = \"After dark\"\n+++\n## Opening\nAnother wood wakes up.\n\n## Reading: The owl\nAn owl hunts with its ears.\n";
    let found = kinds(&[
        ("study.toml", "title = \"Wood\"\n"),
        ("words.csv", WORDS),
        ("lessons/after-dark.md", lesson),
    ]);
    let expected = [
        "cover",
        "how-to-use",
        "contents",
        "lesson-opener",
        "reading",
        "word-search",
        "unscramble",
        "key",
        "credits",
    ];
    assert_eq!(found, all_made(&expected));
}

#[test]
fn all_twelve_words_are_hidden() {
    let mut folder = Files::default();
    folder.insert("study.toml", "title = \"Wood\"\n");
    folder.insert("words.csv", WORDS);
    let study = study::read_files(&folder).study.expect("a study");
    let proved = pack::prove(&study, &Cache::none());
    let search = proved.outcomes[0].made.as_ref().expect("made");
    assert!(
        search.proof.counted.contains(&("words found once".to_owned(), "12".to_owned())),
        "{:?}",
        search.proof.counted
    );
}

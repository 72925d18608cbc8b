//! Single fields written back: every other byte stays.

use super::{append_row, remove_row, source, source_of, spliced, write_field};
use crate::lines::{bytes, markdown_spans};
use crate::model::Value;
use findings::Place;
use proptest::prelude::*;
use std::fs;
use std::path::Path;

const SETTINGS: &str = "# The shore\r\nid = 'st-1' # mine\r\ntitle  =  \"Shore\"   # the title\r\nages = [3, 18]\r\n\r\n[page-set] # sets\r\nlesson = [\r\n  \"reading\", # first\r\n  { kind = \"maze\", level = 2 },\r\n]\r\n";

const LESSON: &str = "+++\ntitle = \"Homeward\" # a note\n\n[[subject]]\nname = \"limpet\"\n+++\n## Opening\n\nAt low tide.  \nStill.\n\n## Reading: There and *back*\n\nOne [about 20](fact:a) two.\n\n- item\n\nLast paragraph.\n## One thing more\nShort.\n\n## Activity\nWhy.\n### Steps\n1. Do this.\n2. Then that.\n### What happened\n| a | b |\n|---|---|\n| 1 |   |\n### Ask\n- Who?\n";

const WORDS: &str = "word,meaning,where\nlimpet,\"a snail, with a cone\",\n\"home scar\", its place ,homeward\nlimpet,again,splash\n";

fn in_folder(file: &str, text: &str) -> tempfile::TempDir {
    let folder = tempfile::tempdir().expect("a folder");
    let path = folder.path().join(file);
    fs::create_dir_all(path.parent().expect("a parent")).expect("made");
    fs::write(path, text).expect("written");
    folder
}

fn text(value: &str) -> Value {
    Value::Text(value.to_owned())
}

/// Writes a field and gives the file's text.
fn written(file: &str, before: &str, field: &str, value: &Value) -> String {
    let folder = in_folder(file, before);
    write_field(folder.path(), &Place::new(file, field), value)
        .unwrap_or_else(|e| panic!("{field}: {e}"));
    fs::read_to_string(folder.path().join(file)).expect("read")
}

fn swapped(before: &str, old: &str, new: &str) -> String {
    assert_eq!(before.matches(old).count(), 1, "{old} must stand once");
    before.replace(old, new)
}

#[test]
fn a_setting_changes_and_nothing_else() {
    for (field, value, old, new) in [
        ("title", text("A \"new\" one"), "\"Shore\"", "\"A \\\"new\\\" one\""),
        ("id", text("st-2"), "'st-1'", "'st-2'"),
        ("ages/2", Value::Number(14), "18", "14"),
        ("ages", Value::List(vec![Value::Number(4), Value::Number(18)]), "[3,", "[4,"),
        ("page-set/lesson/1", text("opener"), "\"reading\"", "\"opener\""),
        ("page-set/lesson/2/level", Value::Number(3), "level = 2", "level = 3"),
        ("page-set/lesson/2/print", text("back"), "level = 2 }", "level = 2, print = \"back\" }"),
    ] {
        assert_eq!(
            written("study.toml", SETTINGS, field, &value),
            swapped(SETTINGS, old, new),
            "{field}"
        );
    }
}

#[test]
fn a_missing_setting_is_added_in_its_group() {
    let added = written("study.toml", SETTINGS, "author", &text("Ann"));
    assert_eq!(added, swapped(SETTINGS, "18]\r\n", "18]\r\nauthor = \"Ann\"\r\n"));
    let added = written("study.toml", SETTINGS, "inquiry/boxes", &Value::List(vec![text("I see")]));
    assert_eq!(added, swapped(SETTINGS, "18]\r\n", "18]\r\ninquiry.boxes = [\"I see\"]\r\n"));
    let added = written("study.toml", SETTINGS, "page-set/back", &Value::List(vec![]));
    assert_eq!(added, format!("{SETTINGS}back = []\r\n"));
    let nested = "[pages.maze]\nlevel = 1\n";
    let added = written("parts/a/part.toml", nested, "pages/pairs/level", &Value::Number(2));
    assert_eq!(added, "[pages.maze]\nlevel = 1\n\n[pages.pairs]\nlevel = 2\n");
    let added =
        written("lessons/a.md", LESSON, "front/subject/1/pages/maze/level", &Value::Number(2));
    assert_eq!(
        added,
        swapped(LESSON, "name = \"limpet\"\n", "name = \"limpet\"\npages.maze.level = 2\n")
    );
}

#[test]
fn lists_grow_and_shrink_round_the_notes_in_them() {
    let list = |words: &[&str]| Value::List(words.iter().map(|w| text(w)).collect());
    let before = "order = [\n  \"a\", # one\n  \"b\", # two\n]\n";
    assert_eq!(
        written("study.toml", before, "order", &list(&["a", "c", "d"])),
        "order = [\n  \"a\", # one\n  \"c\", \"d\", # two\n]\n"
    );
    assert_eq!(
        written("study.toml", before, "order", &list(&["b"])),
        "order = [\n  \"b\", # two\n]\n"
    );
    assert_eq!(written("study.toml", "order = []\n", "order", &list(&["a"])), "order = [\"a\"]\n");
    assert_eq!(written("study.toml", "order = [\"a\"]\n", "order", &list(&[])), "order = []\n");
}

#[test]
fn texts_change_by_section_block_item_and_cell() {
    for (field, value, old, new) in [
        ("front/title", "Home", "\"Homeward\"", "\"Home\""),
        ("opening", "New\nwords.", "At low tide.  \nStill.", "New\nwords."),
        ("opening/1", "New.", "At low tide.  \nStill.", "New."),
        ("reading/title", "Away", "There and *back*", "Away"),
        ("reading/1", "Other.", "One [about 20](fact:a) two.", "Other."),
        ("reading/2/1", "thing", "item", "thing"),
        ("reading/3", "End.", "Last paragraph.", "End."),
        ("more", "Longer.", "Short.", "Longer."),
        ("activity/1/intro/1", "Because.", "Why.", "Because."),
        ("activity/1/steps/2", "And\nso.", "Then that.", "And so."),
        ("activity/1/table/2/1", "x|y", "| 1 |", "| x\\|y |"),
        ("activity/1/ask/1", "What?", "Who?", "What?"),
    ] {
        assert_eq!(
            written("lessons/a.md", LESSON, field, &text(value)),
            swapped(LESSON, old, new),
            "{field}"
        );
    }
    let short = "+++\ntitle = \"A\"\n+++\n";
    assert_eq!(
        written("lessons/a.md", short, "opening", &text("Hello.")),
        format!("{short}\n## Opening\nHello.\n")
    );
    assert_eq!(written("lessons/a.md", "", "front/title", &text("A")), short);
    assert_eq!(
        written("introduction.md", "Old words.\n", "text", &text("New words.")),
        "New words.\n"
    );
    assert_eq!(
        written("lessons/a.md", "## Opening\n## Activity\n", "opening", &text("Hello.")),
        "## Opening\nHello.\n## Activity\n"
    );
}

#[test]
fn a_section_cannot_be_smuggled_into_another() {
    let folder = in_folder("lessons/a.md", LESSON);
    let finding = write_field(
        folder.path(),
        &Place::new("lessons/a.md", "opening"),
        &text("x\n\n## Activity\n"),
    )
    .expect_err("refused");
    assert!(finding.message.contains("another section"));
    assert_eq!(fs::read_to_string(folder.path().join("lessons/a.md")).expect("read"), LESSON);
}

#[test]
fn cells_and_rows() {
    let cell = |field: &str, value: &str| written("words.csv", WORDS, field, &text(value));
    assert_eq!(
        cell("limpet/meaning", "a \"snail\""),
        swapped(WORDS, "\"a snail, with a cone\"", "\"a \"\"snail\"\"\"")
    );
    assert_eq!(cell("home scar/meaning", "place"), swapped(WORDS, " its place ", "place"));
    assert_eq!(cell("limpet~2/where", "a;b"), swapped(WORDS, "splash", "a;b"));
    assert_eq!(cell("limpet/where", "x, y"), swapped(WORDS, "cone\",\n", "cone\",\"x, y\"\n"));
    let with_column = cell("limpet/picture", "limpet");
    assert!(with_column.starts_with("word,meaning,where,picture\nlimpet,\"a snail, with a cone\",,limpet\n\"home scar\", its place ,homeward,\n"));
    let folder = in_folder("words.csv", "word;meaning\r\na;b");
    append_row(folder.path(), "words.csv", &[("word", "c;d"), ("meaning", "e")]).expect("added");
    let place = Place::new("words.csv", "a");
    let path = folder.path().join("words.csv");
    assert_eq!(fs::read_to_string(&path).expect("read"), "word;meaning\r\na;b\r\n\"c;d\";e\r\n");
    remove_row(folder.path(), &place).expect("there");
    assert_eq!(fs::read_to_string(&path).expect("read"), "word;meaning\r\n\"c;d\";e\r\n");
    assert!(remove_row(folder.path(), &place).is_err());
    append_row(folder.path(), "prompts.csv", &[("prompt", "Draw.")]).expect("begun");
    assert_eq!(
        fs::read_to_string(folder.path().join("prompts.csv")).expect("read"),
        "prompt,for,where\nDraw.,,\n"
    );
}

#[test]
fn a_place_outside_the_folder_or_the_format_is_refused() {
    let folder = in_folder("words.csv", WORDS);
    for place in [
        "../x.toml#a",
        "/x.toml#a",
        "a//b.toml#c",
        "words.csv#limpet/colour",
        "words.csv#whelk/meaning",
        "notes.txt#a",
        "lessons/a.md#closing",
        "kept/a.json#b",
    ] {
        assert!(write_field(folder.path(), &Place::parse(place), &text("x")).is_err(), "{place}");
    }
    assert_eq!(fs::read_to_string(folder.path().join("words.csv")).expect("read"), WORDS);
    assert_eq!(fs::read_dir(folder.path()).expect("listed").count(), 1);
}

#[test]
fn the_words_to_edit_are_given_as_written() {
    let folder = in_folder("lessons/a.md", LESSON);
    fs::write(folder.path().join("words.csv"), WORDS).expect("written");
    let given = |place: &str| source_of(folder.path(), &Place::parse(place));
    assert_eq!(given("lessons/a.md#reading/1").as_deref(), Some("One [about 20](fact:a) two."));
    assert_eq!(given("lessons/a.md#front/title").as_deref(), Some("Homeward"));
    assert_eq!(given("words.csv#limpet/meaning").as_deref(), Some("a snail, with a cone"));
    assert_eq!(given("words.csv#whelk/meaning"), None);
    assert_eq!(given("../words.csv#limpet/meaning"), None);
}

#[cfg(unix)]
#[test]
fn what_cannot_be_written_is_not_lost() {
    use std::os::unix::fs::PermissionsExt;
    let folder = in_folder("study.toml", SETTINGS);
    let path = folder.path().join("study.toml");
    fs::set_permissions(&path, fs::Permissions::from_mode(0o444)).expect("set");
    let finding = write_field(folder.path(), &Place::new("study.toml", "title"), &text("x"))
        .expect_err("read only");
    assert_eq!(finding.message, "`study.toml` could not be written: writing is not allowed there");
    assert!(finding.remedies.iter().any(|r| r.contains("nothing was lost")));
    assert_eq!(fs::read_to_string(&path).expect("read"), SETTINGS);
    fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).expect("set");
    write_field(folder.path(), &Place::new("study.toml", "title"), &text("x")).expect("written");
    assert_eq!(
        fs::metadata(&path).expect("there").permissions().mode() & 0o777,
        0o640,
        "the file keeps who may read it"
    );
    // A folder where a file should be: the rename fails, and no part of a file stays behind.
    fs::create_dir(folder.path().join("words.csv")).expect("made");
    assert!(super::atomic::replace(&folder.path().join("words.csv"), b"x").is_err());
    assert_eq!(fs::read_dir(folder.path()).expect("listed").count(), 2);
}

#[test]
fn a_full_disk_is_named() {
    // Linux answers every write to /dev/full with “no space left”.
    if !Path::new("/dev/full").exists() {
        return;
    }
    let error = fs::OpenOptions::new()
        .write(true)
        .open("/dev/full")
        .and_then(|mut f| std::io::Write::write_all(&mut f, b"x"))
        .expect_err("full");
    assert_eq!(
        super::refused("words.csv", &error).message,
        "`words.csv` could not be written: the disk is full"
    );
}

#[test]
fn what_the_author_saves_in_between_is_kept() {
    let folder = in_folder("study.toml", "title = \"A\"\n");
    let path = folder.path().join("study.toml");
    let rounds = std::cell::Cell::new(0);
    let until = |last: u32| {
        let (path, rounds) = (path.clone(), &rounds);
        move |text: &str| {
            if rounds.get() < last {
                rounds.set(rounds.get() + 1);
                fs::write(&path, format!("{text}# {}\n", rounds.get())).expect("saved");
            }
            Ok(format!("{text}ages = [3, 18]\n"))
        }
    };
    super::change(folder.path(), "study.toml", until(1)).expect("written at the second try");
    let kept = "title = \"A\"\n# 1\nages = [3, 18]\n";
    assert_eq!(fs::read_to_string(&path).expect("read"), kept);
    let finding = super::change(folder.path(), "study.toml", until(99)).expect_err("never at rest");
    assert_eq!(finding.message, "`study.toml` keeps changing");
    assert_eq!(fs::read_to_string(&path).expect("read"), format!("{kept}# 2\n# 3\n# 4\n"));
}

/// All fields that hold words in the sample texts.
fn fields() -> Vec<(&'static str, &'static str, String)> {
    let mut all = Vec::new();
    for field in ["id", "title", "page-set/lesson/1", "page-set/lesson/2/kind"] {
        all.push(("study.toml", SETTINGS, field.to_owned()));
    }
    for field in ["limpet/meaning", "home scar/meaning", "home scar/where", "limpet~2/where"] {
        all.push(("words.csv", WORDS, field.to_owned()));
    }
    all.push(("lessons/a.md", LESSON, "front/title".to_owned()));
    all.push(("lessons/a.md", LESSON, "front/subject/1/name".to_owned()));
    all
}

proptest! {
    #[test]
    fn every_other_byte_stays(which in 0_usize..10, value in "[a-zé\"'\\\\,;#\\[\\]{}= ]{0,20}") {
        let (file, before, field) = fields().swap_remove(which);
        let place = Place::new(file, field);
        let at = bytes(before, &place).expect("a field of the sample");
        let folder = in_folder(file, before);
        write_field(folder.path(), &place, &text(&value)).expect("written");
        let after = fs::read_to_string(folder.path().join(file)).expect("read");
        prop_assert_eq!(&after[..at.start], &before[..at.start]);
        prop_assert!(after.ends_with(&before[at.end..]));
        prop_assert_eq!(source(&after, &place), Some(value));
    }

    #[test]
    fn sections_change_alone(which in 0_usize..3, value in "[a-z][a-zé *#|.]{0,30}") {
        let place = Place::new("lessons/a.md", ["opening/1", "reading/3", "more/1"][which]);
        let at = markdown_spans(LESSON, "lessons/a.md")[&place].clone();
        let folder = in_folder("lessons/a.md", LESSON);
        write_field(folder.path(), &place, &text(&value)).expect("written");
        let after = fs::read_to_string(folder.path().join("lessons/a.md")).expect("read");
        prop_assert_eq!(after, spliced(LESSON, at, value.trim()));
    }
}

//! What a folder becomes: texts, facts, order, page sets, names.

use findings::{Place, Severity};
use study::{
    ActivityForm, Band, Block, Compared, Entry, Files, Read, Said, Span, Step, Study, Value,
    read_files, show,
};

fn read(entries: &[(&str, &str)]) -> Read {
    let mut files = Files { folder: "the-shore".into(), ..Files::default() };
    for (path, text) in entries {
        files.insert(*path, text.as_bytes());
    }
    read_files(&files)
}

/// The study, which must be free of everything above a hint.
fn clean(entries: &[(&str, &str)]) -> Study {
    let read = read(entries);
    let worst: Vec<String> = read
        .findings
        .iter()
        .filter(|f| f.severity > Severity::Hint)
        .map(|f| show(f, &read.lines))
        .collect();
    assert!(worst.is_empty(), "{}", worst.join("\n"));
    read.study.expect("a study without errors")
}

fn words(text: &[Block]) -> Vec<String> {
    text.iter().flat_map(Block::lines).map(Said::plain).collect()
}

const SETTINGS: (&str, &str) = ("study.toml", "title = \"The Shore\"\n");
const FACTS: (&str, &str) = (
    "facts.csv",
    "id,statement,value,unit,source\nage,A limpet can live for about 20 years.,about 20,years,A museum\n",
);

#[test]
fn a_folder_with_a_title_and_twelve_words_is_a_study() {
    let twelve: String = ('a'..='l').map(|c| format!("word{c}\n")).collect();
    let study = clean(&[SETTINGS, ("words.csv", &format!("word\n{twelve}"))]);
    assert_eq!(study.words.len(), 12);
    assert!(study.words.iter().all(|w| w.puzzle && w.wherever.is_empty() && w.meaning.is_none()));
    assert_eq!(
        (study.language.as_str(), study.issue.as_str(), study.look.as_str()),
        ("en", "1.0", "strand")
    );
    assert!(study.page_set.is_none() && study.date.is_none());
}

#[test]
fn facts_are_filled_in_and_keep_the_authors_words() {
    let lesson = "+++\ntitle = \"A\"\n+++\n## Reading\nIt lives [](fact:age), *some [twenty years](fact:age)*.\n";
    let study = clean(&[SETTINGS, FACTS, ("lessons/a.md", lesson)]);
    let text = &study.lessons[0].readings[0].text;
    assert_eq!(words(text), ["It lives about 20 years, some twenty years."]);
    let said = text[0].lines()[0];
    assert_eq!(said.facts(), ["age", "age"]);
    assert_eq!(said.at, Place::parse("lessons/a.md#reading/1"));
    assert!(matches!(&said.spans[1], Span::Fact { id, .. } if id == "age"));
}

#[test]
fn a_lesson_has_all_its_parts() {
    let lesson = "+++\ntitle = \"Staying\"\nages = [5, 12]\nready = [\"pencil\", \"*two* colours\"]\nsources = [\"age\"]\n\
        [[subject]]\nname = \"limpet\"\ntitle = \"The limpet\"\n[subject.pages]\nleave-out = [\"maze\"]\n[subject.pages.maze-b]\nagain = 2\n\
        [[subject]]\nname = \"mussel\"\n[[activity]]\ntitle = \"Hold\"\nform = \"building\"\nminutes = 20\ntags = [\"small parts\"]\n\
        [[compare]]\naspect = \"shell\"\nfirst = \"cone\"\nsecond = \"halves\"\n[[compare]]\naspect = \"home\"\nboth = \"rock\"\n+++\n\
        ## Opening\nHello.\n\n## Reading: Glue\n\n> A quotation.\n\n### Below\n- one\n- two\n\n| a | b |\n|---|---|\n| 1 | 2 |\n\
        ## One thing more\nMore.\n## Activity\nWhy.\n### Have ready\n- glue\n### Steps\n1. Do.\n2. Wait.\n### What happened\n| n | w |\n|--|--|\n| 1 | |\n### The answer\nIt holds.\n### Ask\n- Why?\n";
    let older = "+++\ntitle = \"Older\"\n+++\nLong words.\n";
    let study = clean(&[
        SETTINGS,
        FACTS,
        ("lessons/staying.md", lesson),
        ("lessons/staying.reading-13-18.md", older),
    ]);
    let lesson = &study.lessons[0];
    assert_eq!((lesson.ages.from, lesson.ages.to, lesson.band), (5, 12, Band::B));
    assert_eq!(lesson.ready.iter().map(Said::plain).collect::<Vec<_>>(), ["pencil", "two colours"]);
    assert_eq!(lesson.sources, ["age"]);
    assert_eq!(
        lesson.subjects.iter().map(|s| s.title.plain()).collect::<Vec<_>>(),
        ["The limpet", "Mussel"]
    );
    assert_eq!(lesson.subjects[0].pages.leave_out[0].plain(), "maze");
    assert_eq!(lesson.subjects[0].pages.options["maze-b"]["again"], Value::Number(2));
    assert!(matches!(
        lesson.compare.iter().map(|r| &r.what).collect::<Vec<_>>()[..],
        [Compared::Each(..), Compared::Both(..)]
    ));
    let bands: Vec<(Band, String)> =
        lesson.readings.iter().map(|r| (r.band, r.title.plain())).collect();
    assert_eq!(bands, [(Band::B, "Glue".into()), (Band::D, "Older".into())]);
    let kinds: Vec<&str> = lesson.readings[0]
        .text
        .iter()
        .map(|b| match b {
            Block::Para { .. } => "para",
            Block::Heading { level: 1, .. } => "heading",
            Block::Heading { .. } => "deep heading",
            Block::List { .. } => "list",
            Block::Quote { .. } => "quote",
            Block::Table { .. } => "table",
        })
        .collect();
    assert_eq!(kinds, ["quote", "heading", "list", "table"]);
    let activity = &lesson.activities[0];
    assert_eq!((activity.form, activity.minutes), (ActivityForm::Building, Some(20)));
    assert_eq!(activity.tags, ["small-parts"]);
    assert_eq!(activity.steps.iter().map(Said::plain).collect::<Vec<_>>(), ["Do.", "Wait."]);
    assert_eq!(activity.steps[1].at, Place::parse("lessons/staying.md#activity/1/steps/2"));
    assert_eq!(activity.table[1].iter().map(Said::plain).collect::<Vec<_>>(), ["1", ""]);
    assert_eq!(words(activity.answer.as_deref().expect("an answer")), ["It holds."]);
}

#[test]
fn lines_stay_lines_for_the_youngest_only() {
    let text = "## Reading\nOne.\nTwo.\n";
    for (band, breaks) in [("3-6", 1), ("7-9", 0)] {
        let lesson = format!("+++\ntitle = \"A\"\nband = \"{band}\"\n+++\n{text}");
        let study = clean(&[SETTINGS, ("lessons/a.md", &lesson)]);
        let said = study.lessons[0].readings[0].text[0].lines()[0].clone();
        assert_eq!(said.spans.iter().filter(|s| **s == Span::Break).count(), breaks);
        assert_eq!(said.plain(), "One. Two.");
    }
}

#[test]
fn the_order_is_the_authors_and_then_the_names() {
    let lesson = |title: &str| format!("+++\ntitle = \"{title}\"\n+++\n");
    let (a, b, c, d, e) = (lesson("A"), lesson("B"), lesson("C"), lesson("D"), lesson("E"));
    let study = clean(&[
        ("study.toml", "title = \"S\"\norder = [\"late\", \"middle\"]\n"),
        ("lessons/early.md", &a),
        ("lessons/late.md", &b),
        ("parts/middle/part.toml", "title = \"M\"\norder = [\"two\"]\n"),
        ("parts/middle/one.md", &c),
        ("parts/middle/two.md", &d),
        ("parts/zone/three.md", &e),
    ]);
    let names: Vec<&str> = study.lessons.iter().map(|l| l.name.as_str()).collect();
    assert_eq!(names, ["late", "two", "one", "early", "three"]);
    assert_eq!(study.order, [Step::Lesson(0), Step::Part(0), Step::Lesson(3), Step::Part(1)]);
    assert_eq!((study.parts[0].lessons.as_slice(), study.lessons[2].part), (&[1, 2][..], Some(0)));
    assert_eq!(study.parts[1].title.plain(), "Zone");
}

#[test]
fn page_sets_keep_every_device() {
    let study = clean(&[
        (
            "study.toml",
            "title = \"S\"\n[page-set]\nfront = [\"cover\"]\nlesson = [\"subjects\", { one-of = [\"matching\", { kind = \"unscramble\", level = 2 }] }, { kind = \"pairs\", count = 3, name = \"Limpets all\", gap = true, list = [\"a\", \"b\"] }]\n",
        ),
        ("words.csv", "word\ntide\n"),
    ]);
    let set = study.page_set.expect("a page set");
    assert!(matches!(&set.front[0], Entry::Sheet(w) if w.kind == "cover" && w.count == 1));
    assert!(matches!(set.lesson[0], Entry::Subjects));
    let Entry::OneOf(slot) = &set.lesson[1] else { panic!("a slot") };
    assert_eq!(
        slot.iter().map(|w| w.kind.as_str()).collect::<Vec<_>>(),
        ["matching", "unscramble"]
    );
    assert_eq!(slot[1].options["level"], Value::Number(2));
    assert_eq!(slot[1].at, Place::parse("study.toml#page-set/lesson/2/one-of/2"));
    let Entry::Sheet(pairs) = &set.lesson[2] else { panic!("a sheet") };
    assert_eq!((pairs.count, pairs.name.as_deref()), (3, Some("limpets-all")));
    assert_eq!(pairs.options["gap"], Value::Flag(true));
    assert_eq!(
        pairs.options["list"],
        Value::List(vec![Value::Text("a".into()), Value::Text("b".into())])
    );
    assert!(!pairs.options.contains_key("kind") && !pairs.options.contains_key("count"));
}

#[test]
fn a_part_sets_the_pages_of_what_stands_in_it() {
    let part = "title = \"M\"\n[pages]\nlesson = [\"reading\"]\nsubject = [\"coloring\"]\nband = \"3-6\"\n";
    let lesson = "+++\ntitle = \"A\"\n[pages]\nsubject = [\"maze\"]\n+++\n";
    let study = clean(&[SETTINGS, ("parts/m/part.toml", part), ("parts/m/a.md", lesson)]);
    let pages = &study.parts[0].pages;
    assert_eq!(
        (pages.band, pages.at.clone()),
        (Some(Band::A), Place::parse("parts/m/part.toml#pages"))
    );
    assert!(matches!(pages.lesson.as_deref(), Some([Entry::Sheet(w)]) if w.kind == "reading"));
    assert!(
        matches!(study.lessons[0].pages.subject.as_deref(), Some([Entry::Sheet(w)]) if w.kind == "maze")
    );
    // A lesson has no lessons below it.
    let read = read(&[SETTINGS, ("lessons/a.md", &lesson.replace("subject", "lesson"))]);
    assert!(read.findings.iter().any(|f| f.code == "unknown-name"));
}

#[test]
fn one_gap_does_not_hide_what_is_ready() {
    let read = read(&[
        SETTINGS,
        ("lessons/good.md", "+++\ntitle = \"Good\"\n+++\n## Opening\nHello.\n"),
        ("lessons/bad.md", "+++\ntitle = Bad\n+++\n"),
        ("words.csv", "word,where\ntide,bad\nebb,good\nfoam,nowhere\n,good\n"),
    ]);
    let study = read.study.as_ref().expect("a study");
    assert_eq!(study.lessons.len(), 1);
    assert_eq!(
        study.words.iter().map(|w| w.word.plain()).collect::<Vec<_>>(),
        ["tide", "ebb", "foam"]
    );
    let errors: Vec<&str> = read
        .findings
        .iter()
        .filter(|f| f.severity == Severity::Error)
        .map(|f| f.code.as_str())
        .collect();
    // The unreadable lesson may hold the subject `nowhere`, so that name is not called unknown.
    assert_eq!(errors, ["settings-unreadable", "cell-empty"]);
}

#[test]
fn all_findings_of_a_file_are_collected() {
    let read = read(&[
        (
            "study.toml",
            "titel = \"x\"\nages = 3\ndate = \"soon\"\nlanguage = \"\\\\\"\n[inquiry]\nbox = []\n",
        ),
        ("words.csv", "word\ntide\n"),
    ]);
    let codes: Vec<&str> = read
        .findings
        .iter()
        .filter(|f| f.severity > Severity::Hint)
        .map(|f| f.code.as_str())
        .collect();
    for code in ["unknown-name", "wrong-form", "date-wrong", "language-odd", "title-missing"] {
        assert!(codes.contains(&code), "{code} is missing from {codes:?}");
    }
    assert_eq!(codes.iter().filter(|c| **c == "unknown-name").count(), 2);
}

#[test]
fn names_are_forgiven_their_spelling_with_a_hint() {
    let read = read(&[
        SETTINGS,
        ("lessons/Holding On.md", "+++\ntitle = \"A\"\npicture = \"Sea_Star.svg\"\n+++\n"),
        (
            "pictures/sea-star.svg",
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"-5 -5 40 30\"/>",
        ),
        (
            "pictures/sea-star.toml",
            "alt = \"A star\"\nauthor = \"A\"\nlicence = \"CC0-1.0\"\nmay-be-sold = \"yes\"\n[[point]]\nname = \"p\"\nx = 0.5\ny = -5\n",
        ),
        ("words.csv", "word;where\nstar;holding_on\n"),
    ]);
    assert!(read.findings.iter().all(|f| f.severity == Severity::Hint), "{:?}", read.findings);
    assert_eq!(read.findings.iter().filter(|f| f.code == "name-spelt").count(), 3);
    let study = read.study.expect("a study");
    assert_eq!(study.lessons[0].name, "holding-on");
    assert_eq!(study.words[0].wherever, ["holding-on"]);
    assert_eq!(study.lessons[0].picture.as_deref(), Some("sea-star"));
    let picture = &study.pictures["sea-star"];
    assert_eq!((picture.width, picture.points[0].x, picture.points[0].y), (40, 55, 0));
}

#[test]
fn a_picture_nobody_uses_wants_nothing() {
    let svg = "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 40 30\"/>";
    let study = clean(&[SETTINGS, ("words.csv", "word\ntide\n"), ("pictures/spare.svg", svg)]);
    assert_eq!(study.pictures["spare"].hash, blake3::hash(svg.as_bytes()).to_hex().as_str());
    assert_eq!(&*study.pictures["spare"].bytes, svg.as_bytes());
}

#[test]
fn a_folder_that_is_not_there_is_a_finding() {
    let read = study::read(std::path::Path::new("no/such/folder"));
    assert!(read.study.is_none());
    assert_eq!(
        read.findings.iter().map(|f| f.code.as_str()).collect::<Vec<_>>(),
        ["folder-missing"]
    );
}

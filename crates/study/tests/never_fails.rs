//! Reading never stops the program, whatever the files hold.

use proptest::prelude::*;
use study::{Files, read_files, show};

const PATHS: &[&str] = &[
    "study.toml",
    "introduction.md",
    "lessons/a.md",
    "lessons/a.reading-3-6.md",
    "parts/p/part.toml",
    "parts/p/b.md",
    "people/ann.md",
    "facts.csv",
    "words.csv",
    "questions.csv",
    "books.csv",
    "links.csv",
    "resources.csv",
    "hunt.csv",
    "prompts.csv",
    "figures.csv",
    "pictures/a.svg",
    "pictures/a.png",
    "pictures/a.jpg",
    "pictures/a.toml",
    "kept/x.json",
];

/// A file of every form that is in order.
fn good(path: &str) -> &'static str {
    match path {
        "study.toml" => {
            "title = \"Shore\"\nages = [3, 18]\ndate = \"2026-05-01\"\norder = [\"p\", \"a\"]\n[page-set]\nlesson = [\"reading\", { one-of = [\"maze\"] }, { kind = \"pairs\", count = 2 }]\n"
        }
        "lessons/a.md" | "parts/p/b.md" => {
            "+++\ntitle = \"A\"\nages = [4, 9]\n[[subject]]\nname = \"limpet\"\n[[activity]]\ntitle = \"Do\"\ntags = [\"water\"]\n[[compare]]\naspect = \"x\"\nboth = \"y\"\n+++\n# A\n## Opening\nWords [about 20](fact:x) and **bold**.\n## Reading: It\n> quote\n\n- a\n  - b\n\n| a | b |\n|---|---|\n| 1 | 2 |\n## Activity\n### Steps\n1. one\n### What happened\n| a |\n|---|\n| |\n"
        }
        "people/ann.md" => {
            "+++\nname = \"Ann\"\nborn = 1799\n[[when]]\nyear = \"1800\"\nwhat = \"x\"\n+++\nText.\n"
        }
        "parts/p/part.toml" => {
            "title = \"P\"\norder = [\"b\"]\n[pages]\nadd = [\"maze\"]\n[pages.maze]\nlevel = 2\n"
        }
        "pictures/a.toml" => {
            "alt = \"A\"\nmay-be-sold = \"ask\"\n[[point]]\nname = \"p\"\nx = 1\ny = 2.5\npiece = \"g\"\n[[piece]]\nid = \"g\"\n"
        }
        "pictures/a.svg" => {
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 4 4\"><g id=\"g\"><path style=\"fill:url(#a)\" d=\"M0 0\"/></g></svg>"
        }
        "facts.csv" => {
            "id,statement,value,unit,source\nx,Limpets live long,about 20,years,A museum\n"
        }
        "words.csv" => {
            "word,meaning,where,picture,puzzle\ntide,\"the sea, moving\",a;limpet,a,no\n"
        }
        "questions.csv" => {
            "id,where,for,question,answer,also,low,high,unit,lines,fact,band\nq,a,write,How many?,two,2,1,3,m,2,x,7-9\n"
        }
        "books.csv" => "title,author,year,isbn\nA,B,2001,978-0-306-40615-7\n",
        "links.csv" => "title,institution,address\nA,B,https://example.org/a\n",
        "resources.csv" => "form,title\nhear,A\n",
        "hunt.csv" => "item,picture\nshell,a\n",
        "prompts.csv" => "prompt,for\nDraw,little\n",
        "figures.csv" => "sentence,figure\nA,simile\n",
        "kept/x.json" => "{}",
        _ => "Some *text*.\n",
    }
}

fn look(files: &Files) {
    let read = read_files(files);
    for finding in &read.findings {
        assert!(!finding.message.is_empty() && !finding.message.ends_with('.'), "{finding:?}");
        assert!(!show(finding, &read.lines).is_empty());
    }
}

#[test]
fn the_good_files_are_good() {
    let mut files = Files::default();
    for path in PATHS.iter().filter(|p| !p.ends_with(".png") && !p.ends_with(".jpg")) {
        files.insert(*path, good(path).as_bytes());
    }
    let read = read_files(&files);
    let errors: Vec<String> = read
        .findings
        .iter()
        .filter(|f| f.severity == findings::Severity::Error)
        .map(|f| show(f, &read.lines))
        .collect();
    // The two lessons share a subject name, and one subject cannot be compared: those are the only faults.
    assert!(
        errors.iter().all(|e| e.contains("is taken") || e.contains("two subjects")),
        "{}",
        errors.join("\n")
    );
    assert!(read.study.is_some());
}

#[test]
fn deep_nesting_in_every_form() {
    let deep = 20_000;
    for (path, text) in [
        ("lessons/a.md", "> ".repeat(deep)),
        ("lessons/a.md", format!("## Opening\n{}", "- ".repeat(deep))),
        ("lessons/a.md", format!("## Opening\n{}a{}", "*a **b ".repeat(deep), "** *".repeat(deep))),
        ("lessons/a.md", format!("## Opening\n{}a{}", "![".repeat(deep), "](x)".repeat(deep))),
        ("study.toml", format!("a = {}{}", "[".repeat(deep), "]".repeat(deep))),
        ("study.toml", format!("a{} = 1", ".a".repeat(deep))),
        ("kept/x.json", "[".repeat(deep)),
        (
            "pictures/a.svg",
            format!(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 1 1\">{}{}</svg>",
                "<g>".repeat(deep),
                "</g>".repeat(deep)
            ),
        ),
    ] {
        let mut files = Files::default();
        files.insert("study.toml", &b"title = \"x\"\n"[..]);
        files.insert(path, text.into_bytes());
        look(&files);
    }
}

proptest! {
    #[test]
    fn random_bytes(which in 0..PATHS.len(), bytes in proptest::collection::vec(any::<u8>(), 0..300)) {
        let mut files = Files::default();
        files.insert("study.toml", &b"title = \"x\"\n"[..]);
        files.insert(PATHS[which], bytes);
        look(&files);
    }

    #[test]
    fn random_words_of_the_formats(which in 0..PATHS.len(), text in "(\\+\\+\\+\n|[a-z]{1,6} = |\\[|\\]|\\[\\[|\\{|\\}|\"|,|;|\n|#|## Opening\n|## Activity\n|### Steps\n|- |> |\\*|\\*\\*|\\[a\\]\\(fact:x\\)|<b>|<svg |viewBox=|\\||---|1|2\\.5|é| ){0,40}") {
        let mut files = Files::default();
        files.insert("study.toml", &b"title = \"x\"\n"[..]);
        files.insert(PATHS[which], text.into_bytes());
        look(&files);
    }

    /// A good study with one byte changed, dropped or doubled.
    #[test]
    fn one_byte_wrong(which in 0..PATHS.len(), at in any::<prop::sample::Index>(), how in 0..3, byte in any::<u8>()) {
        let mut files = Files::default();
        for path in PATHS {
            files.insert(*path, good(path).as_bytes());
        }
        let mut bytes = good(PATHS[which]).as_bytes().to_vec();
        let at = at.index(bytes.len());
        match how {
            0 => bytes[at] = byte,
            1 => { bytes.remove(at); }
            _ => bytes.insert(at, byte),
        }
        files.insert(PATHS[which], bytes);
        look(&files);
    }
}

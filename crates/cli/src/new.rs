//! `battledore new`: a study folder, ready to build; with words, a first word search at once.

use crate::args::New;
use crate::exit::Exit;
use crate::say::Say;

/// Lays the folder out.
pub fn run(args: &New, say: &Say) -> Exit {
    let words: Vec<String> = args.words.iter().flat_map(|w| split(w)).collect();
    let title = args.title.clone().unwrap_or_else(|| title_of(args));
    if let Err(findings) = study::new_study(&args.folder, &title, &words) {
        findings.iter().for_each(|f| say.finding(f));
        return Exit::Disk;
    }
    say.line(&format!("laid out {}", args.folder.display()));
    if words.is_empty() {
        say.line(&format!(
            "add words to words.csv, then: battledore build {}",
            args.folder.display()
        ));
        return Exit::Done;
    }
    first_word_search(args, say)
}

fn first_word_search(args: &New, say: &Say) -> Exit {
    let page = crate::args::Page {
        folder: args.folder.clone(),
        sheet: "word-search".to_owned(),
        out: Some(args.folder.join("word-search.pdf")),
        pdf: true,
        paper: crate::args::PaperName::Letter,
        ppi: 100,
        again: None,
    };
    let exit = crate::page::run(&page, say);
    say.line(&format!(
        "for the whole study with its key: battledore build {}",
        args.folder.display()
    ));
    exit
}

/// Words with commas, semicolons or line ends between.
fn split(words: &str) -> Vec<String> {
    words
        .split([',', ';', '\n'])
        .map(|w| w.split_whitespace().collect::<Vec<_>>().join(" "))
        .filter(|w| !w.is_empty())
        .collect()
}

/// The folder's name as a title: `night-wood` becomes `Night wood`.
fn title_of(args: &New) -> String {
    let name = args
        .folder
        .file_name()
        .map(|n| n.to_string_lossy().replace(['-', '_'], " "))
        .unwrap_or_default();
    let mut letters = name.trim().chars();
    match letters.next() {
        Some(first) => first.to_uppercase().chain(letters).collect(),
        None => "My study".to_owned(),
    }
}

//! `battledore kinds`: one id and one sentence a line, or one kind explained.

use crate::args::Kinds;
use crate::exit::Exit;
use crate::say::Say;
use findings::Finding;
use serde_json::json;
use sheets::words::{Words, words};
use sheets::{About, KINDS, Scope};

/// Prints the list, or the explanation.
pub fn run(args: &Kinds, say: &Say) -> Exit {
    match &args.kind {
        None => list(say),
        Some(id) => match sheets::find(id) {
            Some(kind) => explain(kind.about(), say),
            None => {
                let near = study::nearest(id, KINDS.iter().map(|k| k.about().id));
                let finding = Finding::error(
                    "kind-unknown",
                    format!("there is no type of sheet called `{id}`"),
                );
                say.finding(&match near {
                    Some(near) => finding.remedy(format!("did you mean `{near}`?")),
                    None => finding.remedy("see `battledore kinds` for all of them"),
                });
                return Exit::Usage;
            }
        },
    }
    Exit::Done
}

fn list(say: &Say) {
    if say.json() {
        let all: Vec<_> = KINDS.iter().map(|k| entry(k.about())).collect();
        println!("{}", json!({ "kinds": all }));
        return;
    }
    let wide = KINDS.iter().map(|k| k.about().id.len()).max().unwrap_or(0);
    for kind in KINDS {
        let about = kind.about();
        println!("{:wide$}  {}", about.id, word(&words(about.words, "en"), "says"));
    }
}

fn explain(about: &About, say: &Say) {
    if say.json() {
        println!("{}", entry(about));
        return;
    }
    let words = words(about.words, "en");
    println!("{} ({})\n\n{}\n", word(&words, "name"), about.id, word(&words, "explains"));
    for section in doc_sections(about.doc) {
        println!("{section}\n");
    }
    let scopes: Vec<&str> = about.scopes.iter().map(|s| scope(*s)).collect();
    println!("May be a sheet of: {}", scopes.join(", "));
    println!("\nOptions, besides band, level, print, title and again:");
    if about.options.is_empty() {
        println!("  none");
    }
    for option in about.options {
        let says = word(&words, &format!("option-{}", option.name));
        println!("  {} = {}\n      {says}", option.name, option.kind.says());
    }
}

/// The four headings of the doc comment with their text.
fn doc_sections(doc: &str) -> Vec<String> {
    let text: Vec<&str> = doc
        .lines()
        .take_while(|l| l.starts_with("//!"))
        .map(|l| l.trim_start_matches("//!").trim_start())
        .collect();
    let text = text.join("\n");
    let (_, sections) = text.split_once("\n# ").unwrap_or(("", ""));
    sections.split("\n# ").filter(|s| !s.is_empty()).map(|s| plain(s.trim())).collect()
}

/// Code marks around links mean nothing to an author.
fn plain(section: &str) -> String {
    section.replace("[`", "`").replace("`]", "`")
}

fn entry(about: &About) -> serde_json::Value {
    let words = words(about.words, "en");
    let options: Vec<_> = about
        .options
        .iter()
        .map(|o| json!({ "name": o.name, "takes": o.kind.says(), "says": word(&words, &format!("option-{}", o.name)) }))
        .collect();
    let scopes: Vec<&str> = about.scopes.iter().map(|s| scope(*s)).collect();
    json!({
        "id": about.id,
        "name": word(&words, "name"),
        "says": word(&words, "says"),
        "explains": word(&words, "explains"),
        "of": scopes,
        "options": options,
    })
}

fn word(words: &Words, key: &str) -> String {
    words.get(key).cloned().unwrap_or_default()
}

fn scope(scope: Scope) -> &'static str {
    match scope {
        Scope::Study => "the study",
        Scope::Part => "a part",
        Scope::Lesson => "a lesson",
        Scope::Subject => "a subject",
    }
}

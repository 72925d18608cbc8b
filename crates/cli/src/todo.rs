//! `battledore todo`: what is still wanted, the next three things first.

use crate::args::Folder;
use crate::build::open;
use crate::exit::Exit;
use crate::say::{Say, counted, list};
use findings::{Finding, Findings};
use serde_json::json;
use study::Lines;

/// Prints the list.
pub fn run(args: &Folder, say: &Say) -> Exit {
    let (study, mut findings, lines, _) = match open(&args.folder, say) {
        Ok(opened) => opened,
        Err(exit) => return exit,
    };
    let cache = pack::Cache::of(&args.folder);
    let proved = pack::prove(&study, &cache);
    findings.append(proved.findings.clone());
    let todo = pack::todo::todo(&study, &proved.gathered, &findings);
    if say.json() {
        let next = list(&Findings(todo.next), &lines);
        let rest = list(&Findings(todo.rest), &lines);
        println!("{}", json!({ "next": next, "rest": rest, "pictures": todo.pictures }));
        return Exit::Done;
    }
    if todo.next.is_empty() && todo.pictures.is_empty() {
        say.line("nothing is wanted: the study can be printed as a clean copy");
        return Exit::Done;
    }
    items(say, "next", &todo.next, &lines);
    items(say, "after that", &todo.rest, &lines);
    pictures(say, &todo.pictures);
    Exit::Done
}

fn items(say: &Say, heading: &str, items: &[Finding], lines: &Lines) {
    if items.is_empty() {
        return;
    }
    say.line(&format!("{heading}:"));
    for finding in items {
        let line = finding.place.as_ref().and_then(|p| lines.spot(p)).map(|s| s.line);
        let at = finding.place.as_ref().map(|p| match line {
            Some(line) => format!("{}:{line}", p.file),
            None => p.file.clone(),
        });
        say.line(&format!("  [ ] {}  ({})", finding.message, at.unwrap_or_default()));
        for step in &finding.remedies {
            say.line(&format!("        {step}"));
        }
    }
}

fn pictures(say: &Say, pictures: &[pack::todo::PictureWanted]) {
    if pictures.is_empty() {
        return;
    }
    say.line("pictures:");
    for picture in pictures {
        let state = if picture.missing { "wanted" } else { "points to mark" };
        say.line(&format!("  [ ] {} ({state}), used by {}", picture.name, uses(&picture.uses)));
        if !picture.points.is_empty() {
            say.line(&format!("        points: {}", picture.points.join(", ")));
        }
    }
}

fn uses(all: &[String]) -> String {
    match all {
        [] => "nothing yet".to_owned(),
        [one] => one.clone(),
        [first, rest @ ..] => format!("{first} and {}", counted(rest.len(), "other", "others")),
    }
}

//! What the compiler cannot check: which room may know which, how large files grow, words that must not appear.

use std::fs;
use std::path::{Path, PathBuf};

/// Rooms and the rooms that each may depend on (outside tests).
const MAY_USE: &[(&str, &[&str])] = &[
    ("findings", &[]),
    ("study", &["findings"]),
    ("pictures", &["findings"]),
    ("craft", &["findings"]),
    ("proof", &["findings"]),
    ("sheets", &["findings", "study", "pictures", "craft", "proof"]),
    ("press", &["findings", "proof", "pictures"]),
    ("pack", &["findings", "study", "sheets", "press", "proof", "craft", "pictures"]),
];

/// Largest file, in lines.
const MOST_LINES: usize = 400;

/// All checks; the list of breaches, or a word that all is well.
pub fn check(root: &Path) -> Result<String, String> {
    let mut wrong = Vec::new();
    for (room, may) in MAY_USE {
        wrong.extend(directions(root, room, may));
    }
    let mut sources = Vec::new();
    for top in ["crates", "xtask", "benches"] {
        collect(&root.join(top), &mut sources);
    }
    sources.sort();
    for path in &sources {
        let text = fs::read_to_string(path).map_err(|e| format!("{}: {e}", path.display()))?;
        let name = path.strip_prefix(root).unwrap_or(path).display().to_string();
        wrong.extend(source(&name, &text));
    }
    if wrong.is_empty() {
        Ok(format!("tidy: {} files", sources.len()))
    } else {
        Err(wrong.join("\n"))
    }
}

fn directions(root: &Path, room: &str, may: &[&str]) -> Vec<String> {
    let path = root.join("crates").join(room).join("Cargo.toml");
    let Ok(text) = fs::read_to_string(&path) else {
        return vec![format!("{}: cannot be read", path.display())];
    };
    let body = text.split("[dev-dependencies]").next().unwrap_or_default();
    let rooms: Vec<&str> = MAY_USE.iter().map(|(r, _)| *r).collect();
    body.lines()
        .filter_map(|l| l.split(['.', ' ', '=']).next())
        .filter(|d| rooms.contains(d) && *d != room && !may.contains(d))
        .map(|d| format!("{room} must not depend on {d}"))
        .chain(
            (room != "press" && body.lines().any(|l| l.starts_with("typst")))
                .then(|| format!("{room} must not link typst")),
        )
        .collect()
}

fn collect(folder: &Path, out: &mut Vec<PathBuf>) {
    let Ok(entries) = fs::read_dir(folder) else { return };
    for path in entries.flatten().map(|e| e.path()) {
        if path.is_dir() {
            if path.file_name().is_some_and(|n| n != "target") {
                collect(&path, out);
            }
        } else if path.extension().is_some_and(|e| e == "rs" || e == "typ") {
            out.push(path);
        }
    }
}

fn source(name: &str, text: &str) -> Vec<String> {
    let mut wrong = Vec::new();
    let lines = text.lines().count();
    if lines > MOST_LINES {
        wrong.push(format!("{name}: {lines} lines, {MOST_LINES} at most"));
    }
    if name.ends_with(".rs") && !text.starts_with("//!") {
        wrong.push(format!("{name}: opens without a sentence that says what it is"));
    }
    // Put together here, so that this file does not find itself.
    for word in [
        concat!("unwrap_or_", "panic"),
        concat!("db", "g!("),
        concat!("to", "do!("),
        concat!("FIX", "ME"),
    ] {
        if text.contains(word) {
            wrong.push(format!("{name}: `{word}`"));
        }
    }
    wrong
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_tree_is_tidy() {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().expect("root");
        if let Err(wrong) = check(root) {
            panic!("{wrong}");
        }
    }

    #[test]
    fn faults_are_seen() {
        assert_eq!(source("a.rs", "fn f() {}\n").len(), 1, "no opening sentence");
        assert_eq!(source("a.rs", &("//! A.\n".repeat(401))).len(), 1, "too long");
        assert_eq!(source("a.rs", concat!("//! A.\n// FIX", "ME\n")).len(), 1, "unfinished");
    }
}

//! Lays out the folder of a new kind from the files in `xtask/src/kind`, and adds its two lines to the registry.

use std::fs;
use std::path::Path;

const FILES: &[(&str, &str)] = &[
    ("mod.rs", include_str!("kind/mod.rs.txt")),
    ("needs.rs", include_str!("kind/needs.rs.txt")),
    ("make.rs", include_str!("kind/make.rs.txt")),
    ("check.rs", include_str!("kind/check.rs.txt")),
    ("tests.rs", include_str!("kind/tests.rs.txt")),
    ("page.typ", include_str!("kind/page.typ.txt")),
    ("words.toml", include_str!("kind/words.toml.txt")),
];

/// Writes the folder and the registry lines; refuses a name that is taken or not a name.
pub fn lay_out(root: &Path, name: &str) -> Result<String, String> {
    if !name.split('-').all(|w| !w.is_empty() && w.chars().all(|c| c.is_ascii_lowercase())) {
        return Err(format!(
            "`{name}` is no name for a kind: use lower-case words with hyphens between"
        ));
    }
    let module = name.replace('-', "_");
    let kinds = root.join("crates/sheets/src/kinds");
    let folder = kinds.join(&module);
    if folder.exists() {
        return Err(format!("there is a kind `{name}` already"));
    }
    let registry = root.join("crates/sheets/src/kinds.rs");
    let old = fs::read_to_string(&registry).map_err(|e| e.to_string())?;
    let new = registered(&old, name)?;
    fs::create_dir_all(&folder).map_err(|e| e.to_string())?;
    for (file, text) in FILES {
        fs::write(folder.join(file), filled(text, name)).map_err(|e| e.to_string())?;
    }
    fs::write(&registry, new).map_err(|e| e.to_string())?;
    Ok(format!(
        "laid out crates/sheets/src/kinds/{module} and registered `{name}`; see CONTRIBUTING.md for the next step"
    ))
}

fn filled(text: &str, name: &str) -> String {
    text.replace("{id}", name)
        .replace("{Type}", &type_name(name))
        .replace("{name}", &name.replace('-', " "))
}

/// `word-search` becomes `WordSearch`.
fn type_name(name: &str) -> String {
    name.split('-')
        .map(|w| {
            let mut letters = w.chars();
            letters
                .next()
                .map(|c| c.to_ascii_uppercase())
                .into_iter()
                .chain(letters)
                .collect::<String>()
        })
        .collect()
}

/// The registry with the two lines of the new kind, each in its sorted place.
fn registered(old: &str, name: &str) -> Result<String, String> {
    let module = name.replace('-', "_");
    let mod_line = format!("pub mod {module};");
    let entry = format!("    &{module}::{},", type_name(name));
    let lines: Vec<&str> = old.lines().collect();
    let with_mod = insert_sorted(&lines, "pub mod ", &mod_line);
    let owned: Vec<&str> = with_mod.iter().map(String::as_str).collect();
    let open = owned
        .iter()
        .position(|l| l.starts_with("pub static KINDS"))
        .ok_or("no `KINDS` in kinds.rs")?;
    let mut all: Vec<String> = with_mod.clone();
    if all[open].ends_with("&[];") {
        all[open] = all[open].replace("&[];", "&[");
        all.insert(open + 1, "];".to_owned());
    }
    let at = (open + 1..all.len())
        .find(|i| all[*i].trim() == "];" || all[*i].as_str() > entry.as_str())
        .ok_or("`KINDS` does not end")?;
    all.insert(at, entry);
    Ok(all.join("\n") + "\n")
}

fn insert_sorted(lines: &[&str], prefix: &str, new: &str) -> Vec<String> {
    let mut out: Vec<String> = lines.iter().map(|l| (*l).to_owned()).collect();
    let later = out.iter().position(|l| l.starts_with(prefix) && l.as_str() > new);
    let last = out.iter().rposition(|l| l.starts_with(prefix)).map(|i| i + 1);
    let first_use = out.iter().position(|l| l.starts_with("use "));
    match later.or(last) {
        Some(at) => out.insert(at, new.to_owned()),
        None => {
            let at = first_use.unwrap_or(out.len());
            out.insert(at, new.to_owned());
            out.insert(at + 1, String::new());
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn two_lines_go_to_their_sorted_places() {
        let old = "//! Doc.\n\npub mod cover;\npub mod maze;\n\nuse x;\n\npub static KINDS: &[&dyn AnyKind] = &[\n    &cover::Cover,\n    &maze::Maze,\n];\n";
        let new = registered(old, "letter-code").expect("registers");
        let added: Vec<&str> = new.lines().filter(|l| !old.lines().any(|o| o == *l)).collect();
        assert_eq!(added, ["pub mod letter_code;", "    &letter_code::LetterCode,"]);
        assert!(
            new.find("cover;") < new.find("letter_code;")
                && new.find("letter_code;") < new.find("maze;")
        );
        assert!(
            new.find("Cover,") < new.find("LetterCode,")
                && new.find("LetterCode,") < new.find("Maze,")
        );
    }

    #[test]
    fn odd_names_are_refused() {
        for name in ["", "Maze", "two words", "-maze", "maze-", "maze2", "../maze"] {
            assert!(lay_out(Path::new("/nowhere"), name).is_err(), "{name}");
        }
    }
}

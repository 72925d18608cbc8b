//! Ids minted once and written into the author's files, where they are missing.

use crate::files::Files;
use crate::ids::digits;
use crate::toml_text::{self, Node};
use crate::write::{change, set_after_first, spliced, with_front};
use findings::{Finding, Findings};
use std::collections::BTreeSet;
use std::hash::{BuildHasher, Hasher, RandomState};
use std::path::Path;

/// Writes an id into every file of the study where one is missing: study, parts, lessons, subjects, people.
///
/// Files whose settings cannot be read are left alone; reading reports them.
/// Every other byte stays as it is.
///
/// # Errors
/// A finding when the folder cannot be opened.
pub fn mint_ids(folder: &Path) -> Result<Findings, Finding> {
    // Fresh keys at each call: the only chance in this crate.
    let chance = |n: u64| {
        let mut hasher = RandomState::new().build_hasher();
        hasher.write_u64(n);
        hasher.finish().to_le_bytes()
    };
    let mut seed = [0; 16];
    let (one, two) = seed.split_at_mut(8);
    one.copy_from_slice(&chance(1));
    two.copy_from_slice(&chance(2));
    mint_ids_with(folder, seed)
}

/// The same with given chance, so that the same folder and chance give the same ids.
///
/// # Errors
/// A finding when the folder cannot be opened.
pub fn mint_ids_with(folder: &Path, chance: [u8; 16]) -> Result<Findings, Finding> {
    let files = Files::load(folder)?;
    let mut findings = Findings::none();
    let mut mint = Mint { chance: format!("{chance:?}"), taken: taken(&files) };
    let paths: Vec<&String> = files.entries.keys().filter(|path| prefix(path).is_some()).collect();
    for path in paths {
        let Some(prefix) = prefix(path) else { continue };
        let Some(text) = text(&files, path) else { continue };
        let Some(ids) = mint.wanted(&text, path, prefix) else { continue };
        if ids.is_empty() {
            continue;
        }
        let written = change(folder, path, |text| {
            Ok(with_ids(text, path, &ids).unwrap_or_else(|| text.to_owned()))
        });
        if let Err(finding) = written {
            findings.push(finding);
        }
    }
    Ok(findings)
}

/// Prefix of the id of a file's owner.
fn prefix(path: &str) -> Option<&'static str> {
    let parts: Vec<&str> = path.split('/').collect();
    match parts.as_slice() {
        ["study.toml"] => Some("st"),
        ["parts", _, "part.toml"] => Some("pt"),
        ["lessons", file] | ["parts", _, file]
            if file.ends_with(".md") && !file.contains(".reading") =>
        {
            Some("ls")
        }
        ["people", file] if file.ends_with(".md") => Some("pe"),
        _ => None,
    }
}

fn text(files: &Files, path: &str) -> Option<String> {
    let bytes = files.bytes(path, &mut Findings::none())?;
    String::from_utf8(bytes.to_vec()).ok()
}

/// Settings of a file: all of it, or its front matter.
fn settings<'a>(text: &'a str, path: &str) -> Option<&'a str> {
    if path.ends_with(".md") {
        text.get(toml_text::split(text, path).ok()?.settings)
    } else {
        Some(text)
    }
}

/// Ids that stand anywhere in the study.
fn taken(files: &Files) -> BTreeSet<String> {
    let mut taken = BTreeSet::new();
    for path in files.entries.keys().filter(|path| prefix(path).is_some()) {
        let Some(text) = text(files, path) else { continue };
        let Some(parsed) = settings(&text, path).and_then(|s| toml_text::parse(s, path, 1).ok())
        else {
            continue;
        };
        let root = Node::Table(parsed.as_table());
        let groups = std::iter::once(String::new())
            .chain((1..=subjects(root)).map(|n| format!("subject/{n}")));
        taken.extend(groups.filter_map(|group| id(root, &group)));
    }
    taken
}

fn subjects(root: Node<'_>) -> usize {
    match root.part("subject") {
        Some(Node::Tables(list)) => list.len(),
        Some(Node::Value(toml_edit::Value::Array(list))) => list.len(),
        _ => 0,
    }
}

/// A written id; an empty one counts as missing.
fn id(root: Node<'_>, group: &str) -> Option<String> {
    match root.at(group)?.part("id")? {
        Node::Value(value) => value.as_str().map(str::to_owned).filter(|id| !id.is_empty()),
        _ => None,
    }
}

struct Mint {
    chance: String,
    taken: BTreeSet<String>,
}

impl Mint {
    /// Groups of a file that want an id, each with a new one; none when its settings are unreadable.
    fn wanted(&mut self, text: &str, path: &str, prefix: &str) -> Option<Vec<(String, String)>> {
        let parsed = toml_text::parse(settings(text, path)?, path, 1).ok()?;
        let root = Node::Table(parsed.as_table());
        let mut ids = Vec::new();
        if root.part("id").is_none() {
            ids.push((String::new(), self.fresh(prefix, path, "")));
        }
        for n in 1..=if prefix == "ls" { subjects(root) } else { 0 } {
            let group = format!("subject/{n}");
            if root.at(&group).is_some_and(|g| g.part("id").is_none()) {
                let id = self.fresh("sj", path, &group);
                ids.push((group, id));
            }
        }
        Some(ids)
    }

    fn fresh(&mut self, prefix: &str, path: &str, group: &str) -> String {
        let mut tries = (0_u64..)
            .map(|n| format!("{prefix}-{}", digits(&[&self.chance, path, group, &n.to_string()])));
        // A free id turns up: there are four thousand million, and a study holds hundreds.
        let id = tries.find(|id| !self.taken.contains(id)).unwrap_or_default();
        self.taken.insert(id.clone());
        id
    }
}

/// The text with its ids, each below the first setting of its group.
fn with_ids(text: &str, path: &str, ids: &[(String, String)]) -> Option<String> {
    let front = path.ends_with(".md");
    let (text, bytes) = if front {
        let (text, front) = with_front(text, path).ok()?;
        (text, front.settings)
    } else {
        (text.to_owned(), 0..text.len())
    };
    let mut inner = text.get(bytes.clone())?.to_owned();
    for (group, id) in ids {
        inner = set_after_first(&inner, path, group, "id", id)?;
    }
    Some(spliced(&text, bytes, &inner))
}

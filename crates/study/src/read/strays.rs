//! Files that look like part of the study but are not where the format has them.

use super::Cx;
use crate::files::Files;
use crate::lists::LISTS;
use crate::names::nearest;
use findings::{Finding, Place};
use std::collections::BTreeSet;

const FOLDERS: &[&str] = &["lessons", "parts", "people", "pictures", "kept"];

/// Names that a slip has kept from being read. Other files of the author are left alone.
pub(super) fn look(files: &Files, cx: &mut Cx) {
    let known: Vec<&str> =
        LISTS.iter().map(|l| l.file).chain(["study.toml", "introduction.md"]).collect();
    let mut folders = BTreeSet::new();
    for path in files.entries.keys() {
        let found = match path.split_once('/') {
            Some((folder, _)) if folders.insert(folder) => {
                slip(folder, FOLDERS, "folder").map(|f| f.at(&Place::file(path)))
            }
            Some(("lessons", name)) | Some(("people", name)) if !name.ends_with(".md") => {
                Some(not_text(path, name))
            }
            Some(_) => None,
            None => spreadsheet(path)
                .or_else(|| slip(path, &known, "file").map(|f| f.at(&Place::file(path)))),
        };
        if let Some(finding) = found {
            cx.findings.push(finding);
        }
    }
}

fn slip(name: &str, known: &[&str], what: &str) -> Option<Finding> {
    if known.contains(&name) {
        return None;
    }
    let near = nearest(name, known.iter().copied())
        .filter(|near| strsim::damerau_levenshtein(near, &name.to_lowercase()) <= 2)?;
    Some(
        Finding::warning("not-read", format!("the {what} `{name}` is not read"))
            .remedy(format!("did you mean `{near}`?")),
    )
}

fn spreadsheet(path: &str) -> Option<Finding> {
    let (stem, ending) = path.rsplit_once('.')?;
    let sheet = ["xlsx", "xls", "ods", "numbers"].contains(&ending.to_lowercase().as_str());
    let list = LISTS.iter().any(|l| l.file.strip_suffix(".csv") == Some(stem));
    (sheet && list).then(|| {
        Finding::warning("not-read", format!("`{path}` is not read"))
            .at(&Place::file(path))
            .remedy(format!("save the table as `{stem}.csv` (“CSV UTF-8”)"))
    })
}

fn not_text(path: &str, name: &str) -> Finding {
    Finding::warning("not-read", format!("`{name}` is not read"))
        .at(&Place::file(path))
        .remedy("save the text as a plain text file whose name ends in .md")
}

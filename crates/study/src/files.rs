//! The files of a study as bytes by path: the only reading from the disk.

use crate::read::Cx;
use findings::{Finding, Findings, Place};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::sync::Arc;

/// Largest picture file that is read, in bytes (100 MB).
pub(crate) const LARGEST_PICTURE: u64 = 100_000_000;
/// Largest text file that is read, in bytes (20 MB).
const LARGEST_TEXT: u64 = 20_000_000;

/// One file as it was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Blob {
    /// Its bytes.
    Bytes(Arc<[u8]>),
    /// Left unread: larger than a study needs. Size in bytes.
    TooBig(u64),
    /// The disk refused it, in the system's words.
    Refused(String),
    /// No part of the format; only its name is known.
    Ignored,
}

/// All files of a study folder, by path with forward slashes.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Files {
    /// Name of the folder, for a study without a title.
    pub folder: String,
    /// What was found, by path.
    pub entries: BTreeMap<String, Blob>,
}

impl Files {
    /// Reads the folder. Files of no part of the format are named, not read.
    ///
    /// # Errors
    /// A finding when the folder itself is missing or cannot be listed.
    pub fn load(folder: &Path) -> Result<Self, Finding> {
        let name = folder.file_name().map(|n| n.to_string_lossy().into_owned());
        let mut files = Files { folder: name.unwrap_or_default(), entries: BTreeMap::new() };
        if !folder.is_dir() {
            return Err(Finding::error(
                "folder-missing",
                format!("there is no folder `{}`", files.folder),
            )
            .remedy("check the folder's name, or begin a new study there"));
        }
        let listed = list(folder, "", 0, &mut files.entries);
        listed.map_err(|e| {
            Finding::error(
                "folder-closed",
                format!("the folder `{}` cannot be opened: {e}", files.folder),
            )
            .remedy("check that you may read the folder")
        })?;
        Ok(files)
    }

    /// Adds or replaces a file, for studies that are not on a disk.
    pub fn insert(&mut self, path: impl Into<String>, bytes: impl Into<Vec<u8>>) {
        self.entries.insert(path.into(), Blob::Bytes(bytes.into().into()));
    }

    /// True when the folder holds such a file.
    pub fn has(&self, path: &str) -> bool {
        self.entries.contains_key(path)
    }

    /// Paths directly inside a folder of the study, in order.
    pub(crate) fn inside<'a>(
        &'a self,
        folder: &'a str,
    ) -> impl Iterator<Item = (&'a str, &'a str)> {
        self.entries.keys().filter_map(move |path| {
            let rest = path.strip_prefix(folder)?.strip_prefix('/')?;
            (!rest.contains('/')).then_some((path.as_str(), rest))
        })
    }

    /// The bytes of a file, or a finding when it is there but cannot be read.
    pub(crate) fn bytes(&self, path: &str, findings: &mut Findings) -> Option<Arc<[u8]>> {
        match self.entries.get(path)? {
            Blob::Bytes(bytes) => return Some(Arc::clone(bytes)),
            Blob::Ignored => {}
            Blob::TooBig(size) => findings.push(
                Finding::error(
                    "file-too-big",
                    format!("`{path}` is {} MB, too large to read", size / 1_000_000),
                )
                .at(&Place::file(path))
                .remedy("make it smaller: a text up to 20 MB, a picture up to 100 MB"),
            ),
            Blob::Refused(why) => findings.push(
                Finding::error("file-refused", format!("`{path}` cannot be opened: {why}"))
                    .at(&Place::file(path))
                    .remedy("check that you may read the file, and that no other program holds it"),
            ),
        }
        None
    }

    /// The text of a file, or a finding that says which byte is no text; also remembered for line numbers.
    pub(crate) fn text(&self, path: &str, cx: &mut Cx) -> Option<Arc<str>> {
        let bytes = self.bytes(path, &mut cx.findings)?;
        match decode(&bytes) {
            Ok(text) => {
                let text: Arc<str> = text.into();
                cx.texts.insert(path.to_owned(), Arc::clone(&text));
                Some(text)
            }
            Err((message, line)) => {
                cx.texts.insert(path.to_owned(), String::from_utf8_lossy(&bytes).into());
                cx.findings.push(
                    Finding::error("not-utf8", format!("`{path}` {message}"))
                        .at(&Place::new(path, format!("line {line}")))
                        .remedy(
                            "save the file again as UTF-8 (in a spreadsheet program: “CSV UTF-8”)",
                        ),
                );
                None
            }
        }
    }
}

/// UTF-8 text, or what is wrong and in which line.
fn decode(bytes: &[u8]) -> Result<&str, (String, usize)> {
    if bytes.starts_with(&[0xFF, 0xFE]) || bytes.starts_with(&[0xFE, 0xFF]) {
        return Err(("is saved as UTF-16, not as UTF-8".into(), 1));
    }
    let line = |at: usize| 1 + bytes.iter().take(at).filter(|b| **b == b'\n').count();
    match std::str::from_utf8(bytes) {
        Ok(text) => match text.find('\0') {
            Some(at) => Err((format!("is not a text file: byte {} is empty", at + 1), line(at))),
            None => Ok(text),
        },
        Err(e) => {
            let at = e.valid_up_to();
            Err((format!("cannot be read as text: byte {} is not UTF-8", at + 1), line(at)))
        }
    }
}

fn list(
    dir: &Path,
    prefix: &str,
    depth: usize,
    into: &mut BTreeMap<String, Blob>,
) -> std::io::Result<()> {
    for entry in fs::read_dir(dir)? {
        let entry = entry?;
        let name = entry.file_name().to_string_lossy().into_owned();
        if name.starts_with('.') || name.starts_with('~') || name.ends_with('~') {
            continue;
        }
        let path = if prefix.is_empty() { name } else { format!("{prefix}/{name}") };
        if entry.path().is_dir() {
            if depth < 2 {
                list(&entry.path(), &path, depth + 1, into)?;
            }
        } else {
            let blob = load(&entry.path(), &path);
            into.insert(path, blob);
        }
    }
    Ok(())
}

fn load(file: &Path, path: &str) -> Blob {
    let Some(limit) = limit(path) else { return Blob::Ignored };
    let size = fs::metadata(file).map_or(0, |m| m.len());
    if size > limit {
        return Blob::TooBig(size);
    }
    match fs::read(file) {
        Ok(bytes) => Blob::Bytes(bytes.into()),
        Err(e) => Blob::Refused(e.to_string()),
    }
}

/// Largest size that is read of a file at this path; none when it is no part of the format.
fn limit(path: &str) -> Option<u64> {
    let parts: Vec<&str> = path.split('/').collect();
    let (_, ending) = path.rsplit_once('.')?;
    let ending = ending.to_ascii_lowercase();
    match (parts.as_slice(), ending.as_str()) {
        ([_], "toml" | "md" | "csv") | (["lessons" | "people", _] | ["parts", _, _], "md") => {
            Some(LARGEST_TEXT)
        }
        (["parts", _, "part.toml"] | ["pictures", _], "toml") | (["kept", _], "json") => {
            Some(LARGEST_TEXT)
        }
        (["pictures", _], _) => Some(LARGEST_PICTURE),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::decode;

    #[test]
    fn the_byte_and_the_line_of_a_foreign_letter_are_named() {
        // 0xE9 is é in ISO 8859-1; alone it is no UTF-8 (RFC 3629).
        let (message, line) = decode(b"id,word\n1,caf\xe9\n").unwrap_err();
        assert_eq!(message, "cannot be read as text: byte 14 is not UTF-8");
        assert_eq!(line, 2);
        assert!(decode(b"\xff\xfea\0").unwrap_err().0.contains("UTF-16"));
        assert!(decode(b"a\n\0").unwrap_err().0.contains("byte 3"));
    }
}

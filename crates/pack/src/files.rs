//! Writing the finished files: whole or not at all, and nothing outside the chosen folder.

use findings::{Finding, Place};
use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};

/// Writes a file aside, syncs it, and renames it into place, so that a broken build never leaves half a PDF.
///
/// # Errors
/// A finding when the disk refuses; an older file of that name is then still whole.
pub fn write(folder: &Path, name: &str, bytes: &[u8]) -> Result<PathBuf, Finding> {
    let path = folder.join(name);
    let attempt = || -> std::io::Result<()> {
        fs::create_dir_all(folder)?;
        let mut aside = tempfile::Builder::new().prefix(".writing-").tempfile_in(folder)?;
        aside.write_all(bytes)?;
        aside.as_file().sync_all()?;
        // A temporary file is private; a finished PDF is read like any other file.
        readable(aside.as_file())?;
        aside.persist(&path).map_err(|e| e.error)?;
        Ok(())
    };
    match attempt() {
        Ok(()) => Ok(path),
        Err(e) => Err(Finding::error("file-not-written", format!("`{name}` could not be written ({})", plain(&e)))
            .at(&Place::file(name))
            .remedy("see that the folder can be written, that the disk is not full, and that no other program holds the file open")),
    }
}

#[cfg(unix)]
fn readable(file: &fs::File) -> std::io::Result<()> {
    use std::os::unix::fs::PermissionsExt as _;
    file.set_permissions(fs::Permissions::from_mode(0o644))
}

#[cfg(not(unix))]
fn readable(_: &fs::File) -> std::io::Result<()> {
    Ok(())
}

/// The reason in words that an author knows.
pub fn plain(e: &std::io::Error) -> &'static str {
    use std::io::ErrorKind as Kind;
    match e.kind() {
        Kind::NotFound => "the folder is not there",
        Kind::PermissionDenied => "you may not write there",
        Kind::ReadOnlyFilesystem => "the disk is read-only",
        Kind::StorageFull => "the disk is full",
        Kind::NotADirectory => "there is a file where a folder should be",
        Kind::IsADirectory => "there is a folder of that name",
        _ => "the disk refused",
    }
}

/// A title as a file name: lower-case letters and digits, hyphens between.
pub fn slug(title: &str) -> String {
    let mut out = String::new();
    for c in title.chars() {
        if c.is_alphanumeric() {
            out.extend(c.to_lowercase());
        } else if !out.ends_with('-') && !out.is_empty() {
            out.push('-');
        }
    }
    let out = out.trim_end_matches('-');
    if out.is_empty() { "study".to_owned() } else { out.to_owned() }
}

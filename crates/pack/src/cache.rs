//! Made sheets by content: an unchanged sheet is not made twice.

use crate::plan::Planned;
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

/// A folder of made sheets, or none when it cannot be written (the build then makes everything).
pub struct Cache {
    folder: Option<PathBuf>,
}

impl Cache {
    /// The cache inside a study: `.battledore/cache`. Only a convenience: it may be deleted at any time.
    pub fn of(study: &Path) -> Self {
        let folder = study.join(".battledore").join("cache");
        let folder = fs::create_dir_all(&folder).ok().map(|()| folder);
        Self { folder }
    }

    /// No cache: everything is made.
    pub fn none() -> Self {
        Self { folder: None }
    }

    /// Everything that a made sheet depends on.
    pub fn key(study: &str, sheet: &Planned, language: &str, needs: &str) -> String {
        let about = sheet.about();
        let mut hash = blake3::Hasher::new();
        let numbers = [about.rev, sheet.again, u32::from(sheet.level)].map(|n| n.to_string());
        let parts = [study, &sheet.id, about.id, sheet.band.name(), language, needs];
        for part in parts.into_iter().chain(numbers.iter().map(String::as_str)) {
            hash.update(&(part.len() as u64).to_le_bytes());
            hash.update(part.as_bytes());
        }
        hash.finalize().to_hex().to_string()
    }

    /// The stored sheet, if there is one that can be read.
    pub fn get(&self, key: &str) -> Option<Value> {
        let text = fs::read(self.path(key)?).ok()?;
        serde_json::from_slice(&text).ok()
    }

    /// Stores a sheet; a full or read-only disk only costs time at the next build.
    pub fn put(&self, key: &str, sheet: &Value) {
        let (Some(path), Some(folder)) = (self.path(key), &self.folder) else { return };
        let Ok(text) = serde_json::to_vec(sheet) else { return };
        // A reader never sees half a file: written aside, then renamed.
        let Ok(mut aside) = tempfile::NamedTempFile::new_in(folder) else { return };
        if std::io::Write::write_all(&mut aside, &text).is_ok() {
            let _ = aside.persist(path);
        }
    }

    fn path(&self, key: &str) -> Option<PathBuf> {
        self.folder.as_ref().map(|f| f.join(format!("{key}.json")))
    }
}

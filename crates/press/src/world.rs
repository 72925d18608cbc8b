//! What the typesetter may see while it works: the files of the desk, and nothing else.

use crate::desk::Desk;
use crate::fonts::shelf;
use crate::paths::Path;
use std::sync::OnceLock;
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, Source};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt, World};

/// The desk with a main source: the whole file or one sheet of it.
pub(crate) struct DeskWorld<'a> {
    pub(crate) desk: &'a Desk,
    pub(crate) main: Source,
    /// A file that stands in place of the desk's one, for a sheet that is laid alone.
    pub(crate) instead: Option<(Path, Bytes)>,
}

fn library() -> &'static LazyHash<Library> {
    static LIBRARY: OnceLock<LazyHash<Library>> = OnceLock::new();
    LIBRARY.get_or_init(|| LazyHash::new(Library::default()))
}

impl World for DeskWorld<'_> {
    fn library(&self) -> &LazyHash<Library> {
        library()
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &shelf().book
    }

    fn main(&self) -> FileId {
        self.main.id()
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        if id == self.main.id() {
            return Ok(self.main.clone());
        }
        self.desk.sources.get(&Path::of(id)).cloned().ok_or_else(|| missing(id))
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        let path = Path::of(id);
        match &self.instead {
            Some((other, bytes)) if *other == path => Ok(bytes.clone()),
            _ => match self.desk.files.get(&path) {
                Some(bytes) => Ok(bytes.clone()),
                None => self.source(id).map(|s| Bytes::from_string(s.text().to_owned())),
            },
        }
    }

    fn font(&self, index: usize) -> Option<Font> {
        shelf().fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        date(self.desk)
    }
}

/// The date of the file: from the study, never from the clock.
pub(crate) fn date(desk: &Desk) -> Option<Datetime> {
    let (year, month, day) = desk.job.document.date?;
    Datetime::from_ymd(year, month, day)
}

fn missing(id: FileId) -> FileError {
    FileError::NotFound(id.vpath().get_with_slash().into())
}

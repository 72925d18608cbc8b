//! The bare typesetter on the sources that the press generates.

use pictures::hand;
use press::Desk;
use std::collections::BTreeMap;
use typst::diag::{FileError, FileResult};
use typst::foundations::{Bytes, Datetime, Duration};
use typst::syntax::{FileId, RootedPath, Source, VirtualPath, VirtualRoot};
use typst::text::{Font, FontBook};
use typst::utils::LazyHash;
use typst::{Library, LibraryExt};
use typst_layout::PagedDocument;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards};

/// Sources, files and fonts, and nothing else.
pub struct World {
    library: LazyHash<Library>,
    book: LazyHash<FontBook>,
    fonts: Vec<Font>,
    main: FileId,
    sources: BTreeMap<&'static str, Source>,
    files: BTreeMap<&'static str, Bytes>,
}

impl World {
    pub fn new(desk: &Desk) -> Self {
        let mut fonts: Vec<Font> = hand::Cut::ALL
            .iter()
            .map(|cut| Font::new(Bytes::new(hand::font(*cut).unwrap()), 0).unwrap())
            .collect();
        let noto = [
            notosans::REGULAR_TTF,
            notosans::BOLD_TTF,
            notosans::ITALIC_TTF,
            notosans::BOLD_ITALIC_TTF,
        ];
        fonts.extend(noto.iter().map(|bytes| Font::new(Bytes::new(*bytes), 0).unwrap()));
        let (mut sources, mut files) = (BTreeMap::new(), BTreeMap::new());
        for (path, bytes) in desk.files() {
            if path.ends_with(".typ") {
                sources.insert(path, Source::new(id(path), String::from_utf8(bytes).unwrap()));
            } else {
                files.insert(path, Bytes::new(bytes));
            }
        }
        let main = id("/main.typ");
        sources.insert("/main.typ", Source::new(main, desk.main()));
        Self {
            library: LazyHash::new(Library::default()),
            book: LazyHash::new(FontBook::from_fonts(&fonts)),
            fonts,
            main,
            sources,
            files,
        }
    }

    /// Compiles and exports to the same standard as the press.
    pub fn pdf(&self) -> Vec<u8> {
        let document = typst::compile::<PagedDocument>(self).output.unwrap();
        let standards = PdfStandards::new(&[PdfStandard::Ua_1]).unwrap();
        typst_pdf::pdf(&document, &PdfOptions { standards, ..PdfOptions::default() }).unwrap()
    }
}

fn id(path: &str) -> FileId {
    RootedPath::new(VirtualRoot::Project, VirtualPath::new(path).unwrap()).intern()
}

fn find<T: Clone>(map: &BTreeMap<&'static str, T>, id: FileId) -> FileResult<T> {
    let path = id.get().vpath().get_with_slash();
    map.get(path).cloned().ok_or_else(|| FileError::NotFound(path.into()))
}

impl typst::World for World {
    fn library(&self) -> &LazyHash<Library> {
        &self.library
    }

    fn book(&self) -> &LazyHash<FontBook> {
        &self.book
    }

    fn main(&self) -> FileId {
        self.main
    }

    fn source(&self, id: FileId) -> FileResult<Source> {
        find(&self.sources, id)
    }

    fn file(&self, id: FileId) -> FileResult<Bytes> {
        find(&self.files, id)
    }

    fn font(&self, index: usize) -> Option<Font> {
        self.fonts.get(index).cloned()
    }

    fn today(&self, _offset: Option<Duration>) -> Option<Datetime> {
        None
    }
}

//! The files of one job in memory, kept between edits.

use crate::fonts::shelf;
use crate::letters::clean;
use crate::paths::{Path, plain};
use crate::templates::shared;
use crate::{Job, KindIn, PictureIn, SheetIn};
use findings::{Finding, Findings};
use serde_json::{Map, Value, json};
use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;
use typst::foundations::Bytes;
use typst::syntax::Source;
use typst::utils::hash128;

/// The kind whose page prints the answers of other kinds.
const KEY: &str = "key";

/// The kind whose page stands for a sheet that is not ready.
const WANTING: &str = "wanting";

/// A job laid out as files, ready to be typeset as a whole or sheet by sheet.
///
/// Keep one between edits: after [`Desk::replace`] only what changed is typeset anew.
#[derive(Clone)]
pub struct Desk {
    pub(crate) job: Arc<Job>,
    pub(crate) sources: BTreeMap<Path, Source>,
    pub(crate) files: BTreeMap<Path, Bytes>,
    /// Names of the pictures by the hash of their bytes, to know them again on the page.
    pub(crate) pictures: BTreeMap<u128, String>,
}

impl Desk {
    /// Lays the job out.
    ///
    /// # Errors
    /// When a name cannot be used, or a sheet is of a kind that the job lacks.
    pub fn new(job: Job) -> Result<Self, Findings> {
        let mut findings: Findings = shelf().faults.iter().map(|fault| unbuilt(fault)).collect();
        check_names(&job, &mut findings);
        if findings.has_errors() {
            return Err(findings);
        }
        let mut desk = Self {
            job: Arc::new(job),
            sources: shared().sources.iter().cloned().collect(),
            files: shared().files.iter().cloned().collect(),
            pictures: BTreeMap::new(),
        };
        desk.lay_files()?;
        Ok(desk)
    }

    /// The job that lies on the desk.
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// Puts a new state of one sheet in place of the old one.
    ///
    /// # Errors
    /// When the job has no sheet of this id, or lacks its kind.
    pub fn replace(&mut self, sheet: SheetIn) -> Result<(), Findings> {
        let Some(place) = self.job.sheets.iter().position(|s| s.id == sheet.id) else {
            return Err(no_sheet(&sheet.id));
        };
        if !self.job.kinds.contains_key(&sheet.kind) {
            return Err(no_kind(&sheet));
        }
        self.lay_sheet(&sheet)?;
        Arc::make_mut(&mut self.job).sheets[place] = sheet;
        Ok(())
    }

    /// The files as they lie in memory, by path: what the typesetter reads.
    pub fn files(&self) -> impl Iterator<Item = (&'static str, Vec<u8>)> {
        let sources = self.sources.iter().map(|(path, s)| (*path, s.text().as_bytes().to_vec()));
        let files = self.files.iter().map(|(path, bytes)| (*path, bytes.to_vec()));
        sources.chain(files).map(|(path, bytes)| (path.name(), bytes))
    }

    /// The main source of the whole file.
    pub fn main(&self) -> String {
        main_text(self.job.sheets.iter().map(|s| s.id.as_str()))
    }

    fn lay_files(&mut self) -> Result<(), Findings> {
        let job = Arc::clone(&self.job);
        self.data("/look.json", job.look.tokens())?;
        // Its title stands in the foot of every page, also of those that say what is wanted.
        let document = serde_json::to_value(&job.document).unwrap_or(Value::Null);
        self.data("/document.json", &clean(&document))?;
        for (name, kind) in &job.kinds {
            self.lay_kind(name, kind)?;
        }
        let mut shelf = Map::new();
        for (name, picture) in &job.pictures {
            shelf.insert(name.clone(), self.lay_picture(name, picture)?);
        }
        self.data("/pictures.json", &Value::Object(shelf))?;
        job.sheets.iter().try_for_each(|sheet| self.lay_sheet(sheet))
    }

    fn lay_kind(&mut self, name: &str, kind: &KindIn) -> Result<(), Findings> {
        self.source(&format!("/kinds/{name}/page.typ"), kind.page.clone())?;
        self.data(&format!("/kinds/{name}/words.json"), &kind.words)
    }

    fn lay_picture(&mut self, name: &str, picture: &PictureIn) -> Result<Value, Findings> {
        let file = format!("/pictures/{name}.{}", picture.ext);
        let bytes = Bytes::new(picture.bytes.clone());
        self.pictures.insert(hash128(&bytes), name.to_owned());
        self.files.insert(path(&file)?, bytes);
        let PictureIn { alt, width, height, ext, .. } = picture;
        Ok(json!({"file": file, "alt": alt, "width": width, "height": height, "form": ext}))
    }

    fn lay_sheet(&mut self, sheet: &SheetIn) -> Result<(), Findings> {
        let id = &sheet.id;
        self.files.insert(path(&format!("/sheets/{id}.json"))?, sheet_data(sheet, None));
        self.source(&format!("/sheets/{id}.typ"), stub(sheet, &self.job))
    }

    /// A source; the parsed one is kept when its text is the same as before.
    fn source(&mut self, name: &str, text: String) -> Result<(), Findings> {
        let path = path(name)?;
        if self.sources.get(&path).is_none_or(|old| old.text() != text) {
            self.sources.insert(path, Source::new(path.id(), text));
        }
        Ok(())
    }

    fn data(&mut self, name: &str, value: &Value) -> Result<(), Findings> {
        self.files.insert(path(name)?, Bytes::from_string(value.to_string()));
        Ok(())
    }
}

/// What the templates read of a sheet, with another level for its heading if one is given.
pub(crate) fn sheet_data(sheet: &SheetIn, level: Option<u8>) -> Bytes {
    let SheetIn { kind, meta, data, .. } = sheet;
    // A page that says what is wanted quotes the very letters that cannot be printed.
    let (mut meta, data) = match kind == WANTING {
        true => (clean(meta), Cow::Owned(clean(data))),
        false => (meta.clone(), Cow::Borrowed(data)),
    };
    if let (Some(level), Some(meta)) = (level, meta.as_object_mut()) {
        meta.insert("level".to_owned(), Value::from(level));
    }
    Bytes::from_string(format!("{{\"meta\":{meta},\"d\":{data}}}"))
}

/// The main source: the frame's set-up, then the sheets.
pub(crate) fn main_text<'a>(sheets: impl Iterator<Item = &'a str>) -> String {
    let mut text = String::from(
        "#import \"/frame.typ\": document-setup\n\
         #show: document-setup.with(json(\"/document.json\"))\n",
    );
    for id in sheets {
        text.push_str(&format!("#include \"/sheets/{id}.typ\"\n"));
    }
    text
}

fn stub(sheet: &SheetIn, job: &Job) -> String {
    let SheetIn { id, kind, .. } = sheet;
    let mut imports = String::new();
    let mut answers = String::new();
    let known = |name: &&String| job.kinds.contains_key(*name);
    if kind == KEY {
        for (n, name) in job.answers.iter().filter(known).enumerate() {
            imports.push_str(&format!("#import \"/kinds/{name}/page.typ\" as k{n}\n"));
            answers.push_str(&format!(
                "\"{name}\": (k{n}.answer, json(\"/kinds/{name}/words.json\")), "
            ));
        }
    }
    let answers = if answers.is_empty() { ":".to_owned() } else { answers };
    format!(
        "#import \"/frame.typ\": sheet\n\
         #import \"/kinds/{kind}/page.typ\" as kind\n{imports}\
         #sheet(kind, json(\"/sheets/{id}.json\"), json(\"/kinds/{kind}/words.json\"), \
         answers: ({answers}))\n"
    )
}

fn path(name: &str) -> Result<Path, Findings> {
    Path::new(name).ok_or_else(|| {
        Finding::error("press-names-used-up", "the program has printed too many different sheets")
            .remedy("close it and start it again; nothing is lost")
            .into()
    })
}

fn check_names(job: &Job, findings: &mut Findings) {
    let names = job.sheets.iter().map(|s| &s.id);
    for name in names.chain(job.kinds.keys()).chain(job.pictures.keys()) {
        if !plain(name) {
            findings.push(
                Finding::error("press-name", format!("`{name}` cannot be the name of a file"))
                    .remedy("use letters, digits, hyphens and dots only"),
            );
        }
    }
    for sheet in job.sheets.iter().filter(|s| !job.kinds.contains_key(&s.kind)) {
        findings.append(no_kind(sheet));
    }
    let mut seen = BTreeSet::new();
    for sheet in job.sheets.iter().filter(|s| !seen.insert(&s.id)) {
        findings.push(
            Finding::error("press-twice", format!("`{}` stands twice in one file", sheet.called()))
                .on(&sheet.id)
                .remedy("print it once, or make a second sheet with dice of its own"),
        );
    }
}

/// A typeface of our own that could not be built.
fn unbuilt(fault: &str) -> Finding {
    Finding::error("font-unbuilt", "a typeface of Battledore could not be made")
        .remedy(format!("this is a fault of Battledore; tell its makers: {fault}"))
}

pub(crate) fn no_sheet(id: &str) -> Findings {
    Finding::error("sheet-unknown", format!("there is no sheet `{id}` in this file"))
        .remedy("choose a sheet that the list of sheets shows")
        .into()
}

fn no_kind(sheet: &SheetIn) -> Findings {
    Finding::error("kind-unknown", format!("there is no type of sheet called `{}`", sheet.kind))
        .on(&sheet.id)
        .remedy("choose a type that the list of types shows")
        .into()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_main_source_includes_the_sheets_in_order() {
        let text = main_text(["b", "a"].into_iter());
        assert!(text.ends_with("#include \"/sheets/b.typ\"\n#include \"/sheets/a.typ\"\n"));
    }
}

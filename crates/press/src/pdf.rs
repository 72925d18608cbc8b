//! The file that families print: tagged, accessible (PDF/UA-1), the same bytes each time.

use crate::ink::black_ink;
use crate::world::{DeskWorld, date};
use crate::{Job, Pressed, fault};
use findings::{Finding, Findings};
use typst::foundations::Smart;
use typst::syntax::Source;
use typst_pdf::{PdfOptions, PdfStandard, PdfStandards, Timestamp};

impl Pressed {
    /// The pages as a PDF file that keeps to PDF/UA-1 (ISO 14289-1). Its date and its
    /// identifiers come from the document, so that the same job gives the same bytes; greys and
    /// blacks are written as black ink alone.
    ///
    /// # Errors
    /// What stands against an accessible file, by sheet where that can be told.
    pub fn pdf(&self) -> Result<Vec<u8>, Findings> {
        self.export().map(black_ink).map_err(|whole| self.blame_export(whole))
    }

    fn export(&self) -> Result<Vec<u8>, Findings> {
        typst_pdf::pdf(&self.document, &self.options()?).map_err(|complaints| {
            let Some(path) = crate::paths::Path::new("/main.typ") else { return fault::no_room() };
            let main = Source::new(path.id(), self.desk.main());
            let world = DeskWorld { desk: &self.desk, main, instead: None };
            let only = match self.laid() {
                [one] => self.desk.job.sheet(&one.sheet),
                _ => None,
            };
            fault::findings(&complaints, &world, only).sorted()
        })
    }

    /// Complaints about a whole file do not name the sheet: ask each sheet alone.
    fn blame_export(&self, whole: Findings) -> Findings {
        if self.laid().len() < 2 {
            return whole;
        }
        let mut findings = Findings::none();
        for sheet in &self.desk.job.sheets {
            let alone = self.desk.lay_one(&sheet.id).and_then(|pressed| pressed.export());
            if let Err(found) = alone {
                findings.append(found);
            }
        }
        if findings.is_empty() { whole } else { findings.sorted() }
    }

    /// The settings of the export, for one who wants to export the same pages himself.
    pub(crate) fn options(&self) -> Result<PdfOptions, Findings> {
        let standards = PdfStandards::new(&[PdfStandard::Ua_1]).map_err(|error| {
            Finding::error("press-standard", "the file cannot be made accessible").remedy(format!(
                "this is a fault of Battledore; tell its makers: {}",
                error.message()
            ))
        })?;
        Ok(PdfOptions {
            ident: Smart::Custom(identity(&self.desk.job)),
            creator: Smart::Custom(Some("Battledore".to_owned())),
            timestamp: date(&self.desk).map(Timestamp::new_utc),
            standards,
            ..PdfOptions::default()
        })
    }
}

/// What makes the file the same file from one build to the next.
fn identity(job: &Job) -> String {
    let document = &job.document;
    let paper = match document.paper {
        crate::Paper::Letter => "letter",
        crate::Paper::A4 => "a4",
    };
    [&document.study, &document.title, &document.issue, paper].join("\n")
}

//! The result of typesetting: pages that can be looked at, checked and written as files.

use crate::desk::{Desk, main_text, no_sheet, sheet_data};
use crate::drawn::Drawn;
use crate::paths::Path;
use crate::walk::walk;
use crate::world::DeskWorld;
use crate::{SheetIn, check, fault};
use findings::{Finding, Findings};
use proof::Laid;
use std::ops::RangeInclusive;
use typst::foundations::Bytes;
use typst::syntax::Source;
use typst_layout::PagedDocument;

/// How many typesettings the typesetter's memory of finished parts outlives without being used.
/// A studio sets one sheet after another and now and then the whole file.
const REMEMBERED: usize = 20;

/// Laid-out pages.
pub struct Pressed {
    pub(crate) desk: Desk,
    pub(crate) document: PagedDocument,
    pub(crate) drawn: Vec<Drawn>,
    laid: Vec<Laid>,
    notes: Findings,
}

/// Typesets the whole file.
///
/// # Errors
/// Every sheet that cannot be laid out, with its reason; none hides another.
pub fn lay(job: crate::Job) -> Result<Pressed, Findings> {
    Desk::new(job)?.lay()
}

/// Lets go of everything the typesetter remembers for the next time. Worth it after a whole file,
/// when the next one shares nothing with it: the memory of one file is over a gigabyte.
pub fn forget() {
    typst::comemo::evict(0);
}

/// Typesets one sheet alone, as a file of its own.
///
/// # Errors
/// When there is no such sheet, or it cannot be laid out.
pub fn lay_one(job: crate::Job, sheet: &str) -> Result<Pressed, Findings> {
    Desk::new(job)?.lay_one(sheet)
}

impl Desk {
    /// Typesets the whole file. What was typeset before and has not changed is not done again.
    ///
    /// # Errors
    /// Every sheet that cannot be laid out, with its reason; none hides another.
    pub fn lay(&self) -> Result<Pressed, Findings> {
        match self.typeset(&self.main(), None, None) {
            Ok(pressed) => Ok(pressed),
            Err(whole) => Err(self.blame(whole)),
        }
    }

    /// Typesets one sheet alone, as a file of its own.
    ///
    /// # Errors
    /// When there is no such sheet, or it cannot be laid out.
    pub fn lay_one(&self, id: &str) -> Result<Pressed, Findings> {
        let sheet = self.job.sheet(id).ok_or_else(|| no_sheet(id))?;
        let main = main_text(std::iter::once(id));
        self.typeset(&main, Some(sheet), alone(sheet))
    }

    /// An error stops the whole file, and names neither its sheet nor the other faulty ones.
    fn blame(&self, whole: Findings) -> Findings {
        let mut findings = Findings::none();
        for sheet in &self.job.sheets {
            if let Err(found) = self.lay_one(&sheet.id) {
                findings.append(found);
            }
        }
        if findings.is_empty() { whole } else { findings }
    }

    fn typeset(
        &self,
        main: &str,
        sheet: Option<&SheetIn>,
        instead: Option<(Path, Bytes)>,
    ) -> Result<Pressed, Findings> {
        let path = Path::new(if sheet.is_some() { "/alone.typ" } else { "/main.typ" });
        let Some(path) = path else { return Err(fault::no_room()) };
        let world =
            DeskWorld { desk: self, main: Source::new(path.id(), main.to_owned()), instead };
        let done = typst::compile::<PagedDocument>(&world);
        typst::comemo::evict(REMEMBERED);
        let document =
            done.output.map_err(|errors| fault::findings(&errors, &world, sheet).sorted())?;
        let mut notes = fault::findings(&done.warnings, &world, sheet);
        notes.append(check::document(&self.job.document));
        let drawn = walk(&document, &self.pictures);
        Ok(Pressed { desk: self.clone(), document, laid: by_sheet(&drawn), drawn, notes })
    }
}

/// The data of a sheet that stands alone: its title is the first heading, so it is of level 1.
fn alone(sheet: &SheetIn) -> Option<(Path, Bytes)> {
    Some((Path::new(&format!("/sheets/{}.json", sheet.id))?, sheet_data(sheet, Some(1))))
}

fn by_sheet(drawn: &[Drawn]) -> Vec<Laid> {
    let mut laid: Vec<Laid> = Vec::new();
    for one in drawn {
        match laid.last_mut().filter(|last| last.sheet == one.sheet) {
            Some(last) => last.pages.push(one.page.clone()),
            None => laid.push(Laid { sheet: one.sheet.clone(), pages: vec![one.page.clone()] }),
        }
    }
    laid
}

impl Pressed {
    /// The pages of each sheet in plain numbers, in printing order.
    pub fn laid(&self) -> &[Laid] {
        &self.laid
    }

    /// How many pages there are.
    pub fn page_count(&self) -> usize {
        self.drawn.len()
    }

    /// First and last page of a sheet, counted from 1. `None` for a sheet without pages.
    pub fn pages_of(&self, sheet: &str) -> Option<RangeInclusive<u32>> {
        let pages = &self.laid.iter().find(|laid| laid.sheet == sheet)?.pages;
        Some(pages.first()?.number..=pages.last()?.number)
    }

    /// What the typesetter noticed on the way, and what the page checks find.
    pub fn findings(&self) -> Findings {
        let mut findings = self.notes.clone();
        findings.append(check::pages(&self.drawn, &self.desk.job));
        findings
    }

    /// A picture of one page as PNG, on white. Pages count from 1; `ppi` is pixels an inch, 10
    /// to 1,200.
    ///
    /// # Errors
    /// When there is no such page, or the picture cannot be written.
    pub fn png(&self, page: u32, ppi: u32) -> Result<Vec<u8>, Findings> {
        let index = usize::try_from(page).ok().and_then(|n| n.checked_sub(1));
        let Some(found) = index.and_then(|n| self.document.pages().get(n)) else {
            let count = self.page_count();
            return Err(Finding::error("page-unknown", format!("there is no page {page}"))
                .remedy(format!("choose a page from 1 to {count}"))
                .into());
        };
        let pixels = f64::from(ppi.clamp(10, 1200)) / 72.0;
        let options = typst_render::RenderOptions {
            pixel_per_pt: pixels.into(),
            ..typst_render::RenderOptions::default()
        };
        typst_render::render(found, &options).encode_png().map_err(|error| {
            let message = format!("page {page} cannot be made into a picture ({error})");
            Finding::error("page-picture", message).remedy("ask for fewer pixels an inch").into()
        })
    }
}

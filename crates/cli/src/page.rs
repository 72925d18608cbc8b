//! `battledore page`: one sheet as PNG pictures or as a PDF.

use crate::args::Page;
use crate::build::open;
use crate::exit::Exit;
use crate::say::Say;
use findings::{Finding, Findings};
use pack::files;
use serde_json::json;
use std::path::{Path, PathBuf};

/// Writes the pages of one sheet.
pub fn run(args: &Page, say: &Say) -> Exit {
    let (study, _, lines, _) = match open(&args.folder, say) {
        Ok(opened) => opened,
        Err(exit) => return exit,
    };
    let pages =
        match pack::one_sheet(&args.folder, &study, &args.sheet, args.again, args.paper.into()) {
            Ok(pages) => pages,
            Err(findings) => {
                say.findings(&findings, &lines, json!({ "files": [] }));
                return Exit::Mend;
            }
        };
    let written = if args.pdf { pdf(args, &pages) } else { pngs(args, &pages) };
    match written {
        Ok(paths) => {
            let names: Vec<String> = paths.iter().map(|p| p.display().to_string()).collect();
            say.findings(
                &pages.findings,
                &lines,
                json!({ "files": names, "sheet": pages.id, "proof": pages.counted }),
            );
            names.iter().for_each(|name| say.line(name));
            for (what, value) in &pages.counted {
                say.line(&format!("  {what}: {value}"));
            }
            if pages.findings.has_errors() { Exit::Mend } else { Exit::Done }
        }
        Err(findings) => {
            say.findings(&findings, &lines, json!({ "files": [] }));
            Exit::Disk
        }
    }
}

fn pdf(args: &Page, pages: &pack::OneSheet) -> Result<Vec<PathBuf>, Findings> {
    let path = args.out.clone().unwrap_or_else(|| PathBuf::from(format!("{}.pdf", pages.id)));
    Ok(vec![write(&path, &pages.pressed.pdf()?)?])
}

fn pngs(args: &Page, pages: &pack::OneSheet) -> Result<Vec<PathBuf>, Findings> {
    let count = pages.pressed.page_count();
    let mut paths = Vec::new();
    for n in 1..=count {
        let page = u32::try_from(n).map_err(|_| Finding::error("page", "too many pages"))?;
        let path = numbered(args, &pages.id, n, count);
        paths.push(write(&path, &pages.pressed.png(page, args.ppi)?)?);
    }
    Ok(paths)
}

/// `name.png` for a single page, else `name-1.png` and so on.
fn numbered(args: &Page, id: &str, n: usize, of: usize) -> PathBuf {
    let base = args.out.clone().unwrap_or_else(|| PathBuf::from(format!("{id}.png")));
    if of == 1 {
        return base;
    }
    let stem = base.file_stem().map(|s| s.to_string_lossy().into_owned()).unwrap_or_default();
    base.with_file_name(format!("{stem}-{n}.png"))
}

fn write(path: &Path, bytes: &[u8]) -> Result<PathBuf, Findings> {
    let folder = path.parent().filter(|p| !p.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let Some(name) = path.file_name().and_then(|n| n.to_str()) else {
        let finding =
            Finding::error("file-name", format!("`{}` is not a file name", path.display()));
        return Err(finding.remedy("give --out the name of a file").into());
    };
    Ok(files::write(folder, name, bytes)?)
}

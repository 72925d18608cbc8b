//! `battledore check`: everything but the files.

use crate::args::Folder;
use crate::build::open;
use crate::exit::Exit;
use crate::progress::Progress;
use crate::say::{Say, counted};
use serde_json::json;

/// Proves every sheet and lays the pages out on both papers, without writing.
pub fn run(args: &Folder, say: &Say) -> Exit {
    let (study, findings, lines, _) = match open(&args.folder, say) {
        Ok(opened) => opened,
        Err(exit) => return exit,
    };
    let progress = Progress::start(4);
    let checked = pack::check(&args.folder, &study, findings, &|what| progress.step(what));
    progress.end();
    let more = json!({ "sheets": checked.sheets, "proved": checked.proved });
    say.findings(&checked.findings, &lines, more);
    say.line(&format!(
        "{} of {} proved",
        checked.proved,
        counted(checked.sheets, "sheet", "sheets")
    ));
    if checked.findings.has_errors() { Exit::Mend } else { Exit::Done }
}

//! `battledore keep`: a sheet stays just as it is, or is let go again.

use crate::args::Keep;
use crate::build::open;
use crate::exit::Exit;
use crate::say::Say;

/// Stores the sheet in the study, or removes it from there.
pub fn run(args: &Keep, say: &Say) -> Exit {
    let (study, ..) = match open(&args.folder, say) {
        Ok(opened) => opened,
        Err(exit) => return exit,
    };
    let cache = pack::Cache::of(&args.folder);
    let proved = pack::prove(&study, &cache);
    let outcome = match pack::pick(&study, &proved, &args.sheet) {
        Ok(outcome) => outcome,
        Err(finding) => {
            say.finding(&finding);
            return Exit::Usage;
        }
    };
    let id = &outcome.planned.id;
    let done = if args.release {
        pack::kept::release(&args.folder, id)
    } else {
        match &outcome.made {
            Some(made) => {
                pack::kept::keep(&args.folder, id, outcome.planned.about().id, &made.sheet)
            }
            None => {
                outcome.findings.iter().for_each(|f| say.finding(f));
                return Exit::Mend;
            }
        }
    };
    match done {
        Ok(()) => {
            say.line(&format!("{} `{id}`", if args.release { "let go" } else { "kept" }));
            Exit::Done
        }
        Err(finding) => {
            say.finding(&finding);
            Exit::Disk
        }
    }
}

//! `battledore build`: the PDFs of a study.

use crate::args::{Build, PaperName};
use crate::exit::Exit;
use crate::progress::Progress;
use crate::say::{Say, counted};
use findings::Findings;
use serde_json::json;
use std::path::PathBuf;
use study::{Lines, Study};

/// Writes the files, or says why not.
pub fn run(args: &Build, say: &Say) -> Exit {
    let progress = Progress::start(4);
    progress.step("reading the folder");
    let minted = study::mint_ids(&args.folder);
    let read = study::read(&args.folder);
    let mut findings = read.findings;
    match minted {
        Ok(more) => findings.append(more),
        // A folder that cannot be written still prints; its ids are then worked out anew each time.
        Err(finding) => findings.push(finding),
    }
    let Some(study) = read.study else {
        progress.end();
        say.findings(&findings.sorted(), &read.lines, json!({ "files": [] }));
        return Exit::Disk;
    };
    let papers = args.paper.map_or(vec![PaperName::Letter, PaperName::A4], |p| vec![p]);
    let request = pack::Request {
        papers: papers.iter().map(|p| (*p).into()).collect(),
        out: args.out.clone().unwrap_or_else(|| args.folder.join("printed")),
        clean: args.clean,
    };
    let built = pack::build(&args.folder, &study, findings, &request, &|what| progress.step(what));
    progress.end();
    report(args, say, &study, &read.lines, &built)
}

fn report(args: &Build, say: &Say, study: &Study, lines: &Lines, built: &pack::Built) -> Exit {
    let files: Vec<String> = built.files.iter().map(|f| f.path.display().to_string()).collect();
    let more = json!({ "files": files, "pages": built.pages, "proof-copy": built.proof_copy, "title": study.title.plain() });
    say.findings(&built.findings, lines, more);
    for file in &built.files {
        say.line(&format!("{}  {}", file.path.display(), counted(file.pages, "page", "pages")));
    }
    if args.times {
        times(say, built);
    }
    if built.refused {
        say.line("no clean copy was written; `battledore todo` lists what is wanted, and a build without --clean prints what is ready");
        return Exit::Mend;
    }
    if built.disk_failed {
        return Exit::Disk;
    }
    if built.proof_copy {
        say.line("this is a proof copy: every page says so until what is wanted is there");
    }
    if built.findings.has_errors() { Exit::Mend } else { Exit::Done }
}

fn times(say: &Say, built: &pack::Built) {
    for (what, took) in &built.times {
        say.line(&format!("{:>8.1} ms  {what}", took.as_secs_f64() * 1000.0));
    }
    say.line(&format!(
        "{} made, {} remembered",
        counted(built.made, "sheet", "sheets"),
        built.remembered
    ));
}

/// Reads a study for the commands that look at one: findings, lines, and the folder it came from.
pub fn open(
    folder: &std::path::Path,
    say: &Say,
) -> Result<(Study, Findings, Lines, PathBuf), Exit> {
    let read = study::read(folder);
    match read.study {
        Some(study) => Ok((study, read.findings, read.lines, folder.to_path_buf())),
        None => {
            say.findings(&read.findings.sorted(), &read.lines, json!({}));
            Err(Exit::Disk)
        }
    }
}

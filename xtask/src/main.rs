//! Developer tasks: `cargo xtask new-kind NAME`, `cargo xtask tidy`.
#![allow(clippy::disallowed_methods)] // a developer's tool: reads and writes the tree

mod new_kind;
mod tidy;

use std::path::{Path, PathBuf};
use std::process::ExitCode;

const HELP: &str = "\
cargo xtask new-kind NAME   lay out the folder of a new kind of sheet (lower-case, hyphens)
cargo xtask tidy            check what the compiler cannot: directions, file sizes, forbidden words";

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = args.iter().map(String::as_str).collect();
    let done = match words.as_slice() {
        ["new-kind", name] => new_kind::lay_out(&root(), name),
        ["tidy"] => tidy::check(&root()),
        _ => Err(HELP.to_owned()),
    };
    match done {
        Ok(says) => {
            println!("{says}");
            ExitCode::SUCCESS
        }
        Err(says) => {
            eprintln!("{says}");
            ExitCode::FAILURE
        }
    }
}

fn root() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).parent().map(Path::to_path_buf).unwrap_or_default()
}

//! The `battledore` program: arguments in, findings out. No rules of its own.
#![allow(clippy::disallowed_methods)] // writes files and reads the clock for its progress line

mod args;
mod build;
mod check;
mod exit;
mod keep;
mod kinds;
mod new;
mod page;
mod progress;
mod say;
mod todo;

use args::{Args, Command};
use clap::{CommandFactory as _, Parser as _};
use exit::Exit;
use std::process::ExitCode;

fn main() -> ExitCode {
    let args = Args::parse();
    let say = say::Say::new(args.json);
    let exit = match args.command {
        Command::New(new) => new::run(&new, &say),
        Command::Check(check) => check::run(&check, &say),
        Command::Build(build) => build::run(&build, &say),
        Command::Page(page) => page::run(&page, &say),
        Command::Keep(keep) => keep::run(&keep, &say),
        Command::Kinds(kinds) => kinds::run(&kinds, &say),
        Command::Todo(todo) => todo::run(&todo, &say),
        Command::Completions { shell } => {
            clap_complete::generate(
                shell,
                &mut Args::command(),
                "battledore",
                &mut std::io::stdout(),
            );
            Exit::Done
        }
    };
    exit.into()
}

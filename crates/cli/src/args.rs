//! Arguments of the program, with examples in the help.

use clap::{Parser, Subcommand, ValueEnum};
use std::path::PathBuf;

/// Turns one folder of content into a whole printable unit study, and proves every sheet.
#[derive(Debug, Parser)]
#[command(name = "battledore", version, about, after_help = AFTER)]
pub struct Args {
    /// Print findings and results as JSON
    #[arg(long, global = true)]
    pub json: bool,
    /// What to do
    #[command(subcommand)]
    pub command: Command,
}

const AFTER: &str = "\
Examples:
  battledore new my-study --words \"owl, moth, bat, fox, badger, hedgehog\"
  battledore build my-study
  battledore page my-study word-search
  battledore todo my-study

Exit codes:
  0  done; nothing stands against printing
  1  done, but something has to be mended (a proof copy was written, or a clean copy refused)
  2  the command was not understood
  3  a folder or file could not be read or written";

/// What to do.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Lay out a study folder, ready to build
    New(New),
    /// Read the study, make and prove every sheet, and say what is wrong; writes nothing
    Check(Folder),
    /// Write the PDFs
    Build(Build),
    /// Print one sheet as PNG or PDF
    Page(Page),
    /// Keep a sheet just as it is, or let it go again
    Keep(Keep),
    /// List the types of sheet, or explain one
    Kinds(Kinds),
    /// What is still wanted, the next three things first
    Todo(Folder),
    /// Write a completion script for a shell
    Completions {
        /// The shell
        shell: clap_complete::Shell,
    },
}

/// Arguments of `new`.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  battledore new my-study --title \"The Night Wood\"\n  battledore new my-study --words \"owl, moth, bat, fox, badger, hedgehog\""
)]
pub struct New {
    /// Folder to lay out; it must not exist yet, or be empty
    pub folder: PathBuf,
    /// Title of the study; the folder's name when left out
    #[arg(long)]
    pub title: Option<String>,
    /// Words with commas between; a first word search is printed at once
    #[arg(long, value_name = "WORDS")]
    pub words: Option<String>,
}

/// A study folder.
#[derive(Debug, clap::Args)]
pub struct Folder {
    /// Folder of the study
    #[arg(default_value = ".")]
    pub folder: PathBuf,
}

/// Arguments of `build`.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  battledore build studies/rocky-shore\n  battledore build my-study --paper a4 --out printed --clean"
)]
pub struct Build {
    /// Folder of the study
    #[arg(default_value = ".")]
    pub folder: PathBuf,
    /// Folder for the PDFs [default: printed, inside the study]
    #[arg(long, value_name = "DIR")]
    pub out: Option<PathBuf>,
    /// Paper; both when left out
    #[arg(long)]
    pub paper: Option<PaperName>,
    /// Refuse to write anything while something is wanted
    #[arg(long)]
    pub clean: bool,
    /// Say where the time went
    #[arg(long)]
    pub times: bool,
}

/// Arguments of `page`.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  battledore page my-study word-search\n  battledore page my-study homeward.reading --ppi 150\n  battledore page my-study homeward.word-search.a --pdf --out wordsearch.pdf"
)]
pub struct Page {
    /// Folder of the study
    pub folder: PathBuf,
    /// The sheet: its type, or owner and type with a dot between, or its full id
    pub sheet: String,
    /// File to write; PAGE.png and so on in the current folder when left out
    #[arg(long)]
    pub out: Option<PathBuf>,
    /// Write a PDF instead of PNG pictures
    #[arg(long)]
    pub pdf: bool,
    /// Paper
    #[arg(long, default_value = "letter")]
    pub paper: PaperName,
    /// Resolution of the pictures, in pixels an inch
    #[arg(long, default_value_t = 100, value_parser = clap::value_parser!(u32).range(20..=600))]
    pub ppi: u32,
    /// Another throw of the dice, without changing the study
    #[arg(long, value_name = "N")]
    pub again: Option<u32>,
}

/// Arguments of `keep`.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Examples:\n  battledore keep my-study homeward.word-search.a\n  battledore keep my-study homeward.word-search.a --release"
)]
pub struct Keep {
    /// Folder of the study
    pub folder: PathBuf,
    /// The sheet: its type, or owner and type with a dot between, or its full id
    pub sheet: String,
    /// Let the kept sheet go; the next build makes it anew
    #[arg(long)]
    pub release: bool,
}

/// Arguments of `kinds`.
#[derive(Debug, clap::Args)]
pub struct Kinds {
    /// Type of sheet to explain
    pub kind: Option<String>,
}

/// Papers by the names that the author uses.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub enum PaperName {
    /// US Letter, 8.5 × 11 in
    Letter,
    /// A4, 210 × 297 mm
    A4,
}

impl From<PaperName> for pack::Paper {
    fn from(name: PaperName) -> Self {
        match name {
            PaperName::Letter => pack::Paper::Letter,
            PaperName::A4 => pack::Paper::A4,
        }
    }
}

impl PaperName {
    /// As it stands in a file name.
    pub fn name(self) -> &'static str {
        match self {
            PaperName::Letter => "letter",
            PaperName::A4 => "a4",
        }
    }
}

//! How the program ended, as documented in its help.

use std::process::ExitCode;

/// Exit codes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exit {
    /// Nothing stands against printing.
    Done,
    /// Something has to be mended.
    Mend,
    /// The command was not understood.
    Usage,
    /// A folder or file could not be read or written.
    Disk,
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        ExitCode::from(match exit {
            Exit::Done => 0,
            Exit::Mend => 1,
            Exit::Usage => 2,
            Exit::Disk => 3,
        })
    }
}

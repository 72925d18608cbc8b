//! A progress line on long work; silent when nobody is looking.

use indicatif::{ProgressBar, ProgressStyle};
use std::io::IsTerminal as _;
use std::time::Duration;

/// A line that says what is being done.
pub struct Progress(ProgressBar);

impl Progress {
    /// Starts; hidden when standard error is not a terminal.
    pub fn start(steps: u64) -> Self {
        if !std::io::stderr().is_terminal() {
            return Self(ProgressBar::hidden());
        }
        let bar = ProgressBar::new(steps);
        if let Ok(style) = ProgressStyle::with_template("{bar:24} {msg} {elapsed}") {
            bar.set_style(style);
        }
        bar.enable_steady_tick(Duration::from_millis(120));
        Self(bar)
    }

    /// Says what comes next.
    pub fn step(&self, what: &str) {
        self.0.set_message(what.to_owned());
        self.0.inc(1);
    }

    /// Takes the line away.
    pub fn end(self) {
        self.0.finish_and_clear();
    }
}

//! The command-line tool: arguments as typed → a job → an exit status.
//!
//! Data go to standard output, complaints to standard error. Exit status: 0 done (warnings allowed), 1 the design has
//! errors, 2 could not run (usage, file system).

mod command;

use std::process::ExitCode;

fn main() -> ExitCode {
    command::run()
}

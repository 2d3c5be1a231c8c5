//! The commands.

mod check;
mod draw;
mod explain;
mod help;
mod input;
mod new;
mod output;
mod plan;
mod progress;
mod publish;
mod rows;
mod show;

use std::io::{ErrorKind, Write};
use std::path::PathBuf;
use std::process::ExitCode;

use clap::{Parser, Subcommand, ValueEnum};

use input::Swatch;
use roundelay::report::clean;

/// Designs crochet worked in the round: solves the rounds, predicts the shape, draws and lays out the pattern.
#[derive(Debug, Parser)]
#[command(name = "roundelay", version, max_term_width = 100, disable_help_subcommand = true)]
struct Cli {
    #[command(subcommand)]
    job: Job,
    /// For written rounds in a .txt file: a design, or only its lines on swatch and yarn, to go with them
    #[arg(long, global = true, value_name = "FILE")]
    swatch: Option<PathBuf>,
}

#[derive(Debug, Subcommand)]
enum Job {
    /// Write a commented starter design; a file that exists is never overwritten
    New {
        /// File to write [default: standard output]
        file: Option<PathBuf>,
    },
    /// Read designs, solve or recount them, and report
    Check {
        /// Design files; `-` reads standard input
        #[arg(required = true)]
        files: Vec<PathBuf>,
        /// How to report
        #[arg(long, value_enum, default_value_t = CheckFormat::Text)]
        format: CheckFormat,
    },
    /// Print the rounds of every size
    Plan(plan::Plan),
    /// Draw one picture
    Draw(draw::Draw),
    /// Make everything: booklet, pictures, tables, text
    Publish(publish::Publish),
    /// Say what the code of a complaint means
    Explain {
        /// Code, as a complaint shows it in brackets [default: all of them]
        code: Option<String>,
    },
    /// Tell what a command takes, or what may stand in a design file: `help design`, `help design yarn`
    Help {
        /// A command; or `design`, and behind it a section or a field
        #[arg(num_args = 0..=2)]
        topics: Vec<String>,
    },
    /// Print the JSON Schema of design files (draft 2020-12), by which editors complete and check them
    Schema {
        /// For a file that holds a swatch to go with written rounds, and perhaps no more
        #[arg(long)]
        beside: bool,
    },
}

/// How `check` reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum CheckFormat {
    /// A line for each file on standard output, complaints on standard error
    Text,
    /// A list of complaints on standard output
    Json,
}

/// How a job ended.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Outcome {
    /// Done, perhaps with warnings.
    Done,
    /// A design has errors.
    DesignErrors,
    /// Could not run.
    CouldNotRun,
}

impl From<Outcome> for ExitCode {
    fn from(outcome: Outcome) -> Self {
        Self::from(match outcome {
            Outcome::Done => 0,
            Outcome::DesignErrors => 1,
            Outcome::CouldNotRun => 2,
        })
    }
}

/// Runs the job that the arguments ask for.
pub(crate) fn run() -> ExitCode {
    match Cli::try_parse() {
        Ok(cli) => job(cli).into(),
        Err(told) => usage(&told).into(),
    }
}

/// Prints what is wrong with the arguments, or the help that was asked for.
fn usage(told: &clap::Error) -> Outcome {
    // It quotes what was typed: where that can't be shown, in plain letters without it.
    let words = told.render().to_string();
    let clean = clean::lines(&words);
    let printed = if words == clean { told.print() } else { std::io::stderr().write_all(clean.as_bytes()) };
    match printed {
        Err(error) if error.kind() != ErrorKind::BrokenPipe => Outcome::CouldNotRun,
        _ if told.use_stderr() => Outcome::CouldNotRun,
        _ => Outcome::Done,
    }
}

fn job(cli: Cli) -> Outcome {
    let swatch = match cli.swatch.as_deref().map(Swatch::read).transpose() {
        Ok(swatch) => swatch,
        Err(outcome) => return outcome,
    };
    let swatch = swatch.as_ref();
    match cli.job {
        Job::New { file } => new::run(file.as_deref()),
        Job::Check { files, format } => check::run(&files, format, swatch),
        Job::Plan(wish) => plan::run(&wish, swatch),
        Job::Draw(wish) => draw::run(&wish, swatch),
        Job::Publish(wish) => publish::run(&wish, swatch),
        Job::Explain { code } => explain::run(code.as_deref()),
        Job::Help { topics } => help::run(&topics),
        Job::Schema { beside } => help::schema(!beside),
    }
}

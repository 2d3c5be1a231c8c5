//! `help`: what a command takes, or the reference of the design file; `schema`: the same for editors.

use clap::CommandFactory as _;
use roundelay::design;

use super::output::{data, failure};
use super::{Cli, Outcome};

/// Prints the help of a command, or the reference of the design file: all of it, or one section or field.
pub(super) fn run(topics: &[String]) -> Outcome {
    let Some((first, rest)) = topics.split_first() else {
        return data(&Cli::command().render_long_help().to_string());
    };
    if first == "design" {
        return reference(rest);
    }
    let mut all = Cli::command();
    all.build();
    match all.find_subcommand_mut(first) {
        Some(command) => data(&command.render_long_help().to_string()),
        None => failure(
            &format!("there is no command `{first}`"),
            "`roundelay help` lists the commands; `roundelay help design` tells of the design file",
        ),
    }
}

fn reference(topics: &[String]) -> Outcome {
    let topic = topics.first().map(String::as_str);
    match design::reference(topic) {
        Ok(text) => data(&text),
        Err(miss) => {
            let help = "`roundelay help design` tells of them all";
            let help = miss.nearest.map_or(help.to_owned(), |near| format!("did you mean `{near}`? {help}"));
            failure(&format!("a design file has no field or section `{}`", topic.unwrap_or_default()), &help)
        }
    }
}

/// Prints the JSON Schema of a design, or of a file that holds a swatch and no more.
pub(super) fn schema(whole: bool) -> Outcome {
    data(&design::schema(whole))
}

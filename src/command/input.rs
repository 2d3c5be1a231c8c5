//! Reading design files as far as a job needs them.

use std::fs::File;
use std::io::{self, Read};
use std::path::Path;

use roundelay::design::{self, Design, MOST_BYTES};
use roundelay::geometry::{self, SideShape};
use roundelay::pattern::text;
use roundelay::plan::{self, Plan};
use roundelay::report::{Diagnostic, Place, Report};

/// A file as read, with its complaints.
pub(super) struct Source {
    /// Its name in complaints.
    pub(super) name: String,
    /// Its text, as the places of complaints count it; empty where it is no text.
    pub(super) text: String,
    /// The complaints.
    pub(super) report: Report,
}

/// A design solved, with the predicted shape of every size.
pub(super) struct Solved {
    pub(super) plan: Plan,
    pub(super) shapes: Vec<SideShape>,
}

/// Reads a file, or standard input for `-`, up to a byte more than a design may have.
pub(super) fn bytes(path: &Path) -> io::Result<(String, Vec<u8>)> {
    let mut bytes = Vec::new();
    let most = MOST_BYTES as u64 + 1;
    if path == Path::new("-") {
        io::stdin().lock().take(most).read_to_end(&mut bytes)?;
        return Ok(("standard input".to_owned(), bytes));
    }
    File::open(path)?.take(most).read_to_end(&mut bytes)?;
    Ok((path.display().to_string(), bytes))
}

/// Reads and resolves a design.
pub(super) fn design(name: String, bytes: &[u8]) -> (Source, Option<Design>) {
    let mut report = Report::new();
    let text = design::text_of(bytes, &mut report).map(str::to_owned);
    let design = text.as_deref().and_then(|text| design::read(text, &mut report));
    (Source { name, text: text.unwrap_or_default(), report }, design)
}

/// Reads written rounds from a text file, with the swatch of the design at `swatch` beside them.
fn written(name: String, bytes: &[u8], swatch: Option<&Path>) -> (Source, Option<Design>) {
    let mut report = Report::new();
    let text = design::text_of(bytes, &mut report).unwrap_or_default().to_owned();
    let beside = swatch.and_then(|path| beside(path, &mut report));
    if swatch.is_none() {
        let help = "add `--swatch FILE.yaml`, a design or only its lines on swatch and yarn";
        report.add(Diagnostic::error("no-swatch", "written rounds alone don't say how large they come out").help(help));
    }
    let design = beside.and_then(|beside| text::into_design(&text, &beside, &mut report));
    (Source { name, text, report }, design)
}

/// The design whose swatch goes with written rounds; its own complaints are for a check of its own.
fn beside(path: &Path, report: &mut Report) -> Option<Design> {
    let name = path.display();
    let read = match bytes(path) {
        Ok((_, read)) => read,
        Err(error) => {
            let message = format!("the design {name} for the swatch can't be read: {error}");
            report.add(Diagnostic::error("cannot-read", message).help("give the path of a design file"));
            return None;
        }
    };
    let mut own = Report::new();
    let design = design::text_of(&read, &mut own).and_then(|text| design::read_swatch(text, &mut own));
    let design = design.filter(|_| !own.has_errors());
    if design.is_none() {
        let help = format!("run `roundelay check {name}` to see them");
        report.add(Diagnostic::error("swatch-errors", format!("the design {name} has errors of its own")).help(help));
    }
    design
}

/// Reads, resolves and solves a design, or written rounds with the design at `swatch` beside them, and predicts the
/// shape of every size.
pub(super) fn solve(name: String, bytes: &[u8], swatch: Option<&Path>) -> (Source, Option<Solved>) {
    let rounds = name.to_lowercase().ends_with(".txt");
    let (mut source, design) = if rounds { written(name, bytes, swatch) } else { design(name, bytes) };
    let plan = design.and_then(|design| plan::solve(&design, &mut source.report));
    // Half a plan is of no use: errors found on the way stop the job.
    let plan = plan.filter(|_| !source.report.has_errors());
    let solved = plan.map(|plan| {
        let shapes: Vec<SideShape> = plan.sizes.iter().map(|size| geometry::predict(&plan, size)).collect();
        findings(&plan, &shapes, &mut source.report);
        Solved { plan, shapes }
    });
    (source, solved)
}

/// What the predicted shape has to say becomes warnings at the round or the part it is about; sizes that share a
/// sentence share a warning.
fn findings(plan: &Plan, shapes: &[SideShape], report: &mut Report) {
    let mut told: Vec<(&str, Option<Place>, Vec<&str>)> = Vec::new();
    for (size, shape) in plan.sizes.iter().zip(shapes) {
        for finding in &shape.findings {
            let round = size.rounds.iter().find(|round| round.number == finding.first);
            let part = plan.design.parts.get(round.map_or(0, |round| round.part));
            let place = round.and_then(|round| round.place).or(part.and_then(|part| part.name.place));
            match told.iter_mut().find(|(sentence, at, _)| (*sentence, *at) == (&finding.sentence, place)) {
                Some((.., sizes)) => sizes.push(&size.name),
                None => told.push((&finding.sentence, place, vec![&size.name])),
            }
        }
    }
    for (sentence, place, sizes) in told {
        let of = if sizes.len() == plan.sizes.len() { String::new() } else { format!("size {}: ", sizes.join(", ")) };
        let message = format!("{of}{}", sentence.trim_end_matches('.'));
        report.add(Diagnostic::warning("shape", message).at(place));
    }
}

/// The size of this name, or a complaint on how to name it.
pub(super) fn known_size(plan: &Plan, name: Option<&str>) -> Result<(), (String, String)> {
    let names: Vec<&str> = plan.sizes.iter().map(|size| size.name.as_str()).collect();
    match name {
        Some(name) if !names.contains(&name) => {
            Err((format!("the design has no size `{name}`"), format!("its sizes are {}", names.join(", "))))
        }
        Some(_) | None => Ok(()),
    }
}

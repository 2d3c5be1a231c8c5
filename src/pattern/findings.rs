//! What the predicted shape has to say, for the report.

use crate::geometry::SideShape;
use crate::plan::Plan;
use crate::report::{Diagnostic, Place, Report};

/// Findings become warnings at the round or the part they are about; sizes that share a sentence share a warning.
pub(super) fn tell(plan: &Plan, shapes: &[SideShape], report: &mut Report) {
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

//! Which view of a chart is drawn, and what is said where it can't be read.

use super::draw::Job;
use super::extras::VIEWS;
use crate::drawing::{ChartOptions, ChartView, LEAST_CELL, choose_view, least_cell, readable};
use crate::report::{Diagnostic, Report};
use crate::units::Mm;

/// The view that was asked for, or else the first that can be read on the paper, with the reason as a note. A warning
/// where it can't be read.
pub(super) fn view(job: &Job<'_>, report: &mut Report) -> Option<ChartView> {
    let Some(view) = asked(job)? else {
        let (width, height) = job.asked.options.paper.printable();
        let (view, reason) = choose_view(job.plan, job.size, width, height);
        if least(job, view) < LEAST_CELL {
            report.add(too_small(job, view));
        } else if view != ChartView::Whole {
            report.add(Diagnostic::note("view-chosen", reason.trim_end_matches('.')));
        }
        return Some(view);
    };
    let cell = least(job, view);
    if view == ChartView::Sector && cell == Mm::ZERO {
        let message = "the piece has no repeat that every round shares, so all of it is drawn";
        report.add(Diagnostic::warning("no-repeat", message).help("`--view bands` draws alike rounds as one"));
    } else if cell < LEAST_CELL {
        report.add(too_small(job, view));
    }
    Some(view)
}

/// The view that was asked for, if any; nothing at all where the part it names isn't there.
fn asked(job: &Job<'_>) -> Option<Option<ChartView>> {
    if let Some(name) = &job.asked.part {
        let part = job.plan.sizes.get(job.size)?.parts.iter().position(|part| part.name == *name)?;
        return Some(Some(ChartView::Part(part)));
    }
    Some(job.asked.up_to.map(ChartView::UpTo).or(job.asked.view))
}

/// The warning that a chart can't be read, with what to add to the command for one that can.
fn too_small(job: &Job<'_>, view: ChartView) -> Diagnostic {
    let paper = &job.asked.options.paper;
    let (width, height) = paper.printable();
    let cell = least(job, view);
    let readable = readable(job.plan, job.size, width, height);
    let mut ways: Vec<String> = Vec::new();
    for (paper, view) in readable.papers {
        ways.push(format!("`--paper {paper}{}`", flag(job, view)));
    }
    ways.extend(readable.views.iter().map(|view| format!("`{}`", flag(job, *view).trim())));
    let message = format!("the smallest stitch is {:.1} mm on {} paper, too small to read", cell.mm(), paper.name);
    let help = match ways.split_last() {
        None => "no single sheet is large enough, not for one repeat: draw fewer rounds with --up-to".to_owned(),
        Some((only, [])) => format!("it can be read with {only}"),
        Some((last, ways)) => format!("it can be read with {} or {last}", ways.join(", ")),
    };
    Diagnostic::warning("too-small", message).help(help)
}

/// A view as it is asked for on the command line, a space before it.
fn flag(job: &Job<'_>, view: ChartView) -> String {
    match view {
        ChartView::Whole => String::new(),
        ChartView::Bands | ChartView::Sector => {
            let row = VIEWS.iter().find(|row| row.value == view);
            row.map_or_else(String::new, |row| format!(" --view {}", row.name))
        }
        ChartView::UpTo(round) => format!(" --up-to {round}"),
        ChartView::Part(part) => {
            let part = job.plan.sizes.get(job.size).and_then(|size| size.parts.get(part));
            let name = part.map_or("", |part| part.name.as_str());
            let quote = if name.contains(char::is_whitespace) { "\"" } else { "" };
            format!(" --part {quote}{name}{quote}")
        }
    }
}

fn least(job: &Job<'_>, view: ChartView) -> Mm {
    let (width, height) = job.asked.options.paper.printable();
    least_cell(job.plan, job.size, &ChartOptions { view, width, height, ..ChartOptions::default() })
}

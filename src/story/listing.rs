//! A plan listed for the terminal: the written rounds, and a table with what its parts reach.

use std::fmt::Write;

use crate::craft::{Terms, abbreviation};
use crate::geometry::{Holds, SideShape, Sits, Worn};
use crate::notation::write::Writer;
use crate::notation::{Gaps, Instruction, Label, Numbers, SizedLine, WrittenLine, lines, sized_lines};
use crate::plan::{PartPlan, Plan, SizePlan, YarnUse};
use crate::units::{Mm, tidy};
use crate::words::{Arg, numbers};

/// A line of rounds, of one size or several.
struct Line {
    part: usize,
    colour: Option<usize>,
    /// Which sizes have it.
    has: Vec<bool>,
    label: Label,
    instruction: Instruction,
}

/// The written rounds of a plan, all sizes side by side in bracket form, or of one size. Lines end in a line feed.
pub fn pattern(plan: &Plan, only: Option<&str>) -> String {
    let words = plan.design.words();
    let writer = Writer { words: &words, terms: plan.design.terms };
    let mut text = plan.design.title.value.clone() + "\n";
    let sizes: Vec<&SizePlan> = wanted(plan, only);
    let names: Vec<String> =
        sizes.iter().map(|size| format!("{}: {}", size.name, length(plan, size.finished))).collect();
    // A remark of the notation, so that the listing of one size can be read back as it is.
    push(&mut text, &format!("# {}", names.join(", ")));
    let listed: Vec<Line> = match (only, &sizes[..]) {
        (Some(_), [size]) => {
            let line = |line: WrittenLine| {
                let WrittenLine { part, colour, label, instruction, .. } = line;
                Line { part, colour, has: vec![true], label, instruction }
            };
            lines(size.piece()).into_iter().map(line).collect()
        }
        _ => {
            let line = |line: SizedLine| {
                let SizedLine { part, colour, label, instruction, counts, .. } = line;
                Line { part, colour, has: counts.iter().map(Option::is_some).collect(), label, instruction }
            };
            sized_lines(&plan.pieces()).into_iter().map(line).collect()
        }
    };
    let mut part = usize::MAX;
    let mut before = vec![None; sizes.len()];
    for Line { part: of, colour, has, label, instruction } in listed {
        if of != part {
            part = of;
            let name = plan.design.parts.get(part).map_or("", |part| &part.name.value);
            push(&mut text, &format!("\n{name}"));
        }
        let with = changed(&mut before, &has, colour).filter(|_| plan.design.yarn.colours.len() > 1);
        // An author may have named the yarn already.
        let with = with.filter(|_| !writer.own(&instruction).is_some_and(|own| own.yarn));
        let with = with.and_then(|index| plan.design.yarn.colours.get(index));
        let with = with.map_or_else(String::new, |colour| {
            words.with("list-colour", &[("colour", Arg::Text(&colour.name))]) + ", "
        });
        let (label, line) = (writer.label(&label, Gaps::OPEN), with + &writer.counted(&instruction));
        push(&mut text, &words.with("round-line", &[("label", Arg::Text(&label)), ("text", Arg::Text(&line))]));
    }
    for size in sizes.iter().filter(|size| !size.step_down.is_empty()).take(1) {
        push(&mut text, &writer.step_down(&size.step_down).unwrap_or_default());
    }
    let halves: Vec<u32> = sizes.iter().filter_map(|size| size.closed_flat()).collect();
    if !halves.is_empty() {
        push(&mut text, &writer.close_flat(&Numbers::several(halves)));
    }
    text
}

/// The yarn of a line where some size that has it changes to it there.
fn changed(before: &mut [Option<usize>], has: &[bool], colour: Option<usize>) -> Option<usize> {
    let mut changes = false;
    for (before, _) in before.iter_mut().zip(has).filter(|(_, has)| **has) {
        changes |= *before != colour;
        *before = colour;
    }
    colour.filter(|_| changes)
}

/// Every size as a table of rounds, its parts with what was wanted and what was reached, and its yarn; or one size.
pub fn table(plan: &Plan, shapes: &[SideShape], only: Option<&str>) -> String {
    let terms = match plan.design.terms {
        Terms::Us => "US terms",
        Terms::Uk => "UK terms",
    };
    let mut text = format!("{} ({terms})\n", plan.design.title.value);
    for (size, shape) in plan.sizes.iter().zip(shapes).filter(|(size, _)| only.is_none_or(|only| only == size.name)) {
        let head = size.head.map_or(String::new(), |head| format!(", for a head of {}", length(plan, head)));
        let asked = length(plan, size.wanted);
        let asked = if asked == length(plan, size.finished) { String::new() } else { format!(", {asked} asked for") };
        push(&mut text, &format!("\nSize {}: {} round{asked}{head}", size.name, length(plan, size.finished)));
        push(&mut text, "");
        rounds(plan, size, &mut text);
        push(&mut text, "");
        for part in &size.parts {
            part_lines(plan, part, size, shape, &mut text);
        }
        if let Some(worn) = &shape.worn {
            push(&mut text, &worn_line(plan, worn));
        }
        for used in &size.yarn {
            push(&mut text, &yarn_line(plan, used));
        }
    }
    text
}

/// The sizes in columns: their counts line by line, and below what each comes to; or one size.
pub fn sizes(plan: &Plan, only: Option<&str>) -> String {
    let words = plan.design.words();
    let writer = Writer { words: &words, terms: plan.design.terms };
    let sizes = wanted(plan, only);
    let mut text = plan.design.title.value.clone() + "\n\n";
    let names = || sizes.iter().map(|size| size.name.clone());
    let head = ["round", "part"].map(str::to_owned).into_iter().chain(names()).chain(["instruction".to_owned()]);
    let mut rows: Vec<Vec<String>> = vec![head.collect()];
    let pieces: Vec<_> = sizes.iter().map(|size| (size.piece(), size.name.as_str())).collect();
    for line in sized_lines(&pieces) {
        let count = |count: &Option<u32>| count.map_or("–".to_owned(), |count| count.to_string());
        let part = plan.design.parts.get(line.part).map_or(String::new(), |part| part.name.value.clone());
        // The columns say which sizes have it.
        let label = Label { only: Vec::new(), ..line.label };
        let row = [label.first.spans(&label.last, Gaps::OPEN), part].into_iter().chain(line.counts.iter().map(count));
        let said = std::iter::once(writer.instruction(&line.instruction, Gaps::OPEN));
        let told: Vec<String> = said.chain(writer.remarks(&line.instruction)).collect();
        rows.push(row.chain([told.join(". ")]).collect());
    }
    let stand: Vec<Stands> = [Stands::Left, Stands::Left]
        .into_iter()
        .chain(sizes.iter().map(|_| Stands::Right))
        .chain([Stands::Left])
        .collect();
    columns(&rows, &stand, &mut text);
    push(&mut text, "");
    let figure = |name: &str, of: &dyn Fn(&SizePlan) -> Option<String>| -> Option<Vec<String>> {
        let cells: Vec<Option<String>> = sizes.iter().map(|size| of(size)).collect();
        let said = cells.iter().any(Option::is_some);
        said.then(|| [name.to_owned()].into_iter().chain(cells.into_iter().map(Option::unwrap_or_default)).collect())
    };
    let mut figures = vec![[String::new()].into_iter().chain(names()).collect::<Vec<_>>()];
    figures.extend(figure("head", &|size| size.head.map(|head| length(plan, head))));
    figures.extend(figure("finished round", &|size| Some(length(plan, size.finished))));
    figures.extend(figure("depth", &|size| plan.depth(size).map(|depth| length(plan, depth))));
    figures.extend(figure("brim", &|size| plan.brim(size).map(|brim| length(plan, brim))));
    figures.extend(figure("rounds", &|size| Some(size.rounds.len().to_string())));
    figures.extend(figure("stitches", &|size| Some(size.stitches().to_string())));
    let most = sizes.iter().map(|size| size.yarn.len()).max().unwrap_or(0);
    for index in 0..most {
        let used =
            |size: &SizePlan| size.yarn.get(index).map(|used| format!("{:.0} g, {:.0} m", used.grams, used.metres));
        let colour = sizes.iter().find_map(|size| size.yarn.get(index)?.colour);
        let name = colour.and_then(|index| plan.design.yarn.colours.get(index)).map_or("yarn", |colour| &colour.name);
        figures.extend(figure(name, &used));
    }
    let stand: Vec<Stands> = std::iter::once(Stands::Left).chain(sizes.iter().map(|_| Stands::Right)).collect();
    columns(&figures, &stand, &mut text);
    text
}

fn wanted<'a>(plan: &'a Plan, only: Option<&str>) -> Vec<&'a SizePlan> {
    plan.sizes.iter().filter(|size| only.is_none_or(|only| only == size.name)).collect()
}

fn push(text: &mut String, line: &str) {
    // Writing to a string can't fail.
    let _ = writeln!(text, "{line}");
}

/// A length in both systems with plain blanks, for the terminal.
fn length(plan: &Plan, length: Mm) -> String {
    numbers::length(length, plan.design.units, plan.design.language).replace('\u{a0}', " ")
}

fn rounds(plan: &Plan, size: &SizePlan, text: &mut String) {
    let words = plan.design.words();
    let writer = Writer { words: &words, terms: plan.design.terms };
    let mut rows = vec![COLUMNS.map(|(head, _)| head.to_owned())];
    for line in lines(size.piece()) {
        let numbers =
            if line.first == line.last { line.first.to_string() } else { format!("{}–{}", line.first, line.last) };
        let stitch =
            size.rounds.get(line.first as usize - 1).map_or("", |round| abbreviation(round.stitch, plan.design.terms));
        let colour = line.colour.and_then(|index| plan.design.yarn.colours.get(index));
        rows.push([
            numbers,
            size.parts.get(line.part).map_or_else(String::new, |part| part.name.clone()),
            stitch.to_owned(),
            colour.map_or_else(String::new, |colour| colour.name.clone()),
            writer.count(&line.instruction, Gaps::OPEN),
            writer.counted(&line.instruction),
        ]);
    }
    columns(&rows, &COLUMNS.map(|(_, stands)| stands), text);
    if let Some(step_down) = writer.step_down(&size.step_down) {
        push(text, &step_down);
    }
    if let Some(halves) = size.closed_flat() {
        push(text, &writer.close_flat(&Numbers::one(halves)));
    }
}

/// On which side of its column a cell stands.
#[derive(Clone, Copy)]
enum Stands {
    Left,
    /// As numbers do, so that their units are below each other.
    Right,
}

/// The columns of the listing: what stands over them, and how their cells stand.
const COLUMNS: [(&str, Stands); 6] = [
    ("round", Stands::Right),
    ("part", Stands::Left),
    ("stitch", Stands::Left),
    ("colour", Stands::Left),
    ("count", Stands::Right),
    ("instruction", Stands::Left),
];

/// Rows in columns as wide as their widest cell; a column that holds nothing is left out.
fn columns<R: AsRef<[String]>>(rows: &[R], stand: &[Stands], text: &mut String) {
    let mut widths = vec![0; stand.len()];
    for row in rows {
        for (width, cell) in widths.iter_mut().zip(row.as_ref()) {
            *width = cell.chars().count().max(*width);
        }
    }
    for row in rows {
        let cells = row.as_ref().iter().zip(widths.iter().copied()).zip(stand).filter(|((_, width), _)| *width > 0);
        let cells = cells.map(|((cell, width), stands)| match stands {
            Stands::Left => format!("{cell:<width$}"),
            Stands::Right => format!("{cell:>width$}"),
        });
        push(text, cells.collect::<Vec<_>>().join("  ").trim_end());
    }
}

fn part_lines(plan: &Plan, part: &PartPlan, size: &SizePlan, shape: &SideShape, text: &mut String) {
    let within =
        size.rounds.iter().zip(&shape.rounds).filter(|(round, _)| (part.first..=part.last).contains(&round.number));
    let strains = within.map(|(round, at)| (round.number, at.hoop_strain));
    let strained = strains.max_by(|a, b| a.1.abs().total_cmp(&b.1.abs()));
    push(
        text,
        &format!(
            "{}: rounds {} to {}, {} long, ends {} round; {} wanted, {:+.1} mm, {:+.1} %",
            part.name,
            part.first,
            part.last,
            length(plan, part.length),
            length(plan, part.reached),
            length(plan, part.target),
            tidy((part.reached - part.target).mm(), 1),
            tidy(part.deviation_percent(), 1)
        ),
    );
    let growth = (part.growth_needed, part.growth_used);
    if growth.0.abs() > 0.005 || growth.1.abs() > 0.005 {
        push(text, &format!("  grows by {:.2} stitches a round where {:.2} are needed", growth.1, growth.0));
    }
    if let Some((round, strain)) = strained.filter(|(_, strain)| strain.abs() >= 0.005) {
        let word = if strain < 0.0 { "squeezed" } else { "stretched" };
        push(text, &format!("  round {round} is the most strained: {word} by {:.1} %", strain.abs() * 100.0));
    }
    stacking(plan, part, size, text);
    for reason in &part.reasons {
        push(text, &format!("  {reason}"));
    }
}

/// How far shaping stands on shaping, and the polygon it makes where it does.
fn stacking(plan: &Plan, part: &PartPlan, size: &SizePlan, text: &mut String) {
    let stacking = size.stacking(part);
    if let Some((round, share)) = stacking.most {
        let line = format!("  at most {:.0} % of a round's shaping stands on shaping (round {round})", share * 100.0);
        let none = "  no shaping stands on the shaping of the round before".to_owned();
        push(text, if share > 0.0 { &line } else { &none });
    }
    if let Some(polygon) = stacking.polygon.filter(|polygon| polygon.last == part.last) {
        push(
            text,
            &format!(
                "  its {} corners show: {} across the flats, {} across the corners",
                polygon.corners,
                length(plan, polygon.across_flats),
                length(plan, polygon.across_corners)
            ),
        );
    }
}

/// How a hat sits on its head.
fn worn_line(plan: &Plan, worn: &Worn) -> String {
    let [brow, ears] = worn.marks().map(|mark| length(plan, mark));
    let sits = match worn.sits() {
        Sits::Top => "above the brow",
        Sits::Brow => "at the brow",
        Sits::Between => "between brow and ears",
        Sits::Ears => "over the ears",
        Sits::Below => "below the ears",
    };
    let holds = match worn.holds() {
        Holds::Slips => "slips",
        Holds::Rests => "rests lightly",
        Holds::Grips => "holds",
        Holds::Pinches => "pinches",
    };
    let (round, percent) = (worn.tightest + 1, (worn.grip * 100.0).abs());
    let tight = if worn.grip < -0.0005 {
        format!("its tightest round, {round}, is {percent:.1} % wider than the head there")
    } else {
        format!("round {round} grips most, stretched by {percent:.1} %")
    };
    format!(
        "on a head of {}: a tape over the head reads {} to the edge, {sits} (brow {brow}, below the ears {ears}); {tight}; it {holds}",
        length(plan, worn.head.around()),
        length(plan, worn.tape),
    )
}

fn yarn_line(plan: &Plan, used: &YarnUse) -> String {
    let colour = used.colour.and_then(|index| plan.design.yarn.colours.get(index));
    let name = colour.map_or("yarn", |colour| &colour.name);
    let balls = match used.balls {
        Some(1) => ", 1 ball".to_owned(),
        Some(balls) => format!(", {balls} balls"),
        None => String::new(),
    };
    let estimated = if used.estimated { ", estimated: no swatch was weighed" } else { "" };
    format!("{name}: {:.0} g, {:.0} m{balls}{estimated}", used.grams, used.metres)
}

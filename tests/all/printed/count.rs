//! What there is when a round is done, as it is told: a number of stitches, or stitches by kind and spaces.

use super::grammar::{Reader, Unit, Worked, hole};

/// The chains of each space of a round: those that follow one another.
fn spaces(worked: &Worked) -> Vec<usize> {
    worked.top.chunk_by(|a, b| a == b).filter(|units| units[0] == Unit::Chain).map(<[Unit]>::len).collect()
}

/// Stitches of a round, the chains of its spaces not among them.
pub(super) fn stitches(top: &[Unit]) -> usize {
    top.iter().filter(|unit| **unit == Unit::Stitch).count()
}

/// Holds a count against what was worked. Where an author told it, some kinds may be left out.
pub(super) fn hold(told: &str, reader: &Reader<'_>, worked: &Worked, author: bool) -> Result<(), String> {
    let spaces = spaces(worked);
    let all = stitches(&worked.top);
    if let Some(number) = reader.tongue.number(told) {
        return if number == all && (author || spaces.is_empty()) {
            Ok(())
        } else {
            Err(format!("{all} and {spaces:?}"))
        };
    }
    let (mut counted, mut spanned) = (0, 0);
    let own = || told.split(", ").map(|part| freely(part, reader)).collect::<Option<Vec<Part>>>();
    let ours = parts(told, reader);
    for part in ours.or_else(|| own().filter(|_| author)).ok_or_else(|| format!("“{told}” is no count"))? {
        match part {
            Part::Stitches(number) => counted += number,
            Part::Of(name, number) => {
                let made = worked.made.iter().filter(|(own, _)| *own == name).map(|(_, count)| count).sum::<usize>();
                if made != number {
                    return Err(format!("{made} {name}"));
                }
                counted += number;
            }
            Part::Spaces(chains, number) => {
                if spaces.iter().filter(|own| **own == chains).count() != number {
                    return Err(format!("spaces of {spaces:?}"));
                }
                spanned += number;
            }
        }
    }
    let whole = counted == all && spanned == spaces.len();
    if whole || author { Ok(()) } else { Err(format!("{all} stitches, spaces of {spaces:?}")) }
}

enum Part {
    Stitches(usize),
    Of(String, usize),
    Spaces(usize, usize),
}

/// What an author counts, who may call a stitch by another name.
fn freely(told: &str, reader: &Reader<'_>) -> Option<Part> {
    part(told, reader).or_else(|| Some(Part::Stitches(told.split(' ').next()?.parse().ok()?)))
}

/// The parts of a count, however they are tied together.
fn parts(told: &str, reader: &Reader<'_>) -> Option<Vec<Part>> {
    if let Some(part) = part(told, reader) {
        return Some(vec![part]);
    }
    let ties = [", ", reader.tongue.one("p.and")];
    let mut places: Vec<(usize, usize)> =
        ties.iter().flat_map(|tie| told.match_indices(tie).map(|(at, tie)| (at, tie.len()))).collect();
    places.sort_unstable();
    places.into_iter().find_map(|(at, length)| {
        let mut found = vec![part(&told[..at], reader)?];
        found.extend(parts(&told[at + length..], reader)?);
        Some(found)
    })
}

fn part(told: &str, reader: &Reader<'_>) -> Option<Part> {
    let (tongue, form) = (reader.tongue, reader.form);
    let number = |letter: char, holes: &super::tongue::Holes<'_>| tongue.number(hole(holes, letter).ok()?);
    let key = |name: &str| format!("{form}.{name}");
    if let Some(holes) = tongue.read(&key("count-spaces"), told) {
        return Some(Part::Spaces(number('m', &holes)?, number('n', &holes)?));
    }
    if let Some(holes) = tongue.read(&key("count-stitches"), told) {
        return number('n', &holes).map(Part::Stitches);
    }
    let holes = tongue.read(&key("many"), told)?;
    let short = (reader.short)(hole(&holes, 's').ok()?)?;
    number('n', &holes).map(|number| Part::Of(short, number))
}

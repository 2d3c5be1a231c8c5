//! Written rounds of a part: each with its own line in the file, for all sizes or for one, and the numbers of one size out
//! of those of several that makers write side by side, `60 (64, 68)` or `(60, 64, 68)`.

use super::fields::doubled;
use super::tree::{Node, Text, Value, slice};
use crate::report::{Diagnostic, Place, Report};

/// Rounds as they are written.
#[derive(Clone, Debug)]
pub(super) enum RawRounds {
    /// For every size.
    All(Vec<Text>),
    /// For each size its own, by its name.
    Each(Place, Vec<(Text, Vec<Text>)>),
}

/// What a round begins with where it has a number.
const LABELS: [&str; 7] = ["rnd", "rnds", "round", "rounds", "row", "rows", "r"];

/// Rounds for all sizes, or by the names of the sizes.
pub(super) fn read(text: &str, key: &Text, node: Node, report: &mut Report) -> RawRounds {
    let label = |name: &Text| {
        let word: String = name.text.trim().chars().take_while(|c| c.is_alphabetic()).collect();
        LABELS.contains(&word.to_lowercase().as_str()) && name.text.chars().any(|c| c.is_ascii_digit())
    };
    match node.value {
        // Rounds below a bare `written:` read as fields as well: their names are those of rounds.
        Value::Fields(fields) if !fields.is_empty() && !fields.iter().any(|(name, _)| label(name)) => {
            let mut each: Vec<(Text, Vec<Text>)> = Vec::new();
            for (name, node) in fields {
                if let Some((first, _)) = each.iter().find(|(other, _)| other.text == name.text) {
                    report.add(doubled(&format!("`{}`", key.text), &name, first.place));
                    continue;
                }
                let below = Text { text: key.text.clone(), place: name.place };
                let lines = lines_of(text, &below, node, report);
                each.push((name, lines));
            }
            RawRounds::Each(key.place, each)
        }
        value @ (Value::Nothing | Value::Word(_) | Value::List(_) | Value::Fields(_)) => {
            RawRounds::All(lines_of(text, key, Node { value, ..node }, report))
        }
    }
}

/// Rounds: a block with one round a line, or a list. Each keeps its own line.
pub(super) fn lines_of(text: &str, key: &Text, node: Node, report: &mut Report) -> Vec<Text> {
    let mut rounds = Vec::new();
    let below = || {
        let example = if key.text != "written" { "FPdc in next, BPdc in next" } else { "Rnd 1: 6 sc in ring (6)" };
        format!("write `{}: |` and the rounds on the lines below it, indented, such as `{example}`", key.text)
    };
    match node.value {
        Value::List(nodes) => {
            for node in nodes {
                rounds.extend(written_round(text, key, node, report));
            }
        }
        Value::Word(word) => lines(text, node.place, &word, &mut rounds),
        Value::Nothing | Value::Fields(_) => {
            let message = format!("`{}` takes rounds, one a line, and here is a group of fields", key.text);
            report.add(Diagnostic::error("wrong-kind", message).at(node.place).help(below()));
        }
    }
    if rounds.is_empty() && !report.has_errors() {
        let message = format!("`{}` holds no round", key.text);
        report.add(Diagnostic::error("no-value", message).at(key.place).help(below()));
    }
    rounds
}

fn written_round(text: &str, key: &Text, node: Node, report: &mut Report) -> Vec<Text> {
    let mut found = Vec::new();
    match node.value {
        Value::Word(word) => lines(text, node.place, &word, &mut found),
        // `- Rnd 3: sc in next st` reads as a field named `Rnd 3`: the round is the whole line.
        Value::Fields(fields) if fields.len() == 1 => {
            for (name, node) in fields {
                let end = node.place.offset + node.place.length;
                let place = Place { length: end.saturating_sub(name.place.offset), ..name.place };
                match node.value {
                    Value::Word(word) => {
                        let whole = slice(text, place).map_or(word, str::to_owned);
                        found.push(Text { text: whole, place });
                    }
                    Value::Nothing | Value::List(_) | Value::Fields(_) => report.add(not_a_round(key, node.place)),
                }
            }
        }
        Value::Nothing | Value::List(_) | Value::Fields(_) => report.add(not_a_round(key, node.place)),
    }
    found
}

fn not_a_round(key: &Text, place: Place) -> Diagnostic {
    let message = format!("this entry of `{}` does not read as one line of text", key.text);
    let help = format!(
        "brackets and colons mean something to YAML: write `{}: |` and the rounds below it, one a line",
        key.text
    );
    Diagnostic::error("wrong-kind", message).at(place).help(help)
}

/// The lines of a block, each with its own place; blank ones are left out.
fn lines(text: &str, place: Place, word: &str, into: &mut Vec<Text>) {
    let source = slice(text, place).unwrap_or_default();
    let quoted = source.starts_with(['"', '\'']);
    if !word.contains('\n') || quoted {
        into.push(Text { text: word.trim().to_owned(), place });
        return;
    }
    let mut offset = place.offset;
    for (at, line) in source.split_inclusive('\n').enumerate() {
        let lead = line.len() - line.trim_start().len();
        let trimmed = line.trim();
        if !trimmed.is_empty() {
            let column = if at == 0 { place.column } else { 1 } + line[..lead].chars().count();
            let place = Place { line: place.line + at, column, offset: offset + lead, length: trimmed.len() };
            into.push(Text { text: trimmed.to_owned(), place });
        }
        offset += line.len();
    }
}

/// A number or a range of numbers, by its bytes, of a list of sizes; a dash alone for a size that has none.
type Span = std::ops::Range<usize>;

/// One line of written rounds as it is for one size, every other number blanked out, so that all places stay. Nothing
/// where the line is of other sizes alone.
pub(super) fn of_size(line: &Text, size: usize, names: &[&str], report: &mut Report) -> Option<Text> {
    let bytes = line.text.as_bytes();
    let mut shown = line.text.clone();
    let mut blank = |span: Span| {
        let blanks: String = line.text.get(span.clone()).unwrap_or_default().chars().map(blank_of).collect();
        shown.replace_range(span, &blanks);
    };
    let mut at = match only(&line.text, names) {
        Some((having, end)) if having.contains(&size) => {
            blank(0..end);
            end
        }
        Some(_) => return None,
        None => 0,
    };
    while names.len() > 1 && at < bytes.len() {
        let list = list(&line.text, at);
        if let Some((spans, end)) = list.filter(|(spans, _)| spans.len() == names.len()) {
            let own = spans.get(size).filter(|own| !is_dash(&line.text, own))?;
            keep(own, &mut blank, (at + 1, end - 1));
            at = end;
            continue;
        }
        let Some(first) = span(&line.text, at) else {
            at += line.text[at..].chars().next().map_or(1, char::len_utf8);
            continue;
        };
        let open = after_blanks(&line.text, first.end);
        if let Some((rest, end)) = self::list(&line.text, open) {
            if rest.len() + 1 == names.len() && (rest.len() > 1 || goes_on(&line.text, first.start, end)) {
                let all: Vec<Span> = std::iter::once(first).chain(rest).collect();
                let own = all.get(size).filter(|own| !is_dash(&line.text, own))?;
                keep(own, &mut blank, (at, end));
                at = end;
                continue;
            }
            let times = line.text[..first.start].trim_end().ends_with(['x', 'X', '×', '*']);
            if rest.len() > 1 && !(rest.len() == names.len() && times) {
                contradicts(line, first.start..end, rest.len() + 1, names, report);
                at = end;
                continue;
            }
        }
        at = first.end;
    }
    Some(Text { text: shown, place: line.place })
}

/// A blank of so many bytes.
const fn blank_of(c: char) -> char {
    // Dashes have three bytes, as this space has.
    if c.len_utf8() == 3 { '\u{2003}' } else { ' ' }
}

/// Blanks out all of a stretch but the span of one size.
fn keep(own: &Span, blank: &mut impl FnMut(Span), (start, end): (usize, usize)) {
    blank(start..own.start);
    blank(own.end..end);
}

/// True where a dash says that a size has no such round.
fn is_dash(text: &str, span: &Span) -> bool {
    text.get(span.clone()).is_some_and(|own| matches!(own, "-" | "–"))
}

fn after_blanks(text: &str, at: usize) -> usize {
    at + text[at..].len() - text[at..].trim_start_matches(' ').len()
}

/// A number or a range that begins here, no part of a word.
fn span(text: &str, at: usize) -> Option<Span> {
    let rest = &text[at..];
    let before = text[..at].chars().next_back();
    if before.is_some_and(|c| c.is_alphanumeric() || matches!(c, '.' | '/')) {
        return None;
    }
    let digits = |text: &str| text.len() - text.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let number = digits(rest);
    if number == 0 {
        return None;
    }
    let mut end = number;
    if let Some(more) = rest[end..].strip_prefix(['-', '–']).filter(|more| digits(more) > 0) {
        end = rest.len() - more.len() + digits(more);
    }
    // `2nd`, `1.5` and `3/4` are no counts.
    let next = rest[end..].chars().next();
    (!next.is_some_and(|c| {
        c.is_alphanumeric() || matches!(c, '.' | '/') && rest[end + 1..].starts_with(|c: char| c.is_ascii_digit())
    }))
    .then_some(at..at + end)
}

/// A bracket of nothing but numbers, with commas between them, that begins here; where it ends.
fn list(text: &str, at: usize) -> Option<(Vec<Span>, usize)> {
    let mut at = text.get(at..)?.starts_with('(').then_some(at + 1)?;
    let mut spans = Vec::new();
    loop {
        at = after_blanks(text, at);
        let dash = text[at..].chars().next().filter(|c| matches!(c, '-' | '–')).map(|c| at..at + c.len_utf8());
        let one = span(text, at).or(dash)?;
        at = after_blanks(text, one.end);
        spans.push(one);
        match text[at..].chars().next()? {
            ',' | ';' => at += 1,
            ')' => return Some((spans, at + 1)),
            _ => return None,
        }
    }
}

/// True where two numbers are those of two sizes: `[sc, inc] x 6 (12)` ends in a count, `ch 60 (64) and join` doesn't.
fn goes_on(text: &str, start: usize, end: usize) -> bool {
    let next = text[after_blanks(text, end)..].chars().next();
    let stated = text[..start].trim_end().ends_with(['–', '—', '=']);
    stated || next.is_some_and(|c| c.is_alphabetic() || c == ':')
}

/// The sizes of a line that begins `Size M only:` or `Sizes S, M only:`, and where it goes on.
fn only(text: &str, names: &[&str]) -> Option<(Vec<usize>, usize)> {
    let lead = ["Sizes ", "Size ", "sizes ", "size "].into_iter().find(|lead| text.starts_with(lead))?;
    let (said, _) = text[lead.len()..].split_once(" only:")?;
    let of = |name: &str| names.iter().position(|other| *other == name.trim());
    let having: Option<Vec<usize>> = said.split([',', '&']).map(of).collect();
    Some((having?, lead.len() + said.len() + " only:".len()))
}

fn contradicts(line: &Text, span: Span, numbers: usize, names: &[&str], report: &mut Report) {
    let said = line.text.get(span.clone()).unwrap_or_default();
    let sizes = super::fields::listed(names);
    let message = format!("`{said}` has {numbers} numbers, and there are {} sizes: {sizes}", names.len());
    let help = "write one number for each size, in their order: `60 (64, 68)`";
    let column = line.place.column + line.text[..span.start].chars().count();
    let place = Place { column, offset: line.place.offset + span.start, length: said.len(), ..line.place };
    report.add(Diagnostic::error("sizes-differ", message).at(place).help(help));
}

#[cfg(test)]
mod tests {
    use super::*;

    const THREE: [&str; 3] = ["S", "M", "L"];

    fn sized(text: &str, names: &[&str]) -> Vec<String> {
        let place = Place { line: 1, column: 1, offset: 0, length: text.len() };
        let line = Text { text: text.to_owned(), place };
        let of = |size| {
            let own = of_size(&line, size, names, &mut Report::new());
            own.map_or("none".to_owned(), |own| {
                assert_eq!(own.text.len(), text.len(), "places stay");
                own.text.split_whitespace().collect::<Vec<_>>().join(" ").replace("( ", "(").replace(" )", ")")
            })
        };
        (0..names.len()).map(of).collect()
    }

    #[test]
    fn numbers_of_several_sizes_are_told_apart() {
        assert_eq!(sized("sc around (64, 64, 68)", &THREE), ["sc around (64)", "sc around (64)", "sc around (68)"]);
        assert_eq!(sized("Ch 60 (64, 68), join", &THREE), ["Ch 60 , join", "Ch 64 , join", "Ch 68 , join"]);
        assert_eq!(sized("Rnds 4-7 (4–8, 4–9): sc", &THREE), ["Rnds 4-7 : sc", "Rnds 4–8 : sc", "Rnds 4–9 : sc"]);
        assert_eq!(sized("inc x 6 (12, 18, 24)", &THREE), ["inc x 6 (12)", "inc x 6 (18)", "inc x 6 (24)"]);
        assert_eq!(sized("Size M only: Rnd 3: sc", &THREE), ["none", "Rnd 3: sc", "none"]);
        assert_eq!(sized("Sizes S, L only: sc", &THREE), ["sc", "none", "sc"]);
        assert_eq!(sized("sc (–, 80, 88)", &THREE), ["none", "sc (80)", "sc (88)"]);
    }

    #[test]
    fn other_numbers_stay() {
        for same in
            ["inc x 6 (12)", "sc in 2nd ch (30)", "(30 sc, 6 ch)", "sc2tog (3, 4)", "(30, 6)", "ch 3, 11 dc in ring"]
        {
            assert_eq!(sized(same, &THREE), [same; 3]);
        }
        assert_eq!(sized("[sc, inc] x 6 (18)", &["S", "M"]), ["[sc, inc] x 6 (18)"; 2]);
        assert_eq!(sized("ch 60 (64) and join", &["S", "M"]), ["ch 60 and join", "ch 64 and join"]);
        assert_eq!(sized("ch 60 (64, 68)", &["one"]), ["ch 60 (64, 68)"]);
    }

    #[test]
    fn lists_of_another_length_are_told() {
        let place = Place { line: 7, column: 5, offset: 40, length: 23 };
        let line = Text { text: "Ch 60 (64, 68, 72)".to_owned(), place };
        let mut report = Report::new();
        assert!(of_size(&line, 0, &THREE, &mut report).is_some());
        let found = &report.diagnostics[0];
        assert_eq!((found.code, found.place.map(|place| (place.line, place.column))), ("sizes-differ", Some((7, 8))));
    }
}

//! The plain text, read line by line.

use super::paper::{Block, Paper, Row, Section, flat};
use super::tongue::Tongue;

fn rule(line: &str, mark: char) -> bool {
    line.len() > 2 && line.chars().all(|letter| letter == mark)
}

/// Lines that rule off the columns of a table: `----   -----`.
fn columns(line: &str) -> bool {
    line.contains("--") && line.chars().all(|letter| letter == '-' || letter == ' ')
}

pub(super) fn read(text: &str, tongue: &Tongue) -> Paper {
    let lines: Vec<&str> = text.lines().collect();
    let mut paper = Paper { form: "text", ..Paper::default() };
    let mut starts: Vec<usize> = (2..lines.len())
        .filter(|at| rule(lines[*at], '-') && lines[at - 2].is_empty() && !lines[at - 1].is_empty())
        .collect();
    let opening = starts.first().map_or(lines.len(), |at| at - 1);
    for fact in paragraphs(&lines[2..opening]).iter().flat_map(|lines| logical(lines)) {
        if let Some((name, told)) = fact.split_once(tongue.one("colon")) {
            paper.facts.push((name.to_owned(), told.to_owned()));
        }
    }
    starts.push(lines.len() + 1);
    for pair in starts.windows(2) {
        let title = lines[pair[0] - 1].to_owned();
        let own = &lines[pair[0] + 1..pair[1] - 1];
        let blocks = paragraphs(own).iter().flat_map(|lines| block(lines, tongue)).collect();
        paper.sections.push(Section { title, blocks });
    }
    paper
}

/// Lines between blank ones.
fn paragraphs<'l>(lines: &'l [&'l str]) -> Vec<&'l [&'l str]> {
    lines.split(|line| line.is_empty()).filter(|lines| !lines.is_empty()).collect()
}

/// Lines with those that go on from them.
fn logical(lines: &[&str]) -> Vec<String> {
    let mut whole: Vec<String> = Vec::new();
    for line in lines {
        match whole.last_mut().filter(|_| line.starts_with(' ')) {
            Some(last) => *last += &format!(" {}", line.trim()),
            None => whole.push((*line).to_owned()),
        }
    }
    whole
}

fn block(lines: &[&str], tongue: &Tongue) -> Vec<Block> {
    let first = lines[0];
    let whole = logical(lines);
    let numbered = |line: &str| line.split_once(". ").is_some_and(|(number, _)| number.parse::<u32>().is_ok());
    if let Some(told) = first.strip_prefix("* ") {
        return vec![Block::Heading(flat(&(told.to_owned() + " " + &lines[1..].join(" "))))];
    }
    if let Some(told) =
        flat(&lines.join(" ")).strip_prefix(&format!("[{}{}", tongue.one("picture"), tongue.one("colon")))
    {
        let (told, caption) = told.rsplit_once(']').unwrap_or((told, ""));
        let caption = (!caption.is_empty()).then(|| Block::Text(caption.trim().to_owned()));
        return [Block::Picture(told.to_owned())].into_iter().chain(caption).collect();
    }
    if first.starts_with("- ") || whole.iter().all(|line| numbered(line)) {
        let item = |line: String| Block::Item(flat(line.split_once(' ').map_or("", |(_, item)| item)));
        return whole.into_iter().map(item).collect();
    }
    if lines.get(1).is_some_and(|line| columns(line)) {
        return table(lines).into_iter().map(Block::Row).collect();
    }
    let told: Vec<Option<Row>> = whole.iter().map(|line| sentence(line, tongue)).collect();
    if told.iter().all(Option::is_some) {
        return told.into_iter().flatten().map(Block::Row).collect();
    }
    if lines.iter().all(|line| line.contains("   ")) {
        let fact = |line: &&str| line.split_once("   ").map(|(a, b)| (a.trim().to_owned(), b.trim().to_owned()));
        let row = |(name, told): (String, String)| Block::Row(vec![(String::new(), name), (String::new(), told)]);
        return lines.iter().filter_map(fact).map(row).collect();
    }
    vec![Block::Text(flat(&lines.join(" ")))]
}

/// Columns that begin and end where their rules do.
fn table(lines: &[&str]) -> Vec<Row> {
    let marks: Vec<char> = lines[1].chars().collect();
    let begins = |at: &usize| marks[*at] == '-' && (*at == 0 || marks[at - 1] == ' ');
    let starts: Vec<usize> = (0..marks.len()).filter(begins).collect();
    let cells = |line: &str| -> Vec<String> {
        let letters: Vec<char> = line.chars().collect();
        let cut = |(i, from): (usize, &usize)| {
            let to = starts.get(i + 1).copied().unwrap_or(usize::MAX).min(letters.len());
            letters.get(*from..to).unwrap_or_default().iter().collect::<String>().trim().to_owned()
        };
        starts.iter().enumerate().map(cut).collect()
    };
    let titles = cells(lines[0]);
    lines[2..].iter().map(|line| titles.iter().cloned().zip(cells(line)).collect()).collect()
}

/// A row told as a sentence: `head: words; Title cell; Title cell`.
fn sentence(line: &str, tongue: &Tongue) -> Option<Row> {
    let line = flat(line);
    // A line for some sizes only has a colon of its own.
    let only = tongue.all("only").find_map(|template| {
        let lead = template.split("{s}").next()?;
        let after = template.split("{s}").nth(1)?.split("{r}").next()?;
        line.starts_with(lead).then(|| line.find(after).map(|at| at + after.len()))?
    });
    let from = only.unwrap_or(0);
    let colon = tongue.one("colon");
    let at = from + line[from..].find(colon)?;
    let (head, rest) = (&line[..at], &line[at + colon.len()..]);
    let titles: Vec<&str> = tongue.under("column.").map(|(_, title)| title).collect();
    let titled = |part: &str| {
        let known =
            titles.iter().filter(|title| part.strip_prefix(**title).is_some_and(|rest| rest.starts_with([' ', ':'])));
        let title = known.max_by_key(|title| title.len())?;
        Some(((*title).to_owned(), part[title.len()..].trim_start_matches([' ', ':']).to_owned()))
    };
    let parts: Vec<&str> = rest.split(tongue.one("semicolon")).collect();
    let mut row = vec![(String::new(), head.to_owned())];
    let mut own = 0;
    for (i, part) in parts.iter().enumerate() {
        let change =
            part.trim_start_matches(['+', '–', '-']).chars().all(|c| c.is_ascii_digit() || "–+ (,)".contains(c));
        row.push(match titled(part) {
            Some(cell) => cell,
            None if i > 0 && change => ("+/−".to_owned(), (*part).to_owned()),
            None if i == 0 => (tongue.one("column.do").to_owned(), (*part).to_owned()),
            // An author's words may hold a semicolon of their own.
            None if i == own + 1 && row.len() == 2 => {
                let words = row.last_mut()?;
                words.1 += &format!("{}{part}", tongue.one("semicolon"));
                own += 1;
                continue;
            }
            None => return None,
        });
    }
    let known = row.iter().filter(|(title, _)| titles.contains(&title.as_str())).count();
    // The first column is that of the rounds where there is something to do, else that of the sizes.
    let first =
        if row.iter().any(|(title, _)| title == tongue.one("column.do")) { "column.round" } else { "column.size" };
    row[0].0 = tongue.one(first).to_owned();
    (parts.len() > 1 && known > 1).then_some(row)
}

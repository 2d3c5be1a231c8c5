//! Several sizes side by side: which of their lines can be one line.

use super::lines::Stretch;

/// A line of several sizes: for each size its rounds, or nothing where it has none such.
pub(super) type Row<'a> = Vec<Option<&'a Stretch>>;

/// The lines of all sizes in as few rows as they take when one size after another is lined up with those before it. The
/// order of each size is kept, and part follows part. Takes time by rows times lines, for each size.
pub(super) fn rows(sizes: &[Vec<Stretch>]) -> Vec<Row<'_>> {
    let last = sizes.iter().flatten().map(|stretch| stretch.part).max();
    (0..last.map_or(0, |last| last + 1)).flat_map(|part| rows_of_part(sizes, part)).collect()
}

fn rows_of_part(sizes: &[Vec<Stretch>], part: usize) -> Vec<Row<'_>> {
    let mut rows: Vec<Row<'_>> = Vec::new();
    for (index, size) in sizes.iter().enumerate() {
        let own: Vec<&Stretch> = size.iter().filter(|stretch| stretch.part == part).collect();
        rows = joined(rows, &own, index, sizes.len());
    }
    rows
}

/// The rows with those of one more size among them: a longest common subsequence, a row weighed by the sizes that it
/// already has.
fn joined<'a>(rows: Vec<Row<'a>>, own: &[&'a Stretch], index: usize, sizes: usize) -> Vec<Row<'a>> {
    let alike = |row: &Row<'a>, stretch: &Stretch| {
        row.iter().flatten().next().is_some_and(|lead| lead.alike(stretch)).then(|| row.iter().flatten().count() as u32)
    };
    let width = own.len() + 1;
    let mut best = vec![0_u32; (rows.len() + 1) * width];
    let mut fits = vec![false; rows.len() * own.len()];
    for (r, row) in rows.iter().enumerate().rev() {
        for (s, stretch) in own.iter().enumerate().rev() {
            let (below, beside) = (best[(r + 1) * width + s], best[r * width + s + 1]);
            let both = alike(row, stretch).map(|weight| weight + best[(r + 1) * width + s + 1]);
            fits[r * own.len() + s] = both.is_some_and(|both| both >= below.max(beside));
            best[r * width + s] = below.max(beside).max(both.unwrap_or(0));
        }
    }
    let mut lined_up = Vec::new();
    let mut s = 0;
    let alone = |stretch| (0..sizes).map(|size| (size == index).then_some(stretch)).collect::<Row<'a>>();
    for (r, mut row) in rows.into_iter().enumerate() {
        // What this size does before it comes to a row of the others stands before that row.
        while s < own.len() && !fits[r * own.len() + s] && best[r * width + s + 1] > best[(r + 1) * width + s] {
            lined_up.push(alone(own[s]));
            s += 1;
        }
        if s < own.len() && fits[r * own.len() + s] {
            row[index] = Some(own[s]);
            s += 1;
        }
        lined_up.push(row);
    }
    lined_up.extend(own[s.min(own.len())..].iter().map(|stretch| alone(*stretch)));
    lined_up
}

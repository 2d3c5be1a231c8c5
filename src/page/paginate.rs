//! Sharing slabs out over pages: a shortest path over the places where a page may end.

use crate::units::TOLERANCE;

/// What the choice of page ends needs to know of a slab.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Extent {
    /// Room above it, dropped at the top of a page.
    pub(super) before: f64,
    /// Its height.
    pub(super) height: f64,
    /// Height of the head repeated over it at the top of a page.
    pub(super) repeat: f64,
    /// True where no page may end after it.
    pub(super) keep: bool,
    /// Cost of ending a page after it, against a page's worth of paper.
    pub(super) cost: f64,
    /// True for a slab as wide as a column: those that follow one another stand in two columns, as even as can be.
    pub(super) column: bool,
}

/// Where a slab stands on its page.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Place {
    /// Its top, from that of the print area, below any head that is repeated over it.
    pub(super) top: f64,
    /// True in the second column.
    pub(super) second: bool,
    /// True where the head of its table is repeated over it.
    pub(super) headed: bool,
}

/// Height of slabs one below the other, the first at the top of its page or column.
fn stacked(slabs: &[Extent]) -> f64 {
    let (first, rest) = match slabs.split_first() {
        Some((first, rest)) => (first.repeat + first.height, rest),
        None => return 0.0,
    };
    first + rest.iter().map(|slab| slab.before + slab.height).sum::<f64>()
}

/// After how many slabs of a stretch its second column begins, and how high the columns are: as low as can be, the first
/// no lower than the second where that costs nothing.
fn balanced(slabs: &[Extent]) -> (usize, f64) {
    let mut best = (slabs.len(), stacked(slabs));
    for first in (1..slabs.len()).filter(|at| !slabs[at - 1].keep) {
        let height = stacked(&slabs[..first]).max(stacked(&slabs[first..]));
        if height <= best.1 + SAME_COST {
            best = (first, height);
        }
    }
    best
}

/// Stretches of slabs that stand in columns or on the whole width, in turn: their first and one past their last.
fn stretches(slabs: &[Extent]) -> Vec<(usize, usize)> {
    let mut found: Vec<(usize, usize)> = Vec::new();
    for (at, slab) in slabs.iter().enumerate() {
        match found.last_mut() {
            Some((from, to)) if slabs[*from].column == slab.column => *to = at + 1,
            _ => found.push((at, at + 1)),
        }
    }
    found
}

/// Where the slabs of one page stand, and the height they take.
pub(super) fn places(slabs: &[Extent]) -> (Vec<Place>, f64) {
    let mut places = Vec::with_capacity(slabs.len());
    let mut y = 0.0;
    for (from, to) in stretches(slabs) {
        let own = &slabs[from..to];
        if from > 0 {
            y += own[0].before;
        }
        let (first, height) = if own[0].column { balanced(own) } else { (own.len(), stacked(own)) };
        for (column, stack) in [(false, &own[..first]), (true, &own[first..])] {
            let mut at = y;
            for (index, slab) in stack.iter().enumerate() {
                // Below others on the whole width a table goes on without its head.
                let top = index == 0 && (slab.column || from == 0);
                at += if index > 0 {
                    slab.before
                } else if top {
                    slab.repeat
                } else {
                    0.0
                };
                places.push(Place { top: at, second: column, headed: top && slab.repeat > 0.0 });
                at += slab.height;
            }
        }
        y += height;
    }
    (places, y)
}

/// Costs nearer than this are the same: of two ways as cheap the one found first is kept.
const SAME_COST: f64 = 1e-12;
/// A page less full than this, at the end, counts as nearly empty.
const NEARLY_EMPTY: f64 = 0.3;

/// Shares the slabs out over pages of `room` height and gives the index of the first slab of each page. Uses as few
/// pages as the keeps allow, avoids dear page ends, and a nearly empty page at the end. Where keeps can't be met they
/// give way. Nothing where one slab with its repeated head is higher than a page; its index is the error.
pub(super) fn page_starts(slabs: &[Extent], room: f64) -> Result<Vec<usize>, usize> {
    if let Some(tall) = slabs.iter().position(|slab| slab.height + slab.repeat > room + TOLERANCE) {
        return Err(tall);
    }
    let count = slabs.len();
    // best[i]: cheapest cost of everything before slab i with a page starting at i, and the page start before it.
    let mut best: Vec<Option<(f64, usize)>> = vec![None; count + 1];
    if let Some(first) = best.first_mut() {
        *first = Some((0.0, 0));
    }
    for start in 0..count {
        // A start that the keeps forbid everywhere else is opened when nothing later can be reached without it.
        let Some((so_far, _)) = best[start] else { continue };
        let ends = page_ends(slabs, start, room);
        for (end, cost) in ends {
            // Ends are tried from the first start on: of two ways as dear the one whose last page starts earlier is
            // kept.
            if best[end].is_none_or(|(known, _)| so_far + cost < known - SAME_COST) {
                best[end] = Some((so_far + cost, start));
            }
        }
    }
    let mut starts = Vec::new();
    let mut at = count;
    while at > 0 {
        let Some((_, before)) = best[at] else { break };
        starts.push(before);
        at = before;
    }
    // Followed back from the end, and so the wrong way round.
    starts.reverse();
    Ok(starts)
}

/// Where a page from `start` may end, each with its cost: one past its last slab.
fn page_ends(slabs: &[Extent], start: usize, room: f64) -> Vec<(usize, f64)> {
    let mut ends = Vec::new();
    let mut furthest = start;
    // The least that the slabs can take: two columns side by side take half of what they hold.
    let mut least = 0.0;
    for (end, slab) in slabs.iter().enumerate().skip(start) {
        least += slab.height / if slab.column { 2.0 } else { 1.0 };
        if least > room + TOLERANCE {
            break;
        }
        // What is asked for above a slab is for the eye between two; at the top of a page there is nothing to part it
        // from.
        let (_, height) = places(&slabs[start..=end]);
        if height > room + TOLERANCE {
            // A slab more may part the columns where they are of one height.
            if slab.column {
                continue;
            }
            break;
        }
        furthest = end;
        let last = end + 1 == slabs.len();
        // No page ends here, but one may end further on.
        if slab.keep && !last {
            continue;
        }
        // A page costs 1 besides, so that few are used.
        ends.push((end + 1, 1.0 + page_cost(least / room, last, slab.cost)));
    }
    if ends.is_empty() {
        // All that fits is kept together and still doesn't end: the keeps give way, at a price no other way has.
        ends.push((furthest + 1, 20.0));
    }
    ends
}

/// Empty paper costs its share of a page and a little more where it is gathered on one page; what decides between equals
/// is the cost of the page's end. A nearly empty page is dear. The last page may be half empty for nothing.
fn page_cost(fill: f64, last: bool, cost: f64) -> f64 {
    let nearly_empty = 4.0 * (NEARLY_EMPTY - fill).max(0.0);
    if last {
        return nearly_empty;
    }
    // Squared, so that two pages three quarters full are better than one full and one half full.
    let empty = (1.0 - fill).max(0.0);
    nearly_empty + 0.5 * empty + 0.4 * empty * empty + cost
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(count: usize) -> Vec<Extent> {
        vec![Extent { height: 1.0, ..Extent::default() }; count]
    }

    #[test]
    fn full_pages_are_filled() {
        assert_eq!(page_starts(&lines(30), 10.0), Ok(vec![0, 10, 20]));
    }

    #[test]
    fn the_last_page_is_not_nearly_empty() {
        let starts = page_starts(&lines(21), 10.0).unwrap();
        assert_eq!(starts.len(), 3);
        assert!(21 - starts[2] >= 3, "{starts:?}");
    }

    #[test]
    fn a_head_stays_with_what_follows() {
        let mut slabs = lines(12);
        slabs[9].keep = true;
        assert_eq!(page_starts(&slabs, 10.0).unwrap().len(), 2);
        assert!(page_starts(&slabs, 10.0).unwrap()[1] <= 9);
    }

    #[test]
    fn a_repeated_head_takes_its_room() {
        let slabs: Vec<Extent> = lines(20).into_iter().map(|slab| Extent { repeat: 2.0, ..slab }).collect();
        let starts = page_starts(&slabs, 10.0).unwrap();
        assert!(starts.windows(2).all(|pair| pair[1] - pair[0] <= 8), "{starts:?}");
    }

    #[test]
    fn columns_are_even_and_begin_below_what_is_wide() {
        let slab = |column| Extent { height: 2.0, before: 1.0, column, ..Extent::default() };
        let slabs = [vec![slab(false)], vec![slab(true); 5], vec![slab(false)]].concat();
        let (places, height) = places(&slabs);
        let tops: Vec<(f64, bool)> = places.iter().map(|place| (place.top, place.second)).collect();
        let first = [(0.0, false), (3.0, false), (6.0, false), (9.0, false)];
        assert_eq!(tops, [&first[..], &[(3.0, true), (6.0, true), (12.0, false)]].concat());
        assert!((height - 14.0).abs() < 1e-9);
        let starts = page_starts(&vec![slab(true); 40], 14.0).unwrap();
        assert_eq!(starts, [0, 10, 20, 30]);
    }

    #[test]
    fn keeps_give_way_where_they_must_and_a_giant_is_named() {
        let mut slabs = lines(15);
        slabs.iter_mut().for_each(|slab| slab.keep = true);
        assert!(page_starts(&slabs, 10.0).is_ok_and(|starts| starts.len() >= 2));
        slabs[3].height = 11.0;
        assert_eq!(page_starts(&slabs, 10.0), Err(3));
    }
}

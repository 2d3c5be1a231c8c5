//! A symmetric matrix whose entries reach at most five places off the diagonal, and its factorisation.

/// Entries kept below the diagonal: two unknowns a round, and a bend reaches over two rounds.
pub(super) const REACH: usize = 5;

/// A pivot that elimination leaves less than this share of is all rounding: the matrix isn't safely positive definite.
const SINGULAR: f64 = 1e-13;

/// A symmetric band matrix; `rows[i][d]` is the entry at (i, i − d).
#[derive(Clone, Debug)]
pub(super) struct Band {
    rows: Vec<[f64; REACH + 1]>,
}

impl Band {
    /// The zero matrix of `size` rows.
    pub(super) fn zero(size: usize) -> Self {
        Self { rows: vec![[0.0; REACH + 1]; size] }
    }

    /// Adds to the entry at (`row`, `column`); only the lower half is kept, and entries beyond the band are none of ours.
    pub(super) fn add(&mut self, row: usize, column: usize, value: f64) {
        if let Some(entry) =
            row.checked_sub(column).and_then(|off| self.rows.get_mut(row).and_then(|entries| entries.get_mut(off)))
        {
            *entry += value;
        }
    }

    /// Solves (M + diag(`shift`)) x = `right` by a banded Cholesky factorisation, in time linear in the rows. Nothing
    /// where the shifted matrix isn't safely positive definite.
    pub(super) fn solve(&self, shift: &[f64], right: &[f64]) -> Option<Vec<f64>> {
        let mut low = self.rows.clone();
        for i in 0..low.len() {
            low[i][0] += shift[i];
            let scale = low[i][0].abs();
            for off in (0..=REACH.min(i)).rev() {
                let j = i - off;
                let shared = (off + 1..=REACH.min(i)).map(|k| low[i][k] * low[j][k - off]).sum::<f64>();
                let rest = low[i][off] - shared;
                if off > 0 {
                    low[i][off] = rest / low[j][0];
                } else if rest > scale * SINGULAR && rest.is_finite() {
                    low[i][0] = rest.sqrt();
                } else {
                    return None;
                }
            }
        }
        Some(substitute(&low, right))
    }
}

fn substitute(low: &[[f64; REACH + 1]], right: &[f64]) -> Vec<f64> {
    let mut x = right.to_vec();
    for i in 0..x.len() {
        let known: f64 = (1..=REACH.min(i)).map(|off| low[i][off] * x[i - off]).sum();
        x[i] = (x[i] - known) / low[i][0];
    }
    for i in (0..x.len()).rev() {
        let last = REACH.min(x.len() - 1 - i);
        let known: f64 = (1..=last).map(|off| low[i + off][off] * x[i + off]).sum();
        x[i] = (x[i] - known) / low[i][0];
    }
    x
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_solution_gives_back_the_right_side() {
        let size = 14;
        let entry = |i: usize, j: usize| if i == j { 9.0 } else { 1.0 / (i + 2 * j + 1) as f64 };
        let mut matrix = Band::zero(size);
        for i in 0..size {
            for j in i.saturating_sub(REACH)..=i {
                matrix.add(i, j, entry(i, j));
            }
        }
        let right: Vec<f64> = (0..size).map(|i| i as f64 - 3.5).collect();
        let x = matrix.solve(&vec![0.5; size], &right).unwrap_or_default();
        for i in 0..size {
            let near = i.saturating_sub(REACH)..(i + REACH + 1).min(size);
            let got: f64 = near.map(|j| entry(i.max(j), i.min(j)) * x[j]).sum::<f64>() + 0.5 * x[i];
            assert!((got - right[i]).abs() < 1e-12, "row {i}: {got}");
        }
    }

    #[test]
    fn a_matrix_that_is_not_positive_is_refused() {
        let mut matrix = Band::zero(2);
        matrix.add(0, 0, 1.0);
        matrix.add(1, 0, 2.0);
        matrix.add(1, 1, 1.0);
        assert!(matrix.solve(&[0.0; 2], &[1.0; 2]).is_none());
        assert!(matrix.solve(&[4.0; 2], &[1.0; 2]).is_some());
    }
}

//! Even spread of shaping over a round.

/// Lengths of the `pieces` runs into which `length` stitches are shared, as evenly as whole numbers allow: run i is
/// floor((i + 1) n / k) − floor(i n / k), turned round by `phase` runs. The runs differ by at most one and add up to
/// `length`. Nothing for no pieces.
pub fn spread(length: u32, pieces: u32, phase: u32) -> Vec<u32> {
    (0..pieces).map(|i| run(length, pieces.into(), u64::from(i) + u64::from(phase))).collect()
}

/// Run i of so many, which follow one another round and round.
fn run(length: u32, pieces: u64, i: u64) -> u32 {
    let i = i % pieces;
    // Whole numbers all through: the same runs come out however large the round is.
    (end(length, pieces, i + 1) - end(length, pieces, i)) as u32
}

/// Where the run before run i ends.
fn end(length: u32, pieces: u64, i: u64) -> u64 {
    i * u64::from(length) / pieces
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_add_up_and_differ_by_at_most_one() {
        for length in 0..60 {
            for pieces in 1..20 {
                let runs = spread(length, pieces, 3);
                assert_eq!(runs.iter().sum::<u32>(), length);
                let (least, most) = (runs.iter().min(), runs.iter().max());
                assert!(most.zip(least).is_some_and(|(m, l)| m - l <= 1));
            }
        }
    }
}

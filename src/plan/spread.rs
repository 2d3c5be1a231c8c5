//! Even spread of shaping over a round.

/// Lengths of the `pieces` runs into which `length` stitches are shared, as evenly as whole numbers allow: run i is
/// floor((i + 1) n / k) − floor(i n / k), turned round by `phase` runs. The runs differ by at most one and add up to
/// `length`. Nothing for no pieces.
pub fn spread(length: u32, pieces: u32, phase: u32) -> Vec<u32> {
    let at = |i: u64| i * u64::from(length) / u64::from(pieces.max(1));
    let run = |i: u32| {
        let i = (u64::from(i) + u64::from(phase)) % u64::from(pieces.max(1));
        (at(i + 1) - at(i)) as u32
    };
    (0..pieces).map(run).collect()
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

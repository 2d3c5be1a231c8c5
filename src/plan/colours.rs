//! Colours of rounds from the stripes of a part.

use crate::design::Stripe;

/// The colour of each of `rounds` rounds, and how many rounds the stripes with a number lack.
///
/// Stripes follow one another in order. Those without a number share what the others leave, the first getting one
/// more where it doesn't divide. Where all have numbers and rounds are left, the stripes begin anew; where there are
/// fewer rounds than stripes ask for, the last are cut.
pub(super) fn stripes(stripes: &[Stripe], rounds: u32) -> (Vec<Option<usize>>, u32) {
    let rounds_wanted: u32 = stripes.iter().filter_map(|stripe| stripe.rounds).fold(0, u32::saturating_add);
    let open = stripes.iter().filter(|stripe| stripe.rounds.is_none()).count() as u32;
    let mut left = rounds.saturating_sub(rounds_wanted);
    let mut shares = open;
    let mut colours = Vec::with_capacity(rounds as usize);
    for stripe in stripes {
        let count = stripe.rounds.unwrap_or_else(|| {
            let share = left.div_ceil(shares.max(1));
            (left, shares) = (left - share, shares.saturating_sub(1));
            share
        });
        let room = rounds as usize - colours.len();
        colours.extend(std::iter::repeat_n(Some(stripe.colour), room.min(count as usize)));
    }
    let sequence = colours.clone();
    while colours.len() < rounds as usize && !sequence.is_empty() {
        let room = rounds as usize - colours.len();
        colours.extend(sequence.iter().copied().take(room));
    }
    colours.resize(rounds as usize, None);
    (colours, rounds_wanted.saturating_sub(rounds))
}

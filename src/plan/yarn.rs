//! Yarn by colour: grams, metres, balls.

use super::YarnUse;
use crate::craft::{Begin, Close, Round, Stitch};
use crate::design::{Ball, Design};
use crate::units::Gauge;

/// Metres of yarn in 100 g, for yarn weights 0 to 7 (common practice, from memory; spinners differ by a third).
const METRES_PER_100_G: [f64; 8] = [800.0, 400.0, 330.0, 250.0, 190.0, 120.0, 70.0, 35.0];

/// Widest single crochet of each yarn weight in mm, from the published stitches in 4 in.
const WIDEST_SC: [f64; 7] = [101.6 / 32.0, 101.6 / 21.0, 101.6 / 16.0, 101.6 / 12.0, 101.6 / 11.0, 101.6 / 8.0, 14.0];

/// Yarn in a square millimetre of single crochet, in mm: 31.42 in to the square inch, measured in medium yarn.
const MEASURED_PER_AREA: f64 = 31.42 / 25.4;
/// Width of one single crochet of that measurement, the middle of the published 11 to 14 in 4 in.
const MEASURED_WIDTH: f64 = 101.6 / 12.5;

/// The yarn of some rounds, by colour in the order in which the colours first come.
pub(super) fn yarn(design: &Design, gauges: &[(Stitch, Gauge)], rounds: &[Round]) -> Vec<YarnUse> {
    let rate = Rate::of(design, gauges);
    let mut uses: Vec<(Option<usize>, f64)> = Vec::new();
    for round in rounds {
        let amount = rate.round(round);
        match uses.iter_mut().find(|(colour, _)| *colour == round.colour) {
            Some((_, sum)) => *sum += amount,
            None => uses.push((round.colour, amount)),
        }
    }
    uses.sort_by_key(|(colour, _)| *colour);
    let more = 1.0 + design.yarn.allowance.max(0.0);
    let finish = |(colour, amount): (Option<usize>, f64)| {
        let grams = amount * rate.grams * more;
        let metres = grams * rate.metres_per_gram;
        let balls = design.yarn.ball.filter(|ball| ball.grams > 0.0).map(|ball| (grams / ball.grams).ceil() as u32);
        YarnUse { colour, grams, metres, balls, estimated: rate.estimated }
    };
    uses.into_iter().map(finish).collect()
}

/// Yarn per stitch.
struct Rate {
    /// Stitches with their yarn in units of `grams`.
    stitches: Vec<(Stitch, f64)>,
    grams: f64,
    metres_per_gram: f64,
    estimated: bool,
}

impl Rate {
    fn of(design: &Design, gauges: &[(Stitch, Gauge)]) -> Self {
        let weighed = gauges.iter().find(|(_, gauge)| gauge.grams.is_some() && !gauge.assumed);
        let width = gauges.first().map_or(MEASURED_WIDTH, |(stitch, gauge)| gauge.width.mm() / stitch.row().width);
        let metres_per_gram = metres_in_a_gram(design, width);
        if let Some((from, Gauge { grams: Some(grams), .. })) = weighed {
            let own = |gauge: &Gauge| gauge.grams.filter(|_| !gauge.assumed);
            let unit = grams / from.row().yarn;
            let amount = |(stitch, gauge): &(Stitch, Gauge)| (*stitch, own(gauge).unwrap_or(unit * stitch.row().yarn));
            return Self {
                stitches: gauges.iter().map(amount).collect(),
                grams: 1.0,
                metres_per_gram,
                estimated: false,
            };
        }
        // Length per area falls as the stitch widens; taller stitches take the same per area.
        let per_area = MEASURED_PER_AREA * MEASURED_WIDTH / width.max(0.1);
        let amount = |(stitch, gauge): &(Stitch, Gauge)| (*stitch, per_area * gauge.width.mm() * gauge.height.mm());
        Self {
            stitches: gauges.iter().map(amount).collect(),
            grams: 0.001 / metres_per_gram,
            metres_per_gram,
            estimated: true,
        }
    }

    fn stitch(&self, stitch: Stitch) -> f64 {
        self.stitches.iter().find(|(of, _)| *of == stitch).map_or(0.0, |(_, amount)| *amount)
    }

    /// A round's stitches, its turning chain where that doesn't count, and its slip stitches.
    fn round(&self, round: &Round) -> f64 {
        let runs = round.ops.iter().flat_map(|op| op.made.runs());
        let worked: f64 = runs.map(|(stitch, count)| self.stitch(stitch) * f64::from(count)).sum();
        let chain = match round.begin {
            Begin::Chain { chains, counts: false } => self.stitch(Stitch::CH) * f64::from(chains),
            Begin::Chain { .. } | Begin::Spiral | Begin::Plain => 0.0,
        };
        let join = match round.close {
            Close::Join => self.stitch(Stitch::SL_ST),
            Close::Spiral => 0.0,
        };
        worked + chain + join + self.stitch(Stitch::SL_ST) * f64::from(round.slipped)
    }
}

fn metres_in_a_gram(design: &Design, width: f64) -> f64 {
    let known = |ball: &Ball| ball.grams > 0.0 && ball.metres > 0.0;
    if let Some(ball) = design.yarn.ball.filter(known) {
        return ball.metres / ball.grams;
    }
    let guessed = WIDEST_SC.iter().filter(|widest| width > **widest).count();
    let weight = design.yarn.weight.map_or(guessed, |weight| usize::from(weight.value));
    METRES_PER_100_G.get(weight).copied().unwrap_or(35.0) / 100.0
}

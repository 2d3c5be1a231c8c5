//! The figures of swatch and yarn.

use roundelay::craft::{Round, Stitch};

use super::figures::Counted;
use super::lengths::{all, hold};
use super::paper::{Paper, Row, cell};
use super::tongue::{Tongue, fit};

/// What a printed gauge may be off, as a share: half a per cent.
const GAUGE: f64 = 0.005;

impl Counted<'_> {
    /// Stitches ÷ printed gauge = printed width within half a per cent and what the width is rounded by, in both units.
    pub(super) fn by_printed_gauge(&self, paper: &Paper, round: &Round, around: &str) {
        let name = self.tongue.name(round.stitch, self.pattern.plan.design.terms);
        let told = all(around, self.tongue)[0];
        for (over, length, rounding) in [(("10 cm", 10.0), told.cm, 0.05), (("4 in", 4.0), told.inches, 0.125)] {
            let printed = self
                .printed_gauges(paper)
                .into_iter()
                .find(|gauge| gauge.stitch == name && gauge.over.starts_with(over.0));
            let Some(printed) = printed else { continue };
            let by_gauge = f64::from(round.after) / printed.stitches * over.1;
            let off = (by_gauge - length).abs();
            assert!(
                off <= GAUGE * by_gauge + rounding + 1e-6,
                "{} {name} by {printed:?} are {by_gauge}, not {around}",
                round.after
            );
        }
    }

    fn printed_gauges(&self, paper: &Paper) -> Vec<Gauge> {
        let said = paper.said(self.tongue, "section.swatch").flat_map(|said| said.split(self.tongue.one("semicolon")));
        said.filter_map(|said| Gauge::of(said, self.tongue)).collect()
    }

    pub(super) fn gauges(&self, paper: &Paper) {
        let (plan, tongue) = (&self.pattern.plan, self.tongue);
        let name = |stitch: &Stitch| tongue.name(*stitch, plan.design.terms);
        let fact = tongue.all("fact.gauge").find_map(|title| paper.facts.iter().find(|(name, _)| name == title));
        let fact = fact.map(|(_, told)| Gauge::of(told, tongue).unwrap_or_else(|| panic!("“{told}” is no gauge")));
        let printed = self.printed_gauges(paper);
        let mut worked = paper.said(tongue, "section.swatch").filter_map(|said| tongue.read("worked", said));
        for gauge in printed.iter().chain(&fact) {
            let known = plan.gauges.iter().find(|(stitch, _)| name(stitch) == gauge.stitch);
            let (_, own) = known.unwrap_or_else(|| panic!("{gauge:?} is of no stitch of the plan"));
            let mm = if gauge.over.starts_with("10 cm") { 100.0 } else { 101.6 };
            assert!((gauge.stitches * own.width.mm() / mm - 1.0).abs() <= GAUGE, "{gauge:?}, {own:?}");
            assert!((gauge.rounds * own.height.mm() / mm - 1.0).abs() <= GAUGE, "{gauge:?}, {own:?}");
        }
        for (stitch, gauge) in plan.gauges.iter().filter(|(_, gauge)| !gauge.assumed) {
            let overs = printed.iter().filter(|gauge| gauge.stitch == name(stitch)).map(|gauge| gauge.over.clone());
            let mut overs: Vec<String> = overs.collect();
            if overs.is_empty() {
                // A swatch of a stitch that the piece doesn't use is not told.
                continue;
            }
            overs.sort();
            assert_eq!(overs, ["10 cm", "4 in"], "{}: both units of {}", self.form, name(stitch));
            let holes = worked.next().expect("the swatch as it was worked");
            let number = |at: usize| tongue.decimal(holes[at].1).unwrap();
            let (size, unit) = holes[3].1.rsplit_once(' ').unwrap();
            let mm = if unit == "cm" { 10.0 } else { 25.4 };
            let sides: Vec<f64> = size.split(" × ").map(|side| tongue.decimal(side).unwrap() * mm).collect();
            assert!((sides[0] / number(0) / gauge.width.mm() - 1.0).abs() <= GAUGE, "{holes:?}");
            assert!((sides[1] / number(2) / gauge.height.mm() - 1.0).abs() <= GAUGE, "{holes:?}");
        }
        let five =
            paper.said(tongue, "section.swatch").find(|said| tongue.all("five").any(|lead| said.starts_with(lead)));
        if let Some(five) = five {
            let height = 5.0 * plan.gauge(plan.sizes[0].rounds[0].stitch).height.mm();
            hold(Some(five), height, self.inches(), tongue, "five rounds");
        }
    }

    pub(super) fn yarn(&self, paper: &Paper) {
        let (plan, tongue) = (&self.pattern.plan, self.tongue);
        let uses: Vec<_> = plan.sizes.iter().flat_map(|size| size.yarn.iter().map(move |yarn| (size, yarn))).collect();
        let rows: Vec<&Row> =
            paper.rows(tongue, "section.need").filter(|row| cell(row, tongue, "column.grams").is_some()).collect();
        assert_eq!(rows.len(), uses.len(), "{}: a row for each colour of each size", self.form);
        for ((size, yarn), row) in uses.into_iter().zip(rows) {
            let told = |key| cell(row, tongue, key).map(|cell| tongue.decimal(cell).unwrap_or(f64::NAN));
            assert_eq!(cell(row, tongue, "column.size"), Some(&*size.name));
            let amounts =
                [("column.metres", yarn.metres), ("column.grams", yarn.grams), ("column.yards", yarn.metres / 0.9144)];
            for (key, amount) in amounts {
                let Some(told) = told(key) else { continue };
                let step = if yarn.metres < 50.0 { 1.0 } else { 5.0 };
                assert!(told >= amount - 1e-6 && told - amount < step + 1e-6, "{key} of {row:?}: {amount}");
            }
            assert_eq!(told("column.yards").is_some(), self.inches());
            // What the stitches alone take by the weighed swatch, and a little for chains and joins.
            let stitches = |round: &&Round| round.colour == yarn.colour;
            let weighed =
                size.rounds.iter().filter(stitches).flat_map(|round| &round.ops).flat_map(|op| op.made.runs());
            let grams = weighed
                .map(|(stitch, count)| plan.gauge(stitch).grams.unwrap_or(f64::NAN) * f64::from(count))
                .sum::<f64>();
            let grams = grams * (1.0 + plan.design.yarn.allowance);
            if grams > 0.0 && !yarn.estimated {
                let most = grams * 1.35 + 6.0;
                assert!(
                    (grams - 1e-6..most).contains(&told("column.grams").unwrap()),
                    "{row:?}: {grams} g in stitches"
                );
            }
            if let Some((balls, ball)) = told("column.balls").zip(plan.design.yarn.ball) {
                assert!(
                    (balls * ball.grams >= yarn.grams - 1e-6) && (balls - 1.0) * ball.grams < yarn.grams,
                    "{row:?}"
                );
            }
        }
    }
}

#[derive(Debug)]
struct Gauge {
    stitches: f64,
    stitch: String,
    rounds: f64,
    over: String,
}

impl Gauge {
    fn of(said: &str, tongue: &Tongue) -> Option<Self> {
        let holes = fit(tongue.one("gauge"), said)?;
        let over = holes[3].1.split(" (").next()?.to_owned();
        let named = over == "10 cm" || over == "4 in";
        let (stitches, rounds) = (tongue.decimal(holes[0].1)?, tongue.decimal(holes[2].1)?);
        named.then_some(Self { stitches, stitch: holes[1].1.to_owned(), rounds, over })
    }
}

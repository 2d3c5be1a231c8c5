//! Every figure that is said of a size, against counts × gauge and the predicted shape.

use core::f64::consts::PI;

use roundelay::craft::{Build, Round, Stitch};
use roundelay::design::{Body, Kind};
use roundelay::pattern::Pattern;
use roundelay::plan::{PartPlan, SizePlan};
use roundelay::units::{Angle, Units};

use super::lengths::{self, all, hold};
use super::paper::{Paper, Row, cell};
use super::rounds;
use super::tongue::Tongue;

/// A pattern with the measures that follow from its counts.
pub(super) struct Counted<'a> {
    pub(super) pattern: &'a Pattern,
    pub(super) tongue: &'a Tongue,
    pub(super) form: &'static str,
}

/// Holds every figure of a paper.
pub(super) fn check(paper: &Paper, tongue: &Tongue, pattern: &Pattern) {
    let counted = Counted { pattern, tongue, form: paper.form };
    counted.gauges(paper);
    counted.sizes(paper);
    counted.parts(paper);
    counted.yarn(paper);
    for picture in paper.pictures() {
        counted.shape(picture);
    }
    counted.charts(paper);
    counted.reached(paper);
}

impl Counted<'_> {
    pub(super) fn inches(&self) -> bool {
        self.pattern.plan.design.units == Units::Inches
    }

    fn around(&self, round: &Round) -> f64 {
        f64::from(round.after) * self.pattern.plan.gauge(round.stitch).width.mm()
    }

    /// Rounds of fabric: an edge of slip stitches lies on the round before it.
    fn fabric<'s>(&self, size: &'s SizePlan, part: &PartPlan) -> Vec<&'s Round> {
        let own = &size.rounds[part.first as usize - 1..part.last as usize];
        own.iter().filter(|round| round.stitch.row().build != Build::Slip).collect()
    }

    fn end(&self, size: &SizePlan, part: &PartPlan) -> f64 {
        let before = &size.rounds[..part.last as usize];
        let last = before.iter().rfind(|round| round.stitch.row().build != Build::Slip);
        last.map_or(0.0, |round| self.around(round))
    }

    fn length(&self, size: &SizePlan, part: &PartPlan) -> f64 {
        let own = &size.rounds[part.first as usize - 1..part.last as usize];
        let written = self
            .pattern
            .plan
            .design
            .parts
            .iter()
            .any(|known| known.name.value == part.name && matches!(known.body, Body::Written(_)));
        // A slip stitch has a little height of its own between written rounds; an edge of it lies on the round before.
        let rounds = own.iter().filter(|round| written || round.stitch.row().build != Build::Slip);
        rounds.map(|round| self.pattern.plan.gauge(round.stitch).height.mm()).sum()
    }

    /// What a tape finds at the edge or the widest place that is nearest to what was asked for.
    fn finished(&self, size: &SizePlan) -> f64 {
        let widest =
            |part: &PartPlan| self.fabric(size, part).into_iter().map(|round| self.around(round)).fold(0.0, f64::max);
        let places: Vec<f64> =
            size.parts.iter().flat_map(|part| [widest(part), self.end(size, part)]).filter(|at| *at > 0.0).collect();
        let wanted = size.wanted.mm();
        if wanted == 0.0 {
            return places.into_iter().fold(0.0, f64::max);
        }
        places.into_iter().min_by(|a, b| (a - wanted).abs().total_cmp(&(b - wanted).abs())).unwrap_or(0.0)
    }

    fn size_row<'p>(&self, paper: &'p Paper, size: &SizePlan, with: &str) -> Option<&'p Row> {
        let own = |row: &&Row| {
            cell(row, self.tongue, "column.size") == Some(&size.name) && cell(row, self.tongue, with).is_some()
        };
        paper.rows(self.tongue, "section.sizes").chain(paper.rows(self.tongue, "section.fit")).find(own)
    }

    fn sizes(&self, paper: &Paper) {
        let (plan, tongue) = (&self.pattern.plan, self.tongue);
        for (index, size) in plan.sizes.iter().enumerate() {
            let row = self.size_row(paper, size, "column.total").unwrap_or_else(|| {
                panic!(
                    "{}: {} of {} has no row: {:#?}",
                    tongue.tag,
                    size.name,
                    self.form,
                    paper.blocks(tongue, "section.sizes")
                )
            });
            let told = |key: &str| cell(row, tongue, key).filter(|cell| *cell != "–");
            let length = |key: &str, mm: f64| {
                hold(told(key), mm, self.inches(), tongue, &format!("{key} of {} in {}", size.name, self.form))
            };
            let finished = self.finished(size);
            length("column.finished", finished);
            assert_eq!(told("column.rounds"), Some(&*size.rounds.len().to_string()));
            let total: u32 = size.rounds.iter().map(stitches).sum();
            assert_eq!(told("column.total"), Some(&*total.to_string()));
            if let Some(head) = size.head.map(|head| head.mm()) {
                length("column.head", head);
                let ease = told("column.ease").unwrap().replace('−', "-").replace(['+', '%', ' '], "");
                assert!(
                    (ease.parse::<f64>().unwrap() - (finished / head - 1.0) * 100.0).abs() <= 0.5 + 1e-6,
                    "{row:?}"
                );
                if let Some(hat) = told("column.hat") {
                    // Labels by published tables: inches over π in eighths, the UK's an eighth less.
                    let label = |told: &str| lengths::inches(told).unwrap_or_else(|| panic!("{hat} is no hat size"));
                    let both = hat.split_once(" (").map(|(us, uk)| (Some(us), uk.trim_end_matches(')')));
                    let (us, uk) = both.unwrap_or((None, hat));
                    let exact = head / 25.4 / PI;
                    assert!((label(uk) + 0.125 - exact).abs() <= 0.0625 + 1e-6, "{hat} for {head} mm");
                    assert!(us.is_none_or(|us| (label(us) - label(uk) - 0.125).abs() < 1e-6), "{hat}");
                }
            }
            if let Some(wide) = told("column.wide") {
                self.wide(wide, size, finished);
            }
            self.worn(paper, size, index);
            let brim = plan
                .design
                .parts
                .last()
                .filter(|part| matches!(&part.body, Body::Profile(profile) if profile.shape.form().brim));
            let worn = plan.design.kind == Kind::Hat;
            let lengths: Vec<f64> = size.parts.iter().map(|part| self.length(size, part)).collect();
            let (last, before) = lengths.split_last().unwrap();
            if told("column.brim").is_some() {
                assert!(brim.is_some() && worn);
                length("column.brim", *last);
            }
            if told("column.depth").is_some() {
                let depth = before.iter().sum::<f64>() + if brim.is_some() { 0.0 } else { *last };
                length("column.depth", depth);
                let head = size.head.unwrap().mm();
                let asked = self.size_row(paper, size, "column.brow").expect("what a head asks for");
                // By common practice a third of the head to the brow, four tenths over the ears.
                for (key, share) in [("column.brow", 1.0 / 3.0), ("column.ears", 0.4)] {
                    hold(cell(asked, tongue, key), head * share, self.inches(), tongue, key);
                }
            }
            let tall = self.tall(index);
            if told("column.height").is_some() {
                length("column.height", tall);
            }
            if told("column.folded").is_some() {
                length("column.folded", tall - last);
            }
        }
    }

    /// Across a disc, or between the sides and the corners of a regular polygon of that circumference.
    fn wide(&self, told: &str, size: &SizePlan, finished: f64) {
        let tongue = self.tongue;
        let cut = |key: &str| told.split(", ").find(|part| part.ends_with(tongue.one(key)));
        let whole = || (Some(told), finished / PI);
        let part = size.parts.last().unwrap();
        let polygon = |key: &str| self.polygon(size, part, key == "shape.flats");
        let wanted = match cut("shape.flats").zip(cut("shape.corners")) {
            Some((flats, corners)) => {
                vec![(Some(flats), polygon("shape.flats")), (Some(corners), polygon("shape.corners"))]
            }
            None => vec![whole()],
        };
        for (told, mm) in wanted {
            hold(told, mm, self.inches(), tongue, &format!("column.wide of {} in {}", size.name, self.form));
        }
    }

    /// A regular polygon of the circumference that a part ends with, a corner where each increase of its last shaping stands,
    /// those side by side being one.
    fn polygon(&self, size: &SizePlan, part: &PartPlan, flats: bool) -> f64 {
        let own = size.rounds[part.first as usize - 1..part.last as usize].iter().rev();
        let places = |round: &Round| {
            let (ops, last) = (&round.ops, round.ops.last());
            let ahead = last.into_iter().chain(ops.iter()).zip(ops);
            let begins = ahead.filter(|(before, op)| op.shapes() && !before.shapes()).count();
            if begins == 0 { ops.iter().filter(|op| op.shapes()).count() } else { begins }
        };
        let corners = own.map(places).find(|places| *places > 0).unwrap_or(1) as f64;
        let half = Angle::from_radians(PI / corners);
        self.end(size, part) / corners / if flats { half.tan() } else { half.sin() }
    }

    /// How a hat sits on its head: what the tape reads there, which place that is by the head's own figures, and how a stretch
    /// of so much holds.
    fn worn(&self, paper: &Paper, size: &SizePlan, index: usize) {
        let (Some(worn), tongue) = (&self.pattern.shapes[index].worn, self.tongue) else { return };
        let what = |key: &str| format!("{key} of {} in {}", size.name, self.form);
        let row = self.size_row(paper, size, "column.tape").unwrap_or_else(|| panic!("{}", what("column.tape")));
        hold(cell(row, tongue, "column.tape"), worn.tape.mm(), self.inches(), tongue, &what("column.tape"));
        // No hat comes further down than its fabric is long from the opening on, but for the little by which its
        // rounds give where a tight crown is drawn down to the top of the head.
        let opening = self.pattern.shapes[index].start.mm();
        let heights = size.rounds.iter().map(|round| self.pattern.plan.gauge(round.stitch).height.mm());
        let fabric = opening + heights.sum::<f64>();
        assert!(worn.tape.mm() <= 1.05 * fabric, "{}: {} of {fabric}", what("column.tape"), worn.tape.mm());
        // A third of the head to the brow, four tenths over the ears (common practice); 1.5 hundredths are near enough.
        let share = worn.tape.mm() / size.head.unwrap().mm();
        let places = [
            (share < 1.0 / 3.0 - 0.03, "worn.top"),
            (share <= 1.0 / 3.0 + 0.015, "worn.brow"),
            (share < 0.4 - 0.015, "worn.between"),
            (share <= 0.4 + 0.03, "worn.ears"),
            (true, "worn.below"),
        ];
        let place = places.into_iter().find_map(|(here, place)| here.then_some(place)).unwrap();
        assert_eq!(cell(row, tongue, "column.reaches"), Some(tongue.one(place)), "{}: {share}", what(place));
        let stretch = cell(row, tongue, "column.stretch").unwrap();
        let percent: f64 = stretch
            .replace('−', "-")
            .replace(['+', '%', ' ', '\u{a0}'], "")
            .parse()
            .unwrap_or_else(|_| panic!("{stretch}"));
        assert!((percent - worn.grip * 100.0).abs() <= 0.5 + 1e-6, "{}: {stretch}", what("column.stretch"));
        let holds = [
            (worn.grip < -0.05, "worn.slips"),
            (worn.grip < 0.01, "worn.rests"),
            (worn.grip <= 0.14, "worn.grips"),
            (true, "worn.pinches"),
        ];
        let fit = holds.into_iter().find_map(|(here, fit)| here.then_some(fit)).unwrap();
        assert_eq!(cell(row, tongue, "column.holds"), Some(tongue.one(fit)), "{}", what(fit));
    }

    fn tall(&self, index: usize) -> f64 {
        let heights =
            || std::iter::once(0.0).chain(self.pattern.shapes[index].rounds.iter().map(|round| round.height.mm()));
        heights().fold(f64::NEG_INFINITY, f64::max) - heights().fold(f64::INFINITY, f64::min)
    }

    fn parts(&self, paper: &Paper) {
        let (plan, tongue) = (&self.pattern.plan, self.tongue);
        // The side view of a booklet has them in its table.
        if paper.blocks(tongue, "section.measures").is_empty() && self.form == "booklet" {
            return;
        }
        let mut rows = paper.rows(tongue, "section.measures").filter(|row| cell(row, tongue, "column.part").is_some());
        for size in &plan.sizes {
            for part in &size.parts {
                let row = rows.next().expect("a row for every part");
                assert_eq!(
                    (cell(row, tongue, "column.size"), cell(row, tongue, "column.part")),
                    (Some(&*size.name), Some(&*part.name))
                );
                let around = cell(row, tongue, "column.around");
                hold(around, self.end(size, part), self.inches(), tongue, &part.name);
                hold(cell(row, tongue, "column.length"), self.length(size, part), self.inches(), tongue, &part.name);
                let last =
                    size.rounds[..part.last as usize].iter().rfind(|round| round.stitch.row().build != Build::Slip);
                if let Some(last) = last {
                    self.by_printed_gauge(paper, last, around.unwrap());
                }
            }
        }
    }

    /// What is said of a picture of the shape.
    fn shape(&self, told: &str) {
        let tongue = self.tongue;
        let Some(told) = told.strip_prefix(tongue.one("shape")) else { return };
        for (index, size) in self.pattern.plan.sizes.iter().enumerate() {
            let lead = tongue.one("shape.size").replace("{s}", &size.name).replace("{w}", "");
            let Some(at) = told.find(&lead) else { continue };
            let own = &told[at + lead.len()..];
            let own = own.split_once(").").map_or(own, |(own, _)| own).to_owned() + ")";
            for item in own.split(tongue.one("semicolon")) {
                self.measure(index, size, item);
            }
        }
    }

    fn measure(&self, index: usize, size: &SizePlan, item: &str) {
        let tongue = self.tongue;
        let mut words = item.rsplit(tongue.one("colon"));
        let (value, label) = (words.next().unwrap(), words.next().unwrap_or_default().trim());
        let part = words.next();
        let called: Vec<&PartPlan> =
            size.parts.iter().filter(|known| part.is_some_and(|part| part.trim() == known.name)).collect();
        let whole = item.starts_with(tongue.one("shape.widest"));
        let ends = || called.iter().map(|part| self.end(size, part)).collect::<Vec<f64>>();
        let wanted: Vec<f64> = if whole {
            let shape = &self.pattern.shapes[index].rounds;
            let widest = shape.iter().map(|round| round.radius.mm()).fold(0.0, f64::max);
            let there = size.rounds.iter().zip(shape).filter(|(_, at)| at.radius.mm() >= widest - 1e-6);
            there.map(|(round, _)| self.around(round) / PI).collect()
        } else if label == tongue.one("shape.height") && called.is_empty() {
            vec![self.tall(index)]
        } else if label == tongue.one("shape.across") {
            ends().into_iter().map(|end| end / PI).collect()
        } else if label == tongue.one("shape.flats") || label == tongue.one("shape.corners") {
            let across = |part: &&PartPlan| self.polygon(size, part, label == tongue.one("shape.flats"));
            called.iter().map(across).collect()
        } else if label == tongue.one("shape.around") {
            ends()
        } else if label == tongue.one("shape.flat") {
            ends().into_iter().map(|end| end / 2.0).collect()
        } else if label == tongue.one("shape.along") {
            called.iter().map(|part| self.length(size, part)).collect()
        } else {
            panic!("{}: nothing is known of “{item}”", tongue.tag)
        };
        let close = all(value, tongue);
        let near = wanted.iter().copied().min_by(|a, b| {
            let off = |mm: &f64| close.first().map_or(0.0, |length| (length.cm * 10.0 - mm).abs());
            off(a).total_cmp(&off(b))
        });
        hold(Some(value), near.unwrap_or_else(|| panic!("no measure for “{item}”")), self.inches(), tongue, item);
    }

    /// Rounds and stitches as they are told of each chart.
    fn charts(&self, paper: &Paper) {
        let tongue = self.tongue;
        let told: Vec<&str> = paper.pictures().filter(|told| told.starts_with(tongue.one("chart"))).collect();
        for (size, told) in self.pattern.plan.sizes.iter().zip(told) {
            let rest = told.split(tongue.one("chart.rounds")).nth(1).expect("rounds are told");
            let numbers: Vec<u32> =
                rest.split(|c: char| !c.is_ascii_digit()).filter_map(|number| number.parse().ok()).collect();
            let after = |number: u32| stitches(&size.rounds[number as usize - 1]);
            let sum = size.rounds.iter().map(stitches).sum();
            let mut wanted = vec![size.rounds.len() as u32, after(1), after(size.rounds.len() as u32), sum];
            wanted.extend(size.parts.iter().flat_map(|part| [part.first, part.last, after(part.last)]));
            // How many repeats there are may be told after them.
            assert_eq!(numbers.get(..wanted.len()), Some(&wanted[..]), "{told}");
        }
    }

    /// How wide or deep the piece is after each line of rounds.
    fn reached(&self, paper: &Paper) {
        let plan = &self.pattern.plan;
        for (index, shape) in self.pattern.shapes.iter().enumerate() {
            for line in rounds::lines(paper, self.tongue, plan, index) {
                let Some((across, told)) = line.reached.filter(|(_, told)| told != "–") else { continue };
                let at = &shape.rounds[line.last - 1];
                let round = &plan.sizes[index].rounds[line.last - 1];
                // Across is what the counts make; an edge of slip stitches lies as it is predicted.
                let mm = match across {
                    false => at.height.mm(),
                    true if round.stitch.row().build == Build::Slip => 2.0 * at.radius.mm(),
                    true => plan.gauge(round.stitch).width.mm() * f64::from(round.after) / PI,
                };
                let (value, wanted, step) = if self.inches() {
                    (lengths::inches(&told).unwrap(), mm / 25.4, 0.0625)
                } else {
                    (self.tongue.decimal(&told).unwrap(), mm / 10.0, 0.05)
                };
                assert!(
                    (value - wanted).abs() <= step + 1e-6,
                    "round {} of {}: {told}, not {wanted}",
                    line.last,
                    self.form
                );
            }
        }
    }
}

/// Stitches of a round as makers count them: the chains of its spaces are none.
fn stitches(round: &Round) -> u32 {
    let runs = round.ops.iter().flat_map(|op| op.made.runs());
    let counted = runs.filter(|(stitch, _)| *stitch != Stitch::CH);
    counted.map(|(stitch, count)| count * u32::from(stitch.row().counts)).sum()
}

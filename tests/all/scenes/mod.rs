//! Plans of our own invention, built by hand, for tests of geometry and drawing.

#![allow(dead_code)]

pub(crate) mod motifs;

use roundelay::craft::{Begin, Close, Foundation, Loops, Made, Op, Round, Spot, Stitch};
use roundelay::design::{Design, Kind, Work};
use roundelay::pattern::Pattern;
use roundelay::plan::{PartPlan, Plan, SizePlan, spread};
use roundelay::units::{Gauge, Mm};

use crate::common::{self, bare};

/// A mat without parts or sizes, for plans built by hand.
pub(crate) fn design(title: &str) -> Design {
    bare(title, Kind::Mat)
}

/// Builds rounds one on the other.
pub(crate) struct Builder {
    rounds: Vec<Round>,
    parts: Vec<PartPlan>,
    part: usize,
    begin: Begin,
    close: Close,
    pub(crate) colour: Option<usize>,
    pub(crate) foundation: Foundation,
}

impl Builder {
    pub(crate) fn spiral() -> Self {
        Self {
            rounds: Vec::new(),
            parts: Vec::new(),
            part: 0,
            begin: Begin::Spiral,
            close: Close::Spiral,
            colour: None,
            foundation: Foundation::Ring,
        }
    }

    pub(crate) fn joined(chains: u8, counts: bool) -> Self {
        Self { begin: Begin::Chain { chains, counts }, close: Close::Join, ..Self::spiral() }
    }

    pub(crate) fn begin(&mut self, begin: Begin) {
        self.begin = begin;
    }

    pub(crate) fn last(&self) -> u32 {
        self.rounds.last().map_or(0, |round| round.after)
    }

    /// Adds a round of these operations.
    pub(crate) fn round(&mut self, stitch: Stitch, ops: Vec<Op>) {
        let before = self.last();
        let round = Round {
            part: self.part,
            stitch,
            colour: self.colour,
            begin: self.begin,
            close: self.close,
            ..common::round(self.rounds.len() as u32 + 1, ops)
        };
        assert_eq!(round.before, before, "round {} uses up {} of {before}", round.number, round.before);
        self.rounds.push(round);
    }

    pub(crate) fn start(&mut self, stitch: Stitch, count: u32) {
        self.round(stitch, vec![Op::into_ring(stitch); count as usize]);
    }

    /// A round with `more` increases spread evenly, turned by `phase`.
    pub(crate) fn grow(&mut self, stitch: Stitch, more: u32, phase: u32) {
        let mut ops = Vec::new();
        for run in spread(self.last(), more, phase) {
            ops.extend(vec![Op::plain(stitch); run.saturating_sub(1) as usize]);
            ops.push(Op::increase(stitch, 2));
        }
        self.round(stitch, ops);
    }

    /// A round with `fewer` decreases spread evenly.
    pub(crate) fn shrink(&mut self, stitch: Stitch, fewer: u32) {
        let mut ops = Vec::new();
        for run in spread(self.last(), fewer, 0) {
            ops.extend(vec![Op::plain(stitch); run.saturating_sub(2) as usize]);
            ops.push(Op::decrease(stitch, 2));
        }
        self.round(stitch, ops);
    }

    pub(crate) fn even(&mut self, stitch: Stitch, loops: Loops) {
        self.round(stitch, vec![Op::plain(stitch).under(loops); self.last() as usize]);
    }

    /// Closes a part at the last round.
    pub(crate) fn part(&mut self, name: &str) {
        let first = self.parts.last().map_or(1, |part| part.last + 1);
        self.parts.push(common::part_plan(name, first, self.rounds.len() as u32));
        self.part += 1;
    }

    pub(crate) fn plan(self, design: Design) -> Plan {
        let size = SizePlan {
            wanted: Mm::new(570.0),
            finished: Mm::new(570.0),
            foundation: self.foundation,
            finish: design.finish.value,
            ..common::size_plan("M", self.rounds, self.parts)
        };
        let gauge =
            Gauge { width: Mm::new(5.6), height: Mm::new(5.1), thick: Mm::new(3.0), grams: None, assumed: false };
        Plan { design, gauges: vec![(Stitch::SC, gauge)], scales: Vec::new(), sizes: vec![size] }
    }
}

/// A sun hat of single crochet in a spiral: crown, side with a fold, brim, an edge of slip stitch.
pub(crate) fn hat() -> Plan {
    let mut b = Builder::spiral();
    b.start(Stitch::SC, 6);
    for k in 1..12 {
        b.grow(Stitch::SC, 6, k % 3);
    }
    b.part("crown");
    b.even(Stitch::SC, Loops::Back);
    for _ in 0..9 {
        b.even(Stitch::SC, Loops::Both);
    }
    b.part("side");
    for k in 0..4 {
        b.grow(Stitch::SC, 9, k);
        b.even(Stitch::SC, Loops::Both);
    }
    b.part("brim");
    b.even(Stitch::SL_ST, Loops::Both);
    b.part("edge");
    b.plan(design("Slipway sun hat"))
}

/// A flat disc of `rounds` rounds that grow by `more`.
pub(crate) fn disc(stitch: Stitch, rounds: u32, more: u32) -> Plan {
    let mut b = Builder::spiral();
    b.start(stitch, more);
    for k in 1..rounds {
        b.grow(stitch, more, k % 3);
    }
    b.part("mat");
    b.plan(design("Harbour mat"))
}

/// A baby cap of double crochet in joined rounds, its turning chain counted, in two colours.
pub(crate) fn cap() -> Plan {
    let mut b = Builder::joined(3, true);
    b.colour = Some(0);
    b.start(Stitch::DC, 12);
    for _ in 1..4 {
        b.grow(Stitch::DC, 12, 0);
    }
    b.part("crown");
    b.colour = Some(1);
    for _ in 0..3 {
        b.even(Stitch::DC, Loops::Both);
    }
    b.colour = Some(0);
    b.begin(Begin::Chain { chains: 1, counts: false });
    b.shrink(Stitch::SC, 6);
    b.part("side");
    let mut design = design("Duckling cap");
    design.work = Work::Joined { chain_counts: true };
    let colour = |name: &str, rgb| roundelay::design::Colour { name: name.to_owned(), rgb, place: None };
    design.yarn.colours = vec![colour("sand", [0xd9, 0xc3, 0x9a]), colour("tide", [0x2f, 0x6f, 0x8f])];
    b.plan(design)
}

/// A mandala with chain spaces, shells, clusters and picots.
pub(crate) fn mandala() -> Plan {
    let mut b = Builder::joined(3, true);
    b.foundation = Foundation::ChainRing(6);
    b.start(Stitch::DC, 12);
    let space = |count: u32, made: Made| Op { into: Spot::Space, consumed: count, made, loops: Loops::Both };
    let times = |n: usize, ops: &[Op]| std::iter::repeat_n(ops, n).flatten().cloned().collect::<Vec<_>>();
    b.round(Stitch::DC, times(12, &[Op::plain(Stitch::DC), Op::chains(1)]));
    b.begin(Begin::Plain);
    b.round(Stitch::CLUSTER, times(12, &[Op::skip(1), space(1, Made::Same(Stitch::CLUSTER, 1)), Op::chains(3)]));
    b.begin(Begin::Chain { chains: 1, counts: false });
    b.round(Stitch::SC, times(12, &[Op::plain(Stitch::SC), space(3, Made::Same(Stitch::SC, 3))]));
    let shell = Op { into: Spot::Stitch, consumed: 1, made: Made::Same(Stitch::DC, 5), loops: Loops::Both };
    b.round(Stitch::DC, times(12, &[Op::plain(Stitch::SC), Op::skip(1), shell, Op::skip(1)]));
    let pair: Box<[(Stitch, u32)]> = Box::new([(Stitch::DC, 1), (Stitch::CH, 2), (Stitch::DC, 1)]);
    let vee = Op { into: Spot::Stitch, consumed: 1, made: Made::Mixed(pair), loops: Loops::Both };
    b.begin(Begin::Plain);
    b.round(
        Stitch::DC,
        times(12, &[vee, Op::chains(2), Op::skip(2), Op::plain(Stitch::SC), Op::chains(2), Op::skip(2)]),
    );
    let picot = Op { into: Spot::Air, consumed: 0, made: Made::Same(Stitch::PICOT, 1), loops: Loops::Both };
    let two = |n| space(n, Made::Same(Stitch::SC, 2));
    b.round(
        Stitch::SC,
        times(
            12,
            &[Op::plain(Stitch::SC), two(2), picot, Op::plain(Stitch::SC), two(2), Op::plain(Stitch::SC), two(2)],
        ),
    );
    b.part("mandala");
    b.plan(design("Rosette mandala"))
}

/// A mat of these written rounds, joined.
pub(crate) fn written(rounds: &str) -> Plan {
    let text = format!(
        "title: Written\nkind: mat\nswatch: {{stitch: dc, stitches: 16, rounds: 8, width: 10, height: 10}}\n\
         sizes: {{one: {{across: 20}}}}\nwork: joined\nparts:\n  - mat:\n      written: |\n        {rounds}\n"
    );
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{text}: {report:#?}")).plan
}

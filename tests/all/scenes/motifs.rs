//! Rounds of mixed stitches by chance: shells, clusters, decreases, chain spaces, picots, all in repeats.

use roundelay::craft::{Build, Loops, Made, Op, Spot, Stitch};
use roundelay::plan::Plan;

use super::{Builder, design};

const PLAIN: [Stitch; 4] = [Stitch::SC, Stitch::HDC, Stitch::DC, Stitch::TR];
const TALL: [Stitch; 3] = [Stitch::HDC, Stitch::DC, Stitch::TR];

/// Every stitch of several stems in one place.
fn fat() -> Vec<Stitch> {
    let gathered = |build| matches!(build, Build::Cluster | Build::Puff | Build::Bobble | Build::Popcorn);
    Stitch::all().filter(|stitch| gathered(stitch.row().build)).collect()
}

/// Every stitch round a post.
fn posts() -> Vec<Stitch> {
    Stitch::all().filter(|stitch| matches!(stitch.row().build, Build::Post(_))).collect()
}

/// Throws that come out the same for the same seed: Marsaglia's xorshift.
struct Dice(u64);

impl Dice {
    /// A number below `sides`.
    fn below(&mut self, sides: usize) -> usize {
        self.0 ^= self.0 << 13;
        self.0 ^= self.0 >> 7;
        self.0 ^= self.0 << 17;
        (self.0 >> 24) as usize % sides
    }

    fn of(&mut self, stitches: &[Stitch]) -> Stitch {
        stitches[self.below(stitches.len())]
    }
}

/// One repeat of a round as it grows, over the stitches of one repeat of the round below.
struct Motif {
    ops: Vec<Op>,
    made: Vec<Stitch>,
}

impl Motif {
    fn add(&mut self, op: Op) {
        let counted = op.made.runs().filter(|(stitch, _)| stitch.row().counts > 0);
        self.made.extend(counted.flat_map(|(stitch, count)| vec![stitch; count as usize]));
        self.ops.push(op);
    }

    /// Works over a space of chains.
    fn over_space(&mut self, chains: u32, room: bool, dice: &mut Dice) {
        let space = |stitch, count| Op {
            into: Spot::Space,
            consumed: chains,
            made: Made::Same(stitch, count),
            loops: Loops::Both,
        };
        match dice.below(4) {
            0 if room => self.add(space(dice.of(&TALL), 1 + dice.below(5) as u32)),
            1 => self.add(space(dice.of(&fat()), 1)),
            2 => {
                self.add(Op::chains(chains));
                self.add(Op::skip(chains));
            }
            _ => self.add(space(dice.of(&PLAIN), 1)),
        }
    }

    /// Works over stitches, of which `left` come before the next chain; gives how many it used up.
    fn over_stitches(&mut self, left: usize, room: bool, dice: &mut Dice) -> usize {
        let mixed = |runs: &[(Stitch, u32)]| Op { made: Made::Mixed(runs.into()), ..Op::plain(Stitch::SC) };
        match dice.below(12) {
            0 if room => self.add(Op::increase(dice.of(&PLAIN), 2 + dice.below(2) as u32)),
            1 if room => self.add(Op::increase(dice.of(&TALL), 4 + dice.below(3) as u32)),
            2 if room => {
                let stitch = dice.of(&TALL);
                self.add(mixed(&[(stitch, 1), (Stitch::CH, 1 + dice.below(3) as u32), (stitch, 1)]));
            }
            3 => self.add(Op::plain(dice.of(&fat()))),
            4 | 5 if left > 1 => {
                let used = 2 + dice.below(2.min(left - 1));
                self.add(Op::decrease(dice.of(&PLAIN), used as u32));
                return used;
            }
            6 if !self.made.is_empty() => self.add(Op::skip(1)),
            7 if room => {
                self.add(Op::chains(1 + dice.below(3) as u32));
                self.add(Op::plain(dice.of(&PLAIN)));
            }
            8 => {
                self.add(Op::plain(dice.of(&PLAIN)));
                self.add(Op { consumed: 0, into: Spot::Air, ..Op::plain(Stitch::PICOT) });
            }
            9 => {
                let stitch = dice.of(&PLAIN);
                self.add(mixed(&[(stitch, 1), (Stitch::PICOT, 1), (stitch, 1)]));
            }
            10 => self.add(Op::plain(dice.of(&PLAIN)).under([Loops::Back, Loops::Front][dice.below(2)])),
            11 => self.add(Op::plain(dice.of(&posts()))),
            _ => self.add(Op::plain(dice.of(&PLAIN))),
        }
        1
    }

    fn over(cells: &[Stitch], dice: &mut Dice) -> Self {
        let mut motif = Self { ops: Vec::new(), made: Vec::new() };
        let mut at = 0;
        while at < cells.len() {
            let room = motif.made.len() <= (at + 4).min(10);
            let run = |chain: bool| cells[at..].iter().take_while(|stitch| (**stitch == Stitch::CH) == chain).count();
            at += match run(true) {
                0 => motif.over_stitches(run(false), room, dice),
                chains => {
                    motif.over_space(chains as u32, room, dice);
                    chains
                }
            };
        }
        motif
    }
}

/// A plan of up to nine rounds of mixed stitches, by a seed.
pub(crate) fn by_chance(seed: u64) -> Plan {
    let mut dice = Dice(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15));
    let mut b = match dice.below(3) {
        0 => Builder::spiral(),
        1 => Builder::joined(3, true),
        _ => Builder::joined(1, false),
    };
    let (repeats, each) = (5 + dice.below(8), 1 + dice.below(2));
    b.start(Stitch::DC, (repeats * each) as u32);
    let mut cells = vec![Stitch::DC; each];
    for _ in 0..2 + dice.below(7) {
        let motif = Motif::over(&cells, &mut dice);
        if motif.made.iter().all(|stitch| *stitch == Stitch::CH) {
            break;
        }
        b.round(motif.made[0], std::iter::repeat_n(motif.ops, repeats).flatten().collect());
        cells = motif.made;
    }
    b.part("mandala");
    b.plan(design("Mandala by chance"))
}

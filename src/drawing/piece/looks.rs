//! What a stitch looks like: the strands of yarn that are seen of it, on the patch of fabric that it takes.
//!
//! A strand runs through points (u, v, lift): u across the stitch from −½ to ½ in working order, v up it from 0 at the
//! foot to 1 at the head, lift out of the fabric in stitch widths. What is drawn is common practice of how the stitches
//! look, from the right side and from the wrong.

use crate::craft::{Build, Loops, Side};
use crate::geometry::piece::Patch;

/// One strand of yarn.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Strand {
    /// Two, three or four points that it runs through.
    pub(super) points: Vec<[f64; 3]>,
    /// Its thickness in stitch widths.
    pub(super) width: f64,
    /// Brightness against a strand that lies flat.
    pub(super) tone: f64,
    /// Drawn over strands of lower rank.
    pub(super) rank: u8,
    /// True where it is of the yarn of the round below.
    pub(super) below: bool,
    /// True where it lies across the stitch rather than up it.
    pub(super) level: bool,
}

/// Strands that lie behind others.
const BEHIND: u8 = 0;
/// Strands in the face of the fabric.
const FACE: u8 = 1;
/// Strands on top of others.
const OVER: u8 = 2;
/// What stands out of the fabric.
const OUT: u8 = 3;

fn up(points: &[[f64; 3]], width: f64, tone: f64, rank: u8) -> Strand {
    Strand { points: points.to_vec(), width, tone, rank, below: false, level: false }
}

fn across(points: &[[f64; 3]], width: f64, tone: f64, rank: u8) -> Strand {
    Strand { level: true, ..up(points, width, tone, rank) }
}

/// The strands of a stitch; `right` where its right side is seen.
pub(super) fn strands(patch: &Patch, right: bool) -> Vec<Strand> {
    if patch.hangs {
        return chain(patch);
    }
    let mut strands = if patch.turning {
        turning()
    } else if right {
        right_side(patch)
    } else {
        wrong_side(patch)
    };
    if patch.seam && !patch.turning && right {
        strands.extend(seam());
    }
    if patch.loops == Loops::Back && right || patch.loops == Loops::Front && !right {
        strands.extend(ridge());
    }
    if patch.edge {
        strands.extend(braid(1.0));
    }
    if patch.picot.is_some() {
        strands.extend(picot());
    }
    strands
}

fn right_side(patch: &Patch) -> Vec<Strand> {
    let row = patch.stitch.row();
    match row.build {
        Build::Chain => chain(patch),
        Build::Slip => braid(0.5).into(),
        Build::Cross => vee(patch, -0.04, 0.93, 0.42),
        Build::Stem if row.steps == 1 => half(patch),
        Build::Stem => stem(patch, row.steps.saturating_sub(1)),
        Build::Post(Side::Front) => raised(),
        Build::Post(Side::Back) => sunk(),
        Build::Cluster => fan(row.stems, 0.30, 0.24),
        Build::Puff => fan(row.stems + 1, 0.42, 0.30),
        Build::Bobble => ball(row.stems, 0.74),
        Build::Popcorn => [ball(row.stems, 0.68), vec![lip()]].concat(),
        Build::Picot => picot().into(),
        Build::Extended if row.steps == 0 => [vee(patch, -0.04, 0.42, 0.36), vee(patch, 0.36, 0.93, 0.42)].concat(),
        Build::Extended => stem(patch, row.steps),
        Build::Long => vee(patch, -0.04, 0.93, 0.34),
        Build::Spike => [vee(patch, 0.3, 0.93, 0.42), spike(row.stems)].concat(),
        // Its loop hangs on the other side.
        Build::Loop => vee(patch, -0.04, 0.93, 0.42),
        Build::Reverse => cord(),
        Build::Linked => {
            [stem(patch, 0), vec![across(&[[-0.5, 0.4, 0.1], [0.5, 0.46, 0.1]], 0.24, 0.98, OVER)]].concat()
        }
    }
}

/// The long loop of a spike: two strands over the rounds below, that lie on the fabric.
fn spike(rounds: u8) -> Vec<Strand> {
    let deep = -0.9 * f64::from(rounds);
    vec![
        up(&[[0.0, deep, 0.2], [0.0, 0.5, 0.2]], 0.62, 0.45, OVER),
        up(&[[-0.03, deep, 0.4], [-0.14, deep * 0.4, 0.5], [-0.16, 0.5, 0.4]], 0.28, 1.06, OUT),
        up(&[[0.03, deep, 0.4], [0.14, deep * 0.4, 0.5], [0.16, 0.5, 0.4]], 0.28, 0.92, OUT),
    ]
}

/// The cord of stitches that are worked backwards: a knot that leans against the work, under a strand of it.
fn cord() -> Vec<Strand> {
    vec![
        up(&[[0.1, -0.02, 0.0], [0.0, 0.5, 0.1]], 0.4, 0.8, FACE),
        across(&[[-0.5, 0.5, 0.1], [0.0, 0.86, 0.3], [0.46, 0.98, 0.1]], 0.4, 0.86, OVER),
        across(&[[-0.46, 0.98, 0.2], [0.0, 0.72, 0.4], [0.5, 0.5, 0.2]], 0.4, 1.06, OUT),
    ]
}

/// The v of a single crochet: two plump legs that meet at the foot. Those of a decrease stand on two feet.
fn vee(patch: &Patch, low: f64, high: f64, width: f64) -> Vec<Strand> {
    let (foot, head) = if patch.feet > 1 { (0.27, 0.2) } else { (0.07, 0.32) };
    // The legs lean a little the way the work runs, as they do in the round.
    let leg = |side: f64, tone: f64| {
        let lean = 0.05;
        let bow = (foot + head) / 2.0 + 0.03;
        up(
            &[[side * foot - lean, low, 0.0], [side * bow, (low + high) / 2.0, 0.1], [side * head + lean, high, 0.0]],
            width,
            tone,
            FACE,
        )
    };
    vec![leg(-1.0, 1.0), leg(1.0, 0.86)]
}

/// A half double crochet: a v with a bar across above it, and the yarn over slanting behind.
fn half(patch: &Patch) -> Vec<Strand> {
    let mut strands = vec![up(&[[0.34, 0.1, 0.0], [-0.3, 0.5, 0.0]], 0.2, 0.72, BEHIND)];
    strands.extend(vee(patch, -0.02, 0.68, 0.41));
    strands.push(across(&[[-0.44, 0.79, 0.05], [0.0, 0.84, 0.12], [0.44, 0.81, 0.05]], 0.3, 0.95, OVER));
    strands
}

/// A tall stitch: a post of two strands, with a wrap across it for every yarn over but the first, under a braid.
fn stem(patch: &Patch, wraps: u8) -> Vec<Strand> {
    let foot = if patch.feet > 1 { 0.3 } else { 0.17 };
    let mut strands = vec![
        up(&[[-foot, -0.02, 0.0], [-0.19, 0.4, 0.08], [-0.17, 0.84, 0.0]], 0.42, 1.0, FACE),
        up(&[[foot, -0.02, 0.0], [0.17, 0.4, 0.08], [0.2, 0.84, 0.0]], 0.42, 0.86, FACE),
    ];
    for wrap in 0..wraps {
        let middle = 0.78 * (f64::from(wrap) + 0.75) / (f64::from(wraps) + 0.5);
        let half = 0.085;
        let points = [[-0.32, middle - half, 0.1], [0.0, middle + 0.015, 0.2], [0.32, middle + half, 0.1]];
        strands.push(across(&points, 0.22, 1.03, OVER));
    }
    strands.push(across(&[[-0.5, 0.86, 0.08], [0.0, 0.94, 0.16], [0.48, 0.95, 0.08]], 0.36, 0.98, OVER));
    strands
}

/// A post stitch from the front: a thick post in front of the fabric, with shade on both sides.
fn raised() -> Vec<Strand> {
    vec![
        up(&[[0.04, -0.3, 0.1], [0.04, 0.88, 0.1]], 1.12, 0.42, OVER),
        up(&[[-0.2, -0.36, 0.4], [-0.26, 0.3, 0.5], [-0.2, 0.92, 0.4]], 0.52, 1.08, OUT),
        up(&[[0.2, -0.36, 0.4], [0.26, 0.3, 0.5], [0.2, 0.92, 0.4]], 0.52, 0.92, OUT),
    ]
}

/// A post stitch from the back: it sinks behind the fabric and pushes the heads below out into a ridge.
fn sunk() -> Vec<Strand> {
    vec![
        up(&[[-0.16, 0.0, -0.2], [-0.16, 0.86, -0.2]], 0.34, 0.78, BEHIND),
        up(&[[0.16, 0.0, -0.2], [0.16, 0.86, -0.2]], 0.34, 0.68, BEHIND),
        across(&[[-0.48, 0.0, 0.2], [0.0, 0.07, 0.25], [0.48, 0.05, 0.2]], 0.27, 0.95, OVER),
    ]
}

/// Several stems in one place, closed together.
fn fan(stems: u8, spread: f64, width: f64) -> Vec<Strand> {
    let last = f64::from(stems.max(2) - 1);
    let stem = |i: u8| {
        let side = 2.0 * f64::from(i) / last - 1.0;
        let belly = spread * side;
        up(&[[belly * 0.35, 0.02, 0.0], [belly, 0.42, 0.3], [belly * 0.25, 0.86, 0.1]], width, 1.0 - 0.1 * side, FACE)
    };
    let mut strands: Vec<Strand> = (0..stems).map(stem).collect();
    strands.push(across(&[[-0.46, 0.9, 0.1], [0.0, 0.97, 0.15], [0.44, 0.93, 0.1]], 0.26, 0.97, OVER));
    strands
}

/// A ball that stands out of the fabric, of as many strands as it has stems.
fn ball(stems: u8, size: f64) -> Vec<Strand> {
    let mut strands = vec![
        up(&[[0.06, 0.3, 0.2], [0.06, 0.64, 0.2]], 1.75 * size + 0.18, 0.22, OVER),
        up(&[[0.0, 0.34, 0.3], [0.0, 0.64, 0.3]], 1.7 * size, 0.8, OUT),
    ];
    let last = f64::from(stems.max(2) - 1);
    for i in 0..stems {
        let side = 2.0 * f64::from(i) / last - 1.0;
        let points = [[side * size * 0.35, 0.16, 0.4], [side * size * 0.72, 0.5, 0.6], [side * size * 0.3, 0.84, 0.4]];
        strands.push(up(&points, 0.27, 1.06 - 0.12 * side, OUT));
    }
    strands
}

/// The loop that gathers a popcorn, over its upper edge.
fn lip() -> Strand {
    across(&[[-0.3, 0.82, 0.5], [0.0, 0.92, 0.6], [0.3, 0.82, 0.5]], 0.24, 1.1, OUT)
}

/// The free loop that a stitch under one loop leaves: a line of the yarn below along its foot.
fn ridge() -> Vec<Strand> {
    let shade = across(&[[-0.5, 0.1, 0.0], [0.5, 0.1, 0.0]], 0.3, 0.4, BEHIND);
    let line = across(&[[-0.5, -0.03, 0.25], [0.0, 0.05, 0.3], [0.48, 0.03, 0.25]], 0.31, 1.08, OVER);
    vec![Strand { below: true, ..shade }, Strand { below: true, ..line }]
}

/// The two loops of a stitch that nothing is worked into, lying along the edge.
fn braid(at: f64) -> [Strand; 2] {
    [
        across(&[[-0.5, at + 0.06, 0.0], [0.0, at + 0.1, 0.1], [0.46, at - 0.02, 0.0]], 0.28, 0.84, OVER),
        across(&[[-0.46, at - 0.12, 0.1], [0.0, at - 0.13, 0.2], [0.5, at, 0.1]], 0.32, 1.04, OUT),
    ]
}

/// A little loop of chains on the edge.
fn picot() -> [Strand; 3] {
    [
        up(&[[0.04, 0.95, 0.1], [-0.3, 1.16, 0.1], [-0.24, 1.44, 0.1]], 0.28, 1.0, OVER),
        up(&[[0.04, 0.95, 0.1], [0.36, 1.16, 0.1], [0.3, 1.44, 0.1]], 0.28, 0.86, OVER),
        across(&[[-0.22, 1.46, 0.1], [0.03, 1.62, 0.1], [0.28, 1.46, 0.1]], 0.3, 1.05, OUT),
    ]
}

/// A chain over a gap, on its narrow patch: a leaf on each side of the strand.
fn chain(patch: &Patch) -> Vec<Strand> {
    let mut strands = vec![
        across(&[[-0.52, 0.35, 0.0], [0.0, 0.1, 0.0], [0.52, 0.45, 0.0]], 0.27, 0.82, FACE),
        across(&[[-0.52, 0.65, 0.1], [0.0, 0.95, 0.1], [0.52, 0.55, 0.1]], 0.27, 1.0, OVER),
    ];
    if patch.picot.is_some() {
        strands.extend(picot());
    }
    strands
}

/// The chain that stands for a stitch: three links, one on another.
fn turning() -> Vec<Strand> {
    let link = |i: u8| {
        let low = f64::from(i) * 0.31 - 0.02;
        let leg = |side: f64, tone: f64| {
            up(
                &[[side * 0.04, low, 0.1], [side * 0.2, low + 0.16, 0.15], [side * 0.1, low + 0.33, 0.1]],
                0.22,
                tone,
                FACE,
            )
        };
        [leg(-1.0, 1.0), leg(1.0, 0.86)]
    };
    let mut strands: Vec<Strand> = (0..3).flat_map(link).collect();
    strands.push(across(&[[-0.46, 0.9, 0.08], [0.44, 0.95, 0.08]], 0.25, 0.95, OVER));
    strands
}

/// Where a round closes: a narrow chain beside its first stitch.
fn seam() -> [Strand; 2] {
    [
        up(&[[-0.5, 0.0, 0.1], [-0.42, 0.5, 0.15]], 0.2, 0.92, OVER),
        up(&[[-0.44, 0.5, 0.1], [-0.5, 1.0, 0.15]], 0.2, 0.84, OVER),
    ]
}

/// The wrong side: the bumps between the posts, and the posts of tall stitches behind them.
fn wrong_side(patch: &Patch) -> Vec<Strand> {
    let row = patch.stitch.row();
    let bump = |at: f64, width: f64, tone: f64| {
        across(&[[-0.42, at - 0.02, 0.0], [0.0, at + 0.06, 0.15], [0.42, at - 0.02, 0.0]], width, tone, FACE)
    };
    match row.build {
        Build::Chain => chain(patch),
        Build::Slip => vec![bump(0.5, 0.4, 0.95)],
        Build::Cross => vec![
            up(&[[-0.2, 0.0, 0.0], [-0.16, 0.45, 0.0]], 0.3, 0.78, BEHIND),
            up(&[[0.2, 0.0, 0.0], [0.16, 0.45, 0.0]], 0.3, 0.7, BEHIND),
            bump(0.66, 0.4, 0.96),
        ],
        Build::Post(Side::Back) => raised(),
        Build::Post(Side::Front) => sunk(),
        Build::Stem if row.steps == 1 => vec![
            up(&[[-0.16, 0.0, 0.0], [-0.16, 0.5, 0.0]], 0.24, 0.78, BEHIND),
            up(&[[0.16, 0.0, 0.0], [0.16, 0.5, 0.0]], 0.24, 0.7, BEHIND),
            bump(0.58, 0.3, 0.92),
            bump(0.86, 0.3, 1.0),
        ],
        Build::Loop => vec![
            up(&[[-0.3, 0.62, 0.3], [-0.44, -0.1, 0.5], [-0.1, -0.62, 0.4]], 0.26, 1.02, OUT),
            up(&[[0.3, 0.62, 0.3], [0.44, -0.1, 0.5], [-0.1, -0.62, 0.4]], 0.26, 0.9, OUT),
            bump(0.72, 0.4, 0.96),
        ],
        Build::Reverse => cord(),
        Build::Long | Build::Spike => vec![bump(0.3, 0.3, 0.8), bump(0.68, 0.4, 0.96)],
        Build::Stem
        | Build::Cluster
        | Build::Puff
        | Build::Bobble
        | Build::Popcorn
        | Build::Picot
        | Build::Extended
        | Build::Linked => vec![
            up(&[[-0.15, 0.0, 0.0], [-0.15, 0.75, 0.0]], 0.28, 0.95, FACE),
            up(&[[0.15, 0.0, 0.0], [0.15, 0.75, 0.0]], 0.28, 0.8, FACE),
            bump(0.86, 0.34, 0.96),
        ],
    }
}

//! What is seen of a piece: a depth buffer decides, and puts what is seen in layers that can be drawn one on another.

use kurbo::Point;

use super::{Form, Piece, View};

/// Dots along the longer side of the buffer, at least and at most.
const DOTS: (f64, f64) = (500.0, 1600.0);

/// Dots that a stitch is wide, where the buffer allows.
const PER_STITCH: f64 = 9.0;

/// Share of a patch that must be seen for it to be drawn.
const SHOWS: f64 = 0.02;

/// Most layers; deeper folds are drawn in the last.
const LAYERS: usize = 24;

/// What is seen.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// For every patch: nothing where it is hidden; else its layer, drawn from 0 up.
    pub layers: Vec<Option<usize>>,
    /// For every patch: the share of it that is seen.
    pub shares: Vec<f64>,
    /// For every facet of the form it is put on: true where it is seen.
    pub form: Vec<bool>,
    /// The layer of the form.
    pub form_layer: usize,
}

struct Buffer {
    corner: Point,
    scale: f64,
    wide: usize,
    high: usize,
}

/// One patch on the buffer: its four corners with their nearness.
type Quad = [(Point, f64); 4];

impl Buffer {
    fn of(quads: &[Quad], stitch: f64) -> Self {
        let points = quads.iter().flatten().map(|(point, _)| *point);
        let (mut low, mut high) =
            (Point::new(f64::INFINITY, f64::INFINITY), Point::new(-f64::INFINITY, -f64::INFINITY));
        for p in points {
            low = Point::new(low.x.min(p.x), low.y.min(p.y));
            high = Point::new(high.x.max(p.x), high.y.max(p.y));
        }
        let size = (high.x - low.x).max(high.y - low.y).max(1e-6);
        let scale = (size / stitch.max(1e-6) * PER_STITCH).clamp(DOTS.0, DOTS.1) / size;
        let dots = |length: f64| (length * scale).ceil() as usize + 2;
        Self { corner: low, scale, wide: dots(high.x - low.x), high: dots(high.y - low.y) }
    }

    /// Calls `dot` with the place and the nearness of every dot of a patch.
    fn fill(&self, quad: &Quad, dot: &mut impl FnMut(usize, f64)) {
        let at = |i: usize| {
            let (p, near) = quad[i];
            [(p.x - self.corner.x) * self.scale, (p.y - self.corner.y) * self.scale, near]
        };
        for [a, b, c] in [[at(0), at(1), at(2)], [at(0), at(2), at(3)]] {
            let twice = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
            if twice.abs() < 1e-9 {
                continue;
            }
            let (top, foot) = (a[1].min(b[1]).min(c[1]), a[1].max(b[1]).max(c[1]));
            let (left, right) = (a[0].min(b[0]).min(c[0]), a[0].max(b[0]).max(c[0]));
            let within = |value: f64, most: usize| (value.max(0.0) as usize).min(most);
            for row in within((top - 0.5).ceil(), self.high)..within((foot - 0.5).floor() + 1.0, self.high) {
                for column in within((left - 0.5).ceil(), self.wide)..within((right - 0.5).floor() + 1.0, self.wide) {
                    let (x, y) = (column as f64 + 0.5, row as f64 + 0.5);
                    let wb = ((x - a[0]) * (c[1] - a[1]) - (y - a[1]) * (c[0] - a[0])) / twice;
                    let wc = ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])) / twice;
                    if wb >= 0.0 && wc >= 0.0 && wb + wc <= 1.0 {
                        dot(row * self.wide + column, a[2] + wb * (b[2] - a[2]) + wc * (c[2] - a[2]));
                    }
                }
            }
        }
    }
}

/// Finds what is seen of a piece.
pub fn seen(piece: &Piece, view: &View) -> Seen {
    let facets = piece.form.iter().flat_map(Form::facets);
    let corners = piece.patches.iter().map(|patch| patch.corners).chain(facets);
    let quads: Vec<Quad> = corners.map(|corners| corners.map(|p| view.project(&p))).collect();
    // The form is one thing, whose facets follow the patches.
    let count = piece.patches.len();
    let thing = |quad: usize| quad.min(count);
    let buffer = Buffer::of(&quads, piece.stitch);
    let mut nearest = vec![f64::NEG_INFINITY; buffer.wide * buffer.high];
    let mut owner = vec![u32::MAX; buffer.wide * buffer.high];
    let mut dots = vec![0_u32; quads.len()];
    for (i, quad) in quads.iter().enumerate() {
        buffer.fill(quad, &mut |at, near| {
            dots[i] += 1;
            if near > nearest[at] {
                nearest[at] = near;
                owner[at] = i as u32;
            }
        });
    }
    let mut own = vec![0_u32; quads.len()];
    owner.iter().filter(|owner| **owner != u32::MAX).for_each(|owner| own[*owner as usize] += 1);
    let shares: Vec<f64> =
        own.iter().zip(&dots).map(|(own, dots)| f64::from(*own) / f64::from((*dots).max(1))).collect();
    let shown: Vec<bool> = shares.iter().zip(&own).map(|(share, own)| *share >= SHOWS && *own > 0).collect();
    // Neighbours touch; only what lies a good deal nearer lies over something. A form lies under all that covers it.
    let apart = |i: usize| if i < count { 1.5 * piece.stitch } else { 0.0 };
    let mut over: Vec<(u32, u32)> = Vec::new();
    for (i, quad) in quads.iter().enumerate().filter(|(i, _)| shown[*i]) {
        let (mut last, own, apart) = (usize::MAX, thing(i), apart(i));
        buffer.fill(quad, &mut |at, near| {
            let quad = owner[at] as usize;
            let front = thing(quad);
            if front != own && front != last && shown[quad] && nearest[at] > near + apart {
                over.push((own as u32, front as u32));
                last = front;
            }
        });
    }
    over.sort_unstable();
    over.dedup();
    let mut layers = vec![0_usize; count + 1];
    for _ in 0..LAYERS {
        let mut moved = false;
        for &(below, above) in &over {
            let wanted = (layers[below as usize] + 1).min(LAYERS);
            if layers[above as usize] < wanted {
                layers[above as usize] = wanted;
                moved = true;
            }
        }
        if !moved {
            break;
        }
    }
    let form_layer = layers[count];
    // A facet that a stitch covers somewhere would come to lie over it.
    let bare = quads[count..].iter().map(|quad| {
        let mut bare = true;
        buffer.fill(quad, &mut |at, _| bare &= owner[at] as usize >= count);
        bare
    });
    let form = Form::with_neighbours(&shown[count..], &bare.collect::<Vec<_>>());
    let layers = layers.into_iter().zip(shown).take(count).map(|(layer, shown)| shown.then_some(layer)).collect();
    Seen { layers, shares: shares[..count].to_vec(), form, form_layer }
}

//! The finished piece as it will look, from its plan and its relaxed mesh alone.
//!
//! Every stitch that is seen is drawn as that stitch looks, of strands of yarn with body, shade and shine, over a dark
//! patch that closes the gaps. What is hidden isn't written. Patches and strands of one colour, rank and thickness are
//! one path.

mod dressed;
mod framed;
mod ground;
mod light;
mod looks;
mod steps;
mod telling;
mod together;

pub(super) use dressed::Dressed;
pub use framed::{FrameOptions, framed};
pub use steps::{StepsOptions, on_its_way, steps, stops};
pub(super) use steps::{across, edge};
pub use together::{OneOf, together, together_framed};

use std::collections::BTreeMap;

use kurbo::{BezPath, ParamCurve, Point, QuadBez, Rect, Vec2};

use crate::drawing::{Drawing, Ends, Group, Ink, Item, Origin, PathItem, Role, Stroke};
use crate::geometry::SideShape;
use crate::geometry::mesh::{Fabric, Vec3, mesh};
use crate::geometry::piece::{Eye, Form, Patch, Piece, Seen, View, facing, on_head, piece as in_space, seen};
use crate::plan::{Plan, SizePlan};
use crate::units::{Angle, Mm, TURN, hypot, tidy};

use light::{Depth, before_a_lamp, ink, lambert, plain};
use looks::{Strand, strands};

/// How a piece is drawn.
#[derive(Clone, Debug, PartialEq)]
pub struct PieceOptions {
    /// Width it must fit into.
    pub width: Mm,
    /// Height it must fit into.
    pub height: Mm,
    /// Where it is seen from; nothing for what suits the piece: from a little above, mats from high above.
    pub eye: Option<Eye>,
    /// Millimetres on the page of one millimetre, so that pictures can be compared; nothing for the largest that fits.
    pub scale: Option<f64>,
}

impl Default for PieceOptions {
    fn default() -> Self {
        Self { width: Mm::new(160.0), height: Mm::new(160.0), eye: None, scale: None }
    }
}

/// Yarn without a colour: undyed.
const UNDYED: Ink = Ink([0xe6, 0xdc, 0xc8]);

/// The dark ground on which lace is pinned.
const SLATE: Ink = Ink([0x36, 0x3d, 0x45]);

/// The form of a head.
const FORM: Ink = Ink([0xb9, 0xb6, 0xb1]);

/// Of a layer: a head form's foot lies on the lower, the head that hides it on the upper.
const SHELVES: usize = 2;

/// Clear room about the piece, as a share of its picture.
const ROOM: f64 = 0.03;

/// Most stitches that are seen of a piece whose strands have a shade and run in curves, and most of one whose strands
/// have a shine; of more, each is too small to show them.
const FINE: (usize, usize) = (700, 4000);

/// Width of the line that closes the seam between two patches, mm.
const HAIR: f64 = 0.13;

/// Height of a picot's top, in heights of the stitch that it stands on.
pub(super) const CREST: f64 = 1.7;

/// Strands of less tone lie on the far side of their stitch.
const LIT: f64 = 0.93;

/// Most stitches that are seen of a piece whose strands show their plies.
const PLIES: usize = 260;

/// Seen at a flatter angle than this (its cosine), a patch is drawn without strands.
const GRAZING: f64 = 0.14;

/// A patch of which less than this share is seen is drawn without strands.
const CLEAR: f64 = 0.15;

/// Thicknesses of strands on the page, mm: the series R10 of preferred numbers (ISO 3).
const WIDTHS: [f64; 24] = [
    0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4, 0.5, 0.63, 0.8, 1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0,
    5.0, 6.3, 8.0, 10.0,
];

/// Order in which paths are drawn, then what they share.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Key {
    layer: usize,
    rank: u8,
    ink: Ink,
    /// Index into [`WIDTHS`], for a stroke.
    width: usize,
}

/// Draws one size of a plan; `body` is its predicted shape.
pub fn piece(plan: &Plan, size: &SizePlan, body: &SideShape, options: &PieceOptions) -> Drawing {
    draw_piece(plan, size, body, &relaxed(plan, size, body), options)
}

/// One size of a plan as it lies in space, to be drawn once or several times.
pub fn relaxed(plan: &Plan, size: &SizePlan, body: &SideShape) -> Piece {
    in_space(plan, size, &mesh(plan, size, body, &Fabric::default()))
}

/// One size of a plan on the form of its head; nothing for what isn't worn, or has no crown.
pub fn worn_piece(plan: &Plan, size: &SizePlan, body: &SideShape) -> Option<Piece> {
    on_head(plan, size, &mesh(plan, size, body, &Fabric::default()), body)
}

/// Draws a piece that lies in space.
pub fn draw_piece(plan: &Plan, size: &SizePlan, body: &SideShape, space: &Piece, options: &PieceOptions) -> Drawing {
    let eye = options.eye.unwrap_or_else(|| Eye::of(space, body));
    let sheet = Sheet::of(plan, space, View::new(&eye, space.reach), options);
    let items = stands(&sheet);
    let title = telling::title(plan, size);
    let description = telling::description(plan, size, (body, space), &eye);
    let role = Role::Object { name: title.clone(), description: description.clone() };
    let group = Group { id: "piece".to_owned(), role, origin: Origin::None, items };
    Drawing {
        bounds: sheet.bounds,
        title,
        description,
        language: plan.design.language,
        symbols: BTreeMap::new(),
        items: vec![Item::Group(group)],
    }
}

/// A piece on its ground.
fn stands(sheet: &Sheet<'_>) -> Vec<Item> {
    let seen = seen(sheet.space, &sheet.view);
    let mut items = sheet.ground();
    items.extend(sheet.stitches(&seen));
    items
}

/// The room that a piece takes on the page, without drawing it.
fn room(plan: &Plan, body: &SideShape, space: &Piece, options: &PieceOptions) -> Rect {
    let eye = options.eye.unwrap_or_else(|| Eye::of(space, body));
    Sheet::of(plan, space, View::new(&eye, space.reach), options).bounds
}

/// A piece on its way to the page.
struct Sheet<'a> {
    /// The yarns, in the order of the design's.
    yarns: Vec<Ink>,
    space: &'a Piece,
    view: View,
    /// Millimetres on the page of one millimetre.
    scale: f64,
    /// Where the origin comes to lie.
    origin: Vec2,
    bounds: Rect,
    /// Stitches that it is drawn as if it showed, at least: of more, each is drawn with less.
    at_least: usize,
    /// True where it hangs by a loop.
    hangs: bool,
    /// True where it is lit from within.
    glows: bool,
}

impl<'a> Sheet<'a> {
    fn of(plan: &Plan, space: &'a Piece, view: View, options: &PieceOptions) -> Self {
        let mut extent: Option<Rect> = None;
        let mut grow = |p: Point| {
            let own = Rect::from_points(p, p);
            extent = Some(extent.map_or(own, |extent| extent.union(own)));
        };
        space.patches.iter().flat_map(|patch| patch.corners).for_each(|p| grow(view.project(&p).0));
        let crests = space.patches.iter().filter(|patch| patch.picot.is_some());
        crests.for_each(|patch| grow(view.project(&patch.at(0.0, CREST, 0.0)).0));
        let facets = space.form.iter().flat_map(Form::facets);
        facets.flatten().for_each(|p| grow(view.project(&p).0));
        let kind = plan.design.kind.row();
        if kind.hangs {
            ground::hanging(space).iter().for_each(|p| grow(view.project(p).0));
        }
        // The shadow about the foot.
        for i in 0..24 {
            let angle = Angle::from_radians(TURN * f64::from(i) / 24.0);
            let foot = space.points.iter().filter(|p| p.z <= ground::shading(space));
            let reach = foot.map(|p| hypot(p.x, p.y)).fold(0.0, f64::max) * 1.1;
            grow(view.project(&Vec3::new(reach * angle.cos(), reach * angle.sin(), space.ground)).0);
        }
        let extent = extent.unwrap_or(Rect::new(0.0, 0.0, 1.0, 1.0));
        let (wide, high) = (extent.width().max(1e-3), extent.height().max(1e-3));
        let fits = (options.width.mm() / wide).min(options.height.mm() / high) / (1.0 + 2.0 * ROOM);
        let scale = options.scale.filter(|scale| scale.is_finite() && *scale > 0.0).unwrap_or(fits);
        let room = ROOM * wide.max(high) * scale;
        let origin = Vec2::new(room - extent.x0 * scale, room - extent.y0 * scale);
        let bounds = Rect::new(0.0, 0.0, wide * scale + 2.0 * room, high * scale + 2.0 * room);
        let yarns = plan.design.yarn.colours.iter().map(|colour| Ink(colour.rgb)).collect();
        let (hangs, glows) = (kind.hangs, kind.glows);
        Self { yarns, space, view, scale, origin, bounds, at_least: 0, hangs, glows }
    }

    fn on_page(&self, p: Point) -> Point {
        (p.to_vec2() * self.scale + self.origin).to_point()
    }

    fn place(&self, p: &Vec3) -> Point {
        self.on_page(self.view.project(p).0)
    }

    fn yarn(&self, colour: Option<usize>) -> Ink {
        colour.or(Some(0)).and_then(|index| self.yarns.get(index)).copied().unwrap_or(UNDYED)
    }

    /// A yarn in some light.
    fn ink(&self, yarn: Ink, light: f64, depth: Depth) -> Ink {
        if self.glows { before_a_lamp(yarn, light, depth) } else { ink(yarn, light, depth) }
    }

    /// What the piece lies, stands or hangs on: a dark ground under lace, a loop, else its shadow or its light.
    fn ground(&self) -> Vec<Item> {
        if !self.space.lace {
            let page = |p| self.on_page(p);
            if self.hangs {
                let yarn = self.space.patches.first().and_then(|patch| patch.colour);
                return vec![ground::cord(self.space, &self.view, (self.yarn(yarn), self.scale), &page)];
            }
            return ground::shadow(self.space, &self.view, self.glows, &page);
        }
        let path = kurbo::Shape::to_path(&self.bounds.to_rounded_rect(2.0), 0.1);
        vec![Item::Path(PathItem { path, fill: Some(SLATE), stroke: None })]
    }

    /// Everything that is seen, back to front.
    fn stitches(&self, seen: &Seen) -> Vec<Item> {
        let mut paths: BTreeMap<Key, BezPath> = BTreeMap::new();
        let mut strip = Strip::default();
        let count = seen.layers.iter().flatten().count().max(self.at_least);
        for (i, patch) in self.space.patches.iter().enumerate() {
            if let Some(layer) = seen.layers.get(i).copied().flatten() {
                let clear = seen.shares.get(i).is_some_and(|share| *share >= CLEAR);
                self.stitch(patch, (SHELVES * layer, clear, count), &mut strip, &mut paths);
            }
        }
        strip.close(&mut paths);
        let neck = self.space.form.map_or(0.0, |form| form.neck());
        for (facet, _) in self.space.form.iter().flat_map(Form::facets).zip(&seen.form).filter(|(_, seen)| **seen) {
            let [a, b, c, d] = facet.map(|p| on_grid(self.place(&p)));
            // As seen, its corners go round clockwise: near the horizon its normal alone can't tell.
            if (c - a).cross(d - b) > 0.0 {
                let normal = self.view.turned(&facing(&facet));
                let layer = SHELVES * seen.form_layer + usize::from(facet.iter().all(|p| p.z >= neck));
                let key = Key { layer, rank: 0, ink: plain(FORM, lambert(&normal)), width: 0 };
                strip.add(key, [a, b, c, d], &mut paths);
            }
        }
        strip.close(&mut paths);
        let item = |(key, path): (Key, BezPath)| {
            let stroke = |width: f64, ends| Some(Stroke { width, ink: key.ink, ends, dashes: Vec::new() });
            Item::Path(match key.rank {
                // A hair of its own colour closes the seam between two patches.
                0 => PathItem { path, fill: Some(key.ink), stroke: stroke(HAIR, Ends::Round) },
                _ => PathItem {
                    path,
                    fill: None,
                    stroke: stroke(WIDTHS.get(key.width).copied().unwrap_or(WIDTHS[0]), Ends::Round),
                },
            })
        };
        paths.into_iter().map(item).collect()
    }

    fn stitch(
        &self,
        patch: &Patch,
        (layer, clear, count): (usize, bool, usize),
        strip: &mut Strip,
        paths: &mut BTreeMap<Key, BezPath>,
    ) {
        let normal = self.view.turned(&patch.normal());
        let normal = if self.space.mirrored { -normal } else { normal };
        let right = normal.z >= 0.0;
        let lit = if right { lambert(&normal) } else { 0.72 * lambert(&-normal) };
        let yarn = self.yarn(patch.colour);
        let bare = !clear || normal.z.abs() < GRAZING;
        if !patch.hangs {
            let inset = if self.space.lace { 0.4 } else { 0.5 };
            let corner = |u: f64, v: f64| self.place(&patch.at(u, v, 0.0));
            let top = if patch.edge { 1.08 } else { 1.0 };
            let key = Key {
                layer,
                rank: 0,
                ink: self.ink(yarn, lit, if bare { Depth::Shade } else { Depth::Gap }),
                width: 0,
            };
            let corners = [corner(-inset, 0.0), corner(inset, 0.0), corner(inset, top), corner(-inset, top)];
            let corners = if count < FINE.0 { corners } else { corners.map(on_grid) };
            strip.add(key, corners, paths);
        }
        if bare {
            return;
        }
        let page_width = patch.width() * self.scale;
        // How much narrower and lower than in the fabric the stitch is seen.
        let seen = |a: Vec3, b: Vec3| self.place(&a).distance(self.place(&b)) / ((b - a).norm() * self.scale).max(1e-9);
        let narrow = seen(patch.at(-0.5, 0.5, 0.0), patch.at(0.5, 0.5, 0.0)).min(1.0);
        let low = seen(patch.at(0.0, 0.0, 0.0), patch.at(0.0, 1.0, 0.0)).min(1.0);
        for strand in strands(patch, right) {
            let squeezed = if strand.level { low } else { narrow };
            // At the edge of what is seen, strands don't stand out over the fabric.
            let round = 0.3 + 0.7 * normal.z.abs();
            let width = strand.width * page_width * squeezed.max(0.3) * round;
            let yarn = if strand.below { self.yarn(patch.below) } else { yarn };
            self.strand(patch, &strand, (layer, yarn, lit * strand.tone, width), (right, normal.z.abs(), count), paths);
        }
    }

    fn strand(
        &self,
        patch: &Patch,
        strand: &Strand,
        (layer, yarn, light, width): (usize, Ink, f64, f64),
        (right, facing, seen): (bool, f64, usize),
        paths: &mut BTreeMap<Key, BezPath>,
    ) {
        let out = if right != self.space.mirrored { 1.0 } else { -1.0 } * patch.width() * 0.6 * facing;
        let points: Vec<Point> =
            strand.points.iter().map(|[u, v, lift]| self.place(&patch.at(*u, *v, lift * out))).collect();
        let (fine, shines) = (seen < FINE.0, seen < FINE.1);
        let key = |rank: u8, depth: Depth, share: f64| {
            let wanted = width * share;
            // The nearest by ratio: the first whose middle to the next lies above.
            let class = WIDTHS.windows(2).position(|pair| wanted * wanted < pair[0] * pair[1]);
            let class = class.unwrap_or(WIDTHS.len() - 1);
            Key { layer, rank: 1 + 3 * strand.rank + rank, ink: self.ink(yarn, light, depth), width: class }
        };
        let mut draw = |rank: u8, depth: Depth, share: f64, shift: f64, from: f64, to: f64| {
            let key = key(rank, depth, share);
            // Towards the lamp.
            let aside = Vec2::new(-0.55, -0.83) * (shift * width);
            trace(paths.entry(key).or_default(), &points, aside, (from, to), fine);
        };
        if strand.tone < 0.5 {
            draw(0, Depth::Body, 1.0, 0.0, 0.0, 1.0);
            return;
        }
        if !shines {
            draw(1, Depth::Body, 0.92, 0.0, 0.0, 1.0);
        } else if !fine {
            draw(1, Depth::Body, 0.92, 0.0, 0.0, 1.0);
            // Of small strands only those that face the lamp shine.
            if strand.tone > LIT {
                draw(2, Depth::Shine, 0.3, 0.16, 0.15, 0.8);
            }
        } else {
            draw(0, Depth::Shade, 1.0, 0.0, 0.0, 1.0);
            draw(1, Depth::Body, 0.72, 0.1, 0.02, 0.98);
            draw(2, Depth::Shine, 0.24, 0.2, 0.22, 0.8);
        }
        if seen < PLIES {
            let key = key(2, Depth::Ply, 0.07);
            twist(paths.entry(key).or_default(), &points, width);
        }
    }
}

/// Patches side by side in one ink, which are drawn as one.
#[derive(Default)]
struct Strip {
    key: Option<Key>,
    feet: Vec<Point>,
    heads: Vec<Point>,
}

impl Strip {
    fn add(&mut self, key: Key, [a, b, c, d]: [Point; 4], paths: &mut BTreeMap<Key, BezPath>) {
        let meets = |last: Option<&Point>, next: Point| last.is_some_and(|last| last.distance(next) < 0.02);
        if self.key != Some(key) || !meets(self.feet.last(), a) || !meets(self.heads.last(), d) {
            self.close(paths);
            self.key = Some(key);
            self.feet.push(a);
            self.heads.push(d);
        }
        self.feet.push(b);
        self.heads.push(c);
    }

    fn close(&mut self, paths: &mut BTreeMap<Key, BezPath>) {
        if let Some(key) = self.key.take() {
            let path = paths.entry(key).or_default();
            let corners = self.feet.drain(..).chain(self.heads.drain(..).rev());
            for (i, corner) in corners.enumerate() {
                if i == 0 { path.move_to(corner) } else { path.line_to(corner) }
            }
            path.close_path();
        }
    }
}

/// The nearest point of the grid of tenths on which small stitches stand, which are shorter to write.
fn on_grid(p: Point) -> Point {
    Point::new(tidy(p.x, 1), tidy(p.y, 1))
}

/// The smooth line through three points.
fn curve([a, b, c]: [Point; 3]) -> QuadBez {
    QuadBez::new(a, (b.to_vec2() * 2.0 - (a.to_vec2() + c.to_vec2()) * 0.5).to_point(), c)
}

/// Adds the grooves between the plies of a strand: short strokes across it, aslant as yarn is spun.
fn twist(path: &mut BezPath, points: &[Point], width: f64) {
    let [a, b, c] = match points {
        [a, b] => [*a, a.midpoint(*b), *b],
        [a, b, c] => [*a, *b, *c],
        _ => return,
    };
    let line = curve([a, b, c]);
    let length = a.distance(b) + b.distance(c);
    let count = (length / (0.42 * width)).floor().clamp(1.0, 12.0);
    for i in 0..count as u32 {
        let share = (f64::from(i) + 0.5) / count;
        let (at, way) = (line.eval(share), (line.eval((share + 0.05).min(1.0)) - line.eval((share - 0.05).max(0.0))));
        let way = way / way.hypot().max(1e-9);
        let out = (Vec2::new(-way.y, way.x) * 0.3 + way * 0.2) * width;
        path.move_to(at - out);
        path.line_to(at + out);
    }
}

/// Adds a stretch of a smooth line through the points.
fn trace(path: &mut BezPath, points: &[Point], aside: Vec2, (from, to): (f64, f64), bent: bool) {
    match points {
        [a, .., b] if !bent => {
            path.move_to(on_grid(a.lerp(*b, from) + aside));
            path.line_to(on_grid(a.lerp(*b, to) + aside));
        }
        [a, b] => {
            path.move_to(a.lerp(*b, from) + aside);
            path.line_to(a.lerp(*b, to) + aside);
        }
        [a, b, c] => {
            let part = curve([*a, *b, *c]).subsegment(from..to);
            path.move_to(part.p0 + aside);
            path.quad_to(part.p1 + aside, part.p2 + aside);
        }
        _ => {}
    }
}

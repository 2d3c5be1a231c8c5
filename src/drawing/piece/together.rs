//! Several pieces side by side on one ground, to one scale: what is sewn together in the end.

use kurbo::{Rect, Vec2};

use super::{PieceOptions, Sheet, framed::frame, stands, telling};
use crate::drawing::{Drawing, FrameOptions, Group, Item, Origin, Role};
use crate::geometry::SideShape;
use crate::geometry::mesh::Vec3;
use crate::geometry::piece::{Eye, Piece, View};
use crate::plan::{Plan, SizePlan};
use crate::units::{Angle, Mm};
use crate::words::{Arg, Language, Words};

/// A piece among others.
#[derive(Clone, Copy, Debug)]
pub struct OneOf<'a> {
    /// What it is called among them.
    pub name: &'a str,
    /// How many of it are made, and drawn.
    pub made: u32,
    /// The plan that its size is of.
    pub plan: &'a Plan,
    /// The size that is drawn.
    pub size: &'a SizePlan,
    /// Its predicted shape.
    pub body: &'a SideShape,
    /// How it lies in space.
    pub space: &'a Piece,
}

impl OneOf<'_> {
    /// Pieces that all lie flat are seen from above; where one of them stands, all are seen as it is.
    pub fn eye(pieces: &[Self]) -> Eye {
        let eyes = pieces.iter().map(|piece| Eye::of(piece.space, piece.body));
        let lowest = eyes.min_by(|one, other| one.from.degrees().total_cmp(&other.from.degrees()));
        lowest.unwrap_or(Eye { from: Angle::ZERO, turn: Angle::ZERO, distance: None })
    }
}

/// Least share of the largest scale that could be had in any number of rows: a row more must be worth breaking the one
/// ground for.
const WORTH: f64 = 0.5;

/// Draws pieces from left to right on one ground, in the order in which they are given; more than go side by side stand in
/// rows. A picture without pieces is empty.
pub fn together(pieces: &[OneOf<'_>], options: &PieceOptions) -> Drawing {
    let eye = options.eye.unwrap_or_else(|| OneOf::eye(pieces));
    let one = PieceOptions { scale: Some(1.0), ..options.clone() };
    let rooms: Vec<Room> = pieces.iter().map(|piece| Room::of(&sheet(piece, &eye, &one))).collect();
    let places: Vec<usize> =
        pieces.iter().enumerate().flat_map(|(index, piece)| std::iter::repeat_n(index, piece.made as usize)).collect();
    let arranged = Arranged::best(&places, &rooms, options);
    let scale = options.scale.unwrap_or(arranged.scale);
    let to_scale = PieceOptions { scale: Some(scale), ..options.clone() };
    let drawn: Vec<(Vec<Item>, Room)> = pieces
        .iter()
        .map(|piece| {
            let sheet = sheet(piece, &eye, &to_scale);
            (stands(&sheet), Room::of(&sheet))
        })
        .collect();
    let width = arranged.rows.iter().map(|row| across(row, &rooms)).fold(0.0, f64::max) * scale;
    let (mut items, mut top) = (Vec::new(), 0.0);
    for row in &arranged.rows {
        let own = |index: &usize| drawn.get(*index);
        let above = row.iter().filter_map(own).map(|(_, room)| room.above).fold(0.0, f64::max);
        let below = row.iter().filter_map(own).map(|(_, room)| room.below).fold(0.0, f64::max);
        let mut left = (width - row.iter().filter_map(own).map(|(_, room)| room.wide).sum::<f64>()) / 2.0;
        for index in row {
            let (Some((own, room)), Some(piece)) = (drawn.get(*index), pieces.get(*index)) else { continue };
            let by = Vec2::new(left, top + above - room.above);
            let shapes = (piece.body, piece.space);
            items.push(Item::Group(Group {
                id: format!("piece-{}", items.len() + 1),
                role: Role::Object {
                    name: piece.name.to_owned(),
                    description: telling::description(piece.plan, piece.size, shapes, &eye),
                },
                origin: Origin::None,
                items: own.iter().map(|item| item.moved(by)).collect(),
            }));
            left += room.wide;
        }
        top += above + below;
    }
    let language = pieces.first().map_or(Language::EN, |piece| piece.plan.design.language);
    let (title, description) = told(pieces, language, &eye);
    let bounds = Rect::new(0.0, 0.0, width.max(1.0), top.max(1.0));
    Drawing { bounds, title, description, language, symbols: Default::default(), items }
}

/// The same on white within a frame, their title below them where that is wished.
pub fn together_framed(pieces: &[OneOf<'_>], options: &FrameOptions) -> Drawing {
    let title = if options.titled { titled(pieces) } else { String::new() };
    frame(&title, options, |width, height| {
        together(pieces, &PieceOptions { width, height, eye: options.eye, scale: None })
    })
}

fn sheet<'a>(piece: &OneOf<'a>, eye: &Eye, options: &PieceOptions) -> Sheet<'a> {
    Sheet::of(piece.plan, piece.space, View::new(eye, piece.space.reach), options)
}

/// What a piece takes of the page about the point of the ground that it stands over.
#[derive(Clone, Copy, Debug)]
struct Room {
    wide: f64,
    above: f64,
    below: f64,
}

impl Room {
    fn of(sheet: &Sheet<'_>) -> Self {
        let ground = sheet.place(&Vec3::new(0.0, 0.0, sheet.space.ground)).y;
        Self { wide: sheet.bounds.width(), above: ground, below: sheet.bounds.height() - ground }
    }
}

/// Pieces in rows, by their indices, and the scale at which they fit.
struct Arranged {
    rows: Vec<Vec<usize>>,
    scale: f64,
}

impl Arranged {
    /// As few rows as give a scale that is worth it.
    fn best(places: &[usize], rooms: &[Room], options: &PieceOptions) -> Self {
        let of = |count| Self::in_rows(places, rooms, count, (options.width, options.height));
        let all: Vec<Self> = (1..=places.len().max(1)).map(of).collect();
        let largest = all.iter().map(|one| one.scale).fold(0.0, f64::max);
        let worth = all.into_iter().find(|one| one.scale >= WORTH * largest);
        worth.unwrap_or(Self { rows: Vec::new(), scale: 1.0 })
    }

    /// In so many rows of about the same width.
    fn in_rows(places: &[usize], rooms: &[Room], count: usize, (width, height): (Mm, Mm)) -> Self {
        let each = across(places, rooms) / count as f64;
        let (mut rows, mut reached) = (vec![Vec::new(); count], 0.0);
        for index in places {
            let wide = rooms.get(*index).map_or(0.0, |room| room.wide);
            let row = ((reached + wide / 2.0) / each.max(1e-9)).floor() as usize;
            if let Some(row) = rows.get_mut(row.min(count - 1)) {
                row.push(*index);
            }
            reached += wide;
        }
        rows.retain(|row| !row.is_empty());
        let most = |row: &Vec<usize>, side: fn(&Room) -> f64| {
            row.iter().filter_map(|index| rooms.get(*index)).map(side).fold(0.0, f64::max)
        };
        let wide = rows.iter().map(|row| across(row, rooms)).fold(1e-6, f64::max);
        let high: f64 = rows.iter().map(|row| most(row, |room| room.above) + most(row, |room| room.below)).sum();
        Self { scale: (width.mm() / wide).min(height.mm() / high.max(1e-6)), rows }
    }
}

/// Width of pieces side by side.
fn across(row: &[usize], rooms: &[Room]) -> f64 {
    row.iter().filter_map(|index| rooms.get(*index)).map(|room| room.wide).sum()
}

/// The title that all share, else the names of the pieces.
fn titled(pieces: &[OneOf<'_>]) -> String {
    let titles = || pieces.iter().map(|piece| piece.plan.design.title.value.trim());
    match titles().next() {
        Some(first) if !first.is_empty() && titles().all(|title| title == first) => first.to_owned(),
        _ => names(pieces),
    }
}

/// `Body, Ear × 2`.
fn names(pieces: &[OneOf<'_>]) -> String {
    let name = |piece: &OneOf<'_>| match piece.made {
        1 => piece.name.to_owned(),
        made => format!("{}\u{a0}× {made}", piece.name),
    };
    pieces.iter().map(name).collect::<Vec<_>>().join(", ")
}

/// Title and description.
fn told(pieces: &[OneOf<'_>], language: Language, eye: &Eye) -> (String, String) {
    let words = Words::of(language);
    let title = words.with("pieces-title", &[("title", Arg::Text(&titled(pieces)))]);
    let side_by_side = words.with("pieces-side-by-side", &[("pieces", Arg::Text(&names(pieces)))]);
    let own = pieces.iter().map(|piece| {
        let told = telling::description(piece.plan, piece.size, (piece.body, piece.space), eye);
        format!("{}{}{told}", piece.name, words.colon())
    });
    let description = [format!("{title}."), side_by_side].into_iter().chain(own).collect::<Vec<_>>().join(" ");
    (title, description)
}

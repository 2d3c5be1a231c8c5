//! A photograph as a drawing.

use std::sync::Arc;

use kurbo::Rect;

use super::{Drawing, Item, PhotoItem};
use crate::photo::Photo;
use crate::units::Mm;
use crate::words::Language;

/// Pixels an inch of the room that a photograph is made for.
const DPI: f64 = 225.0;

/// Most pixels an inch that a press can show: where a photograph gets less than its room in the end, it keeps so many.
const MOST_DPI: f64 = 300.0;

/// A photograph as large as goes into the room, with no more pixels than print needs there, and the words that stand for
/// it where it can't be seen.
pub fn photograph(photo: &Photo, alt: &str, language: Language, (width, height): (Mm, Mm)) -> Drawing {
    let (across, down) = photo.size();
    let scale = (width.mm() / f64::from(across)).min(height.mm() / f64::from(down));
    let area = Rect::new(0.0, 0.0, f64::from(across) * scale, f64::from(down) * scale);
    let photo = Arc::new(photo.within((pixels(width, DPI), pixels(height, DPI))));
    Drawing {
        bounds: area,
        title: alt.to_owned(),
        description: alt.to_owned(),
        language,
        symbols: Default::default(),
        items: vec![Item::Photo(PhotoItem { photo, area })],
    }
}

/// Pixels along a side.
fn pixels(side: Mm, dpi: f64) -> u32 {
    (side.inches() * dpi).ceil().max(1.0) as u32
}

/// The drawing for being printed at this scale: a photograph with no more pixels than a press can show, all else as it is.
pub fn printed_at(drawing: &Arc<Drawing>, scale: f64) -> Arc<Drawing> {
    let Some(item) = drawing.photograph() else { return drawing.clone() };
    let most = [item.area.width(), item.area.height()].map(|side| pixels(Mm::new(side * scale), MOST_DPI));
    let photo = Arc::new(item.photo.within((most[0], most[1])));
    let items = vec![Item::Photo(PhotoItem { photo, area: item.area })];
    Arc::new(Drawing {
        items,
        symbols: Default::default(),
        title: drawing.title.clone(),
        description: drawing.description.clone(),
        ..**drawing
    })
}

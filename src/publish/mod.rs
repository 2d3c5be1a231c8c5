//! What is made of a pattern: products, single pictures, listings. Nothing else knows which there are.
//!
//! Takes a [`Pattern`](crate::pattern::Pattern). Draws its pictures for the room in which they are shown, has them laid
//! out and written, and gives named bytes. One of a kind is one row: its name, what it is, and how it is made. Promises
//! complaints in the words of the options that would help; fails where a page can't be laid out.

pub mod draw;
mod extras;
mod listing;
mod names;
pub mod pictures;
mod products;
mod rows;
#[cfg(test)]
mod tests;
mod together;
mod view;

pub use crate::geometry::piece::Stand;
pub use draw::{DrawOptions, FORMATS, Format, PICTURES, Picture, draw};
pub use extras::{CHARTS, FRAMES, PRINTS, ROUNDS, STANDS, VIEWS, misplaced};
pub use listing::{LISTINGS, Listing, list};
pub use names::stem_of;
pub use products::{PRODUCTS, Product, publish};
pub use rows::{Named, Row, by_name};
pub use together::{TextPattern, draw_together, publish_together};

//! Stage 4, drawing: geometry → [`Drawing`].
//!
//! Takes geometry. Gives drawings made of a tiny closed set of items: paths, texts, placed symbols, photographs, groups. Coordinates
//! are millimetres, x to the right and y down. Promises that every item lies inside the bounds, that every symbol is
//! defined, and that nothing is said by colour alone. Never fails.

pub mod chart;
mod colours;
mod item;
mod key;
mod palette;
mod photograph;
pub mod piece;
mod rowtable;
pub mod schematic;
pub mod symbols;
mod truesize;

pub use chart::{
    ChartOptions, ChartView, Demerit, DemeritKind, LEAST_CELL, Readable, chart, choose_view, demerits, least_cell,
    readable,
};
pub use colours::{ColoursOptions, colours, trials_cut};
pub use item::*;
pub use key::{KeyOptions, key, signs, symbol_sheet};
pub use palette::{contrast, luminance};
pub use photograph::{photograph, printed_at};
pub use piece::{
    FrameOptions, OneOf, PieceOptions, StepsOptions, draw_piece, framed, on_its_way, piece, relaxed, steps, stops,
    together, together_framed, worn_piece,
};
pub use rowtable::{RowTableOptions, row_table};
pub use schematic::{SchematicOptions, schematic, worn};
pub use symbols::Sign;
pub use truesize::{TRUE_SIZE, may_be_true_size, true_size};

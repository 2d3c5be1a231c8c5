//! How large things may be, in one place, so that what one room reads the next can work with.
//!
//! Beyond these a length, a unit or a file is mistaken; a piece this large nobody works.

/// Longest design file or text of written rounds, in bytes.
pub const BYTES: usize = 1 << 20;
/// Deepest nesting of a design file.
pub const NESTED: usize = 16;
/// Most values of a design file.
pub const VALUES: usize = 20_000;
/// Most complaints about one text: more help nobody.
pub const COMPLAINTS: usize = 100;

/// Most sizes of a design.
pub const SIZES: usize = 24;
/// Most parts of a design.
pub const PARTS: usize = 40;
/// Most notes, materials or steps of assembly in one field of a design.
pub const NOTES: usize = 40;
/// Most stitches of its own that a design defines.
pub const OWN_STITCHES: usize = 40;
/// Most palettes of a design.
pub const PALETTES: usize = 12;
/// Most rounds of a part, solved or written.
pub const ROUNDS: u32 = 1000;
/// Most stitches of a round that is solved.
pub const STITCHES: u32 = 4000;
/// Most operations of a design, all its sizes together: what is worked out, drawn and written grows with them.
pub const OPERATIONS: u64 = 300_000;
/// Stitches of a design, all its sizes together, above which what is published of it is made one after the other: what
/// is made side by side is held side by side.
pub const AT_ONCE: usize = 20_000;
/// Longest length that is solved for, in millimetres.
pub const LENGTH_MM: f64 = 1e5;

/// Most stitches of a piece whose mesh is relaxed in space.
pub const MESH: usize = 20_000;

/// Most words and signs of a written round.
pub const ROUND_WORDS: usize = 4000;
/// Most operations of a written round, its repeats worked out.
pub const ROUND_STEPS: usize = 100_000;
/// Most stitches in one place of a written round.
pub const IN_ONE_PLACE: u32 = 1000;

/// Longest file of a photograph, in bytes.
pub const PHOTO_BYTES: usize = 32 << 20;
/// Most pixels of a photograph: those of the usual largest cameras. They take up to some 300 MB while they are decoded.
pub const PHOTO_PIXELS: u64 = 50_000_000;
/// Pixels of its long side that are kept: 300 an inch on 200 mm.
pub const PHOTO_SIDE: u32 = 2400;
/// Pixels of its long side below which a photograph looks coarse on a cover.
pub const PHOTO_FINE: u32 = 800;

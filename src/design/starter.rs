//! The design that a maker begins with.

/// A commented design, ready to be solved: what `roundelay new` writes.
pub const STARTER: &str = include_str!("starter.yaml");

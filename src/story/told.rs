//! How a pattern is told: what the maker asks for, and which pictures there are to speak of.

/// How a pattern is told.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Telling {
    /// How the rounds of several sizes are told.
    pub rounds: RoundsForm,
    /// True for the rounds in plain words too, after the table.
    pub plain_words: bool,
    /// True where it is read in large letters, which leave room for few columns.
    pub large: bool,
    /// True for patches of yarn colour beside their names.
    pub patches: bool,
}

/// How the rounds of several sizes are told.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum RoundsForm {
    /// Side by side where the sizes are alike enough, else one table a size.
    #[default]
    Fitting,
    /// Side by side: 72 (80, 88).
    Brackets,
    /// One table a size, with measures.
    PerSize,
}

/// The pictures that there are, by their captions; an empty caption says nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Illustrations {
    /// The piece drawn from the pattern, where it isn't on the cover.
    pub piece: Option<String>,
    /// True where the symbols are explained in a picture of their own.
    pub key: bool,
    /// The charts in order.
    pub charts: Vec<String>,
    /// How many of the charts have a picture that explains their own symbols.
    pub chart_keys: usize,
    /// The side views in order.
    pub schematics: Vec<String>,
    /// The piece on its way.
    pub steps: Option<String>,
    /// The piece in other colours.
    pub colours: Option<String>,
    /// The outline at its true size.
    pub true_size: Option<String>,
}

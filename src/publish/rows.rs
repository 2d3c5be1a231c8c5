//! Rows that are chosen from by their names.

/// One of a kind that has a name.
pub trait Row {
    /// Its name, as it is said on the command line.
    fn name(&self) -> &'static str;

    /// What it is, in a line.
    fn about(&self) -> &'static str;
}

/// The row of this name.
pub fn by_name<'r, R: Row>(rows: &'r [R], name: &str) -> Option<&'r R> {
    rows.iter().find(|row| row.name() == name)
}

/// A plain value with its name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Named<T> {
    /// Its name.
    pub name: &'static str,
    /// What it is, in a line.
    pub about: &'static str,
    /// The value.
    pub value: T,
}

impl<T> Named<T> {
    pub(super) const fn new(name: &'static str, value: T, about: &'static str) -> Self {
        Self { name, about, value }
    }
}

impl<T> Row for Named<T> {
    fn name(&self) -> &'static str {
        self.name
    }

    fn about(&self) -> &'static str {
        self.about
    }
}

//! The languages of the printed pages: one line a catalogue.

use std::fmt;

/// Every catalogue, English first: a language is what its catalogue says of itself.
const CATALOGUES: &[&str] = &[
    include_str!("en.ftl"),
    include_str!("de.ftl"),
    include_str!("fr.ftl"),
    include_str!("es.ftl"),
    include_str!("nl.ftl"),
];

/// A language the pages can be printed in: the place of its catalogue among the others.
#[derive(Clone, Copy, Default, PartialEq, Eq, Hash)]
pub struct Language(u8);

impl Language {
    /// English, in which the terms of the trade are given beside those of another language.
    pub const EN: Self = Self(0);

    /// All of them.
    pub const ALL: [Self; CATALOGUES.len()] = {
        let mut all = [Self::EN; CATALOGUES.len()];
        let mut index = 0;
        while index < all.len() {
            all[index] = Self(index as u8);
            index += 1;
        }
        all
    };

    /// Its tag by BCP 47, as its catalogue says near its top: read without parsing the rest, since tags are compared
    /// before it is known which catalogue will be used.
    pub fn tag(self) -> &'static str {
        let mut lines = self.catalogue().lines();
        lines.find_map(|line| line.strip_prefix("language-tag = ")).unwrap_or_default()
    }

    /// The language of this tag.
    pub fn by_tag(tag: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.tag() == tag)
    }

    /// Its catalogue.
    pub const fn catalogue(self) -> &'static str {
        CATALOGUES[self.index()]
    }

    /// Its place among all.
    pub(super) const fn index(self) -> usize {
        self.0 as usize
    }
}

impl fmt::Debug for Language {
    fn fmt(&self, to: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(to, "Language({})", self.tag())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_catalogue_is_english() {
        assert_eq!(Language::EN.tag(), "en");
        assert_eq!(Language::default(), Language::EN);
        assert_eq!(Language::by_tag("xx"), None);
    }
}

//! Words of the printed pages: one message catalogue a language, in Fluent syntax, compiled in.
//!
//! To add a language, write its catalogue and name it in `language.rs`: the catalogue itself says how the language is tagged
//! and called, and how it sets colons and decimals. Complaints of the command line are English; everything printed goes through [`Words`]. A stitch has its words in
//! the catalogues under its id.

pub mod numbers;

mod language;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};
use std::sync::{Arc, OnceLock};

use crate::craft::{Made, OwnStitch};

pub use language::Language;

/// The words of one language.
#[derive(Clone)]
pub struct Words {
    /// The language.
    pub language: Language,
    catalogue: &'static Catalogue,
    /// Stitches of the maker's own, by the names that the maker gave them.
    own: Arc<[OwnStitch]>,
}

/// A catalogue that has been read, and the marks of it that stand in nearly every line.
struct Catalogue {
    bundle: FluentBundle<FluentResource>,
    colon: String,
    semicolon: String,
    decimal_mark: String,
}

impl Catalogue {
    fn read(language: Language) -> Self {
        let tag = language.tag().parse().unwrap_or_default();
        let mut bundle = FluentBundle::new_concurrent(vec![tag]);
        bundle.set_use_isolating(false);
        let resource = FluentResource::try_new(language.catalogue().to_owned()).unwrap_or_else(|(part, _)| part);
        bundle.add_resource_overriding(resource);
        let mark = |key| said(&bundle, key, None, &[]);
        let (colon, semicolon) = (mark("language-colon"), mark("language-semicolon"));
        let decimal_mark = mark("language-decimal-mark");
        Self { bundle, colon, semicolon, decimal_mark }
    }
}

/// A message with arguments, or a part of it; the key where there is none of it.
fn said(
    bundle: &FluentBundle<FluentResource>,
    key: &str,
    part: Option<&str>,
    args: &[(&'static str, Arg<'_>)],
) -> String {
    let pattern = bundle.get_message(key).and_then(|message| match part {
        None => message.value(),
        Some(part) => message.get_attribute(part).map(|part| part.value()),
    });
    let Some(pattern) = pattern else { return key.to_owned() };
    let args: FluentArgs<'_> = args.iter().map(|(name, arg)| (*name, arg.value())).collect();
    bundle.format_pattern(pattern, Some(&args), &mut Vec::new()).into_owned()
}

impl Words {
    /// The words of a language; its catalogue is read the first time and kept.
    pub fn of(language: Language) -> Self {
        static READ: [OnceLock<Catalogue>; Language::ALL.len()] = [const { OnceLock::new() }; Language::ALL.len()];
        let catalogue = READ[language.index()].get_or_init(|| Catalogue::read(language));
        Self { language, catalogue, own: [].into() }
    }

    /// The same with names for a maker's own stitches.
    #[must_use]
    pub fn naming(self, own: &[OwnStitch]) -> Self {
        Self { own: own.into(), ..self }
    }

    /// The maker's own stitch that is made here, where it is one.
    pub fn own(&self, made: &Made) -> Option<&OwnStitch> {
        self.own.iter().find(|own| own.made == *made)
    }

    /// The language's own name for itself.
    pub fn language_name(&self) -> String {
        self.say("language-name")
    }

    /// What stands between a name and what is said of it: a colon, set off as the language does.
    pub fn colon(&self) -> &'static str {
        &self.catalogue.colon
    }

    /// What stands between two things said of one name.
    pub fn semicolon(&self) -> &'static str {
        &self.catalogue.semicolon
    }

    /// What stands between the whole number and its decimals.
    pub fn decimal_mark(&self) -> &'static str {
        &self.catalogue.decimal_mark
    }

    /// A message without arguments. A key that isn't there gives the key, which a test forbids.
    pub fn say(&self, key: &str) -> String {
        self.with(key, &[])
    }

    /// A message with arguments: numbers pick plural forms, texts stand as they are.
    pub fn with(&self, key: &str, args: &[(&'static str, Arg<'_>)]) -> String {
        said(&self.catalogue.bundle, key, None, args)
    }

    /// What belongs to a message under a name of its own, such as the `meaning` of an abbreviation. What isn't there
    /// gives the key, which a test forbids.
    pub fn part(&self, key: &str, part: &str, args: &[(&'static str, Arg<'_>)]) -> String {
        said(&self.catalogue.bundle, key, Some(part), args)
    }

    /// True where the catalogue has the key.
    pub fn has(&self, key: &str) -> bool {
        self.catalogue.bundle.has_message(key)
    }
}

/// An argument of a message.
#[derive(Clone, Copy, Debug)]
pub enum Arg<'a> {
    /// A whole number, which may pick a plural form.
    Count(u32),
    /// Text that stands as it is, numbers already written out among it.
    Text(&'a str),
}

impl Arg<'_> {
    fn value(&self) -> FluentValue<'_> {
        match self {
            Self::Count(count) => FluentValue::from(*count),
            Self::Text(text) => FluentValue::from(*text),
        }
    }
}

/// A name with its first letter as a capital.
pub(crate) fn capital(name: &str) -> String {
    let mut letters = name.chars();
    letters.next().map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The keys of messages and, each with a full stop before it, the names of their parts.
    fn keys(language: Language) -> Vec<&'static str> {
        let lines = language.catalogue().lines();
        let message = |line: &&str| line.starts_with(|c: char| c.is_ascii_lowercase());
        let named = lines.filter(|line| message(line) || line.trim_start().starts_with('.'));
        named.filter_map(|line| line.split_once('=').map(|(key, _)| key.trim())).collect()
    }

    #[test]
    fn every_key_exists_in_every_language() {
        for language in Language::ALL {
            assert!(FluentResource::try_new(language.catalogue().to_owned()).is_ok(), "{language:?} does not parse");
            assert_eq!(keys(language), keys(Language::EN), "{language:?} has other keys or another order");
        }
    }

    #[test]
    fn every_catalogue_says_which_language_it_is() {
        for (index, language) in Language::ALL.into_iter().enumerate() {
            let words = Words::of(language);
            assert_eq!(words.say("language-tag"), language.tag());
            assert_eq!(Language::by_tag(language.tag()), Some(language), "{language:?} has the tag of another");
            let tag = language.tag().parse::<unic_langid::LanguageIdentifier>();
            assert_eq!(tag.map(|tag| tag.to_string()).as_deref(), Ok(language.tag()));
            let name = words.language_name();
            let others = Language::ALL[..index].iter().map(|other| Words::of(*other).language_name());
            assert!(name.chars().all(char::is_alphabetic) && others.into_iter().all(|other| other != name), "{name}");
        }
    }

    /// ISO 80000-1 allows the comma and the point as decimal sign; French sets colon and semicolon off by a space before
    /// them that doesn't break (common practice).
    #[test]
    fn every_catalogue_says_how_it_sets_its_marks() {
        for language in Language::ALL {
            let words = Words::of(language);
            assert_eq!((words.colon().trim(), words.semicolon().trim()), (":", ";"), "{language:?}");
            assert!(words.colon().ends_with(' ') && words.semicolon().ends_with(' '), "{language:?}");
            assert!([".", ","].contains(&words.decimal_mark()), "{language:?}");
        }
        let marks = |tag| {
            let words = Language::by_tag(tag).map(Words::of);
            words.map(|words| (words.colon(), words.semicolon(), words.decimal_mark()))
        };
        assert_eq!(marks("en"), Some((": ", "; ", ".")));
        assert_eq!(marks("fr"), Some(("\u{a0}: ", "\u{a0}; ", ",")));
        assert_eq!(marks("de"), Some((": ", "; ", ",")));
    }
}

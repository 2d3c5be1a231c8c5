//! Words of the printed pages: one message catalogue a language, in Fluent syntax, compiled in.
//!
//! Complaints of the command line are English; everything printed goes through [`Words`]. A stitch has its words in
//! the catalogues under its id.

pub mod numbers;

use std::sync::LazyLock;

use fluent_bundle::concurrent::FluentBundle;
use fluent_bundle::{FluentArgs, FluentResource, FluentValue};

/// A language the pages can be printed in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash)]
pub enum Language {
    /// English.
    #[default]
    En,
    /// German.
    De,
    /// French.
    Fr,
    /// Spanish.
    Es,
    /// Dutch.
    Nl,
}

impl Language {
    /// All of them.
    pub const ALL: [Self; 5] = [Self::En, Self::De, Self::Fr, Self::Es, Self::Nl];

    /// Its tag by BCP 47.
    pub const fn tag(self) -> &'static str {
        match self {
            Self::En => "en",
            Self::De => "de",
            Self::Fr => "fr",
            Self::Es => "es",
            Self::Nl => "nl",
        }
    }

    /// The language of this tag.
    pub fn by_tag(tag: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|language| language.tag() == tag)
    }

    /// Its catalogue.
    pub const fn catalogue(self) -> &'static str {
        match self {
            Self::En => include_str!("en.ftl"),
            Self::De => include_str!("de.ftl"),
            Self::Fr => include_str!("fr.ftl"),
            Self::Es => include_str!("es.ftl"),
            Self::Nl => include_str!("nl.ftl"),
        }
    }
}

/// The words of one language.
#[derive(Clone, Copy)]
pub struct Words {
    /// The language.
    pub language: Language,
    bundle: &'static Bundle,
}

type Bundle = FluentBundle<FluentResource>;

static ENGLISH: LazyLock<Bundle> = LazyLock::new(|| read(Language::En));
static GERMAN: LazyLock<Bundle> = LazyLock::new(|| read(Language::De));
static FRENCH: LazyLock<Bundle> = LazyLock::new(|| read(Language::Fr));
static SPANISH: LazyLock<Bundle> = LazyLock::new(|| read(Language::Es));
static DUTCH: LazyLock<Bundle> = LazyLock::new(|| read(Language::Nl));

fn read(language: Language) -> Bundle {
    let tag = language.tag().parse().unwrap_or_default();
    let mut bundle = FluentBundle::new_concurrent(vec![tag]);
    bundle.set_use_isolating(false);
    let resource = FluentResource::try_new(language.catalogue().to_owned()).unwrap_or_else(|(part, _)| part);
    bundle.add_resource_overriding(resource);
    bundle
}

impl Words {
    /// The words of a language; its catalogue is read the first time and kept.
    pub fn of(language: Language) -> Self {
        let bundle = match language {
            Language::En => &ENGLISH,
            Language::De => &GERMAN,
            Language::Fr => &FRENCH,
            Language::Es => &SPANISH,
            Language::Nl => &DUTCH,
        };
        Self { language, bundle }
    }

    /// What stands between a name and what is said of it: a colon, which French sets off by a space on either side.
    pub const fn colon(&self) -> &'static str {
        match self.language {
            Language::Fr => "\u{a0}: ",
            Language::En | Language::De | Language::Es | Language::Nl => ": ",
        }
    }

    /// What stands between two things said of one name.
    pub const fn semicolon(&self) -> &'static str {
        match self.language {
            Language::Fr => "\u{a0}; ",
            Language::En | Language::De | Language::Es | Language::Nl => "; ",
        }
    }

    /// A message without arguments. A key that isn't there gives the key, which a test forbids.
    pub fn say(&self, key: &str) -> String {
        self.with(key, &[])
    }

    /// A message with arguments: numbers pick plural forms, texts stand as they are.
    pub fn with(&self, key: &str, args: &[(&'static str, Arg<'_>)]) -> String {
        let Some(pattern) = self.bundle.get_message(key).and_then(|message| message.value()) else {
            return key.to_owned();
        };
        let args: FluentArgs<'_> = args.iter().map(|(name, arg)| (*name, arg.value())).collect();
        self.bundle.format_pattern(pattern, Some(&args), &mut Vec::new()).into_owned()
    }

    /// True where the catalogue has the key.
    pub fn has(&self, key: &str) -> bool {
        self.bundle.has_message(key)
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

#[cfg(test)]
mod tests {
    use super::*;

    fn keys(language: Language) -> Vec<&'static str> {
        let lines = language.catalogue().lines();
        let messages = lines.filter(|line| line.starts_with(|c: char| c.is_ascii_lowercase()));
        messages.filter_map(|line| line.split_once('=').map(|(key, _)| key.trim())).collect()
    }

    #[test]
    fn every_key_exists_in_every_language() {
        for language in Language::ALL {
            assert!(FluentResource::try_new(language.catalogue().to_owned()).is_ok(), "{language:?} does not parse");
            assert_eq!(keys(language), keys(Language::En), "{language:?} has other keys or another order");
        }
    }
}

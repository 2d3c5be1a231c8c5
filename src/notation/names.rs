//! Names of stitches in the words of a language. A stitch built of others is named after what it is built of, so that a
//! further cluster or post stitch needs no words of its own.

use super::write::Writer;
use crate::craft::Stitch;
use crate::words::Arg;

/// The messages that name a stitch are under this key.
fn key(stitch: Stitch) -> &'static str {
    stitch.row().build.row().words.unwrap_or(stitch.row().id)
}

impl Writer<'_> {
    /// The abbreviation of a stitch, as the key of a chart shows it.
    pub fn short(&self, stitch: Stitch) -> String {
        let key = format!("{}-short", key(stitch));
        let Some(base) = stitch.built_of() else { return self.say(&key, &[]) };
        let stems = stitch.row().stems.to_string();
        self.say(&key, &[("of", Arg::Text(&self.short(base))), ("stems", Arg::Text(&stems))])
    }

    /// The full name of a stitch.
    pub fn name(&self, stitch: Stitch) -> String {
        let Some(base) = stitch.built_of() else { return self.say(key(stitch), &[]) };
        let (of, many, stems) = (self.name(base), self.many(base), self.number(stitch.row().stems.into()));
        let args = [("of", &*of), ("many", &many), ("stems", &stems), ("base", base.row().id)];
        self.say(key(stitch), &args.map(|(name, text)| (name, Arg::Text(text))))
    }

    /// So many of a stitch in words: `one single crochet`.
    pub fn several(&self, stitch: Stitch, count: u32) -> String {
        let (key, number) = (format!("{}-say", key(stitch)), self.number(count));
        let count_of = [("count", Arg::Count(count)), ("number", Arg::Text(&number))];
        let Some(base) = stitch.built_of() else { return self.say(&key, &count_of) };
        let (of, many, stems) = (self.name(base), self.many(base), self.number(stitch.row().stems.into()));
        let made = self.several(base, count);
        let words = [("of", &*of), ("many", &many), ("stems", &stems), ("made", &made), ("base", base.row().id)];
        let words = words.map(|(name, text)| (name, Arg::Text(text)));
        self.say(&key, &[&count_of[..], &words].concat())
    }

    /// A number as a word where the language has a short one.
    pub(super) fn number(&self, number: u32) -> String {
        self.say("say-number", &[("count", Arg::Count(number))])
    }

    /// What something is made of several of: `single crochets`.
    fn many(&self, base: Stitch) -> String {
        self.say(&format!("{}-many", base.row().id), &[])
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::craft::Terms;
    use crate::words::{Language, Words};
    use std::collections::BTreeSet;

    fn told<T>(language: Language, terms: Terms, tell: impl Fn(&Writer<'_>) -> T) -> T {
        let words = Words::of(language);
        tell(&Writer { words: &words, terms })
    }

    fn stitch(id: &str) -> Stitch {
        Stitch::by_id(id).unwrap_or(Stitch::CH)
    }

    #[test]
    fn every_language_says_every_stitch_differently() {
        for language in Language::ALL {
            for terms in [Terms::Us, Terms::Uk] {
                let tellings: [fn(&Writer<'_>, Stitch) -> String; 4] = [
                    |writer, it| writer.short(it),
                    |writer, it| writer.name(it),
                    |writer, it| writer.several(it, 1),
                    |writer, it| writer.several(it, 4),
                ];
                for tell in tellings {
                    let all: BTreeSet<String> =
                        told(language, terms, |writer| Stitch::all().map(|stitch| tell(writer, stitch)).collect());
                    assert_eq!(all.len(), Stitch::all().count(), "{language:?}");
                    let keys = ["-short", "-say", "-many", "{", "$"];
                    let whole = |text: &String| keys.iter().all(|key| !text.contains(key));
                    assert!(all.iter().all(whole), "{language:?}: {all:?}");
                }
            }
        }
    }

    #[test]
    fn every_language_has_the_words_of_every_stitch() {
        for (language, stitch) in Language::ALL.into_iter().flat_map(|it| Stitch::all().map(move |stitch| (it, stitch)))
        {
            // Several of a stitch are named where another is built of them.
            let forms = ["", "-short", "-say"].into_iter().chain(stitch.is_plain_fabric().then_some("-many"));
            for form in forms {
                let key = format!("{}{form}", key(stitch));
                assert!(Words::of(language).has(&key), "{language:?} has no `{key}`");
            }
        }
    }

    #[test]
    fn the_short_name_in_english_is_that_of_the_stitch_table() {
        for stitch in Stitch::all() {
            assert_eq!(told(Language::EN, Terms::Us, |writer| writer.short(stitch)), stitch.row().us.short);
            assert_eq!(told(Language::EN, Terms::Uk, |writer| writer.short(stitch)), stitch.row().uk.short);
        }
    }

    #[test]
    fn stitches_built_of_others_are_named_after_them() {
        let tagged = |tag| Language::by_tag(tag).unwrap();
        let name = |tag, id| told(tagged(tag), Terms::Us, |writer| writer.name(stitch(id)));
        assert_eq!(name("en", "fphdc"), "front post half double crochet");
        assert_eq!(name("en", "tr-cluster2"), "cluster of two trebles");
        assert_eq!(name("de", "puff4"), "Puffmasche aus vier halben Stäbchen");
        assert_eq!(name("nl", "bptr"), "dubbel reliëfstokje achterlangs");
        let said = |tag, id| told(tagged(tag), Terms::Us, |writer| writer.several(stitch(id), 2));
        assert_eq!(said("en", "bpsc"), "two back post single crochets");
        assert_eq!(said("es", "bobble3"), "dos puntos mota de tres puntos altos");
        assert_eq!(said("fr", "fpdc"), "deux brides en relief avant");
        // By the name that the abbreviations explain.
        assert_eq!(said("de", "fphdc"), "zwei halbe Reliefstäbchen von vorne");
        assert_eq!(said("nl", "bpsc"), "twee reliëfvasten achterlangs");
    }
}

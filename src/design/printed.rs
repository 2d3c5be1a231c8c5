//! Words that are printed as a maker wrote them: one way in for all of them, whatever file they stand in.

use crate::font::Face;
use crate::report::{Diagnostic, Place, Report, clean};

/// What the words are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Printed {
    /// The title of the piece.
    Title,
    /// Who designed it.
    Designer,
    /// What is said about it.
    About,
    /// What a photograph shows.
    Alt,
    /// What the yarn is of.
    Fibre,
    /// The name of a colour.
    Colour,
    /// The name of a palette.
    Palette,
    /// The name of a part.
    Part,
    /// The name of a size.
    Size,
    /// The name of a stitch of the maker's own.
    Stitch,
    /// A note, a material or a step of assembly.
    Note,
    /// A line of cover and foot: dedication, copyright, licence, contact, version.
    Imprint,
}

impl Printed {
    /// All of them.
    pub const ALL: [Self; 12] = [
        Self::Title,
        Self::Designer,
        Self::About,
        Self::Alt,
        Self::Fibre,
        Self::Colour,
        Self::Palette,
        Self::Part,
        Self::Size,
        Self::Stitch,
        Self::Note,
        Self::Imprint,
    ];

    /// Most characters.
    pub const fn most(self) -> usize {
        match self {
            Self::Title => 120,
            Self::Designer => 80,
            Self::About => 2000,
            Self::Alt => 400,
            Self::Fibre => 80,
            Self::Colour | Self::Palette | Self::Part | Self::Stitch => 40,
            Self::Size => 24,
            Self::Note => 600,
            Self::Imprint => 160,
        }
    }

    /// The words as they are printed: on one line, and without what can't be shown. Complains of words that are too long or
    /// none at all, of hidden characters, and of those that the typeface lacks.
    pub fn read(self, text: &str, place: Place, report: &mut Report) -> String {
        let value = clean::line(text);
        let (count, most) = (value.chars().count(), self.most());
        if count == 0 || count > most {
            report.add(self.wrong(count).at(place));
            return value.chars().take(most).collect();
        }
        if let Some(hidden) = text.chars().find(|c| !c.is_whitespace() && !clean::plain(*c)) {
            let message = format!("a hidden character, U+{:04X}, is left out here", u32::from(hidden));
            let help = "write the words anew: such characters come with text that is copied from elsewhere";
            report.add(Diagnostic::warning("hidden-character", message).at(place_in(text, place, hidden)).help(help));
        }
        if let Some(missing) = Face::Regular.missing(&value) {
            let message = format!("the typeface of the pages has no character `{missing}`");
            let help = "write it another way; what is printed would have a gap there";
            report.add(Diagnostic::warning("missing-character", message).at(place_in(text, place, missing)).help(help));
        }
        value
    }

    fn wrong(self, count: usize) -> Diagnostic {
        let most = self.most();
        let named = |of: &str, help: &str| {
            let message = format!("the name of a {of} has 1 to {most} characters, and this one has {count}");
            Diagnostic::error("wrong-name", message).help(help)
        };
        match self {
            Self::Title => {
                let message = format!("a title has 1 to {most} characters, and this one has {count}");
                Diagnostic::error("wrong-title", message).help("write `title: My hat`")
            }
            Self::Part => named("part", "write it short: `side`"),
            Self::Size => named("size", "write it short: `M`, `child-4y`"),
            Self::Stitch => named("stitch", "write it short: `shell`, `knot`"),
            Self::Palette => named("palette", "write it short: `harbour`, `meadow`"),
            Self::Colour => named("colour", "write it short: `sand`, `tide`"),
            Self::Alt => {
                let message = format!("what a photograph shows takes 1 to {most} characters, and these are {count}");
                let help = "say in a sentence what a buyer would look at: `alt: \"A blue hat on a wooden peg\"`";
                Diagnostic::error("wrong-words", message).help(help)
            }
            Self::Designer | Self::About | Self::Fibre | Self::Note | Self::Imprint => {
                let message = format!("here stand 1 to {most} characters, and these are {count}");
                Diagnostic::error("wrong-words", message).help("write it shorter, or take the field away")
            }
        }
    }
}

/// The place of a character of a text; of the whole text where quotes stand around it.
fn place_in(text: &str, place: Place, character: char) -> Place {
    match text.find(character) {
        Some(at) if text.len() == place.length => Place {
            column: place.column + text[..at].chars().count(),
            offset: place.offset + at,
            length: character.len_utf8(),
            ..place
        },
        Some(_) | None => place,
    }
}

/// Words of a design file.
pub(super) fn printed(what: Printed, text: &super::tree::Text, report: &mut Report) -> String {
    what.read(&text.text, text.place, report)
}

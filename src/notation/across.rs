//! Numbers of several sizes side by side, and the spaces that hold what is written together.

/// A space between two words.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gap {
    /// The next word may stand on the next line.
    Open,
    /// The next word stays on the same line.
    Held,
}

impl Gap {
    /// The character that is this space.
    pub const fn space(self) -> &'static str {
        match self {
            Self::Open => " ",
            Self::Held => "\u{a0}",
        }
    }

    /// The space that holds where `held` is true.
    pub const fn held(held: bool) -> Self {
        if held { Self::Held } else { Self::Open }
    }
}

/// The spaces beside numbers, which whoever sets the words in lines chooses.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Gaps {
    /// Between a number and the word it belongs to: `Rnd 5`, `6 times`.
    pub word: Gap,
    /// Before the bracket of several sizes: `72 (80, 88)`.
    pub bracket: Gap,
    /// Between the numbers in that bracket.
    pub comma: Gap,
}

impl Gaps {
    /// A line may break at every space.
    pub const OPEN: Self = Self { word: Gap::Open, bracket: Gap::Open, comma: Gap::Open };
}

/// The same in every size, or what each size has in the trade's bracket form: `72 (80, 88)`; a dash stands for a size
/// that has none.
pub fn across<T: PartialEq>(values: &[Option<T>], show: impl Fn(&T) -> String, gaps: Gaps) -> String {
    let show = |value: Option<&T>| value.map_or("–".to_owned(), &show);
    let mut known = values.iter().flatten();
    let first = known.next();
    if known.all(|value| Some(value) == first) {
        return show(first);
    }
    let (bracket, comma) = (gaps.bracket.space(), format!(",{}", gaps.comma.space()));
    let mut each = values.iter().map(|value| show(value.as_ref()));
    let lead = each.next().unwrap_or_default();
    format!("{lead}{bracket}({})", each.collect::<Vec<_>>().join(&comma))
}

/// A text cut into what is no number and what is one, in turn.
fn cut(text: &str) -> Vec<&str> {
    let (mut pieces, mut start, mut number) = (Vec::new(), 0, false);
    for (at, c) in text.char_indices() {
        if c.is_ascii_digit() != number {
            pieces.push(&text[start..at]);
            (start, number) = (at, !number);
        }
    }
    pieces.push(&text[start..]);
    pieces
}

/// A text with a sign in place of every number, to compare it with another.
pub(super) fn without_numbers(text: &str) -> String {
    cut(text).into_iter().enumerate().map(|(at, piece)| if at % 2 == 0 { piece } else { "#" }).collect()
}

/// Texts that are alike but for their numbers as one, with the numbers of all: `ch 60 (64, 68)`.
pub(super) fn side_by_side(texts: &[&str]) -> String {
    let cuts: Vec<Vec<&str>> = texts.iter().map(|text| cut(text)).collect();
    let pieces = cuts.first().map_or(0, Vec::len);
    let piece = |at: usize| {
        let own: Vec<Option<&str>> = cuts.iter().map(|cut| cut.get(at).copied()).collect();
        across(&own, |own| (*own).to_owned(), Gaps::OPEN)
    };
    (0..pieces).map(piece).collect()
}

/// A number of one size, or of several in their order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Numbers(Vec<u32>);

impl Numbers {
    /// The number of one size.
    pub fn one(number: u32) -> Self {
        Self(vec![number])
    }

    /// The numbers of several sizes.
    pub fn several(numbers: impl IntoIterator<Item = u32>) -> Self {
        Self(numbers.into_iter().collect())
    }

    /// The number of the first size, 0 where there is no size.
    pub fn first(&self) -> u32 {
        self.0.first().copied().unwrap_or_default()
    }

    /// True where the sizes don't all have the same.
    pub fn differ(&self) -> bool {
        self.0.iter().any(|number| *number != self.first())
    }

    /// True where every size has this one.
    pub fn all(&self, number: u32) -> bool {
        self.0.iter().all(|own| *own == number)
    }

    /// So many times each.
    #[must_use]
    pub fn times(&self, factor: u32) -> Self {
        Self(self.0.iter().map(|number| number.saturating_mul(factor)).collect())
    }

    /// The numbers of these sizes and of those.
    #[must_use]
    pub fn beside(&self, others: &Self) -> Self {
        Self(self.0.iter().chain(&others.0).copied().collect())
    }

    /// In words: `72`, `72 (80, 88)`.
    pub fn told(&self, gaps: Gaps) -> String {
        self.spans(self, gaps)
    }

    /// In words, as the first numbers of ranges that end with those: `8–14 (8–14, 9–16)`.
    pub fn spans(&self, last: &Self, gaps: Gaps) -> String {
        let span = |(first, last): (&u32, &u32)| {
            Some(if first == last { first.to_string() } else { format!("{first}–{last}") })
        };
        let spans: Vec<Option<String>> = self.0.iter().zip(&last.0).map(span).collect();
        across(&spans, String::clone, gaps)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_stand_side_by_side() {
        let show = |values: &[Option<u32>]| across(values, u32::to_string, Gaps::OPEN);
        assert_eq!(show(&[Some(72), Some(80), Some(88)]), "72 (80, 88)");
        assert_eq!(show(&[Some(72), None, Some(72)]), "72");
        assert_eq!(show(&[None, Some(80), Some(88)]), "– (80, 88)");
        assert_eq!(show(&[None, Some(80)]), "80");
        assert_eq!(show(&[None, None]), "–");
    }

    #[test]
    fn texts_of_several_sizes_stand_side_by_side() {
        let texts = ["ch 60, sc in next 5 sts (60)", "ch 64, sc in next 5 sts (64)", "ch 68, sc in next 5 sts (68)"];
        assert_eq!(side_by_side(&texts), "ch 60 (64, 68), sc in next 5 sts (60 (64, 68))");
        assert_eq!(without_numbers(texts[0]), without_numbers(texts[2]));
        assert_eq!(side_by_side(&texts[..1]), texts[0]);
    }

    #[test]
    fn ranges_of_several_sizes_stand_side_by_side() {
        let (first, last) = (Numbers::several([8, 8, 7]), Numbers::several([9, 8, 9]));
        assert_eq!(first.spans(&last, Gaps::OPEN), "8–9 (8, 7–9)");
        assert_eq!(first.told(Gaps::OPEN), "8 (8, 7)");
        assert!(first.differ() && !Numbers::several([8, 8]).differ());
    }

    #[test]
    fn spaces_are_held_where_asked() {
        let held = Gaps { word: Gap::Open, bracket: Gap::Held, comma: Gap::Open };
        assert_eq!(Numbers::several([5, 6, 6]).told(held), "5\u{a0}(6, 6)");
        let held = Gaps { word: Gap::Open, bracket: Gap::Open, comma: Gap::Held };
        assert_eq!(Numbers::several([5, 6, 6]).told(held), "5 (6,\u{a0}6)");
    }
}

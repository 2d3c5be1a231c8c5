//! The multiple of stitches that a part is worked over: `4`, or `4 + 2`.

use super::Said;
use super::fields::shortened;
use super::shapes::{Form, Reader};
use super::tree::Text;
use crate::craft::Multiple;
use crate::report::{Diagnostic, Report};

/// Most stitches of one repeat, and most beside the repeats.
pub(super) const MOST: u32 = 500;
/// How makers state one that is more than a number.
pub(super) const WORDINGS: &[&str] = &["# + #", "#+#", "multiple of #", "multiple of # plus #"];

impl Reader<'_, '_> {
    /// The multiple that a part of this form asks for.
    pub(super) fn multiple(&mut self, form: &Form) -> Option<Said<Multiple>> {
        let text = self.raw.multiple.as_ref()?;
        if form.closes {
            let message =
                format!("the part {} closes, and so ends with too few stitches for a multiple", self.raw.name.text);
            let help = "take `multiple` away, or give it to the part before";
            self.complain("unused-field", text.place, message, help);
            return None;
        }
        multiple(text, self.report)
    }
}

/// A multiple as makers state it; `multiple of 4 plus 2` reads as well.
fn multiple(text: &Text, report: &mut Report) -> Option<Said<Multiple>> {
    let plain = text.text.trim().trim_start_matches("multiple of ").replace("plus", "+");
    let (of, plus) = plain.split_once('+').unwrap_or((&plain, "0"));
    let number = |text: &str| text.trim().parse::<u32>().ok().filter(|number| *number <= MOST);
    let found = number(of).filter(|of| *of > 1).zip(number(plus));
    if found.is_none() {
        let message = format!("`multiple` can't be `{}`", shortened(&text.text));
        let help = format!(
            "write `multiple: 4`, or `multiple: 4 + 2` with the stitches beside the repeats; repeats have 2 to {MOST} stitches"
        );
        report.add(Diagnostic::error("unknown-value", message).at(text.place).help(help));
    }
    found.map(|(of, plus)| Said { value: Multiple::new(of, plus), place: Some(text.place) })
}

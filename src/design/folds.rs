//! Folded-up brims: the length at the end of a hat that is turned up over what lies above it.

use super::PerSize;
use super::resolve::tidy_cm;
use super::shapes::{Reader, Shape, place_of};
use crate::units::{EPSILON, Mm};

impl Reader<'_, '_> {
    /// The length that is folded up, which is at most that of its part.
    pub(super) fn folded(&mut self, shape: &Shape) -> Option<PerSize<Mm>> {
        let per = self.raw.folded.as_ref()?;
        let (place, name) = (place_of(per), self.raw.name.text.clone());
        if !self.within.reading.kind.row().worn {
            let help = "a rim that folds down is worked with `loop: front` as the last part of a basket";
            self.complain("unused-field", place, "`folded` belongs to the brim of a hat", help);
            return None;
        }
        if !shape.form().even {
            let message = format!("the part {name} is shaped, and only a straight one folds up over the side");
            let help = "give `folded` to a last part with `shape: straight`";
            self.complain("unused-field", place, message, help);
            return None;
        }
        let folded = self.lengths_of("folded", per, Mm::new(3.0), Mm::from_cm(100.0))?;
        let lengths = shape.measures().length.clone().unwrap_or_default();
        let sizes = self.within.sizes.iter().zip(folded.iter().zip(&lengths));
        let longer = sizes.into_iter().find(|(_, (folded, length))| **folded > **length + Mm::new(EPSILON));
        if let Some((size, (folded, length))) = longer {
            let message = format!(
                "the fold of {} cm is longer than the part {name}, which is {} cm in size {}",
                tidy_cm(*folded),
                tidy_cm(*length),
                size.name
            );
            let help = "the depth of the part is all of its fabric, the fold included: make it deeper, or fold less";
            self.complain("fold-too-long", place, message, help);
            return None;
        }
        Some(folded)
    }
}

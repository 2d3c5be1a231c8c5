//! The photograph that a design names, from the bytes of its file.

use std::sync::Arc;

use super::Pattern;
use crate::limits;
use crate::photo::Photo;
use crate::report::{Diagnostic, Report};

impl Pattern {
    /// The same with the photograph that its design names, for the cover: `bytes` are those of its file, which the library
    /// leaves to its caller to read. A warning where it is too small to look well. Everything that was said of the
    /// pattern, and what is wrong, where it is no photograph that can be printed; the same pattern where its design
    /// names none.
    pub fn with_photo(mut self, bytes: &[u8]) -> Result<Self, Report> {
        let Some(named) = &self.plan.design.photo else { return Ok(self) };
        let place = named.file.place;
        match Photo::read(bytes) {
            Ok(photo) => {
                let (width, height) = photo.size();
                if width.max(height) < limits::PHOTO_FINE {
                    let message = format!("the photograph has {width} × {height} pixels and looks coarse in print");
                    let help = format!("take one of {} pixels or more on its long side", limits::PHOTO_FINE);
                    self.report.add(Diagnostic::warning("photo-coarse", message).at(place).help(help));
                }
                self.photo = Some(Arc::new(photo));
                Ok(self)
            }
            Err(complaint) => {
                self.report.add(complaint.at(place));
                Err(self.report)
            }
        }
    }
}

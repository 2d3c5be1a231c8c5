//! How a camera was held, and its picture upright.
//!
//! Orientation is tag 274 of the first directory (Exif 2.32, CIPA DC-008, 4.6.4 A; the directory is that of TIFF 6.0,
//! section 2): which sides of the scene the first row and the first column are.

use super::Photo;

/// Tag of the orientation.
const ORIENTATION: u16 = 274;
/// Type of a number of 16 bits.
const SHORT: u16 = 3;
/// Most entries of a directory that are looked at.
const ENTRIES: usize = 512;

/// Where the first row and the first column of a picture belong.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) enum Turn {
    /// Top, left.
    #[default]
    Upright,
    /// Top, right.
    Mirrored,
    /// Bottom, right.
    Half,
    /// Bottom, left.
    HalfMirrored,
    /// Left, top.
    Across,
    /// Right, top: to be turned a quarter to the right.
    Right,
    /// Right, bottom.
    AcrossOther,
    /// Left, bottom: to be turned a quarter to the left.
    Left,
}

impl Turn {
    /// What the Exif data of a file say; upright where they say nothing that can be understood.
    pub(super) fn of_exif(exif: &[u8]) -> Self {
        let tiff = exif.strip_prefix(b"Exif\0\0").unwrap_or(exif);
        match orientation(tiff) {
            Some(2) => Self::Mirrored,
            Some(3) => Self::Half,
            Some(4) => Self::HalfMirrored,
            Some(5) => Self::Across,
            Some(6) => Self::Right,
            Some(7) => Self::AcrossOther,
            Some(8) => Self::Left,
            _ => Self::Upright,
        }
    }

    /// True where rows become columns.
    const fn swaps(self) -> bool {
        matches!(self, Self::Across | Self::Right | Self::AcrossOther | Self::Left)
    }

    /// The place in the file's picture of so many pixels of what is shown at `x` and `y`.
    const fn source(self, (width, height): (usize, usize), x: usize, y: usize) -> (usize, usize) {
        match self {
            Self::Upright => (x, y),
            Self::Mirrored => (width - 1 - x, y),
            Self::Half => (width - 1 - x, height - 1 - y),
            Self::HalfMirrored => (x, height - 1 - y),
            Self::Across => (y, x),
            Self::Right => (y, height - 1 - x),
            Self::AcrossOther => (width - 1 - y, height - 1 - x),
            Self::Left => (width - 1 - y, x),
        }
    }
}

/// The orientation in a TIFF header and its first directory.
fn orientation(tiff: &[u8]) -> Option<u16> {
    let little = match tiff.get(..2)? {
        b"II" => true,
        b"MM" => false,
        _ => return None,
    };
    let short = |at: usize| -> Option<u16> {
        let two = tiff.get(at..at.checked_add(2)?)?.try_into().ok()?;
        Some(if little { u16::from_le_bytes(two) } else { u16::from_be_bytes(two) })
    };
    let long = |at: usize| -> Option<usize> {
        let four = tiff.get(at..at.checked_add(4)?)?.try_into().ok()?;
        Some(if little { u32::from_le_bytes(four) } else { u32::from_be_bytes(four) } as usize)
    };
    if short(2)? != 42 {
        return None;
    }
    let first = long(4)?;
    let count = usize::from(short(first)?).min(ENTRIES);
    let entry = |index: usize| first.checked_add(2 + 12 * index);
    let found = (0..count).filter_map(entry).find(|at| short(*at) == Some(ORIENTATION))?;
    (short(found + 2)? == SHORT && long(found + 4)? == 1).then(|| short(found + 8))?
}

/// The picture upright.
pub(super) fn upright(photo: Photo, turn: Turn) -> Photo {
    if turn == Turn::Upright {
        return photo;
    }
    let (width, height) = (photo.width as usize, photo.height as usize);
    let (across, down) = if turn.swaps() { (height, width) } else { (width, height) };
    let pixel = |at: usize| {
        let (x, y) = turn.source((width, height), at % across, at / across);
        photo.rgb.get(y * width + x).copied().unwrap_or_default()
    };
    Photo { rgb: (0..across * down).map(pixel).collect(), width: across as u32, height: down as u32 }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A directory of one entry, in either order of bytes.
    fn exif(little: bool, tag: u16, kind: u16, count: u32, value: u16) -> Vec<u8> {
        let short = |value: u16| if little { value.to_le_bytes() } else { value.to_be_bytes() };
        let long = |value: u32| if little { value.to_le_bytes() } else { value.to_be_bytes() };
        let mut bytes = if little { b"II".to_vec() } else { b"MM".to_vec() };
        bytes.extend(short(42));
        bytes.extend(long(8));
        bytes.extend(short(1));
        bytes.extend([short(tag), short(kind)].concat());
        bytes.extend(long(count));
        bytes.extend(short(value));
        bytes.extend([0; 6]);
        bytes
    }

    /// A picture of three by two whose pixels are numbered; what stands where after the turn is worked out by hand from
    /// the figure of the standard: which side of the scene the first row and the first column of the file are.
    #[test]
    fn all_eight_ways_to_hold_a_camera() {
        let numbers = |photo: &Photo| photo.rgb.iter().map(|pixel| pixel[0]).collect::<Vec<u8>>();
        let photo = Photo { width: 3, height: 2, rgb: (1..=6).map(|number| [number; 3]).collect() };
        for (value, size, expected) in [
            (1, (3, 2), [1, 2, 3, 4, 5, 6]),
            (2, (3, 2), [3, 2, 1, 6, 5, 4]),
            (3, (3, 2), [6, 5, 4, 3, 2, 1]),
            (4, (3, 2), [4, 5, 6, 1, 2, 3]),
            (5, (2, 3), [1, 4, 2, 5, 3, 6]),
            (6, (2, 3), [4, 1, 5, 2, 6, 3]),
            (7, (2, 3), [6, 3, 5, 2, 4, 1]),
            (8, (2, 3), [3, 6, 2, 5, 1, 4]),
        ] {
            for little in [true, false] {
                let turned = upright(photo.clone(), Turn::of_exif(&exif(little, ORIENTATION, SHORT, 1, value)));
                assert_eq!((turned.size(), numbers(&turned)), (size, expected.to_vec()), "{value}");
            }
        }
    }

    #[test]
    fn what_cannot_be_understood_is_upright() {
        let sound = exif(true, ORIENTATION, SHORT, 1, 6);
        assert_eq!(Turn::of_exif(&sound), Turn::Right);
        assert_eq!(Turn::of_exif(&[&b"Exif\0\0"[..], &sound].concat()), Turn::Right);
        for cut in 0..18 {
            assert_eq!(Turn::of_exif(&sound[..cut]), Turn::Upright, "{cut} bytes");
        }
        let far = [&sound[..4], &u32::MAX.to_le_bytes(), &sound[8..]].concat();
        let absurd = [
            far,
            exif(true, ORIENTATION, SHORT, 1, 9),
            exif(true, ORIENTATION, SHORT, 1, 0),
            exif(true, ORIENTATION, SHORT, u32::MAX, 6),
            exif(true, ORIENTATION, 4, 1, 6),
            exif(true, ORIENTATION + 1, SHORT, 1, 6),
            b"no Exif data at all".to_vec(),
        ];
        for exif in absurd {
            assert_eq!(Turn::of_exif(&exif), Turn::Upright, "{exif:?}");
        }
    }
}

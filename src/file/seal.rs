//! Checksums, and the seal of a single picture: a remark inside the file that says who made it, with the checksum of all
//! the rest. A picture that someone has changed since has a seal that doesn't hold.
//!
//! In SVG it is a comment at the end (XML 1.0, 2.5), in PDF a comment before the last `startxref` (ISO 32000-2, 7.2.4), in
//! PNG a text chunk with the registered keyword `Software` before the last chunk (ISO/IEC 15948, 11.3.3).

use sha2::{Digest, Sha256};

/// Figures of the checksum in a seal: half of SHA-256, against chance and not against forgers.
const FIGURES: usize = 32;

/// The last chunk of every PNG, whole.
const IEND: &[u8] = b"\0\0\0\0IEND\xaeB`\x82";

/// SHA-256 of bytes in small hexadecimal figures.
pub fn checksum(bytes: &[u8]) -> String {
    digest(bytes).iter().map(|byte| format!("{byte:02x}")).collect()
}

/// SHA-256 of bytes (FIPS 180-4).
pub(super) fn digest(bytes: &[u8]) -> [u8; 32] {
    Sha256::digest(bytes).into()
}

/// Where a kind of file carries its seal, and how the seal is written.
struct Kind {
    /// How such a file begins.
    head: &'static [u8],
    /// Where its tail begins, before which the seal stands.
    tail: fn(&[u8]) -> Option<usize>,
    seal: fn(&str) -> Vec<u8>,
}

const KINDS: [Kind; 3] = [
    Kind { head: b"<?xml", tail: |bytes| Some(bytes.len()), seal: |sum| format!("<!-- {} -->\n", said(sum)).into() },
    Kind { head: b"%PDF-", tail: |bytes| last(bytes, b"startxref"), seal: |sum| format!("% {}\n", said(sum)).into() },
    Kind {
        head: b"\x89PNG\r\n\x1a\n",
        tail: |bytes| bytes.ends_with(IEND).then(|| bytes.len() - IEND.len()),
        seal: chunk,
    },
];

fn said(sum: &str) -> String {
    format!("Made by Roundelay {sum}")
}

fn last(bytes: &[u8], word: &[u8]) -> Option<usize> {
    bytes.windows(word.len()).rposition(|window| window == word)
}

/// A text chunk: length, kind, keyword and text, and the check over the last three.
fn chunk(sum: &str) -> Vec<u8> {
    let mut body = b"tEXtSoftware\0".to_vec();
    body.extend(said(sum).bytes());
    let length = (body.len() - 4) as u32;
    [&length.to_be_bytes()[..], &body, &crc32fast::hash(&body).to_be_bytes()].concat()
}

/// The picture with its seal; other files as they are.
pub fn sealed(bytes: Vec<u8>) -> Vec<u8> {
    let kind = KINDS.iter().find(|kind| bytes.starts_with(kind.head));
    let Some((kind, at)) = kind.and_then(|kind| Some((kind, (kind.tail)(&bytes)?))) else { return bytes };
    let mut sum = checksum(&bytes);
    sum.truncate(FIGURES);
    let (before, after) = bytes.split_at(at);
    [before, &(kind.seal)(&sum), after].concat()
}

/// True for a picture that is as it was when it got its seal.
pub fn is_sealed(bytes: &[u8]) -> bool {
    let Some(kind) = KINDS.iter().find(|kind| bytes.starts_with(kind.head)) else { return false };
    let length = (kind.seal)(&"0".repeat(FIGURES)).len();
    let bare = (kind.tail)(bytes).and_then(|tail| {
        let start = tail.checked_sub(length)?;
        Some([&bytes[..start], &bytes[tail..]].concat())
    });
    bare.is_some_and(|bare| sealed(bare) == bytes)
}

#[cfg(test)]
mod tests {
    use std::collections::BTreeMap;

    use super::*;
    use crate::drawing::Drawing;
    use crate::file::png::{PngOptions, render};
    use crate::file::{pdf, svg};
    use crate::report::Report;
    use crate::words::Language;

    fn pictures() -> Vec<Vec<u8>> {
        let drawing = Drawing {
            bounds: kurbo::Rect::new(0.0, 0.0, 20.0, 10.0),
            title: "Pebble".to_owned(),
            description: "An empty sheet".to_owned(),
            language: Language::EN,
            symbols: BTreeMap::new(),
            items: Vec::new(),
        };
        let vectors = svg::write(&drawing);
        let pixels = render(&vectors, &PngOptions { dpi: 50.0, grey: true }, &mut Report::new()).unwrap();
        vec![vectors.into_bytes(), pixels, pdf::write_drawing(&drawing).unwrap()]
    }

    #[test]
    fn a_seal_holds_until_a_byte_is_changed() {
        for picture in pictures() {
            assert!(!is_sealed(&picture));
            let sealed = sealed(picture.clone());
            assert!(sealed.len() > picture.len() && is_sealed(&sealed));
            for at in [sealed.len() / 3, sealed.len() / 2, sealed.len() - 1] {
                let mut changed = sealed.clone();
                changed[at] ^= 1;
                assert!(!is_sealed(&changed), "at {at} of {}", sealed.len());
            }
            assert!(!is_sealed(&[&sealed[..], b"\n"].concat()));
        }
    }

    #[test]
    fn a_sealed_png_is_read_by_its_reference_library() {
        let pixels = sealed(pictures().swap_remove(1));
        let mut reader = png::Decoder::new(std::io::Cursor::new(&pixels)).read_info().unwrap();
        let mut frame = vec![0; reader.output_buffer_size().unwrap()];
        reader.next_frame(&mut frame).unwrap();
        reader.finish().unwrap();
        let text = &reader.info().uncompressed_latin1_text[0];
        assert_eq!(text.keyword, "Software");
        assert!(text.text.starts_with("Made by Roundelay "));
    }

    #[test]
    fn other_files_have_no_seal() {
        for other in [&b""[..], b"Rnd 1: 6 sc in ring", b"\x89PNG\r\n\x1a\n", b"%PDF-1.7", b"<?xml"] {
            assert!(!is_sealed(other));
        }
        assert_eq!(sealed(b"plain".to_vec()), b"plain");
    }

    /// The checksum of "abc" in FIPS 180-4, by its example.
    #[test]
    fn the_checksum_is_that_of_the_standard() {
        assert_eq!(checksum(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }
}

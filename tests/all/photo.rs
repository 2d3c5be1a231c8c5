//! The designer's photograph: upright however the camera was held, without a word of what the camera wrote, on the cover of
//! every product, and told where it is no photograph that can be printed.

#![allow(clippy::unwrap_used)]

use std::fs;
use std::path::Path;
use std::process::{Command, Output, Stdio};

use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use jpeg_encoder::{ColorType, Encoder};
use roundelay::drawing::photograph;
use roundelay::file::png::{self as pixels, PngOptions};
use roundelay::file::{pdf, svg};
use roundelay::limits;
use roundelay::page::{Options, Paper, Print};
use roundelay::pattern::{Beside, Pattern};
use roundelay::photo::Photo;
use roundelay::publish::{PRODUCTS, publish};
use roundelay::report::{Report, Severity};
use roundelay::units::Mm;
use roundelay::words::Language;

use crate::checkers;

const ALT: &str = "A grey mat with a bright corner";

/// A mat whose cover has a photograph.
const MAT: &str = "title: Test mat
kind: mat
photo: {file: mat.jpg, alt: \"A grey mat with a bright corner\"}
swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}
sizes: {S: {across: 5}}
work: spiral
tolerance: 5 %
parts:
  - mat: {start: ring of 6, shape: flat}
";

/// What a camera writes and nobody is to read.
const SECRETS: [&str; 5] = ["Secretmaker", "Secretplace", "Secretpacket", "Secretremark", "Secretcaption"];

/// Red, green, blue and yellow, far apart.
const COLOURS: [[u8; 3]; 4] = [[230, 20, 20], [20, 200, 20], [20, 20, 230], [240, 230, 30]];

/// A picture in four quarters of these colours: above left and right, below left and right.
fn quarters(width: u16, height: u16, corners: [usize; 4]) -> Vec<u8> {
    let pixel = |at: usize| {
        let (x, y) = (at % usize::from(width), at / usize::from(width));
        COLOURS[corners[usize::from(2 * x >= usize::from(width)) + 2 * usize::from(2 * y >= usize::from(height))]]
    };
    (0..usize::from(width) * usize::from(height)).flat_map(pixel).collect()
}

/// Exif data with an orientation, a maker and a place, laid out by TIFF 6.0 with the low byte first.
fn exif(orientation: u16) -> Vec<u8> {
    let entry = |tag: u16, kind: u16, count: u32, value: u32| {
        [&tag.to_le_bytes()[..], &kind.to_le_bytes(), &count.to_le_bytes(), &value.to_le_bytes()].concat()
    };
    // The directory has three entries and ends at 8 + 2 + 3 · 12 + 4.
    let (maker, place) = (50, 62);
    let mut bytes = b"II\x2a\0\x08\0\0\0\x03\0".to_vec();
    bytes.extend(entry(271, 2, 12, maker));
    bytes.extend(entry(274, 3, 1, orientation.into()));
    bytes.extend(entry(0x8298, 2, 12, place));
    bytes.extend([0; 4]);
    bytes.extend(b"Secretmaker\0Secretplace\0");
    bytes
}

/// A JPEG with everything that a camera writes: Exif data, an XMP packet, a remark, a caption for the press.
fn jpeg(width: u16, height: u16, corners: [usize; 4], orientation: u16) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = Encoder::new(&mut bytes, 95);
    encoder.add_app_segment(1, [b"Exif\0\0".to_vec(), exif(orientation)].concat()).unwrap();
    encoder.add_app_segment(1, b"http://ns.adobe.com/xap/1.0/\0<x>Secretpacket</x>".to_vec()).unwrap();
    encoder
        .add_app_segment(13, b"Photoshop 3.0\08BIM\x04\x04\0\0\0\0\0\x12\x1c\x02\x78\0\x0dSecretcaption".to_vec())
        .unwrap();
    encoder.encode(&quarters(width, height, corners), width, height, ColorType::Rgb).unwrap();
    // A remark behind the start of the image (ISO/IEC 10918-1, B.2.4.5).
    bytes.splice(2..2, [&b"\xff\xfe\0\x0e"[..], b"Secretremark"].concat());
    bytes
}

/// A PNG with the same.
fn png(width: u16, height: u16, corners: [usize; 4], orientation: u16) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut info = png::Info::with_size(width.into(), height.into());
    info.exif_metadata = Some(exif(orientation).into());
    (info.color_type, info.bit_depth) = (png::ColorType::Rgb, png::BitDepth::Eight);
    let mut encoder = png::Encoder::with_info(&mut bytes, info).unwrap();
    encoder.add_text_chunk("Comment".to_owned(), "Secretremark".to_owned()).unwrap();
    encoder.add_itxt_chunk("XML:com.adobe.xmp".to_owned(), "<x>Secretpacket</x>".to_owned()).unwrap();
    encoder.write_header().unwrap().write_image_data(&quarters(width, height, corners)).unwrap();
    bytes
}

/// A small grey photograph, for tests that only need one.
pub(crate) fn grey_photo() -> Vec<u8> {
    png(4, 3, [0, 0, 0, 0], 1)
}

/// A photograph of the usual size that is upright as it is.
fn usual() -> Vec<u8> {
    jpeg(900, 600, [0, 1, 2, 3], 1)
}

/// The colours of the four quarters, as the nearest of the four.
fn seen(photo: &Photo) -> [usize; 4] {
    let (width, height) = (photo.size().0 as usize, photo.size().1 as usize);
    let nearest = |x: usize, y: usize| {
        let pixel = photo.pixels()[y * width + x];
        let far = |colour: &[u8; 3]| colour.iter().zip(pixel).map(|(a, b)| a.abs_diff(b) as u32).sum::<u32>();
        (0..4).min_by_key(|index| far(&COLOURS[*index])).unwrap()
    };
    let (left, right, top, foot) = (width / 4, width * 3 / 4, height / 4, height * 3 / 4);
    [nearest(left, top), nearest(right, top), nearest(left, foot), nearest(right, foot)]
}

fn with_photo(bytes: &[u8]) -> Result<Pattern, Report> {
    Pattern::read(MAT.as_bytes()).unwrap().with_photo(bytes)
}

/// The code of the one complaint about a photograph, which stands at its file in the design.
fn refused(bytes: &[u8]) -> &'static str {
    let report = with_photo(bytes).expect_err("no photograph");
    let errors: Vec<_> = report.diagnostics.iter().filter(|one| one.severity == Severity::Error).collect();
    let [only] = errors[..] else { panic!("{report:#?}") };
    assert_eq!(only.place.map(|place| (place.line, place.column)), Some((3, 15)), "{only:?}");
    assert!(only.help.is_some(), "{only:?}");
    only.code
}

/// Exif 2.32 (CIPA DC-008), 4.6.4 A, tag 274: the value says which sides of the scene the first row and the first column
/// of the file are. What stands in the corners of the file then follows: for 6, row right and column top, its first
/// corner is the scene's right one above.
#[test]
fn a_photograph_is_upright_however_the_camera_was_held() {
    for (orientation, corners) in [
        (1, [0, 1, 2, 3]),
        (2, [1, 0, 3, 2]),
        (3, [3, 2, 1, 0]),
        (4, [2, 3, 0, 1]),
        (5, [0, 2, 1, 3]),
        (6, [1, 3, 0, 2]),
        (7, [3, 1, 2, 0]),
        (8, [2, 0, 3, 1]),
    ] {
        let (width, height) = if orientation < 5 { (96, 64) } else { (64, 96) };
        for file in [jpeg(width, height, corners, orientation), png(width, height, corners, orientation)] {
            let photo = Photo::read(&file).unwrap();
            assert_eq!((photo.size(), seen(&photo)), ((96, 64), [0, 1, 2, 3]), "orientation {orientation}");
        }
    }
}

/// Segments of a JPEG by their markers up to the image data (ISO/IEC 10918-1, B.1.1.3).
fn segments(jpeg: &[u8]) -> Vec<u8> {
    let (mut at, mut found) = (2, Vec::new());
    while jpeg[at + 1] != 0xda {
        found.push(jpeg[at + 1]);
        at += 2 + usize::from(u16::from_be_bytes([jpeg[at + 2], jpeg[at + 3]]));
    }
    found
}

fn holds(bytes: &[u8], word: &str) -> bool {
    bytes.windows(word.len()).any(|window| window == word.as_bytes())
}

#[test]
fn nothing_that_a_camera_writes_comes_out() {
    for (file, remarks) in [(usual(), 5), (png(900, 600, [0, 1, 2, 3], 1), 4)] {
        let there = SECRETS.iter().filter(|secret| holds(&file, secret)).count();
        assert_eq!(there, remarks, "the file that goes in holds them");
        let pattern = with_photo(&file).unwrap();
        // Only what decodes it: JFIF, quantisation, frame, Huffman tables.
        let inside = segments(&pattern.photo.as_ref().unwrap().jpeg().unwrap());
        assert!(inside.iter().all(|marker| matches!(marker, 0xe0 | 0xdb | 0xc0 | 0xc4)), "{inside:02x?}");
        let (options, mut report) = (Options::new(Paper::a4()), Report::new());
        let outputs = publish(&pattern, "mat", &PRODUCTS, &options, &mut report).unwrap();
        let page = outputs.iter().find(|output| output.name == "mat.html").unwrap();
        let page = String::from_utf8(page.bytes.clone()).unwrap();
        let coded = page.split("data:image/jpeg;base64,").nth(1).and_then(|rest| rest.split('"').next()).unwrap();
        let shown = BASE64.decode(coded).unwrap();
        assert_eq!(segments(&shown), inside);
        for secret in SECRETS {
            assert!(!holds(&shown, secret), "{secret} in the web page's picture");
            for output in &outputs {
                assert!(!holds(&output.bytes, secret), "{secret} in {}", output.name);
            }
        }
    }
}

#[test]
fn the_cover_of_every_product_shows_it_and_the_drawing_moves_inside() {
    let (options, mut report) = (Options::new(Paper::a4()), Report::new());
    let made = |pattern: &Pattern, options: &Options, report: &mut Report| {
        let outputs = publish(pattern, "mat", &PRODUCTS, options, report).unwrap();
        let text = |name: &str| {
            let output = outputs.iter().find(|output| output.name == name).unwrap();
            String::from_utf8_lossy(&output.bytes).into_owned()
        };
        (
            text("mat.html"),
            text("mat.txt"),
            outputs.into_iter().find(|output| output.name == "mat-booklet.pdf").unwrap(),
        )
    };
    let pattern = with_photo(&usual()).unwrap();
    assert!(pattern.report.diagnostics.is_empty(), "{:#?}", pattern.report);
    let (page, text, booklet) = made(&pattern, &options, &mut report);
    assert!(page.contains(&format!("alt=\"{ALT}\"")) && page.contains("img-src data:;"), "{}", &page[..2000]);
    assert!(text.contains(&format!("[Picture: {ALT}]")), "{text}");
    assert!(page.contains("Drawn from the pattern.") && text.contains("Drawn from the pattern."));
    assert!(holds(&booklet.bytes, "/DCTDecode"));
    if let Some(qpdf) = checkers::tool("qpdf") {
        let objects = checkers::said_of(&qpdf, &["--json"], &booklet.bytes);
        assert!(objects.contains(&format!("\"/Alt\": \"u:{ALT}\"")), "no alternative text");
    }
    checkers::check(&[("photograph".to_owned(), booklet.bytes)]);
    // Where no photograph is given, and where ink is saved, nothing speaks of one.
    let saving = Options { print: Print::InkSaving, ..options.clone() };
    for (pattern, options) in [(Pattern::read(MAT.as_bytes()).unwrap(), &options), (pattern, &saving)] {
        let (page, text, booklet) = made(&pattern, options, &mut report);
        assert!(!page.contains(ALT) && !page.contains("img-src") && !page.contains("Drawn from the pattern."));
        assert!(!text.contains(ALT) && !holds(&booklet.bytes, "/DCTDecode"));
    }
}

#[test]
fn the_drawing_inside_is_told_in_every_language() {
    let told = ["Drawn from the pattern.", "Nach der Anleitung gezeichnet.", "Dessiné d’après le modèle."];
    let told = told.into_iter().chain(["Dibujada a partir del patrón.", "Getekend naar het patroon."]);
    for (tag, told) in ["en", "de", "fr", "es", "nl"].into_iter().zip(told) {
        let design = MAT.replace("kind: mat", &format!("kind: mat\nlanguage: {tag}"));
        let pattern = Pattern::read(design.as_bytes()).unwrap().with_photo(&usual()).unwrap();
        let products = PRODUCTS.iter().filter(|product| product.endings == [".txt"]);
        let outputs = publish(&pattern, "mat", products, &Options::new(Paper::a4()), &mut Report::new()).unwrap();
        assert!(holds(&outputs[0].bytes, told), "{tag}");
    }
}

/// The picture as SVG, as PNG and as a page: its words, its corners.
#[test]
fn every_writer_draws_it() {
    let photo = Photo::read(&usual()).unwrap();
    let drawing = photograph(&photo, ALT, Language::EN, (Mm::new(120.0), Mm::new(200.0)));
    assert_eq!((drawing.bounds.width(), drawing.bounds.height()), (120.0, 80.0));
    let text = svg::write(&drawing);
    assert!(
        text.contains(&format!("<title id=\"title\">\n{ALT}\n</title>")) || text.contains(&format!(">{ALT}</title>")),
        "{}",
        &text[..900]
    );
    assert!(text.contains("href=\"data:image/jpeg;base64,"));
    // Smaller, as many pixels, and larger than it has.
    for dpi in [30.0, 190.0, 300.0] {
        let options = PngOptions { dpi, ..PngOptions::default() };
        let drawn = pixels::draw(&drawing, &options, &mut Report::new()).unwrap();
        let back = Photo::read(&drawn).unwrap();
        let expected = ((120.0 / 25.4 * dpi).ceil() as u32, (80.0 / 25.4 * dpi).ceil() as u32);
        assert_eq!((back.size(), seen(&back)), (expected, [0, 1, 2, 3]), "{dpi} dpi");
    }
    checkers::check(&[("page".to_owned(), pdf::write_drawing(&drawing).unwrap())]);
}

#[test]
fn no_more_pixels_are_kept_than_print_needs() {
    let photo = Photo::read(&jpeg(3000, 100, [0, 1, 2, 3], 6)).unwrap();
    assert_eq!(photo.size(), (80, limits::PHOTO_SIDE));
    let drawing = photograph(&photo, ALT, Language::EN, (Mm::new(25.4), Mm::new(25.4)));
    let item = drawing.photograph().unwrap();
    assert!(item.photo.size().1 <= 300, "{:?} on an inch", item.photo.size());
}

/// The first bytes of a PNG that says how large it is, and nothing after them but the end.
fn png_of(width: u32, height: u32) -> Vec<u8> {
    let mut bytes = Vec::new();
    let mut encoder = png::Encoder::new(&mut bytes, width, height);
    encoder.set_color(png::ColorType::Rgb);
    drop(encoder.write_header().unwrap());
    bytes
}

/// A JPEG whose frame says another size than it was made with (ISO/IEC 10918-1, B.2.2).
fn jpeg_of(width: u16, height: u16) -> Vec<u8> {
    let mut bytes = usual();
    let at = bytes.windows(2).position(|two| two == b"\xff\xc0").unwrap();
    bytes[at + 5..at + 7].copy_from_slice(&height.to_be_bytes());
    bytes[at + 7..at + 9].copy_from_slice(&width.to_be_bytes());
    bytes
}

#[test]
fn what_is_no_photograph_is_told_at_its_file() {
    for bytes in [&b""[..], b"title: a hat\n", b"GIF89a\x01\0\x01\0\0\0\0;", b"\xff\xd8", b"<svg/>"] {
        assert_eq!(refused(bytes), "photo-no-picture", "{bytes:?}");
    }
    // 200 megapixels, told from the head alone: behind it there is nothing to decode.
    assert_eq!(refused(&png_of(20_000, 10_000)), "photo-too-large");
    assert_eq!(refused(&jpeg_of(20_000, 10_000)), "photo-too-large");
    assert_eq!(refused(&png_of(u32::MAX >> 1, u32::MAX >> 1)), "photo-too-large");
    assert_eq!(refused(&[&usual()[..], &vec![0; limits::PHOTO_BYTES]].concat()), "photo-too-large");
    let (jpeg, png) = (usual(), png(900, 600, [0, 1, 2, 3], 1));
    for whole in [&jpeg, &png] {
        for part in [20, whole.len() / 4, whole.len() * 2 / 3] {
            assert_eq!(refused(&whole[..part]), "photo-broken", "{part} of {}", whole.len());
        }
    }
    assert_eq!(refused(&jpeg_of(0, 10)), "photo-broken");
    let mut press = Vec::new();
    Encoder::new(&mut press, 90).encode(&[100; 16 * 16 * 4], 16, 16, ColorType::Cmyk).unwrap();
    assert_eq!(refused(&press), "photo-in-cmyk");
}

#[test]
fn a_coarse_photograph_is_a_warning_and_grey_or_clear_ones_are_fine() {
    let warned = with_photo(&jpeg(200, 100, [0, 1, 2, 3], 1)).unwrap();
    assert_eq!(warned.report.diagnostics.iter().map(|one| one.code).collect::<Vec<_>>(), ["photo-coarse"]);
    let mut grey = Vec::new();
    Encoder::new(&mut grey, 90).encode(&[90; 64], 8, 8, ColorType::Luma).unwrap();
    assert!(
        Photo::read(&grey).unwrap().pixels().iter().all(|pixel| pixel.iter().all(|channel| channel.abs_diff(90) < 3))
    );
    // What can be seen through lies on white: half of black is 127 of 255 in the code that screens mix in.
    let mut clear = Vec::new();
    let mut encoder = png::Encoder::new(&mut clear, 2, 1);
    encoder.set_color(png::ColorType::Rgba);
    encoder.write_header().unwrap().write_image_data(&[0, 0, 0, 128, 9, 9, 9, 0]).unwrap();
    assert_eq!(Photo::read(&clear).unwrap().pixels(), [[127; 3], [255; 3]]);
}

/// Bytes changed at random: a photograph or a complaint, and never a panic. The numbers are those of Lehmer's generator
/// with the multiplier of Park and Miller (1988).
#[test]
fn changed_bytes_are_a_photograph_or_a_complaint() {
    let mut state = 20_261_129_u64;
    let mut below = |most: usize| {
        state = state * 16_807 % 2_147_483_647;
        state as usize % most
    };
    let wholes = [jpeg(40, 30, [0, 1, 2, 3], 6), png(40, 30, [0, 1, 2, 3], 8)];
    let mut sound = 0;
    for round in 0..600 {
        let mut bytes = wholes[round % 2].clone();
        for _ in 0..=below(4) {
            let at = below(bytes.len());
            bytes[at] = below(256) as u8;
        }
        bytes.truncate(if below(4) == 0 { below(bytes.len()) } else { bytes.len() });
        match Photo::read(&bytes) {
            Ok(photo) => {
                let (width, height) = photo.size();
                assert_eq!(photo.pixels().len(), (width * height) as usize);
                assert!(photo.jpeg().is_some());
                sound += 1;
            }
            Err(complaint) => assert!(complaint.code.starts_with("photo-"), "{complaint:?}"),
        }
    }
    assert!((50..590).contains(&sound), "{sound} of 600 are read");
}

fn run(folder: &Path, arguments: &[&str]) -> Output {
    let mut command = Command::new(env!("CARGO_BIN_EXE_roundelay"));
    command.args(arguments).current_dir(folder).stdin(Stdio::null()).output().unwrap()
}

fn told(output: &Output) -> (i32, String) {
    (output.status.code().unwrap(), String::from_utf8_lossy(&output.stderr).into_owned())
}

#[test]
fn the_file_is_looked_for_beside_its_design_and_a_changed_one_is_made_anew() {
    let folder = tempfile::tempdir().unwrap();
    let (designs, at) = (folder.path().join("designs"), folder.path());
    fs::create_dir(&designs).unwrap();
    fs::write(designs.join("mat.yaml"), MAT).unwrap();
    for command in [&["check", "designs/mat.yaml"][..], &["publish", "designs/mat.yaml", "-o", "made"]] {
        let (status, words) = told(&run(at, command));
        assert!(status == 1 && words.contains("photo-not-found") && words.contains("mat.yaml:3:15"), "{words}");
    }
    assert!(!at.join("made").exists(), "nothing is made without it");
    fs::create_dir(designs.join("mat.jpg")).unwrap();
    let (status, words) = told(&run(at, &["check", "designs/mat.yaml"]));
    assert!(status == 1 && words.contains("it is no file"), "{words}");
    fs::remove_dir(designs.join("mat.jpg")).unwrap();

    let publish = ["publish", "designs/mat.yaml", "-o", "made", "--only", "web"];
    let page = || fs::read(at.join("made/mat.html")).unwrap();
    fs::write(designs.join("mat.jpg"), usual()).unwrap();
    assert_eq!(told(&run(at, &publish)).0, 0);
    let first = page();
    assert!(told(&run(at, &publish)).1.contains("nothing has changed"));
    fs::write(designs.join("mat.jpg"), jpeg(900, 600, [3, 1, 2, 0], 1)).unwrap();
    assert_eq!(told(&run(at, &publish)), (0, String::new()));
    assert!(holds(&page(), "data:image/jpeg") && page() != first, "another photograph, another page");
    // The other pictures do without it; the cover does not.
    fs::remove_file(designs.join("mat.jpg")).unwrap();
    assert_eq!(told(&run(at, &["draw", "designs/mat.yaml", "key", "-o", "key.svg"])).0, 0);
    assert_eq!(told(&run(at, &["draw", "designs/mat.yaml", "cover", "-o", "cover.svg"])).0, 1);
}

#[test]
fn a_picture_never_takes_the_place_of_the_photograph() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("mat.yaml"), MAT.replace("mat.jpg", "mat.png")).unwrap();
    let photo = png(900, 600, [0, 1, 2, 3], 1);
    fs::write(folder.path().join("mat.png"), &photo).unwrap();
    let (status, words) = told(&run(folder.path(), &["draw", "mat.yaml", "cover", "-o", "mat.png", "--force"]));
    assert_eq!(status, 2, "{words}");
    assert_eq!(fs::read(folder.path().join("mat.png")).unwrap(), photo);
}

#[test]
fn written_rounds_have_the_photograph_of_the_design_beside_them() {
    let swatch =
        "photo: {file: mat.jpg, alt: A mat}\nswatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\n";
    let rounds = b"Mat\nRnd 1: 6 sc in ring (6)\nRnd 2: 2 sc in each st around (12)\n";
    let beside = Some(Beside { name: "swatch.yaml", bytes: swatch.as_bytes() });
    let pattern = Pattern::read_rounds(rounds, beside).unwrap();
    let report = pattern.clone().with_photo(b"no picture").unwrap_err();
    let about = report.diagnostics.iter().find(|one| one.code == "photo-no-picture").unwrap();
    assert_eq!(about.place, None, "its line is not among the rounds");
    assert!(pattern.with_photo(&usual()).unwrap().photo.is_some());

    let folder = tempfile::tempdir().unwrap();
    fs::create_dir(folder.path().join("yarn")).unwrap();
    fs::write(folder.path().join("mat.txt"), rounds).unwrap();
    fs::write(folder.path().join("yarn/swatch.yaml"), swatch).unwrap();
    fs::write(folder.path().join("yarn/mat.jpg"), usual()).unwrap();
    let output = run(folder.path(), &["draw", "mat.txt", "cover", "--swatch", "yarn/swatch.yaml", "-o", "cover.svg"]);
    assert_eq!(told(&output).0, 0, "{:?}", told(&output));
    assert!(fs::read_to_string(folder.path().join("cover.svg")).unwrap().contains("data:image/jpeg"));
}

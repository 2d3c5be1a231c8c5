//! Outside tools for looking at written files. A test that needs one that is missing passes without looking, unless
//! `ROUNDELAY_CHECKERS=required` is set, as the test command does.

#![allow(clippy::unwrap_used)]

use std::path::{Path, PathBuf};
use std::process::Command;

use tempfile::TempDir;

/// A picture of a page, dark to light.
pub(crate) struct Raster {
    width: usize,
    height: usize,
    dots: Vec<u8>,
}

impl Raster {
    /// Dots darker than a limit, by column and row.
    pub(crate) fn dark(&self, limit: u8) -> impl Iterator<Item = (u32, u32)> + '_ {
        let dots = self.dots.iter().enumerate().filter(move |(_, dot)| **dot < limit);
        dots.map(|(i, _)| ((i % self.width) as u32, (i / self.width) as u32))
    }

    /// The darkest dot at a point and right beside it.
    pub(crate) fn darkest_near(&self, x: f64, y: f64) -> u8 {
        let (x, y) = (x.floor() as i64, y.floor() as i64);
        let around = (-1..=1).flat_map(|dy| (-1..=1).map(move |dx| (x + dx, y + dy)));
        let inside = around.filter(|(x, y)| *x >= 0 && *y >= 0 && *x < self.width as i64 && *y < self.height as i64);
        inside.map(|(x, y)| self.dots[y as usize * self.width + x as usize]).min().unwrap_or(255)
    }

    /// Length of the longest unbroken dark line, across or down, in the part of so many dots from the top left corner.
    pub(crate) fn longest_run(&self, across: bool, part: (usize, usize)) -> usize {
        let (width, height) = (part.0.min(self.width), part.1.min(self.height));
        let (lines, length) = if across { (height, width) } else { (width, height) };
        let dot = |line: usize, at: usize| {
            let (x, y) = if across { (at, line) } else { (line, at) };
            self.dots[y * self.width + x]
        };
        let longest = |line: usize| {
            let mut best = (0, 0);
            for at in 0..length {
                let run = if dot(line, at) < 128 { best.1 + 1 } else { 0 };
                best = (best.0.max(run), run);
            }
            best.0
        };
        (0..lines).map(longest).max().unwrap_or(0)
    }
}

/// The tool of this name; nothing, and the test is to pass, where it is missing and not required.
pub(crate) fn tool(name: &str) -> Option<PathBuf> {
    let paths = std::env::var_os("PATH").unwrap_or_default();
    let found = std::env::split_paths(&paths).map(|folder| folder.join(name)).find(|path| path.is_file());
    assert!(found.is_some() || !required(), "{name} is missing");
    found
}

/// A Python that has the packages of `tests/run`; nothing, and the test is to pass, where none is named and none required.
pub(crate) fn python() -> Option<PathBuf> {
    let named = std::env::var_os("ROUNDELAY_PYTHON");
    assert!(named.is_some() || !required(), "ROUNDELAY_PYTHON is not set");
    named.map(PathBuf::from)
}

fn required() -> bool {
    std::env::var("ROUNDELAY_CHECKERS").is_ok_and(|value| value == "required")
}

fn run(tool: &Path, args: &[&str], folder: &Path) -> String {
    let output = Command::new(tool).args(args).current_dir(folder).output().unwrap();
    let said = String::from_utf8_lossy(&output.stdout).into_owned();
    let complaint = String::from_utf8_lossy(&output.stderr);
    assert!(output.status.success(), "{} {args:?}: {said}{complaint}", tool.display());
    said
}

/// The text that a reader gets out of a file, page after page.
pub(crate) fn extracted(pdftotext: &Path, pdf: &[u8]) -> String {
    let folder = folder_with(&[("file.pdf", pdf)]);
    run(pdftotext, &["-layout", "file.pdf", "-"], folder.path())
}

/// What a tool says of a file.
pub(crate) fn said_of(tool: &Path, args: &[&str], pdf: &[u8]) -> String {
    let folder = folder_with(&[("file.pdf", pdf)]);
    run(tool, &[args, &["file.pdf"]].concat(), folder.path())
}

/// Every page as a grey picture.
pub(crate) fn raster(pdftoppm: &Path, pdf: &[u8], dpi: f64) -> Vec<Raster> {
    let folder = folder_with(&[("file.pdf", pdf)]);
    run(pdftoppm, &["-gray", "-r", &dpi.to_string(), "file.pdf", "page"], folder.path());
    let files = std::fs::read_dir(folder.path()).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<PathBuf> = files.filter(|path| path.extension().is_some_and(|end| end == "pgm")).collect();
    files.sort();
    files.iter().map(|path| grey_map(&std::fs::read(path).unwrap())).collect()
}

/// A binary portable grey map: `P5`, width, height, 255, dots.
fn grey_map(bytes: &[u8]) -> Raster {
    let mut words = bytes.split(u8::is_ascii_whitespace);
    let mut read = 0;
    let mut word = || {
        let word = words.next().unwrap();
        read += word.len() + 1;
        String::from_utf8_lossy(word).into_owned()
    };
    assert_eq!(word(), "P5");
    let (width, height, most) = (word().parse().unwrap(), word().parse().unwrap(), word());
    assert_eq!(most, "255");
    Raster { width, height, dots: bytes[read..].to_vec() }
}

fn folder_with(files: &[(&str, &[u8])]) -> TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, bytes) in files {
        std::fs::write(folder.path().join(name), bytes).unwrap();
    }
    folder
}

/// Looks at every file: its build with qpdf, its tags with pdfinfo, and PDF/UA-1 with the validator of the PyPI package
/// page-validation.
pub(crate) fn check(files: &[(String, Vec<u8>)]) {
    let folder = tempfile::tempdir().unwrap();
    let names: Vec<String> = files.iter().map(|(name, _)| format!("{name}.pdf")).collect();
    for (name, (_, bytes)) in names.iter().zip(files) {
        std::fs::write(folder.path().join(name), bytes).unwrap();
    }
    for name in &names {
        if let Some(qpdf) = tool("qpdf") {
            run(&qpdf, &["--check", name], folder.path());
        }
        if let Some(pdfinfo) = tool("pdfinfo") {
            let said = run(&pdfinfo, &[name], folder.path());
            let tagged = said.lines().any(|line| line.starts_with("Tagged:") && line.ends_with("yes"));
            assert!(tagged, "{name}: {said}");
            let tree = run(&pdfinfo, &["-struct", name], folder.path());
            assert!(tree.contains("Figure") && !tree.contains("Unknown"), "{name}: {tree}");
        }
    }
    let Some(python) = python() else { return };
    let script = "import page, sys\n\
        for name in sys.argv[1:]:\n    \
            report = page.validate_pdf(name, profile='ua1')\n    \
            assert report.is_compliant, (name, [failure.rule_id for failure in report.failures])\n";
    let mut args = vec!["-c", script];
    args.extend(names.iter().map(String::as_str));
    run(&python, &args, folder.path());
}

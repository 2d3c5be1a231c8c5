//! What is too large is refused before the work, by the product of its numbers; what is accepted fits into the memory that
//! is promised: 512 MB, and 150 MB for less than 100,000 stitches.

#![allow(clippy::unwrap_used)]

use std::fs;
use std::process::Command;

use roundelay::pattern::{Beside, Pattern};

const SWATCH: &str = "swatch: {stitch: sc, stitches: 20, rounds: 20, width: 10, height: 10}\n";

fn refused(text: &str) -> Vec<&'static str> {
    let beside = Some(Beside { name: "swatch", bytes: SWATCH.as_bytes() });
    let report = Pattern::read_rounds(text.as_bytes(), beside).unwrap_err();
    assert!(report.diagnostics.iter().all(|one| one.message.len() < 400), "{report:#?}");
    report.diagnostics.iter().map(|one| one.code).collect()
}

#[test]
fn written_rounds_are_bounded_by_all_their_stitches() {
    let rounds = "Rnd 1: 99999 sc in ring\nRnds 2-900: sc in each st around\n";
    assert!(refused(rounds).contains(&"piece-too-large"), "{:?}", refused(rounds));
    let ranges = "Rnd 1: 9999 sc in ring\nRnds 2-900: sc in each st around\n";
    assert!(refused(ranges).contains(&"piece-too-large"));
    assert!(refused("Rnd 1: 999999999 sc in ring\n").contains(&"round-too-long"));
    assert!(refused("Rnd 1: 6 sc in ring\nRnds 2-2000: sc in each st around\n").contains(&"round-range"));
}

#[test]
fn solved_pieces_are_bounded_by_all_their_sizes() {
    let sizes: Vec<String> = (1..=24).map(|size| format!("s{size}: {{across: {}}}", 150 + 4 * size)).collect();
    let mat = format!(
        "title: Mats\nkind: mat\n{SWATCH}sizes: {{{}}}\nwork: spiral\nparts:\n  - mat: {{start: ring of 6, shape: flat}}\n",
        sizes.join(", ")
    );
    let report = Pattern::read(mat.as_bytes()).unwrap_err();
    assert!(report.diagnostics.iter().any(|one| one.code == "piece-too-large"), "{report:#?}");
}

/// Runs with so much memory to ask for, in kilobytes; the threads' stacks and the program itself count too.
#[cfg(target_os = "linux")]
fn within(kilobytes: u32, design: &str, arguments: &str) -> (bool, String) {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("mat.yaml"), design).unwrap();
    let script = format!("ulimit -d {kilobytes}; exec \"$0\" {arguments}");
    let program = env!("CARGO_BIN_EXE_roundelay");
    let ended = Command::new("sh").args(["-c", &script, program]).current_dir(folder.path()).output().unwrap();
    (ended.status.success(), String::from_utf8_lossy(&ended.stderr).into_owned())
}

#[cfg(target_os = "linux")]
fn mat(across: u32) -> String {
    format!(
        "title: Mat\nkind: mat\n{SWATCH}sizes: {{one: {{across: {across}}}}}\nwork: spiral\nparts:\n  - mat: {{start: ring of 6, shape: flat}}\n"
    )
}

#[cfg(target_os = "linux")]
#[test]
fn what_is_accepted_fits_into_the_promised_memory() {
    // 176 cm across at 20 by 20: 176 rounds, 95,000 stitches; 290 cm: near the most there may be.
    for (across, kilobytes, arguments) in [
        (176, 150_000, "plan mat.yaml --format json"),
        (176, 150_000, "draw mat.yaml chart -o chart.svg"),
        (176, 150_000, "draw mat.yaml chart -o chart.pdf"),
        (176, 150_000, "draw mat.yaml chart --view whole --demerits -o chart.svg"),
        // As many stitches as are relaxed in space.
        (79, 150_000, "draw mat.yaml piece -o piece.svg"),
        (290, 512_000, "plan mat.yaml --format csv"),
        (290, 512_000, "draw mat.yaml chart --view whole -o chart.png"),
    ] {
        let (done, said) = within(kilobytes, &mat(across), arguments);
        assert!(done, "{arguments}: {said}");
    }
}

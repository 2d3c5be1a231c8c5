//! Random designs of every kind, language, unit and way of working, the same ones at every run.

/// A linear congruential generator (Knuth's constants for 64 bits, from memory).
pub(super) struct Chance(pub(super) u64);

impl Chance {
    pub(super) fn below(&mut self, limit: usize) -> usize {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        ((self.0 >> 33) as usize) % limit
    }

    fn of<T: Copy>(&mut self, values: &[T]) -> T {
        values[self.below(values.len())]
    }

    /// Tenths from one number to another.
    fn tenths(&mut self, from: usize, to: usize) -> f64 {
        (from * 10 + self.below((to - from) * 10)) as f64 / 10.0
    }
}

/// A design as its file.
pub(super) fn design(chance: &mut Chance) -> String {
    let kind = chance.of(&["hat", "hat", "basket", "mat", "ball"]);
    let terms = chance.of(&["US", "UK"]);
    let (stitch, british, tall) = chance.of(&[
        ("sc", "dc", 1.0),
        ("sc", "dc", 1.0),
        ("hdc", "htr", 1.45),
        ("dc", "tr", 1.85),
        ("tr", "dtr", 2.7),
    ]);
    let stitch = if terms == "UK" { british } else { stitch };
    let (stitches, wide) = (14 + chance.below(14), chance.tenths(8, 14));
    let rounds = 8 + chance.below(10);
    let high = rounds as f64 * wide / stitches as f64 * tall * (0.95 + chance.below(10) as f64 / 100.0);
    let grams = if chance.below(3) > 0 { ", grams: 7.3" } else { "" };
    let work = chance.of(&["joined", "joined, chain counts", "joined, chain does not count", "spiral", "spiral"]);
    let colours = chance.below(2) == 0;
    let mut text = format!(
        "title: Piece\nkind: {kind}\nunits: {}\nterms: {terms}\nlanguage: {}\nhook: 5 mm\nwork: {work}\n\
         swatch: {{stitch: {stitch}, stitches: {stitches}, rounds: {rounds}, width: {wide} cm, height: {high:.2} cm{grams}}}\n",
        chance.of(&["cm", "in"]),
        chance.of(&super::TAGS),
    );
    let ball = chance.of(&["", ", ball: {grams: 50, metres: 110}"]);
    let yarn =
        if colours { "colours: {moss: \"#607040\", chalk: \"#eeeeee\", rust: \"#a04020\"}" } else { "fibre: wool" };
    text += &format!("yarn: {{weight: {}, {yarn}{ball}}}\n", 2 + chance.below(5));
    text += &format!(
        "shaping: {}\nprefer: {}\n",
        chance.of(&["scattered", "6 corners"]),
        chance.of(&["easy", "balanced", "close"])
    );
    let (measure, from, to) = match kind {
        "hat" => ("head", 38, 60),
        "mat" => ("across", 12, 26),
        "basket" => ("around", 36, 70),
        _ => ("around", 20, 40),
    };
    let first = chance.tenths(from, to);
    let sizes: Vec<String> = (0..1 + chance.below(4))
        .map(|i| format!("{}: {{{measure}: {:.1} cm}}", ["S", "M", "L", "XL"][i], first + 3.4 * i as f64))
        .collect();
    text += &format!("sizes: {{{}}}\n", sizes.join(", "));
    let stripes = if colours {
        chance.of(&[
            ", colours: [{moss: 2}, {chalk: 1}, {rust: rest}]",
            ", colours: [{rust: rest}, {chalk: 1}]",
            ", colours: moss",
        ])
    } else {
        ""
    };
    let base = if colours { ", colours: chalk" } else { "" };
    let start = chance.of(&["ring", "ring", "ring of 6", "chain ring of 4", "chain ring of 4 with 8"]);
    let (depth, fold) = (format!("{:.1} cm", chance.tenths(5, 9)), chance.of(&["", ", loop: back", ", loop: front"]));
    let parts = match kind {
        "hat" => {
            let shape = chance.of(&["flat", "dome"]);
            let brim =
                chance.of(&["", "  - brim: {width: 6 cm, flare: 50°, settle: 2", "  - brim: {width: 4 cm, flare: 75°"]);
            let brim = if brim.is_empty() { String::new() } else { format!("{brim}{base}}}\n") };
            format!(
                "  - crown: {{start: {start}, shape: {shape}{base}}}\n  - side: {{depth: {depth}{fold}{stripes}}}\n{brim}"
            )
        }
        "mat" => format!("  - mat: {{start: {start}, shape: flat{stripes}}}\n"),
        "basket" => format!(
            "  - base: {{start: {start}, shape: flat{base}}}\n  - wall: {{depth: {depth}{fold}{stripes}}}\n{}",
            if chance.below(2) == 0 { format!("  - rim: {{depth: 3 cm, loop: front{base}}}\n") } else { String::new() }
        ),
        _ => format!("  - ball: {{start: {start}, shape: sphere{stripes}}}\n"),
    };
    let finish = if work == "spiral" { "step down" } else { "edge of slip stitch" };
    text + "parts:\n" + &parts + &format!("finish: {}\n", chance.of(&["fasten off", finish]))
}

/// Pieces of the corpus of written rounds, each as its rounds and the design that goes with them.
pub(super) fn written() -> Vec<(String, String)> {
    let corpus = include_str!("../../rounds/clean.txt");
    let piece = |piece: &str| {
        let lines = || piece.lines().skip(1).filter(|line| !line.starts_with('#'));
        let setting = |line: &&str| line.starts_with("terms:") || line.starts_with("work:");
        let rounds: Vec<&str> = lines().filter(|line| !setting(line)).collect();
        let settings: Vec<&str> = lines().filter(setting).collect();
        let design = format!(
            "kind: ball\nyarn: {{weight: 4}}\nswatch: {{stitch: {}, stitches: 16, rounds: 17, width: 10, height: 10, grams: 8}}\n{}\n",
            if piece.contains("terms: UK") { "dc" } else { "sc" },
            settings.join("\n")
        );
        (format!("Title: Piece\n\n{}\n", rounds.join("\n")), design)
    };
    corpus.split("\n== ").map(piece).collect()
}

//! Whatever a file says, the whole line from its text to the plan's files ends in a plan or in complaints, never in a
//! panic; and a plan that comes out is sound.

use proptest::prelude::*;
use proptest::sample::Index;
use roundelay::pattern::Pattern;
use roundelay::{design, file, geometry, plan};

const EXAMPLES: [&str; 8] = [
    design::STARTER,
    include_str!("../../examples/slipway-sun-hat.yaml"),
    include_str!("../../examples/ember-beanie.yaml"),
    include_str!("../../examples/millrace-basket.yaml"),
    include_str!("../../examples/northlight-beanie.yaml"),
    include_str!("../../examples/orchard-ladder-basket.yaml"),
    include_str!("../../examples/gloaming-shade.yaml"),
    include_str!("../../examples/towpath-visor.yaml"),
];

/// Values that a field may take, sound and unsound.
const VALUES: &[&str] = &[
    "0",
    "1",
    "3",
    "9",
    "25",
    "60",
    "400",
    "0.1",
    "2.5 mm",
    "9 cm",
    "3 1/2 in",
    "1 m",
    "30°",
    "90°",
    "149°",
    "-10 %",
    "12 %",
    "ring",
    "ring of 3",
    "ring of 50",
    "chain ring of 60",
    "chain ring of 5 with 12",
    "flat",
    "dome",
    "straight",
    "flare",
    "taper",
    "close",
    "sphere",
    "sc",
    "hdc",
    "dc",
    "tr",
    "puff",
    "joined",
    "spiral",
    "joined, chain counts",
    "easy",
    "balanced",
    "close",
    "8 corners",
    "triple",
    "step down",
    "edge of slip stitch",
    "hat",
    "basket",
    "mat",
    "ball",
    "back",
    "front",
    "US",
    "UK",
    "in",
    "de",
    "left",
    "rest",
    "chain",
    "close flat",
    "over the ears",
    "to mid ear",
    "rounded 2 cm",
    "ruffle",
    "ages",
    "edc",
    "3 stitches",
    "17",
    "200",
];

/// The design with the value of one field replaced: what stands between `: ` and the next comma, brace or line end.
fn revalue(text: &str, which: Index, value: &str) -> String {
    let starts: Vec<usize> = text.match_indices(": ").map(|(at, _)| at + 2).collect();
    let start = starts[which.index(starts.len())];
    let length = text[start..].find([',', '}', '\n']).unwrap_or(text.len() - start);
    format!("{}{value}{}", &text[..start], &text[start + length..])
}

/// From the text to every file of the plan; true where a plan came out.
fn whole_line(text: &str) -> bool {
    let Pattern { plan, shapes, .. } = match Pattern::read(text.as_bytes()) {
        Ok(pattern) => pattern,
        Err(report) => {
            assert!(report.has_errors(), "neither plan nor error: {text}");
            return false;
        }
    };
    for (size, shape) in plan.sizes.iter().zip(&shapes) {
        assert_eq!(plan::audit(size), Ok(()), "{text}");
        assert_eq!(shape.rounds.len(), size.rounds.len());
        let finite = |round: &geometry::RoundShape| {
            [round.radius.mm(), round.height.mm(), round.hoop_strain].iter().all(|value| value.is_finite())
        };
        assert!(shape.rounds.iter().all(finite), "{text}");
    }
    let json = file::json::plan(&plan, &shapes, None);
    assert!(serde_json::from_str::<serde_json::Value>(&json).is_ok());
    assert!(file::csv::plan(&plan, &shapes, None).lines().count() > plan.sizes.len());
    assert!(
        !roundelay::story::listing::table(&plan, &shapes, None).is_empty()
            && !roundelay::story::listing::pattern(&plan, None).is_empty()
    );
    true
}

#[test]
fn the_examples_go_the_whole_line() {
    assert!(EXAMPLES.iter().all(|text| whole_line(text)));
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 150, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn any_values_go_the_whole_line(
        example in 0..EXAMPLES.len(),
        changes in prop::collection::vec((any::<Index>(), 0..VALUES.len()), 1..4),
    ) {
        let change = |text: String, (which, value): (Index, usize)| revalue(&text, which, VALUES[value]);
        whole_line(&changes.into_iter().fold(EXAMPLES[example].to_owned(), change));
    }
}

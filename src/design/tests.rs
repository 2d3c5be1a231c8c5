use super::*;

#[test]
fn the_starter_and_the_examples_are_designs_without_complaint() {
    let examples = [
        STARTER,
        include_str!("../../examples/slipway-sun-hat.yaml"),
        include_str!("../../examples/ember-beanie.yaml"),
        include_str!("../../examples/millrace-basket.yaml"),
    ];
    for text in examples {
        let mut report = Report::new();
        let design = read(text, &mut report);
        assert_eq!(report.diagnostics, []);
        assert!(design.is_some_and(|design| design.sizes.len() == 3));
    }
}

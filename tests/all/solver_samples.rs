//! The sample designs solve to plans that can be worked.

use roundelay::plan::{SizePlan, audit};

use crate::common;

fn counts(size: &SizePlan) -> Vec<u32> {
    size.rounds.iter().map(|round| round.after).collect()
}

#[test]
fn samples_add_up() {
    for design in [common::sun_hat(), common::dc_beanie(), common::hdc_basket(), common::ball()] {
        for size in &common::solved(&design).sizes {
            assert_eq!(audit(size), Ok(()));
            println!("{} {:?}\n{:#?}\n{:?}", size.name, counts(size), size.parts, size.yarn);
        }
    }
}

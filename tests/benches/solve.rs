//! Time to solve a design: a dome and a brim of 30, 100 and 500 rounds, the widest with some 2,000 stitches, in one size
//! and in five together.

#[path = "../all/common.rs"]
mod common;

use common::{Adjust, design, part, size, swatch};
use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use roundelay::craft::Stitch;
use roundelay::design::{Design, Preference, Shape};
use roundelay::plan::solve;
use roundelay::report::Report;
use roundelay::units::{Angle, Mm};

/// A dome, a side and a brim that share out some rounds of 3.6 mm, in sizes a thirtieth apart.
fn piece(rounds: f64, sizes: u32) -> Design {
    let height = 3.6;
    let shares: Vec<f64> = (0..sizes).map(|at| 1.0 + f64::from(at) / 30.0).collect();
    let each = |of: f64| -> Vec<Mm> { shares.iter().map(|share| Mm::new(share * of)).collect() };
    let radius = rounds * 0.5 * height;
    let around = radius * std::f64::consts::TAU;
    let names = ["XS", "S", "M", "L", "XL"];
    let sizes = names.iter().zip(&shares).map(|(name, share)| size(name, share * around)).collect();
    let flares = vec![Angle::from_degrees(60.0); shares.len()];
    let parts = vec![
        part("crown", Stitch::SC, Shape::dome(each(around), each(radius * 0.7))).ringed(),
        part("side", Stitch::SC, Shape::straight(each(rounds * 0.1 * height))),
        part("brim", Stitch::SC, Shape::flare(each(rounds * 0.45 * height), flares)).settling(2),
    ];
    design(swatch(Stitch::SC, 100.0 / 3.9, 100.0 / height), sizes, parts)
}

fn bench(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("solve");
    group.sample_size(10);
    for prefer in [Preference::Easy, Preference::Balanced, Preference::Close] {
        for rounds in [30_u32, 100, 500] {
            for (sizes, of) in [(1, ""), (5, " in five sizes")] {
                let mut piece = piece(f64::from(rounds), sizes);
                piece.prefer = prefer;
                let name = BenchmarkId::new(format!("{prefer:?}{of}"), rounds);
                group.bench_with_input(name, &piece, |bencher, piece| {
                    bencher.iter(|| solve(piece, &mut Report::new()));
                });
            }
        }
    }
    group.finish();
}

criterion_group!(benches, bench);
criterion_main!(benches);

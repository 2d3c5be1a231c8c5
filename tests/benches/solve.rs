//! Time to solve a design: a dome and a brim of 30, 100 and 500 rounds, the widest with some 2,000 stitches.

#[path = "../all/common.rs"]
mod common;

use common::{Adjust, design, part, size, swatch};
use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use roundelay::craft::Stitch;
use roundelay::design::{Design, Preference, Shape};
use roundelay::plan::solve;
use roundelay::report::Report;
use roundelay::units::{Angle, Mm};

/// A disc, a side and a brim that share out some rounds of 3.6 mm.
fn piece(rounds: f64) -> Design {
    let height = 3.6;
    let radius = rounds * 0.5 * height;
    let around = radius * std::f64::consts::TAU;
    let sizes = vec![size("one", around)];
    let rise = Mm::new(radius * 0.7);
    let parts = vec![
        part("crown", Stitch::SC, Shape::dome(vec![Mm::new(around)], vec![rise])).ringed(),
        part("side", Stitch::SC, Shape::straight(vec![Mm::new(rounds * 0.1 * height)])),
        part("brim", Stitch::SC, Shape::flare(vec![Mm::new(rounds * 0.45 * height)], vec![Angle::from_degrees(60.0)]))
            .settling(2),
    ];
    design(swatch(Stitch::SC, 100.0 / 3.9, 100.0 / height), sizes, parts)
}

fn bench(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("solve");
    group.sample_size(10);
    for prefer in [Preference::Easy, Preference::Balanced, Preference::Close] {
        for rounds in [30_u32, 100, 500] {
            let mut piece = piece(f64::from(rounds));
            piece.prefer = prefer;
            let name = BenchmarkId::new(format!("{prefer:?}"), rounds);
            group.bench_with_input(name, &piece, |bencher, piece| {
                bencher.iter(|| solve(piece, &mut Report::new()));
            });
        }
    }
    group.finish();
}

criterion_group!(benches, bench);
criterion_main!(benches);

//! Time of the shape prediction at 30, 100 and 500 rounds: it should grow in step with the rounds. Time to relax the mesh of
//! a hat of 4,000 stitches and of a mat of 20,000.

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use roundelay::craft::{Foundation, Stitch};
use roundelay::design::{Design, Kind, Shape, Work};
use roundelay::geometry::mesh::{Fabric, mesh};
use roundelay::geometry::predict;

#[path = "../all/common.rs"]
mod common;

#[path = "../all/fabric.rs"]
mod fabric;

use common::{Adjust, design, part, size, solved, sun_hat, swatch};
use fabric::{flat, piece, plan, straight};
use roundelay::units::Mm;

fn shapes(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("predict");
    for rounds in [30_u32, 100, 500] {
        // A hat: a third crown, a third side, a third brim.
        let third = rounds / 3;
        let pieces = [
            piece("crown", flat(), (1..=third).map(|k| 6 * k)),
            piece("side", straight(), vec![6 * third; third as usize]),
            piece("brim", straight(), (1..=rounds - 2 * third).map(|k| 6 * third + 4 * k)),
        ];
        let hat = plan(Kind::Hat, Foundation::Ring, &pieces);
        group.bench_with_input(BenchmarkId::from_parameter(rounds), &hat, |bencher, hat| {
            bencher.iter(|| predict(black_box(hat), &hat.sizes[0]));
        });
    }
    group.finish();
}

fn relaxing(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("relax");
    group.sample_size(10);
    let flat = vec![part("mat", Stitch::SC, Shape::flat(vec![Mm::new(1850.0)])).ringed()];
    let mat = design(swatch(Stitch::SC, 25.0, 27.0), vec![size("one", 1850.0)], flat);
    for design in [sun_hat(), Design { kind: Kind::Mat, work: Work::Spiral, ..mat }] {
        let plan = solved(&design);
        let body = predict(&plan, &plan.sizes[0]);
        group.bench_with_input(BenchmarkId::from_parameter(plan.sizes[0].stitches()), &plan, |bencher, plan| {
            bencher.iter(|| mesh(black_box(plan), &plan.sizes[0], &body, &Fabric::default()));
        });
    }
    group.finish();
}

criterion_group!(benches, shapes, relaxing);
criterion_main!(benches);

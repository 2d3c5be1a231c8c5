//! Time of layout and drawing against the number of stitches: it should grow in step.

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use roundelay::craft::Stitch;
use roundelay::drawing::{ChartOptions, chart};
use roundelay::file::svg;
use roundelay::geometry::rings::{Row, layout};

#[path = "../all/common.rs"]
mod common;

#[path = "../all/scenes/mod.rs"]
mod scenes;

fn bench(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("chart");
    group.sample_size(10);
    // Discs of 28, 58, 129 and 182 rounds: 2,436 to 99,918 stitches.
    for rounds in [28, 58, 129, 182] {
        let plan = scenes::disc(Stitch::SC, rounds, 6);
        let Some(size) = plan.sizes.first() else { continue };
        let stitches = size.stitches();
        group.throughput(Throughput::Elements(stitches));
        let rows = Row::each(0..size.rounds.len());
        let lanes = vec![2.5; rows.len()];
        group.bench_with_input(BenchmarkId::new("layout", stitches), &(), |bencher, ()| {
            bencher.iter(|| layout(size, &rows, &lanes));
        });
        group.bench_with_input(BenchmarkId::new("drawing", stitches), &(), |bencher, ()| {
            bencher.iter(|| chart(&plan, 0, &ChartOptions::default()));
        });
        let drawing = chart(&plan, 0, &ChartOptions::default());
        group.bench_with_input(BenchmarkId::new("svg", stitches), &(), |bencher, ()| {
            bencher.iter(|| svg::write(&drawing));
        });
    }
    group.finish();
}

criterion_group!(benches, bench);
criterion_main!(benches);

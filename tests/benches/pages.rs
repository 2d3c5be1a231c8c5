//! Laying out and writing booklets of 5 to 500 pages: the time for one page should not grow with their number.
#![allow(missing_docs)]

use std::hint::black_box;

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use roundelay::file::pdf;
use roundelay::page::{Document, Options, Paper, Pictures, RoundsForm, booklet};
use roundelay::plan::{Plan, SizePlan, solve};
use roundelay::{design, report::Report};

fn hat() -> Plan {
    let text = std::fs::read_to_string("examples/slipway-sun-hat.yaml").unwrap_or_default();
    let mut report = Report::new();
    let plan = design::read(&text, &mut report).and_then(|design| solve(&design, &mut report));
    plan.unwrap_or_else(|| panic!("{report:#?}"))
}

/// The same size so many times: about two pages of rounds each.
fn with_sizes(plan: &Plan, count: usize) -> Plan {
    let first = &plan.sizes[0];
    let sizes = (0..count).map(|i| SizePlan { name: format!("{i}"), ..first.clone() }).collect();
    Plan { sizes, ..plan.clone() }
}

fn lay_out(plan: &Plan) -> Document {
    let options = Options { rounds: RoundsForm::PerSize, ..Options::new(Paper::a4()) };
    let document = booklet::lay_out(plan, &Pictures::default(), &options, &mut Report::new());
    document.unwrap_or_else(|| panic!("not laid out"))
}

fn pages(criterion: &mut Criterion) {
    let hat = hat();
    let mut group = criterion.benchmark_group("pages");
    group.sample_size(10);
    for sizes in [1, 10, 60, 300] {
        let plan = with_sizes(&hat, sizes);
        let document = lay_out(&plan);
        let count = document.pages.len() as u64;
        group.throughput(Throughput::Elements(count));
        group
            .bench_with_input(BenchmarkId::new("lay out", count), &plan, |b, plan| b.iter(|| black_box(lay_out(plan))));
        group.bench_with_input(BenchmarkId::new("write", count), &document, |b, document| {
            b.iter(|| black_box(pdf::write(document)));
        });
    }
    group.finish();
}

criterion_group!(benches, pages);
criterion_main!(benches);

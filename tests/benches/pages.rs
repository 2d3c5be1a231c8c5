//! Laying out and writing booklets: what one page more costs should not grow with their number.
//!
//! The pages before the rounds are of another kind and nearly the same in every booklet, so a short booklet can't be
//! compared with a long one as it is. What is measured is what a booklet takes beyond the one of a single size: pages of
//! rounds, all of one kind, from 5 to 500 of them.
#![allow(missing_docs)]

use std::hint::black_box;
use std::time::{Duration, Instant};

use criterion::{BenchmarkId, Criterion, Throughput, criterion_group, criterion_main};
use roundelay::file::pdf;
use roundelay::page::{Document, Options, Paper, Pictures, booklet};
use roundelay::pattern::Pattern;
use roundelay::plan::{Plan, SizePlan};
use roundelay::publish::pictures::untold;
use roundelay::report::Report;
use roundelay::story::RoundsForm;

fn hat() -> Plan {
    let text = std::fs::read_to_string("examples/slipway-sun-hat.yaml").unwrap_or_default();
    Pattern::read(text.as_bytes()).unwrap_or_else(|report| panic!("{report:#?}")).plan
}

/// The same size so many times: about two pages of rounds each.
fn with_sizes(plan: &Plan, count: usize) -> Plan {
    let first = &plan.sizes[0];
    let sizes = (0..count).map(|i| SizePlan { name: format!("{i}"), ..first.clone() }).collect();
    Plan { sizes, ..plan.clone() }
}

fn lay_out(plan: &Plan) -> Document {
    let options = Options { rounds: RoundsForm::PerSize, ..Options::new(Paper::a4()) };
    let document = booklet::lay_out(&untold(plan, &options), &Pictures::default(), &options, &mut Report::new());
    document.unwrap_or_else(|| panic!("not laid out"))
}

/// How long `work` takes for the long booklet beyond the short one.
fn beyond<T, R>(long: &T, short: &T, rounds: u64, work: impl Fn(&T) -> R) -> Duration {
    let time = |what: &T| {
        let start = Instant::now();
        let made = black_box(work(what));
        let took = start.elapsed();
        drop(made);
        took
    };
    (0..rounds).map(|_| time(long).saturating_sub(time(short))).sum()
}

fn pages(criterion: &mut Criterion) {
    let hat = hat();
    let mut group = criterion.benchmark_group("pages");
    group.sample_size(20);
    let (one, front) = (with_sizes(&hat, 1), lay_out(&with_sizes(&hat, 1)));
    for sizes in [4, 13, 62, 271] {
        let plan = with_sizes(&hat, sizes);
        let document = lay_out(&plan);
        let count = (document.pages.len() - front.pages.len()) as u64;
        group.throughput(Throughput::Elements(count));
        group.bench_function(BenchmarkId::new("lay out", count), |b| {
            b.iter_custom(|rounds| beyond(&plan, &one, rounds, lay_out));
        });
        group.bench_function(BenchmarkId::new("write", count), |b| {
            b.iter_custom(|rounds| beyond(&document, &front, rounds, pdf::write));
        });
    }
    group.finish();
}

criterion_group!(benches, pages);
criterion_main!(benches);

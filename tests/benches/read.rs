//! Time to read and count written rounds: 1,000 of them in plain words, with chains that may count or not, and in German.

use criterion::{BenchmarkId, Criterion, criterion_group, criterion_main};
use roundelay::craft::{Stitch, Terms};
use roundelay::design::Work;
use roundelay::notation::{Source, read};
use roundelay::plan::recount::{Rules, rounds};
use roundelay::report::Report;

/// Rounds that grow to 48 stitches, then go on as `even` says.
fn text(first: &str, growing: &str, word: &str, even: &str) -> String {
    let growth = (3..=8).map(|number| {
        let (gap, count) = (number - 2, number * 6);
        format!("{word} {number}: {} ({count})\n", growing.replace('N', &gap.to_string()))
    });
    let even = (9..=1000).map(|number| format!("{word} {number}: {even} (48)\n"));
    first.to_owned() + &growth.chain(even).collect::<String>()
}

fn bench(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("read");
    group.sample_size(10);
    let start = "Rnd 1: 6 sc in magic ring (6)\nRnd 2: inc x6 (12)\n";
    let german = "Rd 1: 6 fM in einen Fadenring (6)\nRd 2: 2 fM in jede M (12)\n";
    let texts = [
        ("plain", text(start, "(N sc, inc) x 6", "Rnd", "sc in each st around")),
        ("chains", text(start, "(N sc, inc) x 6", "Rnd", "ch 3, dc in next 47 sts, join")),
        ("repeats", text(start, "(N sc, inc) x 6", "Rnd", "*sc in next st, ch 1, skip next st; rep from * around")),
        ("German", text(german, "(N fM, Zun) 6x", "Rd", "1 fM in jede M")),
    ];
    let rules = Rules { work: Work::Spiral, main: Stitch::SC, terms: Terms::Us, height: None };
    for (name, text) in &texts {
        group.bench_with_input(BenchmarkId::new("rounds", name), text, |bencher, text| {
            bencher.iter(|| {
                let mut report = Report::new();
                let written = read(&[Source { text, place: None }], Terms::Us, Stitch::SC, 1, &mut report);
                rounds(&written, (0, 1), &rules, &mut report)
            });
        });
    }
    group.finish();
}

criterion_group!(benches, bench);
criterion_main!(benches);

//! `publish`: everything a maker needs, in a folder; of many designs at once, a folder for each.

use std::path::{Path, PathBuf};
use std::sync::Arc;

use clap::{Args, ValueEnum};
use rayon::ThreadPoolBuilder;
use rayon::prelude::*;
use roundelay::design::text_of;
use roundelay::drawing::ChartView;
use roundelay::file::Output;
use roundelay::file::save::{Order, Saved, Source as MadeFrom, unchanged};
use roundelay::file::seal::checksum;
use roundelay::page::{ChartWish, Options, Paper, Print};
use roundelay::pattern::piece::pieces;
use roundelay::publish::{
    CHARTS, DrawOptions, Named, PRINTS, PRODUCTS, Product, ROUNDS, Row, VIEWS, publish, publish_together, stem_of,
};
use roundelay::report::Report;
use roundelay::story::RoundsForm;
use serde::Serialize;

use super::input::{self, Photo, Source, Swatch};
use super::output::{self, cautions, data, failure, note};
use super::progress::Progress;
use super::rows::{one_of, paper};
use super::show::JsonComplaint;
use super::{Outcome, show};

/// What to publish, and how.
#[derive(Args, Debug)]
pub(super) struct Publish {
    /// Design files; `-` reads standard input
    #[arg(required = true)]
    files: Vec<PathBuf>,
    /// Folder to write into, made where it isn't there; of several designs each gets a folder of its own in it [default:
    /// the name of the design file without its ending]
    #[arg(short, long, value_name = "FOLDER")]
    output: Option<PathBuf>,
    /// Only this size, by its name: a pattern of one size, without brackets; it goes to a folder of its own
    #[arg(long, value_name = "NAME")]
    size: Option<String>,
    /// Paper of the booklet, such as A4, Letter or A3
    #[arg(long, default_value = "A4", value_parser = paper)]
    paper: Paper,
    /// Letters of 18 pt and wider lines
    #[arg(long)]
    large_print: bool,
    /// How ink is used
    #[arg(long, default_value = PRINTS[0].name, value_parser = one_of(&PRINTS))]
    ink: &'static Named<Print>,
    /// What the charts show [default: the first of the three that can be read on the paper]
    #[arg(long, value_parser = one_of(&VIEWS))]
    view: Option<&'static Named<ChartView>>,
    /// Charts of this part alone, by its name
    #[arg(long, conflicts_with = "view")]
    part: Option<String>,
    /// Which sizes have a chart in the booklet
    #[arg(long, default_value = CHARTS[0].name, value_parser = one_of(&CHARTS))]
    charts: &'static Named<bool>,
    /// The hour of the clock at which the rounds of the charts start, 1 to 12 [default: 12]
    #[arg(long, value_name = "HOUR", value_parser = clap::value_parser!(u8).range(1..=12))]
    start: Option<u8>,
    /// The rounds in plain words too, without abbreviations or brackets
    #[arg(long)]
    plain_words: bool,
    /// Written rounds in the shortest words, not in their author's
    #[arg(long)]
    rewrite: bool,
    /// How the rounds of several sizes stand
    #[arg(long, default_value = ROUNDS[0].name, value_parser = one_of(&ROUNDS))]
    rounds: &'static Named<RoundsForm>,
    /// Only these: several with commas between them
    #[arg(long, value_delimiter = ',', value_name = "WHAT", value_parser = one_of(&PRODUCTS))]
    only: Vec<&'static Product>,
    /// Replace files even where Roundelay did not make them
    #[arg(long)]
    force: bool,
    /// Remove files of an earlier run that are no longer made, such as those of a size that is gone
    #[arg(long)]
    remove_old: bool,
    /// Make everything anew, even where nothing has changed
    #[arg(long)]
    fresh: bool,
    /// How many things are done at once [default: as many as the machine has cores]
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u16).range(1..=256))]
    jobs: Option<u16>,
    /// How to report
    #[arg(long, value_enum, default_value_t = Form::Text)]
    report: Form,
    /// Say nothing but what went wrong
    #[arg(short, long)]
    quiet: bool,
}

/// How `publish` reports.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Form {
    /// The files on standard output, complaints and a summary on standard error
    Text,
    /// A list with an entry for each design on standard output
    Json,
}

/// The product beside whose files the pieces of a text stand together.
const TOGETHER: &str = "piece";

/// What came of a design.
enum End {
    Made(Saved),
    /// Nothing that goes into it has changed since it was made.
    Unchanged(Vec<PathBuf>),
    /// Nothing was made: why, where the complaints about the design don't say it, and what helps.
    Failed(Outcome, Option<(String, String)>),
}

/// A design with what came of it.
struct Published {
    source: Source,
    folder: PathBuf,
    end: End,
}

/// Makes the files of every design and writes them, for each all or none. A design that fails keeps no other from being made.
pub(super) fn run(wish: &Publish, swatch: Option<&Swatch>) -> Outcome {
    let jobs = jobs(wish);
    let places: Vec<(String, PathBuf)> = jobs.iter().map(|job| place(wish, job, jobs.len())).collect();
    for (index, (_, folder)) in places.iter().enumerate() {
        if let Some(other) = places[..index].iter().position(|(_, other)| alike(other, folder)) {
            let names = [other, index].map(|at| jobs[at].file.display().to_string());
            let message = format!("{} and {} would both go to {}", names[0], names[1], folder.display());
            return failure(&message, "give the designs names of their own, or publish them one by one");
        }
    }
    let pool = match ThreadPoolBuilder::new().num_threads(usize::from(wish.jobs.unwrap_or(0))).build() {
        Ok(pool) => pool,
        Err(error) => return failure(&format!("no {} jobs at once: {error}", wish.jobs.unwrap_or(0)), "ask for fewer"),
    };
    let progress = Progress::new(places.len());
    let published: Vec<Published> = pool.install(|| {
        let jobs = jobs.par_iter().zip(&places);
        jobs.map(|(job, (stem, folder))| {
            let published = one(wish, job, stem, folder, swatch);
            progress.done(&published.source.name);
            published
        })
        .collect()
    });
    drop(progress);
    let worst = published.iter().map(Published::outcome).max().unwrap_or(Outcome::Done);
    worst.max(match wish.report {
        Form::Text => told(wish, &published),
        Form::Json => {
            let entries: Vec<Entry<'_>> = published.iter().map(Entry::of).collect();
            data(&(serde_json::to_string_pretty(&entries).unwrap_or_default() + "\n"))
        }
    })
}

/// A file, or one piece of written rounds in it.
struct Job<'w> {
    file: &'w Path,
    /// Its name and what it holds, where that had to be read to know its pieces.
    read: Option<Arc<(String, Vec<u8>)>>,
    piece: Option<String>,
    /// True for all pieces of the file in one picture.
    together: bool,
}

/// The files, and each piece of those that hold several; after these all of them together, where pictures of the finished
/// piece are made.
fn jobs<'w>(wish: &'w Publish) -> Vec<Job<'w>> {
    let of = |file: &'w PathBuf| {
        let rounds = input::holds_rounds(&file.to_string_lossy());
        let read = rounds.then(|| input::bytes(file).ok()).flatten().map(Arc::new);
        let text = read.as_ref().and_then(|read| text_of(&read.1, &mut Report::new()));
        let mut names: Vec<_> =
            text.map(pieces).unwrap_or_default().into_iter().map(|piece| Some(piece.name)).collect();
        if names.is_empty() {
            names.push(None);
        }
        let several = names.len() > 1 && products(wish).iter().any(|product| product.name() == TOGETHER);
        let all = several.then(|| Job { file, read: read.clone(), piece: None, together: true });
        let one = move |piece| Job { file, read: read.clone(), piece, together: false };
        names.into_iter().map(one).chain(all)
    };
    wish.files.iter().flat_map(of).collect()
}

/// How the files of a design are called, and the folder they go to; each piece of a text has a folder of its own.
fn place(wish: &Publish, job: &Job<'_>, all: usize) -> (String, PathBuf) {
    let own = stem_of(job.file.file_stem().map(|stem| stem.to_string_lossy()).unwrap_or_default().as_ref());
    let stem = match &job.piece {
        Some(piece) => stem_of(&format!("{own}-{}", piece.to_lowercase().replace(' ', "-"))),
        None => own.clone(),
    };
    let sized = wish.size.as_ref().map_or(stem.clone(), |size| stem_of(&format!("{stem}-{size}")));
    let folder = match &wish.output {
        None if job.piece.is_some() => PathBuf::from(&own).join(&sized),
        // Above the folders of its pieces.
        Some(folder) if job.together && wish.files.len() == 1 => folder.clone(),
        None => PathBuf::from(&sized),
        Some(folder) if all == 1 => folder.clone(),
        Some(folder) => folder.join(&sized),
    };
    (stem, folder)
}

/// True for folders that are one where upper and lower case are.
fn alike(one: &Path, other: &Path) -> bool {
    one.to_string_lossy().to_lowercase() == other.to_string_lossy().to_lowercase()
}

fn one(wish: &Publish, job: &Job<'_>, stem: &str, folder: &Path, swatch: Option<&Swatch>) -> Published {
    let (file, piece) = (job.file, job.piece.as_deref());
    let ended = |source, end| Published { source, folder: folder.to_owned(), end };
    let read = match job.read.clone().map_or_else(|| input::bytes(file).map(Arc::new), Ok) {
        Ok(read) => read,
        Err(error) => return ended(input::unreadable(file, &error), End::Failed(Outcome::CouldNotRun, None)),
    };
    let (name, bytes) = (read.0.clone(), &read.1);
    let photo = Photo::beside(file, bytes, swatch);
    let inputs = inputs(wish, &name, (bytes, job), (swatch, photo.as_ref()));
    if let Some(paths) = unchanged(folder, stem, &inputs).filter(|_| !wish.fresh) {
        let source = Source { name, text: String::new(), report: Default::default() };
        return ended(source, End::Unchanged(paths));
    }
    let made_from = MadeFrom {
        design: stem,
        inputs: &inputs,
        whole: wish.only.is_empty() || job.together,
        remove: wish.remove_old,
    };
    let beside = swatch.map(|swatch| swatch.path.as_path()).into_iter().chain(photo.as_ref().map(|photo| &*photo.path));
    let read: Vec<&Path> = std::iter::once(file).chain(beside).collect();
    let save = |source: Source, outputs: &[Output]| {
        let order = Order { folder, outputs, force: wish.force, source: Some(made_from) };
        match output::files(&order, &read, "give a folder that can be written, with `-o FOLDER`") {
            Ok(saved) => ended(source, End::Made(saved)),
            Err(why) => ended(source, End::Failed(Outcome::CouldNotRun, Some(why))),
        }
    };
    if job.together {
        // What is said of the pieces is said where each is made.
        let (source, pieces) = input::together(name.clone(), bytes, swatch, wish.rewrite);
        if pieces.is_empty() {
            return ended(source, End::Failed(Outcome::DesignErrors, None));
        }
        let mut source = Source { name, text: String::new(), report: Report::new() };
        return match publish_together(&pieces, stem, &DrawOptions::new(options(wish)), &mut source.report) {
            Some(outputs) => save(source, &outputs),
            None => ended(source, End::Failed(Outcome::CouldNotRun, None)),
        };
    }
    let (mut source, pattern) = input::worded(name, bytes, swatch, (wish.rewrite, piece));
    let shown = |pattern| match &photo {
        Some(photo) => photo.shown(pattern, &mut source),
        None => Some(pattern),
    };
    let Some(pattern) = pattern.and_then(shown) else {
        return ended(source, End::Failed(Outcome::DesignErrors, None));
    };
    let pattern = match &wish.size {
        Some(size) => match pattern.of_size(size) {
            Ok(pattern) => pattern,
            Err(unknown) => {
                let why = (unknown.message, unknown.help.unwrap_or_default());
                return ended(source, End::Failed(Outcome::CouldNotRun, Some(why)));
            }
        },
        None => pattern,
    };
    let Some(outputs) = publish(&pattern, stem, products(wish), &options(wish), &mut source.report) else {
        return ended(source, End::Failed(Outcome::CouldNotRun, None));
    };
    save(source, &outputs)
}

fn products(wish: &Publish) -> Vec<&'static Product> {
    if wish.only.is_empty() { PRODUCTS.iter().collect() } else { wish.only.clone() }
}

fn options(wish: &Publish) -> Options {
    Options {
        large: wish.large_print,
        print: wish.ink.value,
        rounds: wish.rounds.value,
        plain_words: wish.plain_words,
        chart: ChartWish {
            view: wish.view.map(|view| view.value),
            part: wish.part.clone(),
            every: wish.charts.value,
            hour: wish.start,
        },
        ..Options::new(wish.paper.clone())
    }
}

/// The checksum of all that decides what is made: this version, the wishes, the design, its swatch and its photograph.
fn inputs(
    wish: &Publish,
    name: &str,
    (bytes, job): (&[u8], &Job<'_>),
    (swatch, photo): (Option<&Swatch>, Option<&Photo>),
) -> String {
    let products: Vec<&str> = products(wish).iter().map(|product| product.name()).collect();
    let rounds = input::holds_rounds(name);
    let beside = swatch.filter(|_| rounds).map_or_else(String::new, |swatch| checksum(&swatch.bytes));
    let version = env!("CARGO_PKG_VERSION");
    let (options, anew, design) = (options(wish), wish.rewrite, checksum(bytes));
    let wishes = format!("{version}\n{products:?}\n{options:?}\n{anew}\n{rounds}\n{beside}\n{design}");
    let piece = if job.together { Some("together") } else { job.piece.as_deref() };
    let wishes = piece.map_or(wishes.clone(), |piece| format!("{wishes}\n{piece}"));
    let wishes = wish.size.as_ref().map_or(wishes.clone(), |size| format!("{wishes}\nsize {size}"));
    let wishes = photo.map_or(wishes.clone(), |photo| format!("{wishes}\nphoto {}", photo.checksum()));
    checksum(wishes.as_bytes())
}

impl Published {
    fn outcome(&self) -> Outcome {
        match self.end {
            End::Made(_) | End::Unchanged(_) => Outcome::Done,
            End::Failed(outcome, _) => outcome,
        }
    }

    fn paths(&self) -> &[PathBuf] {
        match &self.end {
            End::Made(saved) => &saved.paths,
            End::Unchanged(paths) => paths,
            End::Failed(..) => &[],
        }
    }
}

/// Complaints design by design, the paths of all files, and for several designs how many came to what end.
fn told(wish: &Publish, published: &[Published]) -> Outcome {
    for one in published {
        if !wish.quiet || one.outcome() != Outcome::Done {
            show::complaints(&one.source);
        }
        match &one.end {
            End::Made(saved) if !wish.quiet => cautions(saved),
            End::Failed(_, Some((message, help))) => {
                failure(message, help);
            }
            End::Unchanged(_) if !wish.quiet && published.len() == 1 => {
                note(&format!("{}: nothing has changed since it was made; `--fresh` makes it anew", one.source.name));
            }
            End::Made(_) | End::Unchanged(_) | End::Failed(_, None) => {}
        }
    }
    let failed: Vec<&str> =
        published.iter().filter(|one| one.outcome() != Outcome::Done).map(|one| one.source.name.as_str()).collect();
    if published.len() > 1 {
        let unchanged = published.iter().filter(|one| matches!(one.end, End::Unchanged(_))).count();
        let made = published.len() - failed.len() - unchanged;
        if !wish.quiet {
            note(&format!("{} designs: {made} made, {unchanged} unchanged, {} failed", published.len(), failed.len()));
        }
        if !failed.is_empty() {
            note(&format!("failed: {}", failed.join(", ")));
        }
    }
    if wish.quiet {
        return Outcome::Done;
    }
    let paths = published.iter().flat_map(Published::paths);
    data(&paths.map(|path| format!("{}\n", path.display())).collect::<String>())
}

/// A design in the report as JSON.
#[derive(Serialize)]
struct Entry<'a> {
    design: &'a str,
    /// `made`, `unchanged` or `failed`.
    end: &'static str,
    folder: String,
    files: Vec<String>,
    outdated: Vec<String>,
    removed: Vec<String>,
    complaints: Vec<JsonComplaint<'a>>,
    /// Why nothing was made, where the complaints don't say it.
    why: Option<&'a str>,
    cautions: &'a [String],
}

impl<'a> Entry<'a> {
    fn of(published: &'a Published) -> Self {
        let texts = |paths: &[PathBuf]| paths.iter().map(|path| path.display().to_string()).collect();
        let (end, saved, why) = match &published.end {
            End::Made(saved) => ("made", Some(saved), None),
            End::Unchanged(_) => ("unchanged", None, None),
            End::Failed(_, why) => ("failed", None, why.as_ref().map(|(message, _)| message.as_str())),
        };
        Self {
            design: &published.source.name,
            end,
            folder: published.folder.display().to_string(),
            files: texts(published.paths()),
            outdated: saved.map_or_else(Vec::new, |saved| texts(&saved.outdated)),
            removed: saved.map_or_else(Vec::new, |saved| texts(&saved.removed)),
            complaints: show::json(&published.source),
            why,
            cautions: saved.map_or(&[], |saved| &saved.cautions),
        }
    }
}

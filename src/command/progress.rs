//! Telling that something is under way, where it takes long and a person looks.

use std::io::{self, IsTerminal};
use std::sync::Arc;
use std::sync::mpsc::{self, RecvTimeoutError, Sender};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use indicatif::{ProgressBar, ProgressStyle};

/// What is done sooner than this is not spoken of.
const LONG: Duration = Duration::from_millis(700);

/// How often it moves.
const TICK: Duration = Duration::from_millis(120);

/// Something under way, of one step or several. Gone without a trace when it is dropped.
pub(super) struct Progress {
    bar: Arc<ProgressBar>,
    /// Dropped to end the telling.
    end: Option<Sender<()>>,
    telling: Option<JoinHandle<()>>,
}

impl Progress {
    /// Begins a piece of work of so many steps.
    pub(super) fn new(steps: usize) -> Self {
        let bar = Arc::new(ProgressBar::hidden());
        bar.set_length(steps as u64);
        if !io::stderr().is_terminal() {
            return Self { bar, end: None, telling: None };
        }
        let (end, ended) = mpsc::channel();
        let shown = Arc::clone(&bar);
        let telling = thread::spawn(move || {
            if ended.recv_timeout(LONG) != Err(RecvTimeoutError::Timeout) {
                return;
            }
            let form = if steps > 1 { "{spinner} {pos}/{len} {wide_msg}" } else { "{spinner} {elapsed} {wide_msg}" };
            if let Ok(style) = ProgressStyle::with_template(form) {
                shown.set_style(style);
            }
            shown.set_draw_target(indicatif::ProgressDrawTarget::stderr());
            while ended.recv_timeout(TICK) == Err(RecvTimeoutError::Timeout) {
                shown.tick();
            }
        });
        Self { bar, end: Some(end), telling: Some(telling) }
    }

    /// One step is done.
    pub(super) fn done(&self, what: &str) {
        self.bar.inc(1);
        self.bar.set_message(what.to_owned());
    }
}

impl Drop for Progress {
    fn drop(&mut self) {
        drop(self.end.take());
        if let Some(telling) = self.telling.take() {
            let _ = telling.join();
        }
        self.bar.finish_and_clear();
    }
}

//! Changing several files at once: a journal says what is under way until the last of them stands.
//!
//! While the journal is there the change has not happened: whatever stands in the places of the files is put back. Once
//! it is gone the change has happened. Either way what lies beside the files is litter then.

use std::borrow::Cow;
use std::io;
use std::path::{Path, PathBuf};

use super::super::seal::checksum;
use super::OWN;
use super::disk::{Disk, Found};

/// The name of the journal.
const JOURNAL: &str = ".roundelay-journal";

/// What happens to one file, as the journal says it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Step {
    pub(super) name: String,
    /// Checksum of what stands there; nothing where nothing does.
    pub(super) old: Option<String>,
    /// Checksum of what is to stand there; nothing where it is removed.
    pub(super) new: Option<String>,
}

/// What happens to one file, with its bytes.
pub(super) struct Change<'o> {
    pub(super) step: Step,
    pub(super) bytes: Cow<'o, [u8]>,
    /// The rights it gets; nothing for the usual ones.
    pub(super) mode: Option<u32>,
}

/// The file beside the others that holds the new bytes of a step.
fn part(folder: &Path, index: usize) -> PathBuf {
    folder.join(format!("{OWN}{index}.part"))
}

/// The file beside the others that holds the old bytes of a step.
fn kept(folder: &Path, index: usize) -> PathBuf {
    folder.join(format!("{OWN}{index}.old"))
}

type Failed = (PathBuf, io::Error);

fn at(path: &Path) -> impl FnOnce(io::Error) -> Failed {
    let path = path.to_owned();
    move |cause| (path, cause)
}

/// Carries out all changes or none. True where the file system could not say when something was safe.
///
/// # Errors
/// The path and the cause of what failed; everything is as before, or is put back by the next [`recover`].
pub(super) fn carry_out(disk: &dyn Disk, folder: &Path, changes: &[Change<'_>]) -> Result<bool, Failed> {
    let done = prepare(disk, folder, changes).and_then(|unsynced| Ok(put(disk, folder, changes)? || unsynced));
    match done {
        Ok(unsynced) => {
            // From here on the change stands: what can't be cleared away now is cleared by the next run.
            let _ = sweep(disk, folder);
            Ok(unsynced)
        }
        Err((path, cause)) => match recover(disk, folder) {
            Ok(()) => Err((path, cause)),
            Err(stuck) => {
                let why =
                    format!("{cause}; what was there before is put back by the next run, which now failed: {stuck}");
                Err((path, io::Error::new(cause.kind(), why)))
            }
        },
    }
}

/// Writes the new bytes and a second name for the old ones beside every file, then the journal.
fn prepare(disk: &dyn Disk, folder: &Path, changes: &[Change<'_>]) -> Result<bool, Failed> {
    let mut unsynced = false;
    for (index, change) in changes.iter().enumerate() {
        let path = folder.join(&change.step.name);
        if change.step.new.is_some() {
            unsynced |= !disk.write(&part(folder, index), &change.bytes, change.mode).map_err(at(&path))?;
        }
        if change.step.old.is_some() {
            keep(disk, &path, &kept(folder, index)).map_err(at(&path))?;
        }
    }
    let steps: Vec<Step> = changes.iter().map(|change| change.step.clone()).collect();
    let (journal, beside) = (folder.join(JOURNAL), folder.join(JOURNAL.to_owned() + ".part"));
    unsynced |= !disk.write(&beside, &written(&steps), None).map_err(at(folder))?;
    disk.rename(&beside, &journal).map_err(at(folder))?;
    Ok(unsynced | !disk.sync_folder(folder).map_err(at(folder))?)
}

/// A second name for a file, or where the file system has none, a copy.
fn keep(disk: &dyn Disk, path: &Path, kept: &Path) -> io::Result<()> {
    if disk.link(path, kept).is_ok() {
        return Ok(());
    }
    let mode = match disk.look(path)? {
        Found::File { mode, .. } => mode,
        Found::Nothing | Found::Folder | Found::Other => None,
    };
    disk.write(kept, &disk.read(path)?, mode).map(drop)
}

/// Puts every file in its place and takes the journal away: from that moment the change has happened.
fn put(disk: &dyn Disk, folder: &Path, changes: &[Change<'_>]) -> Result<bool, Failed> {
    for (index, change) in changes.iter().enumerate() {
        let path = folder.join(&change.step.name);
        match change.step.new {
            Some(_) => disk.rename(&part(folder, index), &path),
            None => disk.remove(&path),
        }
        .map_err(at(&path))?;
    }
    let synced = disk.sync_folder(folder).map_err(at(folder))?;
    disk.remove(&folder.join(JOURNAL)).map_err(at(folder))?;
    Ok(!synced)
}

/// Puts back what a run that did not come to its end has changed, and clears away what it left. A file that someone has
/// changed since is left as it is.
pub(super) fn recover(disk: &dyn Disk, folder: &Path) -> io::Result<()> {
    let journal = folder.join(JOURNAL);
    if disk.look(&journal)? != Found::Nothing {
        for (index, step) in read(&disk.read(&journal)?).iter().enumerate() {
            undo(disk, folder, index, step)?;
        }
        disk.remove(&journal)?;
    }
    sweep(disk, folder)
}

/// Puts one file back. May be done twice: what is back already stays.
fn undo(disk: &dyn Disk, folder: &Path, index: usize, step: &Step) -> io::Result<()> {
    let (path, part, kept) = (folder.join(&step.name), part(folder, index), kept(folder, index));
    let there = disk.look(&path)?;
    let Some(new) = &step.new else {
        return if there == Found::Nothing && step.old.is_some() { disk.rename(&kept, &path) } else { Ok(()) };
    };
    let placed = disk.look(&part)? == Found::Nothing
        && matches!(there, Found::File { .. })
        && checksum(&disk.read(&path)?) == *new;
    if !placed {
        return Ok(());
    }
    disk.rename(if step.old.is_some() { &kept } else { &path }, if step.old.is_some() { &path } else { &part })
}

/// Clears away what lies beside the files.
fn sweep(disk: &dyn Disk, folder: &Path) -> io::Result<()> {
    for name in disk.names(folder)?.iter().filter(|name| is_litter(name)) {
        disk.remove(&folder.join(name))?;
    }
    Ok(())
}

/// True for the names of files that only a run under way has a use for.
fn is_litter(name: &str) -> bool {
    let Some(rest) = name.strip_prefix(OWN) else { return false };
    let Some((stem, ending)) = rest.rsplit_once('.') else { return false };
    let counted = !stem.is_empty() && stem.chars().all(|letter| letter.is_ascii_digit());
    matches!(ending, "part" | "old") && counted || rest == "journal.part"
}

/// One line a step: old checksum, new checksum, name; a hyphen for none.
fn written(steps: &[Step]) -> Vec<u8> {
    let sum = |sum: &Option<String>| sum.clone().unwrap_or_else(|| "-".to_owned());
    let lines = steps.iter().map(|step| format!("{} {} {}\n", sum(&step.old), sum(&step.new), step.name));
    lines.collect::<String>().into_bytes()
}

fn read(journal: &[u8]) -> Vec<Step> {
    let sum = |word: &str| (word != "-").then(|| word.to_owned());
    let step = |line: &str| {
        let (old, rest) = line.split_once(' ')?;
        let (new, name) = rest.split_once(' ')?;
        let plain = Path::new(name).file_name().is_some_and(|plain| plain == name);
        plain.then(|| Step { name: name.to_owned(), old: sum(old), new: sum(new) })
    };
    String::from_utf8_lossy(journal).lines().filter_map(step).collect()
}

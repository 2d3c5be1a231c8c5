//! Writing to disk: all files of a run or none, and nothing that the tool did not make is replaced.
//!
//! Under a lock on the folder, every file is first written beside its place and synced; a journal then names what is
//! about to change; the old files are kept beside theirs until the last new one stands. Where a step fails everything is
//! put back, and where the run is killed the next one to come into the folder puts it back. A file is taken for the tool's own
//! where it has the checksum that the folder's manifest or its own seal says.

mod disk;
#[cfg(test)]
mod faults;
mod journal;
mod manifest;
#[cfg(test)]
mod tests;

use std::fmt;
use std::io;
use std::path::{Path, PathBuf};

use super::Output;
use super::seal::{checksum, is_sealed};
use disk::{Disk, Found, Real};
use journal::{Change, Step};
use manifest::{Edition, Manifest};

/// How the names begin of all that stands in a folder besides what was asked for.
const OWN: &str = ".roundelay-";

/// The name of the manifest.
pub const MANIFEST: &str = ".roundelay-manifest";

/// Longest name of a file that every common file system holds, in bytes.
const LONGEST_NAME: usize = 255;

/// What is to be written.
#[derive(Clone, Debug)]
pub struct Order<'a> {
    /// The folder, which is made where it isn't there.
    pub folder: &'a Path,
    /// The files.
    pub outputs: &'a [Output],
    /// True where files that the tool did not make may be replaced.
    pub force: bool,
    /// What the files are an edition of, for the folder's manifest; nothing for a single picture, which carries a seal.
    pub source: Option<Source<'a>>,
}

/// What the files of a manifest were made from.
#[derive(Clone, Debug)]
pub struct Source<'a> {
    /// The name of the design.
    pub design: &'a str,
    /// What decides whether they would be made the same again: a checksum of all that went in.
    pub inputs: &'a str,
    /// True where these are all files of the design, so that others of an earlier run are out of date.
    pub whole: bool,
    /// True where such files are removed.
    pub remove: bool,
}

/// What was written.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Saved {
    /// The places of the files, in the order of the outputs.
    pub paths: Vec<PathBuf>,
    /// Files of an earlier run, untouched since, that are no longer made and still there.
    pub outdated: Vec<PathBuf>,
    /// Such files that were removed.
    pub removed: Vec<PathBuf>,
    /// What the file system can't do, in words; the files are written nevertheless.
    pub cautions: Vec<String>,
}

/// Why nothing was written.
#[derive(Debug)]
pub enum SaveError {
    /// A file or folder can't be written.
    Failed {
        /// The file or folder.
        path: PathBuf,
        /// What the system said.
        cause: io::Error,
    },
    /// These files are there, and the tool did not make them, or they were changed since.
    Foreign(Vec<PathBuf>),
}

impl fmt::Display for SaveError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Failed { path, cause } => write!(f, "{} can't be written: {cause}", path.display()),
            Self::Foreign(paths) => {
                let paths: Vec<String> = paths.iter().map(|path| path.display().to_string()).collect();
                let (it, was) = if paths.len() == 1 { ("it", "was") } else { ("they", "were") };
                write!(
                    f,
                    "{} would be replaced, and {it} {was} not made by Roundelay or changed since",
                    paths.join(", ")
                )
            }
        }
    }
}

impl std::error::Error for SaveError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        match self {
            Self::Failed { cause, .. } => Some(cause),
            Self::Foreign(_) => None,
        }
    }
}

impl SaveError {
    fn at(path: &Path) -> impl FnOnce(io::Error) -> Self {
        let path = path.to_owned();
        move |cause| Self::Failed { path, cause }
    }
}

/// Writes the files, all or none. No more than one is open at a time.
///
/// # Errors
/// The folder can't be made or written, a name is no plain file name or too long, a place is taken by something else than a
/// file, by a file that is read-only, or without `force` by one that the tool did not make. Everything is then as before.
pub fn save(order: &Order<'_>) -> Result<Saved, SaveError> {
    save_on(&Real, order)
}

/// Writes one file that must not exist yet.
///
/// # Errors
/// It exists (kind `AlreadyExists`), or can't be written.
pub fn save_new(path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    save_new_on(&Real, path, bytes)
}

/// The files of a design in a folder, where all stand as they were written and were made from the same inputs.
pub fn unchanged(folder: &Path, design: &str, inputs: &str) -> Option<Vec<PathBuf>> {
    let manifest = Manifest::parse(&Real.read(&folder.join(MANIFEST)).ok()?);
    let edition = manifest.edition(design).filter(|edition| edition.inputs == inputs)?;
    let whole = |(name, sum): &(String, String)| {
        let path = folder.join(name);
        Real.read(&path).is_ok_and(|bytes| checksum(&bytes) == *sum).then_some(path)
    };
    edition.files.iter().map(whole).collect()
}

fn save_new_on(disk: &dyn Disk, path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    let failed = || SaveError::at(path);
    let taken = || io::Error::new(io::ErrorKind::AlreadyExists, "it exists");
    if disk.look(path).map_err(failed())? != Found::Nothing {
        return Err(failed()(taken()));
    }
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let _lock = disk.lock(folder).map_err(failed())?;
    journal::recover(disk, folder).map_err(failed())?;
    let part = folder.join(OWN.to_owned() + "0.part");
    let placed = disk.write(&part, bytes, None).and_then(|_| match disk.link(&part, path) {
        Err(cause) if cause.kind() == io::ErrorKind::AlreadyExists => Err(taken()),
        // Without second names there is a moment between the look and the move, for whoever keeps to no lock.
        Err(_) if disk.look(path)? == Found::Nothing => disk.rename(&part, path),
        Err(_) => Err(taken()),
        Ok(()) => Ok(()),
    });
    // Litter at worst, which the next run clears away.
    let _ = disk.remove(&part);
    placed.map_err(failed())
}

fn save_on(disk: &dyn Disk, order: &Order<'_>) -> Result<Saved, SaveError> {
    let made = make_folder(disk, order.folder)?;
    let saved = in_folder(disk, order);
    if saved.is_err() {
        // A folder that someone else has put something into by now can't be removed, and isn't.
        for folder in made.iter().rev() {
            let _ = disk.remove_folder(folder);
        }
    }
    saved
}

/// Makes the folder and those above it; gives those that weren't there, from the top.
fn make_folder(disk: &dyn Disk, folder: &Path) -> Result<Vec<PathBuf>, SaveError> {
    let mut missing = Vec::new();
    for path in folder.ancestors().filter(|path| !path.as_os_str().is_empty()) {
        match disk.look_through(path).map_err(SaveError::at(path))? {
            Found::Nothing => missing.push(path.to_owned()),
            Found::Folder => break,
            Found::File { .. } | Found::Other => {
                let cause = io::Error::new(io::ErrorKind::NotADirectory, "it is a file and no folder");
                return Err(SaveError::at(path)(cause));
            }
        }
    }
    let mut made: Vec<PathBuf> = Vec::new();
    for path in missing.into_iter().rev() {
        match disk.make_folder(&path) {
            Ok(()) => made.push(path),
            Err(cause) if cause.kind() == io::ErrorKind::AlreadyExists => {}
            Err(cause) => {
                for folder in made.iter().rev() {
                    let _ = disk.remove_folder(folder);
                }
                return Err(SaveError::at(&path)(cause));
            }
        }
    }
    Ok(made)
}

fn in_folder(disk: &dyn Disk, order: &Order<'_>) -> Result<Saved, SaveError> {
    let folder = order.folder;
    for output in order.outputs {
        name(&output.name).map_err(SaveError::at(&folder.join(&output.name)))?;
    }
    let mut saved =
        Saved { paths: order.outputs.iter().map(|one| folder.join(&one.name)).collect(), ..Saved::default() };
    let here = || SaveError::at(folder);
    // Held to the end, and given back by the system where the run is killed.
    let lock = disk.lock(folder).map_err(here())?;
    if lock.is_none() {
        saved.cautions.push("the folder can't be locked against another run on this file system".to_owned());
    }
    journal::recover(disk, folder).map_err(here())?;

    let mut manifest = Manifest::default();
    let listed = folder.join(MANIFEST);
    let old = match disk.look(&listed).map_err(SaveError::at(&listed))? {
        Found::Nothing => None,
        Found::File { .. } | Found::Folder | Found::Other => Some(disk.read(&listed).map_err(SaveError::at(&listed))?),
    };
    if let Some(old) = &old {
        manifest = Manifest::parse(old);
    }
    let mut changes = changes(disk, order, &manifest)?;
    if let Some(source) = &order.source {
        outdated(disk, order, source, &manifest, &mut changes, &mut saved)?;
        let new = manifest.with(edition(order, source, &manifest, &saved)).write();
        if old.as_deref() != Some(&new[..]) {
            let step = Step { name: MANIFEST.to_owned(), old: old.as_deref().map(checksum), new: Some(checksum(&new)) };
            changes.push(Change { step, bytes: new.into(), mode: None });
        }
    }
    if changes.is_empty() {
        return Ok(saved);
    }
    let unsynced = journal::carry_out(disk, folder, &changes).map_err(|(path, cause)| SaveError::at(&path)(cause))?;
    if unsynced {
        saved.cautions.push(
            "the file system can't say when the files are safe: a loss of power within the next minute may cost them"
                .to_owned(),
        );
    }
    Ok(saved)
}

/// The files whose bytes change, each with what stands in its place now.
fn changes<'o>(disk: &dyn Disk, order: &Order<'o>, manifest: &Manifest) -> Result<Vec<Change<'o>>, SaveError> {
    let (mut changes, mut foreign) = (Vec::new(), Vec::new());
    for output in order.outputs {
        let path = order.folder.join(&output.name);
        let failed = || SaveError::at(&path);
        let refused = |kind, why: &str| Err(failed()(io::Error::new(kind, why)));
        let new = checksum(&output.bytes);
        let (old, mode) = match disk.look(&path).map_err(failed())? {
            Found::Nothing => (None, None),
            Found::Folder => return refused(io::ErrorKind::IsADirectory, "a folder has this name"),
            Found::Other => return refused(io::ErrorKind::InvalidInput, "a link or a device has this name"),
            // A new file in its place would not mind, but whoever made it read-only does.
            Found::File { read_only: true, .. } => return refused(io::ErrorKind::PermissionDenied, "it is read-only"),
            Found::File { mode, .. } => {
                let bytes = disk.read(&path).map_err(failed())?;
                let sum = checksum(&bytes);
                if sum == new {
                    continue;
                }
                if !(order.force || manifest.made(&output.name, &sum) || is_sealed(&bytes)) {
                    foreign.push(path);
                    continue;
                }
                (Some(sum), mode)
            }
        };
        let step = Step { name: output.name.clone(), old, new: Some(new) };
        changes.push(Change { step, bytes: (&output.bytes[..]).into(), mode });
    }
    if foreign.is_empty() { Ok(changes) } else { Err(SaveError::Foreign(foreign)) }
}

/// Finds the files of an earlier run that are no longer made, and has them removed where that is asked for. Those that were
/// changed by hand are the maker's and stay.
fn outdated(
    disk: &dyn Disk,
    order: &Order<'_>,
    source: &Source<'_>,
    manifest: &Manifest,
    changes: &mut Vec<Change<'_>>,
    saved: &mut Saved,
) -> Result<(), SaveError> {
    let Some(edition) = manifest.edition(source.design).filter(|_| source.whole) else { return Ok(()) };
    for (name, sum) in edition.files.iter().filter(|(name, _)| order.outputs.iter().all(|one| one.name != *name)) {
        let path = order.folder.join(name);
        let Found::File { .. } = disk.look(&path).map_err(SaveError::at(&path))? else { continue };
        if checksum(&disk.read(&path).map_err(SaveError::at(&path))?) != *sum {
            continue;
        }
        if source.remove {
            let step = Step { name: name.clone(), old: Some(sum.clone()), new: None };
            changes.push(Change { step, bytes: Vec::new().into(), mode: None });
            saved.removed.push(path);
        } else {
            saved.outdated.push(path);
        }
    }
    Ok(())
}

/// What the manifest is to say of this design: the files of this run, and those of earlier ones that it leaves.
fn edition(order: &Order<'_>, source: &Source<'_>, manifest: &Manifest, saved: &Saved) -> Edition {
    let mut files: Vec<(String, String)> =
        order.outputs.iter().map(|output| (output.name.clone(), checksum(&output.bytes))).collect();
    let old = manifest.edition(source.design).map_or(&[][..], |edition| &edition.files);
    for (name, sum) in old.iter().filter(|(name, _)| order.outputs.iter().all(|one| one.name != *name)) {
        if !source.whole || saved.outdated.contains(&order.folder.join(name)) {
            files.push((name.clone(), sum.clone()));
        }
    }
    Edition { design: source.design.to_owned(), inputs: source.inputs.to_owned(), files }
}

/// Whether a name is one of a plain file that can be written anywhere.
fn name(name: &str) -> io::Result<()> {
    let refused = |why: String| Err(io::Error::new(io::ErrorKind::InvalidInput, why));
    let plain = Path::new(name).file_name().is_some_and(|plain| plain == name);
    if !plain || name.starts_with(OWN) || name.chars().any(char::is_control) {
        return refused("this is no plain file name".to_owned());
    }
    if name.len() > LONGEST_NAME {
        return refused(format!("its name has {} bytes, and {LONGEST_NAME} are the most", name.len()));
    }
    Ok(())
}

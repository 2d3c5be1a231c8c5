//! The save room on a disk that fails: at every single thing that is done to it in turn, once or for good, as a run does
//! that is killed there. What is found afterwards is all old or all new.

use std::cell::Cell;
use std::collections::BTreeMap;
use std::fs;
use std::io::ErrorKind;

use super::disk::Lock;
use super::*;

/// How a disk fails.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Fault {
    /// Once, with what the system says of a full or a broken disk.
    Once(ErrorKind),
    /// From then on in everything, which is what the disk sees of a run that is killed.
    Killed,
}

/// A disk that fails at one of the things done to it.
struct Failing {
    at: usize,
    fault: Fault,
    done: Cell<usize>,
    /// True where files have no second names, as on the file systems of memory cards.
    linkless: bool,
    /// True where nothing can be synced or locked.
    plain: bool,
}

impl Failing {
    fn new(at: usize, fault: Fault, linkless: bool) -> Self {
        Self { at, fault, done: Cell::new(0), linkless, plain: false }
    }

    /// Counts one thing done, and fails where it is the one.
    fn step(&self) -> io::Result<()> {
        let done = self.done.replace(self.done.get() + 1);
        match self.fault {
            Fault::Once(kind) if done == self.at => Err(io::Error::new(kind, "the disk fails")),
            Fault::Killed if done >= self.at => Err(io::Error::other("killed")),
            Fault::Once(_) | Fault::Killed => Ok(()),
        }
    }
}

impl Disk for Failing {
    fn look(&self, path: &Path) -> io::Result<Found> {
        self.step()?;
        Real.look(path)
    }

    fn look_through(&self, path: &Path) -> io::Result<Found> {
        self.step()?;
        Real.look_through(path)
    }

    fn names(&self, folder: &Path) -> io::Result<Vec<String>> {
        self.step()?;
        Real.names(folder)
    }

    fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
        self.step()?;
        Real.read(path)
    }

    /// Fails before the file is there, with half of it written, or with all of it.
    fn write(&self, path: &Path, bytes: &[u8], _: Option<u32>) -> io::Result<bool> {
        self.step()?;
        if let Err(error) = self.step() {
            fs::write(path, &bytes[..bytes.len() / 2])?;
            return Err(error);
        }
        // Nothing here outlives the test, so that nothing is waited for.
        fs::OpenOptions::new().write(true).create_new(true).open(path)?;
        fs::write(path, bytes)?;
        self.step()?;
        Ok(!self.plain)
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step()?;
        if self.linkless { Err(ErrorKind::Unsupported.into()) } else { Real.link(from, to) }
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        self.step()?;
        Real.rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        self.step()?;
        Real.remove(path)
    }

    fn make_folder(&self, path: &Path) -> io::Result<()> {
        self.step()?;
        Real.make_folder(path)
    }

    fn remove_folder(&self, path: &Path) -> io::Result<()> {
        self.step()?;
        Real.remove_folder(path)
    }

    fn lock(&self, folder: &Path) -> io::Result<Option<Box<dyn Lock>>> {
        self.step()?;
        if self.plain { Ok(None) } else { Real.lock(folder) }
    }

    fn sync_folder(&self, folder: &Path) -> io::Result<bool> {
        self.step()?;
        Ok(folder.is_dir() && !self.plain)
    }
}

type Files = BTreeMap<String, String>;

fn files(folder: &Path) -> Files {
    let Ok(entries) = fs::read_dir(folder) else { return Files::new() };
    let file = |path: PathBuf| {
        let name = path.file_name().unwrap().to_string_lossy().into_owned();
        (name, fs::read_to_string(path).unwrap())
    };
    entries.map(|entry| file(entry.unwrap().path())).collect()
}

/// What the maker sees of a folder.
fn seen(folder: &Path) -> Files {
    files(folder).into_iter().filter(|(name, _)| !name.starts_with(OWN)).collect()
}

fn outputs(files: &[(&str, &str)]) -> Vec<Output> {
    files.iter().map(|(name, text)| Output { name: (*name).to_owned(), bytes: text.as_bytes().to_vec() }).collect()
}

const OLD: [(&str, &str); 3] = [("S.txt", "old small"), ("M.txt", "old medium"), ("L.txt", "the same")];
const NEW: [(&str, &str); 4] =
    [("S.txt", "new small"), ("L.txt", "the same"), ("XL.txt", "new extra large"), ("key.txt", "new key")];

fn order<'a>(folder: &'a Path, outputs: &'a [Output]) -> Order<'a> {
    let source = Source { design: "hat", inputs: "x", whole: true, remove: true };
    Order { folder, outputs, force: false, source: Some(source) }
}

fn as_files(files: &[(&str, &str)]) -> Files {
    files.iter().map(|(name, text)| ((*name).to_owned(), (*text).to_owned())).collect()
}

/// A disk that never fails.
fn sound() -> Failing {
    Failing::new(usize::MAX, Fault::Killed, false)
}

/// A folder with an earlier edition, or none, and a file of the maker's.
fn begun(old: bool) -> (tempfile::TempDir, PathBuf) {
    let home = tempfile::tempdir().unwrap();
    let folder = home.path().join("hat");
    if old {
        save_on(&sound(), &order(&folder, &outputs(&OLD))).unwrap();
        fs::write(folder.join("notes.txt"), "the maker's").unwrap();
    }
    (home, folder)
}

/// Lets every step fail in turn; gives how many there are.
fn try_all(old: bool, fault: Fault, linkless: bool) -> usize {
    let wanted = outputs(&NEW);
    for at in 0.. {
        let (home, folder) = begun(old);
        let before = seen(&folder);
        let disk = Failing::new(at, fault, linkless);
        let saved = save_on(&disk, &order(&folder, &wanted));
        if disk.done.get() <= at {
            assert!(saved.is_ok(), "{fault:?}: no step failed, and still {saved:?}");
            return at;
        }
        let mut new = as_files(&NEW);
        if old {
            new.insert("notes.txt".to_owned(), "the maker's".to_owned());
        }
        // A run that was not killed has put everything back by itself; what a killed one left half done is put back by the
        // next that comes here, whatever that one then does.
        if fault == Fault::Killed {
            let other = outputs(&[("../no.txt", "")]);
            let _ = in_folder(&Real, &order(&folder, &other));
            if folder.exists() {
                let empty = Order { source: None, ..order(&folder, &[]) };
                in_folder(&Real, &empty).unwrap();
            }
        }
        let after = seen(&folder);
        assert!(after == before || after == new, "{fault:?} at {at}: {after:?}");
        if let Ok(saved) = &saved {
            assert_eq!((after, saved.paths.len()), (new, NEW.len()), "{fault:?} at {at}");
        } else if fault != Fault::Killed {
            assert_eq!(after, before, "{fault:?} at {at}: it failed, so nothing has changed");
            // A step that fails while the room is tidied up is cleared by the next run.
            if !old && folder.exists() {
                assert!(files(&folder).is_empty(), "{fault:?} at {at}: {:?}", files(&folder));
            }
        }
        save_on(&sound(), &order(&folder, &wanted)).unwrap_or_else(|error| panic!("{fault:?} at {at}: {error}"));
        assert_eq!(seen(&folder), as_files(&NEW).into_iter().chain(old.then(notes)).collect(), "{fault:?} at {at}");
        let litter: Vec<String> =
            files(&folder).into_keys().filter(|name| name.starts_with(OWN) && name != MANIFEST).collect();
        assert_eq!(litter, [""; 0], "{fault:?} at {at}");
        assert_eq!(fs::read_dir(home.path()).unwrap().count(), 1);
    }
    0
}

fn notes() -> (String, String) {
    ("notes.txt".to_owned(), "the maker's".to_owned())
}

#[test]
fn a_failure_at_any_step_leaves_all_old_or_all_new() {
    for linkless in [false, true] {
        for old in [false, true] {
            for kind in [ErrorKind::StorageFull, ErrorKind::PermissionDenied, ErrorKind::Other] {
                assert!(try_all(old, Fault::Once(kind), linkless) > 20);
            }
        }
    }
}

#[test]
fn a_run_killed_at_any_step_leaves_all_old_or_all_new_for_the_next() {
    for linkless in [false, true] {
        for old in [false, true] {
            assert!(try_all(old, Fault::Killed, linkless) > 20);
        }
    }
}

/// What a killed run had put in place already, and the maker has changed since, is the maker's.
#[test]
fn what_was_changed_after_a_run_was_killed_is_not_put_back() {
    let mut edited = 0;
    for at in 0.. {
        let (_home, folder) = begun(true);
        let disk = Failing::new(at, Fault::Killed, false);
        let wanted = outputs(&NEW);
        if save_on(&disk, &order(&folder, &wanted)).is_ok() {
            break;
        }
        if fs::read_to_string(folder.join("S.txt")).unwrap() == "new small" {
            edited += 1;
            fs::write(folder.join("S.txt"), "by hand").unwrap();
        }
        let before = fs::read_to_string(folder.join("S.txt")).unwrap();
        in_folder(&Real, &Order { source: None, ..order(&folder, &[]) }).unwrap();
        assert_eq!(fs::read_to_string(folder.join("S.txt")).unwrap(), before, "at {at}");
    }
    assert!(edited > 2, "some runs are killed in the midst of it");
}

#[test]
fn a_new_file_is_there_whole_or_not_at_all() {
    for linkless in [false, true] {
        for fault in [Fault::Once(ErrorKind::StorageFull), Fault::Killed] {
            for at in 0.. {
                let home = tempfile::tempdir().unwrap();
                let path = home.path().join("hat.yaml");
                let disk = Failing::new(at, fault, linkless);
                let saved = save_new_on(&disk, &path, b"a whole design");
                let there = fs::read_to_string(&path).ok();
                assert!(there.is_none() || there.as_deref() == Some("a whole design"), "{fault:?} at {at}: {there:?}");
                if disk.done.get() <= at {
                    assert!(saved.is_ok() && there.is_some());
                    break;
                }
            }
        }
    }
}

#[test]
fn a_disk_without_locks_and_sync_is_written_and_told_of() {
    let (_home, folder) = begun(true);
    let disk = Failing { plain: true, ..sound() };
    let saved = save_on(&disk, &order(&folder, &outputs(&NEW))).unwrap();
    assert_eq!(saved.cautions.len(), 2, "{:?}", saved.cautions);
    assert_eq!(fs::read_to_string(folder.join("S.txt")).unwrap(), "new small");
}

//! The few things that are done to a disk, behind a trait so that tests can let each of them fail.

use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind, Write};
use std::path::Path;

/// What stands at a path.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Found {
    Nothing,
    /// A file, with its plain rights where the system has such.
    File {
        read_only: bool,
        mode: Option<u32>,
    },
    Folder,
    /// A link, a device, a pipe.
    Other,
}

/// Held while a folder is written.
pub(super) trait Lock {}

impl Lock for File {}

/// A disk.
pub(super) trait Disk {
    /// What stands at a path; a link is a link.
    fn look(&self, path: &Path) -> io::Result<Found>;
    /// What stands at a path, or where the link there leads.
    fn look_through(&self, path: &Path) -> io::Result<Found>;
    /// The names of what stands in a folder.
    fn names(&self, folder: &Path) -> io::Result<Vec<String>>;
    fn read(&self, path: &Path) -> io::Result<Vec<u8>>;
    /// Writes a new file, of these rights or the usual ones, and waits until it is safe. False where the file system
    /// can't say when that is.
    fn write(&self, path: &Path, bytes: &[u8], mode: Option<u32>) -> io::Result<bool>;
    /// A second name for a file.
    fn link(&self, from: &Path, to: &Path) -> io::Result<()>;
    fn rename(&self, from: &Path, to: &Path) -> io::Result<()>;
    fn remove(&self, path: &Path) -> io::Result<()>;
    fn make_folder(&self, path: &Path) -> io::Result<()>;
    fn remove_folder(&self, path: &Path) -> io::Result<()>;
    /// Waits until no other run holds the folder, and holds it; nothing where the file system has no locks.
    fn lock(&self, folder: &Path) -> io::Result<Option<Box<dyn Lock>>>;
    /// Waits until the names in a folder are safe. False where the file system can't say when that is.
    fn sync_folder(&self, folder: &Path) -> io::Result<bool>;
}

/// The disk of this machine.
pub(super) struct Real;

/// What is said where a file system can't do a thing, as opposed to failing at it.
fn can_t(kind: ErrorKind) -> bool {
    matches!(kind, ErrorKind::Unsupported | ErrorKind::InvalidInput)
}

fn synced(result: io::Result<()>) -> io::Result<bool> {
    match result {
        Ok(()) => Ok(true),
        Err(error) if can_t(error.kind()) => Ok(false),
        Err(error) => Err(error),
    }
}

fn found(data: io::Result<fs::Metadata>) -> io::Result<Found> {
    let data = match data {
        Ok(data) => data,
        Err(error) if error.kind() == ErrorKind::NotFound => return Ok(Found::Nothing),
        Err(error) => return Err(error),
    };
    if data.is_dir() {
        return Ok(Found::Folder);
    }
    if !data.is_file() {
        return Ok(Found::Other);
    }
    let rights = data.permissions();
    #[cfg(unix)]
    let mode = {
        use std::os::unix::fs::PermissionsExt;
        // Rights to read, write and run are carried over; to run as another is not.
        Some(rights.mode() & 0o777)
    };
    #[cfg(not(unix))]
    let mode = None;
    Ok(Found::File { read_only: rights.readonly(), mode })
}

impl Disk for Real {
    fn look(&self, path: &Path) -> io::Result<Found> {
        found(fs::symlink_metadata(path))
    }

    fn look_through(&self, path: &Path) -> io::Result<Found> {
        found(fs::metadata(path))
    }

    fn names(&self, folder: &Path) -> io::Result<Vec<String>> {
        let mut names = Vec::new();
        for entry in fs::read_dir(folder)? {
            // A name that is no text is none of ours.
            names.extend(entry?.file_name().into_string().ok());
        }
        Ok(names)
    }

    fn read(&self, path: &Path) -> io::Result<Vec<u8>> {
        fs::read(path)
    }

    fn write(&self, path: &Path, bytes: &[u8], mode: Option<u32>) -> io::Result<bool> {
        let mut file = OpenOptions::new().write(true).create_new(true).open(path)?;
        file.write_all(bytes)?;
        #[cfg(unix)]
        if let Some(mode) = mode {
            use std::os::unix::fs::PermissionsExt;
            file.set_permissions(fs::Permissions::from_mode(mode))?;
        }
        #[cfg(not(unix))]
        let _ = mode;
        synced(file.sync_all())
    }

    fn link(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::hard_link(from, to)
    }

    fn rename(&self, from: &Path, to: &Path) -> io::Result<()> {
        fs::rename(from, to)
    }

    fn remove(&self, path: &Path) -> io::Result<()> {
        fs::remove_file(path)
    }

    fn make_folder(&self, path: &Path) -> io::Result<()> {
        fs::create_dir(path)
    }

    fn remove_folder(&self, path: &Path) -> io::Result<()> {
        fs::remove_dir(path)
    }

    #[cfg(unix)]
    fn lock(&self, folder: &Path) -> io::Result<Option<Box<dyn Lock>>> {
        let file = File::open(folder)?;
        match file.lock() {
            Ok(()) => Ok(Some(Box::new(file))),
            Err(error) if can_t(error.kind()) => Ok(None),
            Err(error) => Err(error),
        }
    }

    /// A folder can't be opened everywhere, so that a file in it is held, and stays there.
    #[cfg(not(unix))]
    fn lock(&self, folder: &Path) -> io::Result<Option<Box<dyn Lock>>> {
        let path = folder.join(super::OWN.to_owned() + "lock");
        let file = OpenOptions::new().write(true).create(true).truncate(false).open(path)?;
        match file.lock() {
            Ok(()) => Ok(Some(Box::new(file))),
            Err(error) if can_t(error.kind()) => Ok(None),
            Err(error) => Err(error),
        }
    }

    #[cfg(unix)]
    fn sync_folder(&self, folder: &Path) -> io::Result<bool> {
        synced(File::open(folder)?.sync_all())
    }

    #[cfg(not(unix))]
    fn sync_folder(&self, _: &Path) -> io::Result<bool> {
        Ok(true)
    }
}

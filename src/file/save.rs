//! Writing to disk: beside the old file first, then in its place, so that a file that existed is whole at any moment.

use std::fs;
use std::io::{self, Write};
use std::path::{Path, PathBuf};

use tempfile::NamedTempFile;

use super::Output;

/// Why a file could not be written.
#[derive(Debug)]
pub struct SaveError {
    /// The file or folder.
    pub path: PathBuf,
    /// What the system said.
    pub cause: io::Error,
}

impl std::fmt::Display for SaveError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        // What the system said ends in the name of the file beside it, which tells a maker nothing.
        let cause = self.cause.to_string();
        let said = cause.split(" at path ").next().unwrap_or(&cause);
        write!(f, "{} can't be written: {said}", self.path.display())
    }
}

impl std::error::Error for SaveError {
    fn source(&self) -> Option<&(dyn std::error::Error + 'static)> {
        Some(&self.cause)
    }
}

/// Writes files into a folder, which is made where it isn't there. All are written beside their places before the first
/// is put in its place: where one can't be written, no file that existed is touched. Gives the paths in the same order.
///
/// # Errors
/// The folder can't be made or written, a name is no plain file name, or a place is taken by a folder or a file that is
/// read-only.
pub fn save(folder: &Path, outputs: &[Output]) -> Result<Vec<PathBuf>, SaveError> {
    let failed = |path: &Path| {
        let path = path.to_owned();
        move |cause| SaveError { path, cause }
    };
    fs::create_dir_all(folder).map_err(|cause| {
        let taken = folder.ancestors().find(|path| path.exists()).filter(|path| !path.is_dir());
        match taken {
            Some(file) => failed(file)(io::Error::new(io::ErrorKind::NotADirectory, "it is a file and no folder")),
            None => failed(folder)(cause),
        }
    })?;
    let mut written = Vec::new();
    for output in outputs {
        let path = folder.join(&output.name);
        check(&path, &output.name).map_err(failed(&path))?;
        let beside = beside(&path, &output.bytes).map_err(failed(&path))?;
        written.push((beside, path));
    }
    let place = |(beside, path): (NamedTempFile, PathBuf)| {
        beside.persist(&path).map_err(|error| failed(&path)(error.error))?;
        Ok(path)
    };
    written.into_iter().map(place).collect()
}

/// Writes one file that must not exist yet.
///
/// # Errors
/// It exists (kind `AlreadyExists`), or can't be written.
pub fn save_new(path: &Path, bytes: &[u8]) -> Result<(), SaveError> {
    let failed = |cause| SaveError { path: path.to_owned(), cause };
    let beside = beside(path, bytes).map_err(failed)?;
    beside.persist_noclobber(path).map_err(|error| failed(error.error))?;
    Ok(())
}

fn check(path: &Path, name: &str) -> io::Result<()> {
    let plain = Path::new(name).file_name().is_some_and(|plain| plain == name);
    if !plain {
        return Err(io::Error::new(io::ErrorKind::InvalidInput, "this is no plain file name"));
    }
    if path.is_dir() {
        return Err(io::Error::new(io::ErrorKind::IsADirectory, "a folder has this name"));
    }
    // A new file in its place would not mind, but whoever made it read-only does.
    if fs::metadata(path).is_ok_and(|old| old.permissions().readonly()) {
        return Err(io::Error::new(io::ErrorKind::PermissionDenied, "it is read-only"));
    }
    Ok(())
}

/// The bytes in a new file in the folder of `path`, with the rights that `path` has or a new file there would get.
fn beside(path: &Path, bytes: &[u8]) -> io::Result<NamedTempFile> {
    let folder = path.parent().filter(|folder| !folder.as_os_str().is_empty()).unwrap_or(Path::new("."));
    let mut builder = tempfile::Builder::new();
    builder.prefix(".roundelay-");
    #[cfg(unix)]
    let rights = {
        use std::os::unix::fs::PermissionsExt;
        fs::Permissions::from_mode(0o666)
    };
    #[cfg(unix)]
    builder.permissions(rights);
    let mut file = builder.tempfile_in(folder)?;
    file.write_all(bytes)?;
    file.flush()?;
    if let Ok(old) = fs::metadata(path) {
        fs::set_permissions(file.path(), old.permissions())?;
    }
    file.as_file().sync_all()?;
    Ok(file)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn output(name: &str, text: &str) -> Output {
        Output { name: name.to_owned(), bytes: text.as_bytes().to_vec() }
    }

    fn names(folder: &Path) -> Vec<String> {
        let mut names: Vec<String> =
            fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    }

    #[test]
    fn files_are_written_and_replaced() {
        let folder = tempfile::tempdir().unwrap();
        let inner = folder.path().join("new/deep");
        save(&inner, &[output("a.txt", "one"), output("b.txt", "two")]).unwrap();
        save(&inner, &[output("a.txt", "three")]).unwrap();
        assert_eq!(fs::read_to_string(inner.join("a.txt")).unwrap(), "three");
        assert_eq!(names(&inner), ["a.txt", "b.txt"]);
    }

    #[test]
    fn where_one_fails_no_old_file_is_touched_and_nothing_is_left_behind() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("a.txt"), "old").unwrap();
        fs::create_dir(folder.path().join("b.txt")).unwrap();
        let error = save(folder.path(), &[output("a.txt", "new"), output("b.txt", "new")]).unwrap_err();
        assert_eq!(error.path, folder.path().join("b.txt"));
        assert_eq!(fs::read_to_string(folder.path().join("a.txt")).unwrap(), "old");
        assert_eq!(names(folder.path()), ["a.txt", "b.txt"]);
    }

    #[test]
    fn a_read_only_file_stays_as_it_is() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.txt");
        fs::write(&path, "old").unwrap();
        let mut rights = fs::metadata(&path).unwrap().permissions();
        rights.set_readonly(true);
        fs::set_permissions(&path, rights).unwrap();
        let told = save(folder.path(), &[output("a.txt", "new")]).unwrap_err().to_string();
        assert!(told.ends_with("it is read-only"), "{told}");
        assert_eq!(fs::read_to_string(&path).unwrap(), "old");
    }

    #[test]
    fn a_file_in_place_of_a_folder_is_named() {
        let folder = tempfile::tempdir().unwrap();
        fs::write(folder.path().join("hat"), "old").unwrap();
        let told = save(&folder.path().join("hat/deep"), &[output("a.txt", "new")]).unwrap_err().to_string();
        assert!(told.ends_with("hat can't be written: it is a file and no folder"), "{told}");
    }

    #[test]
    fn a_name_can_t_leave_the_folder() {
        let folder = tempfile::tempdir().unwrap();
        for name in ["../a.txt", "", ".", "a/b", "/a.txt"] {
            assert!(save(folder.path(), &[output(name, "x")]).is_err(), "{name}");
        }
        assert!(names(folder.path()).is_empty());
    }

    #[test]
    fn a_new_file_never_replaces_one() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("hat.yaml");
        save_new(&path, b"first").unwrap();
        let error = save_new(&path, b"second").unwrap_err();
        assert_eq!(error.cause.kind(), io::ErrorKind::AlreadyExists);
        assert_eq!(fs::read_to_string(&path).unwrap(), "first");
        assert_eq!(names(folder.path()), ["hat.yaml"]);
    }

    #[test]
    fn a_complaint_names_the_file_and_not_the_one_beside_it() {
        let folder = tempfile::tempdir().unwrap();
        let told = save_new(&folder.path().join("no/hat.yaml"), b"x").unwrap_err().to_string();
        assert!(told.contains("hat.yaml can't be written") && !told.contains(".roundelay-"), "{told}");
    }

    #[cfg(unix)]
    #[test]
    fn a_replaced_file_keeps_its_rights() {
        use std::os::unix::fs::PermissionsExt;
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.txt");
        fs::write(&path, "old").unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o640)).unwrap();
        save(folder.path(), &[output("a.txt", "new")]).unwrap();
        assert_eq!(fs::metadata(&path).unwrap().permissions().mode() & 0o777, 0o640);
    }
}

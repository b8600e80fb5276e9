//! Files on their way: written beside their place under a hidden name, and renamed when they are
//! whole. A run that was stopped leaves some behind; the next one takes them away.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;
use tempfile::{Builder, NamedTempFile};

/// How their names begin and end.
const PREFIX: &str = ".puddlebook-";
const SUFFIX: &str = ".unfinished";

/// How often another run may take a new file for one that was left behind, before it is locked.
const TRIES: usize = 10;

/// A file of these bytes, safe on the disk under its hidden name.
pub(crate) fn written(folder: &Path, bytes: &[u8]) -> io::Result<NamedTempFile> {
    let mut file = locked(folder)?;
    file.write_all(bytes)?;
    // Else a crash of the whole machine could leave the name without the bytes.
    file.as_file().sync_all()?;
    Ok(file)
}

/// A new file that says by its lock that somebody is at work on it. Where locks are not known,
/// nobody takes it for one that was left behind either.
fn locked(folder: &Path) -> io::Result<NamedTempFile> {
    let mut file = builder().tempfile_in(folder)?;
    for _ in 0..TRIES {
        let _ = file.as_file().lock();
        if file.path().exists() {
            break;
        }
        file = builder().tempfile_in(folder)?;
    }
    Ok(file)
}

/// With the rights of any new file: a handout is not private.
fn builder() -> Builder<'static, 'static> {
    let mut builder = Builder::new();
    builder.prefix(PREFIX).suffix(SUFFIX);
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // The umask of the user takes away from it.
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    builder
}

/// Takes away what stopped runs left in a folder: files of our names that nobody holds. What
/// cannot be taken away stays; it is hidden and harms nobody.
pub(crate) fn clear(folder: &Path) {
    for entry in fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name();
        let ours =
            name.to_str().is_some_and(|name| name.starts_with(PREFIX) && name.ends_with(SUFFIX));
        // A symbolic link of such a name is not ours.
        if ours && entry.file_type().is_ok_and(|kind| kind.is_file()) {
            remove_if_left(&entry.path());
        }
    }
}

/// Takes a file away when no run holds it. The lock ends with the run that has it, however
/// that ends; whoever waits for it meanwhile sees that the file is gone.
fn remove_if_left(path: &Path) {
    let Ok(file) = File::options().write(true).open(path) else { return };
    if file.try_lock().is_ok() {
        let _ = fs::remove_file(path);
    }
}

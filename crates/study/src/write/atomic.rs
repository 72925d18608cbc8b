//! Replacing a file in one step: a reader sees the old file or the new, never half of one.

use std::fs::{self, File};
use std::io::{self, Write};
use std::path::Path;

/// Writes beside the file, forces it to the disk, then renames it into place.
pub(crate) fn replace(path: &Path, bytes: &[u8]) -> io::Result<()> {
    let folder = path.parent().ok_or_else(|| io::Error::from(io::ErrorKind::InvalidInput))?;
    fs::create_dir_all(folder)?;
    // A file that may not be written is the author's wish, although renaming over it would work.
    let old = fs::metadata(path).ok().map(|m| m.permissions());
    if old.as_ref().is_some_and(fs::Permissions::readonly) {
        return Err(io::Error::from(io::ErrorKind::PermissionDenied));
    }
    let mut builder = tempfile::Builder::new();
    builder.prefix(".").suffix(".part");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt;
        // Less what the system takes away from new files.
        builder.permissions(fs::Permissions::from_mode(0o666));
    }
    let mut part = builder.tempfile_in(folder)?;
    part.write_all(bytes)?;
    if let Some(old) = old {
        part.as_file().set_permissions(old)?;
    }
    part.as_file().sync_all()?;
    part.persist(path).map_err(|e| e.error)?;
    // Not every system lets a folder be opened; the file itself is safe by now.
    if let Ok(folder) = File::open(folder) {
        let _ = folder.sync_all();
    }
    Ok(())
}

//! Gathers the page templates and looks, so that a new file is printed by being there.
// The one place of this crate that reads the disk: the program itself never does.
#![allow(clippy::disallowed_methods)]

use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::{env, fs, io};

fn main() -> io::Result<()> {
    let root = PathBuf::from(env::var_os("CARGO_MANIFEST_DIR").unwrap_or_default());
    let out = PathBuf::from(env::var_os("OUT_DIR").unwrap_or_default());
    let mut templates = Vec::new();
    gather(&root.join("typst"), &mut templates)?;
    let looks = folders(&root.join("looks"))?;
    let mut text = String::from("/// Path in memory and text of each file that all pages share.\n");
    text.push_str("const SHARED: &[(&str, &str)] = &[\n");
    for file in &templates {
        let name = file.strip_prefix(root.join("typst")).unwrap_or(file).to_string_lossy();
        entry(&mut text, &format!("/{}", name.replace('\\', "/")), file);
    }
    text.push_str("];\n/// Name of each look and the text of its tokens.\n");
    text.push_str("pub(crate) const LOOKS: &[(&str, &str)] = &[\n");
    for folder in &looks {
        let name = folder.file_name().unwrap_or_default().to_string_lossy();
        entry(&mut text, &name, &folder.join("look.toml"));
    }
    text.push_str("];\n");
    println!("cargo::rerun-if-changed=typst");
    println!("cargo::rerun-if-changed=looks");
    fs::write(out.join("gathered.rs"), text)
}

fn entry(text: &mut String, name: &str, file: &Path) {
    // Writing to a string cannot fail.
    let _ = writeln!(text, "    ({name:?}, include_str!({:?})),", file.to_string_lossy());
}

fn gather(folder: &Path, files: &mut Vec<PathBuf>) -> io::Result<()> {
    for path in entries(folder)? {
        if path.is_dir() {
            gather(&path, files)?;
        } else if path.extension().is_some_and(|e| e == "typ" || e == "toml" || e == "json") {
            files.push(path);
        }
    }
    Ok(())
}

fn folders(folder: &Path) -> io::Result<Vec<PathBuf>> {
    Ok(entries(folder)?.into_iter().filter(|path| path.join("look.toml").is_file()).collect())
}

/// In the order of their names, so that the same files give the same program.
fn entries(folder: &Path) -> io::Result<Vec<PathBuf>> {
    let mut paths: Vec<PathBuf> =
        fs::read_dir(folder)?.map(|entry| entry.map(|e| e.path())).collect::<io::Result<_>>()?;
    paths.sort();
    Ok(paths)
}

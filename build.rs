//! Tells the program what it was built from: the commit where one is known, the target and the
//! profile. Nothing of the machine and no date, so that the same source gives the same bytes.

use std::env;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

fn main() {
    println!("cargo:rerun-if-changed=build.rs");
    let root = PathBuf::from(env::var_os("CARGO_MANIFEST_DIR").unwrap_or_default());
    let commit = packaged(&root).or_else(|| checked_out(&root));
    let known = |name: &str| env::var(name).unwrap_or_default();
    let parts = [
        commit.map(|commit| format!("commit {commit}")),
        Some(known("TARGET")),
        Some(known("PROFILE")),
    ];
    let parts: Vec<String> = parts.into_iter().flatten().filter(|part| !part.is_empty()).collect();
    println!("cargo:rustc-env=PUDDLEBOOK_BUILD={}", parts.join(", "));
}

/// As long as the names of commits are shown.
const LETTERS: usize = 12;

/// The commit that `cargo package` writes into its archive.
fn packaged(root: &Path) -> Option<String> {
    let path = root.join(".cargo_vcs_info.json");
    let text = fs::read_to_string(path).ok()?;
    let (_, after) = text.split_once("\"sha1\"")?;
    let name = after.split('"').nth(1)?;
    is_name(name).then(|| name.chars().take(LETTERS).collect())
}

/// The commit that is checked out, if this very folder is the top of a repository: a source
/// archive may lie in a repository of something else.
fn checked_out(root: &Path) -> Option<String> {
    let git = |arguments: &[&str]| {
        let output = Command::new("git").current_dir(root).args(arguments).output().ok()?;
        let said = String::from_utf8(output.stdout).ok()?;
        output.status.success().then(|| said.trim().to_owned())
    };
    let top = fs::canonicalize(git(&["rev-parse", "--show-toplevel"])?).ok()?;
    if top != fs::canonicalize(root).ok()? {
        return None;
    }
    // What changes when another commit is checked out, or a new one made.
    for name in ["HEAD", "logs/HEAD"] {
        let path = root.join(git(&["rev-parse", "--git-path", name])?);
        if path.exists() {
            println!("cargo:rerun-if-changed={}", path.display());
        }
    }
    git(&["rev-parse", "HEAD"]).filter(|name| is_name(name)).map(|mut name| {
        name.truncate(LETTERS);
        name
    })
}

fn is_name(text: &str) -> bool {
    text.len() >= LETTERS && text.bytes().all(|byte| byte.is_ascii_hexdigit())
}

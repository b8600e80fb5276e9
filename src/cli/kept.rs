//! No output replaces what somebody wrote into the one before: a weigh sheet with readings, a
//! worksheet that was filled in on a tablet. Each folder of outputs has a hidden list of what was
//! made; a file that is not as it was made is kept under another name.

use crate::pdf::fingerprint;
use std::collections::{BTreeMap, BTreeSet};
use std::ffi::OsStr;
use std::fs;
use std::path::{Path, PathBuf};

/// The list, beside the outputs.
const LIST: &str = ".puddlebook-made";
/// What is read of an output at most, in bytes; ours are far smaller.
const LARGEST: u64 = 1 << 30;
/// Most copies of one name that are looked for.
const COPIES: usize = 1_000;

/// A file that was changed, and where it is kept now.
#[derive(Debug)]
pub(super) struct Kept {
    pub(super) changed: PathBuf,
    pub(super) copy: PathBuf,
}

/// Files with their bytes.
type Files = Vec<(PathBuf, Vec<u8>)>;

/// What the outputs of a folder are made of: names with the hashes of what was made under them.
type List = BTreeMap<String, BTreeSet<String>>;

/// What is written around the outputs of a command.
#[derive(Debug, Default)]
pub(super) struct Around {
    /// Before them: copies of what was changed since it was made, and lists that know both what
    /// is there and what will be, for a run that is stopped half-way.
    pub(super) before: Files,
    /// After them: lists of what is there then.
    pub(super) after: Files,
    pub(super) kept: Vec<Kept>,
}

/// What is to be written around these outputs.
pub(super) fn around(files: &[(PathBuf, Vec<u8>)]) -> Around {
    let mut lists: BTreeMap<&Path, (List, List, bool)> = BTreeMap::new();
    let mut around = Around::default();
    for (path, bytes) in files {
        let folder = path.parent().unwrap_or(Path::new(""));
        let (both, new, there) =
            lists.entry(folder).or_insert_with(|| (read(folder), read(folder), false));
        let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
        let known = both.entry(name.clone()).or_default();
        let found = found(path);
        *there |= found.is_some();
        let found = found.filter(|found| found != bytes);
        if let Some(found) = found.filter(|found| !known.contains(&hash(found))) {
            let copy = copy(path, &around.before);
            around.before.push((copy.clone(), found));
            around.kept.push(Kept { changed: path.clone(), copy });
        }
        known.insert(hash(bytes));
        new.insert(name, BTreeSet::from([hash(bytes)]));
    }
    for (folder, (both, new, there)) in lists {
        if there {
            around.before.push((folder.join(LIST), lines(&both)));
        }
        around.after.push((folder.join(LIST), lines(&new)));
    }
    around
}

/// Whether a path is that of a list.
pub(super) fn is_list(path: &Path) -> bool {
    path.file_name() == Some(OsStr::new(LIST))
}

/// The list of a folder; one that is not there or not ours knows of nothing.
fn read(folder: &Path) -> List {
    let text = fs::read_to_string(folder.join(LIST)).unwrap_or_default();
    let mut list = List::new();
    for (hash, name) in text.lines().filter_map(|line| line.split_once(' ')) {
        list.entry(name.to_owned()).or_default().insert(hash.to_owned());
    }
    list
}

fn lines(list: &List) -> Vec<u8> {
    let lines = list.iter().flat_map(|(name, made)| made.iter().map(move |hash| (hash, name)));
    lines.map(|(hash, name)| format!("{hash} {name}\n")).collect::<String>().into_bytes()
}

fn hash(bytes: &[u8]) -> String {
    format!("{:032x}", fingerprint(bytes.iter().copied()))
}

/// What is there now, unless it is no file.
fn found(path: &Path) -> Option<Vec<u8>> {
    let about = fs::metadata(path).ok()?;
    let is_ours = about.is_file() && about.len() <= LARGEST;
    is_ours.then(|| fs::read(path).ok()).flatten()
}

/// A free name for a copy: `weigh (changed).csv`, `weigh (changed 2).csv`.
fn copy(path: &Path, taken: &[(PathBuf, Vec<u8>)]) -> PathBuf {
    let stem = path.file_stem().unwrap_or_default();
    let named = |number: usize| {
        let mut name = stem.to_os_string();
        name.push(match number {
            1 => " (changed)".to_owned(),
            number => format!(" (changed {number})"),
        });
        if let Some(end) = path.extension() {
            name.push(OsStr::new("."));
            name.push(end);
        }
        path.with_file_name(name)
    };
    let is_free = |path: &PathBuf| {
        path.symlink_metadata().is_err() && taken.iter().all(|(other, _)| other != path)
    };
    (1..COPIES).map(named).find(is_free).unwrap_or_else(|| named(COPIES))
}

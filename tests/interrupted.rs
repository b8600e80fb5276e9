//! The program killed at any moment: every output is the one before or the new one, wholly.

use crate::lesson_tools::{SMALL, in_project};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;
use std::process::{Command, Stdio};
use std::thread;

/// The files of a folder and their bytes.
type Files = BTreeMap<String, Vec<u8>>;

/// Files of this name are on their way: hidden, and never taken for an output.
fn is_unfinished(name: &str) -> bool {
    name.starts_with(".puddlebook-") && name.ends_with(".unfinished")
}

/// The list of what was made.
const LIST: &str = ".puddlebook-made";

/// Whether a list has whole lines of two others and no more.
fn is_of_both(list: &[u8], one: &[u8], other: &[u8]) -> bool {
    let lines = |list: &[u8]| {
        let lines = list.split_inclusive(|byte| *byte == b'\n').map(<[u8]>::to_vec);
        lines.collect::<Vec<_>>()
    };
    let (one, other) = (lines(one), lines(other));
    lines(list).iter().all(|line| one.contains(line) || other.contains(line))
}

fn files(folder: &Path) -> Files {
    let mut files = Files::new();
    for entry in fs::read_dir(folder).into_iter().flatten() {
        let entry = entry.unwrap();
        let name = entry.file_name().into_string().unwrap();
        match fs::read(entry.path()) {
            Ok(bytes) => drop(files.insert(name, bytes)),
            // On its way a moment ago, and at its place by now.
            Err(error) => assert!(is_unfinished(&name), "{name}: {error}"),
        }
    }
    files
}

fn put(folder: &Path, files: &Files) {
    fs::remove_dir_all(folder).unwrap();
    fs::create_dir_all(folder).unwrap();
    for (name, bytes) in files {
        fs::write(folder.join(name), bytes).unwrap();
    }
}

fn program(arguments: &[&str], input: &Path, out: &Path) -> Command {
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    program.arg(arguments[0]).arg(input).args(&arguments[1..]).arg("--out").arg(out);
    program.stdout(Stdio::null()).stderr(Stdio::null());
    program
}

/// Kills a command `kills` times, each time a little later on its way from the outputs of `old`
/// to those of `new`; they go to `written` when `out` is named.
fn killed(
    arguments: &[&str],
    (old, new): (&Path, &Path),
    (out, written): (&Path, &Path),
    kills: u32,
) {
    let made = |input: &Path| {
        assert!(program(arguments, input, out).status().unwrap().success());
        files(written)
    };
    let before = made(old);
    let after = made(new);
    assert!(before.keys().eq(after.keys()) && before.len() > 2);
    let changed = before.iter().filter(|(name, bytes)| after[*name] != **bytes).count();
    assert!(changed > 2, "old and new can be told apart");
    let mut stopped = 0;
    for kill in 0..kills {
        put(written, &before);
        let mut child = program(arguments, new, out).spawn().unwrap();
        // Half of the kills wait for the first hidden file, so that they meet the writing.
        let mut left = if kill % 2 == 0 { 40 * kill } else { kill / 2 };
        while child.try_wait().unwrap().is_none() {
            let begun = kill % 2 == 0 || files(written).keys().any(|name| is_unfinished(name));
            if begun && left == 0 {
                break;
            }
            left -= u32::from(begun);
            thread::yield_now();
        }
        let _ = child.kill();
        stopped += u32::from(!child.wait().unwrap().success());
        for (name, bytes) in files(written) {
            if is_unfinished(&name) {
                continue;
            }
            let whole = [&before, &after].iter().any(|made| made.get(&name) == Some(&bytes));
            // The list of what was made knows both while it is on its way.
            let both = name == LIST && is_of_both(&bytes, &before[LIST], &after[LIST]);
            assert!(whole || both, "{name} is neither the old nor the new one after kill {kill}");
        }
        for name in before.keys() {
            assert!(written.join(name).exists(), "{name} is lost after kill {kill}");
        }
    }
    assert!(stopped > 0, "no kill came in time");
    // What they left behind is taken away by the next run.
    fs::write(written.join(".puddlebook-left.unfinished"), "half").unwrap();
    assert_eq!(made(new), after);
}

#[test]
fn make_leaves_whole_files() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path();
    for (name, title) in [("old", "An old class"), ("new", "A new class")] {
        fs::create_dir(path.join(name)).unwrap();
        let lesson = SMALL.replace("A small class", title);
        fs::write(path.join(name).join("class.yaml"), lesson).unwrap();
    }
    let lessons = (&*path.join("old/class.yaml"), &*path.join("new/class.yaml"));
    let out = path.join("out");
    let arguments = ["make", "--only", "order,cards,weigh"];
    killed(&arguments, lessons, (&out, &out.join("class")), 60);
}

#[test]
fn order_leaves_whole_files() {
    let folder = tempfile::tempdir().unwrap();
    let (old, new) = (folder.path().join("old.yaml"), folder.path().join("new.yaml"));
    let data = in_project("lessons/data");
    let lesson = fs::read_to_string(in_project("lessons/boathouse-evening.yaml")).unwrap();
    let lesson = lesson.replace("data/", &format!("{}/", data.display()));
    fs::write(&old, &lesson).unwrap();
    fs::write(&new, lesson.replace("students: ", "students: 1")).unwrap();
    let out = folder.path().join("out");
    killed(&["order"], (&old, &new), (&out, &out), 30);
}

#[test]
fn learn_leaves_whole_files() {
    let folder = tempfile::tempdir().unwrap();
    let out = folder.path().join("out");
    let weighed = |name: &str| in_project("lessons/weighed").join(name);
    let (old, new) = (weighed("boathouse-march-14.yaml"), weighed("boathouse-april-11.csv"));
    killed(&["learn"], (&old, &new), (&out, &out), 30);
}

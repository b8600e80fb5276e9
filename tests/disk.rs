//! What disks and people do to files: odd names, odd texts, folders that cannot be written,
//! outputs that somebody wrote into. Nothing is lost, and the answer says what to do.

use crate::lesson_tools::SMALL;
use std::ffi::OsStr;
use std::fs;
use std::path::Path;
use std::process::{Command, Output, Stdio};

/// The program in a folder, with these arguments.
fn ran(folder: &Path, arguments: &[&OsStr]) -> Output {
    let mut program = Command::new(env!("CARGO_BIN_EXE_puddlebook"));
    program.current_dir(folder).args(arguments).stdin(Stdio::null()).output().unwrap()
}

/// Its exit code and what it says is wrong.
macro_rules! said {
    ($folder:expr, $($argument:expr),+ $(,)?) => {{
        let output = ran($folder.as_ref(), &[$(OsStr::new($argument)),+]);
        let said = String::from_utf8_lossy(&output.stderr).into_owned();
        assert!(!said.contains("panicked"), "{said}");
        (output.status.code().unwrap_or(-1), said)
    }};
}

/// A folder with the small lesson in it.
fn studio() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("small.yaml"), SMALL).unwrap();
    folder
}

fn names(folder: &Path) -> Vec<String> {
    let names = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().file_name());
    let mut names: Vec<String> = names.map(|name| name.to_string_lossy().into_owned()).collect();
    names.retain(|name| !name.starts_with('.'));
    names.sort();
    names
}

#[test]
fn names_of_any_kind_are_read_and_written() {
    let long = "ä".repeat(100);
    let odd = [
        "two words",
        "🎨 pour",
        "שיעור ראשון",
        "-dash",
        "a'b\"c",
        "100%",
        "line\nbreak",
        "tab\there",
        ".hidden",
        "dots..in.it",
        "$(touch x)",
        "*",
        &long,
    ];
    for name in odd {
        let folder = studio();
        let file = format!("{name}.yaml");
        fs::rename(folder.path().join("small.yaml"), folder.path().join(&file)).unwrap();
        let (code, wrong) = said!(folder, "make", "--only", "weigh", "--out", "made", "--", &file);
        assert_eq!((code, wrong.as_str()), (0, ""), "{name}");
        assert_eq!(names(&folder.path().join("made").join(name)), ["weigh.csv", "weigh.pdf"]);
        if name.contains(char::is_control) {
            // A table of its own lines cannot name it.
            continue;
        }
        // The table leads back to its lesson.
        let table = folder.path().join("made").join(name).join("weigh.csv");
        let filled = fs::read_to_string(&table).unwrap().replace(",,,,1 g", ",50,5,,1 g");
        fs::write(&table, filled).unwrap();
        let (code, wrong) = said!(folder, "learn", &table, "--out", "learned");
        assert_eq!((code, wrong.as_str()), (0, ""), "{name}");
    }
}

#[test]
fn letters_that_steer_a_terminal_are_not_printed() {
    let folder = studio();
    let (code, said) = said!(folder, "check", "a\u{1b}[31m\nb\u{202e}.yaml");
    assert_eq!(code, 3);
    assert!(said.contains("a\\u{1b}[31m\\nb\\u{202e}.yaml"), "{said}");
}

#[cfg(unix)]
#[test]
fn a_name_that_is_no_text_is_read_and_written() {
    use std::os::unix::ffi::OsStrExt;
    let folder = studio();
    let name = OsStr::from_bytes(b"caf\xe9");
    let file = OsStr::from_bytes(b"caf\xe9.yaml");
    if fs::rename(folder.path().join("small.yaml"), folder.path().join(file)).is_err() {
        // This disk knows no such names.
        return;
    }
    let (code, wrong) = said!(folder, "make", file, "--only", "cards", "--out", "made");
    assert_eq!((code, wrong.as_str()), (0, ""));
    assert_eq!(names(&folder.path().join("made").join(name)), ["cards.pdf"]);
}

#[test]
fn a_name_too_long_for_the_disk() {
    let folder = studio();
    let long = "a".repeat(300);
    let (code, said) = said!(folder, "make", "small.yaml", "--only", "cards", "--out", &long);
    assert_eq!(code, 3);
    assert!(said.contains("this name is too long for the disk"), "{said}");
    let (code, said) = said!(folder, "check", &format!("{long}.yaml"));
    assert_eq!(code, 3, "{said}");
}

#[test]
fn what_is_no_lesson_file_is_refused() {
    let folder = studio();
    let (code, said) = said!(folder, "check", ".");
    assert_eq!(code, 3);
    assert!(said.contains("it is not a file") && said.contains("name a file"), "{said}");
    let (code, said) = said!(folder, "make", "small.yaml/x.yaml");
    assert_eq!(code, 3);
    assert!(said.contains("there is no such file"), "{said}");
    if Path::new("/dev/null").exists() {
        let (code, said) = said!(folder, "check", "/dev/null");
        assert_eq!(code, 3, "{said}");
        assert!(said.contains("it is not a file"), "{said}");
    }
}

#[cfg(unix)]
#[test]
fn a_pipe_for_a_lesson_does_not_hang() {
    let folder = studio();
    let pipe = folder.path().join("pipe.yaml");
    if !Command::new("mkfifo").arg(&pipe).status().is_ok_and(|status| status.success()) {
        return;
    }
    let (code, said) = said!(folder, "check", "pipe.yaml");
    assert_eq!(code, 3);
    assert!(said.contains("it is not a file"), "{said}");
    fs::write(folder.path().join("uses.yaml"), format!("{SMALL}use: [pipe.yaml]\n")).unwrap();
    let (code, said) = said!(folder, "check", "uses.yaml");
    assert_eq!(code, 1);
    assert!(said.contains("it is not a file"), "{said}");
    fs::create_dir(folder.path().join("words")).unwrap();
    fs::rename(pipe, folder.path().join("words/order.md")).unwrap();
    let (code, said) = said!(folder, "make", "small.yaml", "--templates", "words", "--out", "made");
    assert_eq!(code, 3);
    assert!(said.contains("order.md is no file"), "{said}");
    assert!(!folder.path().join("made").exists());
}

#[cfg(unix)]
#[test]
fn links_are_followed_on_the_way_and_replaced_at_its_end() {
    use std::os::unix::fs::symlink;
    let folder = studio();
    let path = folder.path();
    fs::create_dir_all(path.join("real/small")).unwrap();
    fs::write(path.join("precious.pdf"), "mine").unwrap();
    symlink("real", path.join("made")).unwrap();
    symlink("../../precious.pdf", path.join("real/small/cards.pdf")).unwrap();
    symlink("small.yaml", path.join("link.yaml")).unwrap();
    let (code, said) = said!(folder, "make", "small.yaml", "--only", "cards", "--out", "made");
    assert_eq!(code, 0, "{said}");
    assert_eq!(fs::read(path.join("precious.pdf")).unwrap(), b"mine", "not written through");
    assert!(fs::read(path.join("real/small/cards.pdf")).unwrap().starts_with(b"%PDF"));
    let (code, said) = said!(folder, "make", "link.yaml", "--only", "cards", "--out", "made");
    assert_eq!(code, 0, "{said}");
    assert!(path.join("real/link/cards.pdf").exists(), "called as it was given");
    symlink("loop.yaml", path.join("loop.yaml")).unwrap();
    assert_eq!(said!(folder, "check", "loop.yaml").0, 3);
}

#[test]
fn two_lessons_of_one_name_do_not_overwrite_each_other() {
    let folder = studio();
    fs::create_dir(folder.path().join("other")).unwrap();
    fs::write(folder.path().join("other/small.yaml"), SMALL).unwrap();
    let (code, said) = said!(folder, "make", "small.yaml", "other/small.yaml", "--out", "made");
    assert_eq!(code, 1);
    assert!(said.contains("two lessons are called small"), "{said}");
    assert!(!folder.path().join("made").exists());
}

#[test]
fn outputs_may_go_beside_the_lesson_and_into_outputs() {
    let folder = studio();
    let made = |out: &str| said!(folder, "make", "small.yaml", "--only", "weigh", "--out", out);
    assert_eq!(made("."), (0, String::new()));
    assert_eq!(made("small"), (0, String::new()));
    assert_eq!(made("small/small/../small"), (0, String::new()));
    assert!(folder.path().join("small/small/small/weigh.pdf").exists());
    assert_eq!(fs::read_to_string(folder.path().join("small.yaml")).unwrap(), SMALL);
}

#[test]
fn line_ends_and_marks_of_every_system_are_read() {
    let folder = studio();
    let lesson = format!("{SMALL}use: ['data\\colours.yaml']\n");
    fs::create_dir(folder.path().join("data")).unwrap();
    fs::write(
        folder.path().join("data/colours.yaml"),
        "colours:\r\n  red: {swatch: \"#C02020\"}\r\n",
    )
    .unwrap();
    let texts = [lesson.clone(), lesson.replace('\n', "\r\n"), lesson.replace('\n', "\r")];
    for text in texts {
        for text in [text.clone(), format!("\u{feff}{text}")] {
            fs::write(folder.path().join("odd.yaml"), &text).unwrap();
            assert_eq!(said!(folder, "check", "odd.yaml"), (0, String::new()), "{text:?}");
        }
    }
    // A mistake is found in its line with any line end.
    for end in ["\n", "\r\n", "\r"] {
        let wrong = SMALL.replace("10 in", "10,5 in").replace('\n', end);
        fs::write(folder.path().join("odd.yaml"), wrong).unwrap();
        let (code, said) = said!(folder, "check", "odd.yaml");
        assert_eq!(code, 1);
        assert!(!said.contains('␍'), "{said}");
        assert!(said.contains("odd.yaml:6:12") && said.contains("write 10.5 in"), "{said}");
        assert_eq!(said.matches("error: ").count(), 2, "{said}");
    }
}

#[test]
fn what_is_no_utf_8_is_told_with_what_to_do() {
    let folder = studio();
    let wide =
        |order: fn(u16) -> [u8; 2]| SMALL.encode_utf16().flat_map(order).collect::<Vec<u8>>();
    let marked = |mark: [u8; 2], order| [mark.to_vec(), wide(order)].concat();
    let utf16 = [
        marked([0xff, 0xfe], u16::to_le_bytes),
        marked([0xfe, 0xff], u16::to_be_bytes),
        wide(u16::to_le_bytes),
        wide(u16::to_be_bytes),
    ];
    for bytes in utf16 {
        fs::write(folder.path().join("odd.yaml"), bytes).unwrap();
        let (code, said) = said!(folder, "check", "odd.yaml");
        assert_eq!(code, 3);
        assert!(said.contains("UTF-16") && said.contains("save the file as \"UTF-8\""), "{said}");
    }
    fs::write(folder.path().join("odd.yaml"), [SMALL.as_bytes(), &[0; 512]].concat()).unwrap();
    let (code, said) = said!(folder, "check", "odd.yaml");
    assert_eq!(code, 3);
    assert!(said.contains("line 18 holds characters that are no text"), "{said}");
    fs::write(folder.path().join("odd.yaml"), b"title: caf\xe9\n").unwrap();
    let (code, said) = said!(folder, "check", "odd.yaml");
    assert_eq!(code, 3);
    assert!(said.contains("line 1 holds bytes") && said.contains("\"UTF-8\""), "{said}");
}

#[test]
fn what_was_written_into_an_output_is_kept() {
    let folder = studio();
    let made = || said!(folder, "make", "small.yaml", "--only", "weigh,cards", "--out", "made");
    assert_eq!(made(), (0, String::new()));
    assert_eq!(made(), (0, String::new()), "what was made may be made again");
    let out = folder.path().join("made/small");
    let filled =
        fs::read_to_string(out.join("weigh.csv")).unwrap().replace(",,,,1 g", ",50,5,,1 g");
    fs::write(out.join("weigh.csv"), &filled).unwrap();
    let (code, said) = made();
    assert_eq!(code, 0);
    assert!(said.contains("was changed since it was made; kept as"), "{said}");
    assert_eq!(fs::read_to_string(out.join("weigh (changed).csv")).unwrap(), filled);
    assert!(!fs::read_to_string(out.join("weigh.csv")).unwrap().contains(",50,5,"));
    // A lesson that changes makes other sheets, and keeps nothing.
    fs::write(folder.path().join("small.yaml"), SMALL.replace("A small", "Another")).unwrap();
    assert_eq!(made(), (0, String::new()));
    // The second time under another name; nothing that is kept is replaced.
    fs::write(out.join("weigh.csv"), "mine").unwrap();
    fs::write(out.join("cards.pdf"), "mine, too").unwrap();
    let (code, _) = made();
    assert_eq!(code, 0);
    assert_eq!(fs::read_to_string(out.join("weigh (changed).csv")).unwrap(), filled);
    assert_eq!(fs::read_to_string(out.join("weigh (changed 2).csv")).unwrap(), "mine");
    assert_eq!(fs::read_to_string(out.join("cards (changed).pdf")).unwrap(), "mine, too");
    // Where the list is lost, nobody knows what was changed, and everything is kept.
    fs::remove_file(out.join(".puddlebook-made")).unwrap();
    fs::write(folder.path().join("small.yaml"), SMALL).unwrap();
    assert_eq!(made().1.matches("kept as").count(), 2, "cards and weigh sheet");
}

#[test]
fn films_of_ones_own_are_kept() {
    let folder = studio();
    fs::write(folder.path().join("films.yaml"), "# mine\n").unwrap();
    let cups = "lesson: small.yaml\nscale: 1 g\ncups:\n  \
                - {student: 1, canvas: square, colour: blue, before: 50 g, after: 5 g}\n  \
                - {student: 1, canvas: square, colour: white, before: 70 g, after: 6 g}\n";
    fs::write(folder.path().join("cups.yaml"), cups).unwrap();
    let (code, said) = said!(folder, "learn", "cups.yaml", "--out", ".");
    assert_eq!(code, 0, "{said}");
    assert_eq!(fs::read_to_string(folder.path().join("films (changed).yaml")).unwrap(), "# mine\n");
}

#[test]
fn what_a_stopped_run_left_is_taken_away_and_nothing_else() {
    let folder = studio();
    let out = folder.path().join("made/small");
    fs::create_dir_all(out.join(".puddlebook-folder.unfinished")).unwrap();
    for name in [".puddlebook-a1B2.unfinished", ".puddlebook-other", "cards.unfinished", ".other"] {
        fs::write(out.join(name), "x").unwrap();
    }
    // Held by a run that is still at work.
    let held = fs::File::create(out.join(".puddlebook-held.unfinished")).unwrap();
    held.lock().unwrap();
    let (code, _) = said!(folder, "make", "small.yaml", "--only", "cards", "--out", "made");
    assert_eq!(code, 0);
    let all = fs::read_dir(&out).unwrap().map(|entry| entry.unwrap().file_name());
    let mut all: Vec<String> = all.map(|name| name.into_string().unwrap()).collect();
    all.sort();
    let stays = [
        ".other",
        ".puddlebook-folder.unfinished",
        ".puddlebook-held.unfinished",
        ".puddlebook-made",
        ".puddlebook-other",
        "cards.pdf",
        "cards.unfinished",
    ];
    assert_eq!(all, stays);
}

#[cfg(unix)]
#[test]
fn folders_that_cannot_be_written_are_said() {
    use std::os::unix::fs::PermissionsExt;
    let folder = studio();
    let path = folder.path();
    let made = |out: &str| said!(folder, "make", "small.yaml", "--only", "cards", "--out", out);
    // Also for root, whom no mode of a folder stops.
    if Path::new("/proc/self").exists() {
        let (code, said) = made("/proc/self/made");
        assert_eq!(code, 3);
        assert!(said.contains("could not write /proc/self/made/small/cards.pdf"), "{said}");
    }
    if Path::new("/dev/full").exists() {
        let (code, said) = made("/dev/full");
        assert_eq!(code, 3);
        assert!(said.contains("/dev/full is a file, not a folder"), "{said}");
    }
    fs::create_dir_all(path.join("shut/small")).unwrap();
    fs::write(path.join("shut/small/cards.pdf"), "old").unwrap();
    fs::set_permissions(path.join("shut/small"), fs::Permissions::from_mode(0o555)).unwrap();
    let is_root = fs::write(path.join("shut/small/probe"), "x").is_ok();
    if !is_root {
        let (code, said) = made("shut");
        assert_eq!(code, 3);
        assert!(said.contains("you may not do that there; name another folder"), "{said}");
        assert_eq!(fs::read(path.join("shut/small/cards.pdf")).unwrap(), b"old");
    }
    fs::set_permissions(path.join("shut/small"), fs::Permissions::from_mode(0o755)).unwrap();
}

/// The program in a shell that was prepared by `before`; exit code and what it says is wrong.
#[cfg(unix)]
fn in_shell(folder: &Path, before: &str, rest: &str) -> (i32, String) {
    let program = env!("CARGO_BIN_EXE_puddlebook");
    let line = format!("{before} exec '{program}' {rest}");
    let output = Command::new("bash").args(["-c", &line]).current_dir(folder).output().unwrap();
    let said = String::from_utf8_lossy(&output.stderr).into_owned();
    assert!(!said.contains("panicked"), "{said}");
    (output.status.code().unwrap_or(-1), said)
}

#[cfg(unix)]
#[test]
fn a_disk_that_is_full_costs_nothing_that_was_there() {
    let folder = studio();
    let out = folder.path().join("made/small");
    let make = "make small.yaml --only cards,weigh --out made";
    assert_eq!(in_shell(folder.path(), "", make), (0, String::new()));
    let before: Vec<_> = names(&out).iter().map(|name| fs::read(out.join(name)).unwrap()).collect();
    fs::write(folder.path().join("small.yaml"), SMALL.replace("A small", "Another")).unwrap();
    // Files of two blocks at most: as on a disk that is full while a file is written.
    let (code, said) = in_shell(folder.path(), "trap '' XFSZ; ulimit -f 2;", make);
    assert_eq!(code, 3, "{said}");
    assert!(said.contains("what was there before is as it was"), "{said}");
    let after: Vec<_> = names(&out).iter().map(|name| fs::read(out.join(name)).unwrap()).collect();
    assert!(before == after, "the sheets from before are there, wholly");
    let hidden = fs::read_dir(&out).unwrap().map(|entry| entry.unwrap().file_name());
    assert!(hidden.into_iter().all(|name| !name.to_string_lossy().ends_with(".unfinished")));
}

#[cfg(unix)]
#[test]
fn whoever_stops_reading_stops_nothing() {
    let folder = studio();
    let program = env!("CARGO_BIN_EXE_puddlebook");
    for arguments in ["plan small.yaml", "plan small.yaml --json", "check small.yaml", "--help"] {
        // The reader is gone before the first line: `true` reads nothing.
        let line = format!("set -o pipefail; {{ sleep 0.2; '{program}' {arguments}; }} | true");
        let output =
            Command::new("bash").args(["-c", &line]).current_dir(&folder).output().unwrap();
        let said = String::from_utf8_lossy(&output.stderr);
        assert_eq!((output.status.code(), &*said), (Some(0), ""), "{arguments}");
    }
    let line = format!("'{program}' make small.yaml --only cards --out made | true");
    let output = Command::new("bash").args(["-c", &line]).current_dir(&folder).output().unwrap();
    assert_eq!(String::from_utf8_lossy(&output.stderr), "");
    let closed = in_shell(folder.path(), "", "plan small.yaml <&- >&-");
    assert_eq!(closed, (0, String::new()));
    assert_eq!(in_shell(folder.path(), "", "check none.yaml 2>&- >&-").0, 3);
    if Path::new("/dev/full").exists() {
        let (code, said) = in_shell(folder.path(), "", "plan small.yaml >/dev/full");
        assert_eq!(code, 3);
        assert!(said.contains("could not print what was asked for"), "{said}");
    }
}

/// A link in a folder of templates could print any file of the computer.
#[cfg(unix)]
#[test]
fn a_template_is_no_link_out_of_its_folder() {
    use std::os::unix::fs::symlink;
    let folder = studio();
    let templates = folder.path().join("mine");
    fs::create_dir(&templates).unwrap();
    let made = || said!(folder, "make", "small.yaml", "--only", "order", "--templates", "mine");
    symlink("../small.yaml", templates.join("order.md")).unwrap();
    let (code, said) = made();
    assert_eq!(code, 3, "{said}");
    assert!(said.contains("order.md is a link that leads out of its folder"), "{said}");
    assert!(!folder.path().join("handouts").exists());
    // One that stays inside is a template like any other.
    fs::remove_file(templates.join("order.md")).unwrap();
    fs::write(templates.join("kept.md"), "Mine.").unwrap();
    symlink("kept.md", templates.join("order.md")).unwrap();
    assert_eq!(made().0, 0);
}

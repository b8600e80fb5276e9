//! The house keeps to its one direction of flow: a room imports only those before it.

use std::fs;
use std::path::{Path, PathBuf};

/// Each room with the rooms that it may use (DEVELOPERS.md, "How data flows").
const MAY_USE: [(&str, &[&str]); 12] = [
    ("crew", &[]),
    ("unfinished", &[]),
    ("quantity", &[]),
    ("ink", &[]),
    ("lesson", &["quantity"]),
    ("plan", &["quantity", "lesson"]),
    ("handout", &["quantity", "ink", "lesson", "plan"]),
    ("chart", &["ink", "handout"]),
    ("page", &["ink", "handout", "chart"]),
    ("pdf", &["crew", "ink", "page"]),
    ("preview", &["crew", "unfinished", "ink", "lesson", "plan", "handout", "page", "pdf"]),
    (
        "cli",
        &[
            "crew",
            "unfinished",
            "quantity",
            "ink",
            "lesson",
            "plan",
            "handout",
            "chart",
            "page",
            "pdf",
            "preview",
        ],
    ),
];

fn sources(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        if path.is_dir() {
            files.extend(sources(&path));
        } else if path.extension().is_some_and(|end| end == "rs") {
            files.push(path);
        }
    }
    files
}

/// The rooms that a source text names as `crate::room`.
fn rooms_named(text: &str) -> Vec<&str> {
    text.split("crate::")
        .skip(1)
        .map(|rest| rest.split(|c: char| !c.is_alphanumeric() && c != '_').next().unwrap_or(""))
        .collect()
}

#[test]
fn rooms_use_only_rooms_before_them() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    let mut wrong = Vec::new();
    let mut seen = 0;
    for (room, allowed) in MAY_USE {
        let folder = src.join(room);
        let files =
            if folder.is_dir() { sources(&folder) } else { vec![folder.with_extension("rs")] };
        for file in files {
            let text = fs::read_to_string(&file).unwrap();
            for named in rooms_named(&text) {
                seen += 1;
                let known = MAY_USE.iter().any(|(other, _)| *other == named);
                if known && named != room && !allowed.contains(&named) {
                    wrong.push(format!("{} uses {named}", file.display()));
                }
            }
        }
    }
    assert!(seen > 100, "the search for imports finds imports");
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn every_room_is_on_the_list() {
    let src = Path::new(env!("CARGO_MANIFEST_DIR")).join("src");
    for entry in fs::read_dir(src).unwrap() {
        let path = entry.unwrap().path();
        let name = path.file_stem().unwrap().to_str().unwrap();
        let listed = MAY_USE.iter().any(|(room, _)| *room == name);
        assert!(listed || ["lib", "main"].contains(&name), "{name} has no place in the flow");
    }
}

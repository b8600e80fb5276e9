//! The page follows the files.

use super::client::{Client, pages, preview_of};
use crate::lesson_tools::SMALL;
use puddlebook::lesson::{Paper, Style, read};
use puddlebook::preview::{NoPreview, Remark, Spot};
use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// Saves as editors do: a new file takes the name of the old one.
fn save(path: &Path, text: &str) {
    let new = path.with_extension("new~");
    fs::write(&new, text).unwrap();
    fs::rename(new, path).unwrap();
}

fn lesson(text: &str) -> (tempfile::TempDir, std::path::PathBuf) {
    let folder = tempfile::tempdir().unwrap();
    let lesson = folder.path().join("small.yaml");
    fs::write(&lesson, text).unwrap();
    (folder, lesson)
}

fn titled(title: &str) -> impl Fn(&Value) -> bool {
    move |now| now["shown"]["title"] == title && now["fault"].is_null()
}

#[test]
fn handouts_are_shown_as_they_print() {
    let (folder, lesson) = lesson(SMALL);
    let client = Client::of(&lesson);
    let now = client.now();
    let words: Vec<&str> = now["shown"]["handouts"]
        .as_array()
        .unwrap()
        .iter()
        .map(|handout| handout["word"].as_str().unwrap())
        .collect();
    assert_eq!(
        words,
        ["order", "lesson", "cards", "worksheet", "weigh", "answers", "tools", "guide"]
    );
    // The file is the one that `make` writes.
    let out = folder.path().join("out");
    let made = std::process::Command::new(env!("CARGO_BIN_EXE_puddlebook"))
        .args(["make", lesson.to_str().unwrap(), "--only", "order", "--out", out.to_str().unwrap()])
        .output()
        .unwrap();
    assert!(made.status.success());
    let pdf = client.get(&format!("/pdf/{}/order.pdf", now["shown"]["version"]));
    let written = fs::read(out.join("small/order.pdf")).unwrap();
    assert_eq!(pdf.body, String::from_utf8_lossy(&written));
    // Every page of it has a picture, of its size, with letters drawn as outlines.
    for look in pages(&now["shown"], "order") {
        let picture = client.get(&format!("/picture/{look}"));
        assert_eq!(picture.status, 200);
        assert!(picture.head.contains("content-type: image/svg+xml"), "{}", picture.head);
        assert!(picture.body.contains("<svg") && picture.body.matches("<path").count() > 20);
        assert!(!picture.body.contains("<script") && !picture.body.contains("http-equiv"));
    }
}

#[test]
fn a_save_draws_what_changed_and_nothing_else() {
    let (_folder, lesson) = lesson(SMALL);
    let client = Client::of(&lesson);
    let mut news = client.listen();
    let before = client.now();
    save(&lesson, &SMALL.replace("students: 2", "students: 3"));
    let after = news.until(&client, |now| now["shown"]["fields"]["students"] == 3);
    assert_ne!(before["shown"]["version"], after["shown"]["version"]);
    assert_ne!(pages(&before["shown"], "order"), pages(&after["shown"], "order"));
    // Most of a guide does not care how many come.
    let (old, new) = (pages(&before["shown"], "guide"), pages(&after["shown"], "guide"));
    let same = new.iter().filter(|look| old.contains(look)).count();
    assert!(same > new.len() / 2 && same < new.len(), "{same} of {}", new.len());
}

#[test]
fn a_save_in_place_and_a_comment_are_seen_as_well() {
    let (_folder, lesson) = lesson(SMALL);
    let client = Client::of(&lesson);
    let mut news = client.listen();
    let before = client.now();
    fs::write(&lesson, format!("# a note\n{SMALL}")).unwrap();
    let version = before["shown"]["version"].clone();
    let after =
        news.until(&client, |now| now["shown"]["version"] != version && now["fault"].is_null());
    for word in ["order", "guide", "worksheet"] {
        assert_eq!(pages(&before["shown"], word), pages(&after["shown"], word));
    }
}

#[test]
fn an_error_is_told_as_on_the_terminal_and_the_last_pages_stay() {
    let (_folder, lesson) = lesson(SMALL);
    let client = Client::of(&lesson);
    let mut news = client.listen();
    let before = client.now();
    save(&lesson, &SMALL.replace("straight pour", "strait pour"));
    let wrong = news.until(&client, |now| !now["fault"].is_null());
    let terminal = read(&lesson).unwrap_err().render(Style::Plain);
    assert_eq!(wrong["fault"].as_str().unwrap(), terminal.trim_end());
    assert!(terminal.contains("did you mean \"straight pour\"?"));
    assert_eq!(wrong["shown"], before["shown"]);
    let look = &pages(&wrong["shown"], "order")[0];
    assert_eq!(client.get(&format!("/picture/{look}")).status, 200);
    save(&lesson, SMALL);
    let right = news.until(&client, |now| now["fault"].is_null());
    assert_eq!(pages(&right["shown"], "order"), pages(&before["shown"], "order"));
}

#[test]
fn a_lesson_that_is_wrong_from_the_start_is_drawn_once_it_is_right() {
    let (_folder, lesson) = lesson("title: Nothing yet\n");
    let client = Client::of(&lesson);
    let mut news = client.listen();
    let now = client.now();
    assert!(now["shown"].is_null() && now["fault"].as_str().unwrap().contains("class"));
    save(&lesson, SMALL);
    news.until(&client, titled("A small class"));
}

#[test]
fn a_lesson_that_is_not_there_is_no_preview() {
    let (folder, _) = lesson(SMALL);
    let missing = folder.path().join("none.yaml");
    match preview_of(&missing).start() {
        Err(NoPreview::Unread(text)) => assert!(text.starts_with("error: "), "{text}"),
        other => panic!("{other:?}"),
    }
}

#[test]
fn data_files_are_followed_also_when_their_folder_comes_late() {
    let (folder, lesson) = lesson(&format!("use: [data/paints/own.yaml]\n{SMALL}"));
    let client = Client::of(&lesson);
    let mut news = client.listen();
    assert!(client.now()["fault"].as_str().unwrap().contains("own.yaml"));
    let paints = folder.path().join("data/paints");
    fs::create_dir_all(&paints).unwrap();
    fs::write(paints.join("own.yaml"), "stock: {pouring medium: 1 L}\n").unwrap();
    let first = news.until(&client, titled("A small class"));
    save(&paints.join("own.yaml"), "stock: {pouring medium: 2 mL}\n");
    let before = pages(&first["shown"], "order");
    news.until(&client, |now| now["fault"].is_null() && pages(&now["shown"], "order") != before);
}

#[test]
fn templates_of_the_teacher_are_followed() {
    let (folder, lesson) = lesson(SMALL);
    let templates = folder.path().join("words");
    fs::create_dir(&templates).unwrap();
    let own = templates.join("order.md");
    let mut preview = preview_of(&lesson);
    preview.templates_folder = Some(templates);
    preview.templates = Box::new({
        let own = own.clone();
        move || {
            let text = fs::read_to_string(&own).ok();
            Ok(text
                .map(|text| ("order.md".to_owned(), text))
                .into_iter()
                .collect::<BTreeMap<_, _>>())
        }
    });
    let client = Client::with(preview);
    let mut news = client.listen();
    let before = client.now();
    save(&own, "# To buy\n");
    let order = pages(&before["shown"], "order");
    news.until(&client, |now| now["fault"].is_null() && pages(&now["shown"], "order") != order);
    save(&own, "# {{ nothing.of.it }}\n");
    let wrong = news.until(&client, |now| !now["fault"].is_null());
    let fault = wrong["fault"].as_str().unwrap();
    assert!(fault.starts_with("error: ") && fault.contains("order.md, line 1"), "{fault}");
}

#[test]
fn the_command_line_dresses_the_pages() {
    let (_folder, lesson) = lesson(SMALL);
    let width = |paper| {
        let mut preview = preview_of(&lesson);
        preview.dress = Box::new(move |print| print.paper = paper);
        Client::with(preview).now()["shown"]["handouts"][0]["width"].as_f64().unwrap().round()
    };
    assert_eq!((width(Paper::A4), width(Paper::Letter)), (595.0, 612.0));
}

#[test]
fn what_a_colleague_would_say_stands_on_the_page() {
    let (_folder, lesson) = lesson(SMALL);
    let mut preview = preview_of(&lesson);
    preview.advise = Box::new(|plan| {
        let origins = &plan.lesson.origins;
        let place = origins.place(&["class", "students"]).unwrap();
        let title = plan.lesson.heading.title.clone();
        let spot = Spot::of(&place, origins.sources().unwrap());
        vec![Remark { spot, ..Remark::new(title, "its figures".to_owned()) }]
    });
    let now = Client::with(preview).now();
    let remark = &now["shown"]["remarks"][0];
    assert_eq!(
        (&remark["matter"], &remark["figures"]),
        (&"A small class".into(), &"its figures".into())
    );
    let spot = &remark["spot"];
    assert_eq!(spot["value"], "2", "{spot}");
    let (before, after) = (spot["before"].as_str().unwrap(), spot["after"].as_str().unwrap());
    let line = spot["line"].as_u64().unwrap();
    let written = SMALL.lines().nth(usize::try_from(line).unwrap() - 1).unwrap();
    assert_eq!(format!("{before}2{after}"), written.trim());
}

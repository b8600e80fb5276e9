//! What if: tried without touching the file, then written into it.

use super::client::{Answer, Client, pages};
use crate::lesson_tools::{SMALL, in_project};
use puddlebook::lesson::{Students, read};
use serde_json::{Value, json};
use std::fs;
use std::path::PathBuf;

/// [`SMALL`] with comments, quotes and a layer apart.
const REMARKED: &str = r##"# What I know by heart.
title: A small class
class:
  students: 2        # for now
canvases:
  square:
    shape: rectangle
    width: 10 in
    height: 10 in
    depth: 1/2 in
    technique: straight pour
    consistency: 'medium'   # as it comes
    palette: plain
  slab:
    shape: rectangle
    width: 8 in
    height: 8 in
    depth: 0
    technique: brushed base with spun colour
    consistency: {base: medium, colour: thin}  # by layer
    palette: two
palettes:
  plain:
    colour: {blue: 40 %, white: the rest}
  two:
    base: {white: 100 %}
    colour: {blue: 100 %}
colours:
  blue: {swatch: "#1F5A7A"}
  white: {swatch: "#F4F2EC"}
"##;

struct Stand {
    _folder: tempfile::TempDir,
    lesson: PathBuf,
    client: Client,
}

fn stand(text: &str) -> Stand {
    let folder = tempfile::tempdir().unwrap();
    let lesson = folder.path().join("small.yaml");
    fs::write(&lesson, text).unwrap();
    let client = Client::of(&lesson);
    Stand { _folder: folder, lesson, client }
}

impl Stand {
    fn text(&self) -> String {
        fs::read_to_string(&self.lesson).unwrap()
    }

    fn ask(&self, path: &str, wish: &Value) -> Answer {
        let version = self.client.now()["shown"]["version"].clone();
        self.client.post(path, &json!({"version": version, "wish": wish}))
    }
}

fn mix(canvas: &str, layer: Option<&str>, mix: &str) -> Value {
    json!({"canvas": canvas, "layer": layer, "mix": mix})
}

#[test]
fn the_fields_are_those_of_the_lesson() {
    let stand = stand(REMARKED);
    let fields = stand.client.now()["shown"]["fields"].clone();
    assert_eq!(fields["students"], 2);
    assert_eq!(fields["named"], false);
    let expected = [
        mix("square", None, "medium"),
        mix("slab", Some("base"), "medium"),
        mix("slab", Some("colour"), "thin"),
    ];
    assert_eq!(fields["mixes"], json!(expected));
    for known in ["thin", "medium", "thick"] {
        assert!(fields["known_mixes"].as_array().unwrap().contains(&json!(known)));
    }
}

#[test]
fn a_try_shows_pages_and_order_and_touches_nothing() {
    let stand = stand(REMARKED);
    let before = stand.client.now();
    let tried = stand.ask("/try", &json!({"students": 5})).json();
    assert_eq!(tried["shown"]["fields"]["students"], 5);
    assert_ne!(pages(&tried["shown"], "order"), pages(&before["shown"], "order"));
    let look = &pages(&tried["shown"], "order")[0];
    assert_eq!(stand.client.get(&format!("/picture/{look}")).status, 200);
    assert!(tried["unwritable"].is_null());
    // The sums of both, side by side, as the plan of such a lesson has them.
    let sums = tried["order"]["sums"].as_array().unwrap();
    let mixed = sums.iter().find(|sum| sum["what"] == "paint to mix in all").unwrap();
    assert_ne!(mixed["before"], mixed["after"]);
    let single = sums.iter().find(|sum| sum["what"] == "paint for each student").unwrap();
    assert_eq!(single["before"], single["after"]);
    assert!(!tried["order"]["changed"].as_array().unwrap().is_empty());
    assert_eq!(stand.text(), REMARKED);
    assert_eq!(stand.client.now(), before);
}

#[test]
fn a_try_that_cannot_be_is_told_and_nothing_is_lost() {
    let stand = stand(REMARKED);
    for (wish, said) in [
        (json!({"students": 0}), "1 to 1000"),
        (json!({"students": 1001}), "1 to 1000"),
        (json!({"mixes": [mix("square", None, "treacle")]}), "treacle"),
        (json!({"mixes": [mix("circle", None, "thin")]}), "canvases > circle"),
        (json!({"mixes": [mix("slab", None, "thin")]}), "a list stands where"),
    ] {
        for path in ["/try", "/write"] {
            let answer = stand.ask(path, &wish);
            assert_eq!(answer.status, 422, "{wish}: {answer:?}");
            assert!(answer.body.contains(said), "{wish}: {}", answer.body);
        }
    }
    assert_eq!(stand.text(), REMARKED);
    assert_eq!(stand.client.get("/now").status, 200);
}

#[test]
fn what_is_written_is_the_value_and_nothing_else() {
    let stand = stand(REMARKED);
    let folder = stand.lesson.parent().unwrap();
    fs::write(folder.join(".puddlebook-left.unfinished"), "of a preview that was killed").unwrap();
    let mut news = stand.client.listen();
    let wish = json!({
        "students": 12,
        "mixes": [mix("square", None, "thick"), mix("slab", Some("base"), "thin")],
    });
    assert_eq!(stand.ask("/write", &wish).status, 200);
    let expected = REMARKED
        .replace("students: 2 ", "students: 12 ")
        .replace("'medium'", "'thick'")
        .replace("{base: medium,", "{base: thin,");
    assert_eq!(stand.text(), expected);
    let now = news.until(&stand.client, |now| now["shown"]["fields"]["students"] == 12);
    assert!(now["fault"].is_null());
    let beside = fs::read_dir(folder).unwrap().count();
    assert_eq!(beside, 1, "no unfinished file is left");
}

#[test]
fn a_byte_order_mark_and_line_ends_stay() {
    let text = format!("\u{feff}{}", REMARKED.replace('\n', "\r\n"));
    let stand = stand(&text);
    assert_eq!(stand.ask("/write", &json!({"students": 3})).status, 200);
    assert_eq!(stand.text(), text.replace("students: 2 ", "students: 3 "));
}

#[test]
fn a_file_that_changed_meanwhile_is_left_alone() {
    let stand = stand(REMARKED);
    let version = stand.client.now()["shown"]["version"].clone();
    let other = REMARKED.replace("A small class", "Another class");
    fs::write(&stand.lesson, &other).unwrap();
    let asked = json!({"version": version, "wish": {"students": 3}});
    let answer = stand.client.post("/write", &asked);
    assert_eq!(answer.status, 409, "{answer:?}");
    assert!(answer.body.contains("nothing was written"));
    assert_eq!(stand.text(), other);
    fs::remove_file(&stand.lesson).unwrap();
    assert_eq!(stand.client.post("/write", &asked).status, 422);
    assert!(!stand.lesson.exists());
}

#[cfg(unix)]
#[test]
fn rights_and_links_stay() {
    use std::os::unix::fs::{PermissionsExt, symlink};
    let folder = tempfile::tempdir().unwrap();
    let (real, link) = (folder.path().join("real.yaml"), folder.path().join("link.yaml"));
    fs::write(&real, SMALL).unwrap();
    fs::set_permissions(&real, fs::Permissions::from_mode(0o640)).unwrap();
    symlink(&real, &link).unwrap();
    let client = Client::of(&link);
    let asked = json!({"version": client.now()["shown"]["version"], "wish": {"students": 3}});
    assert_eq!(client.post("/write", &asked).status, 200);
    assert!(fs::symlink_metadata(&link).unwrap().is_symlink());
    assert_eq!(fs::metadata(&real).unwrap().permissions().mode() & 0o777, 0o640);
    assert!(fs::read_to_string(&real).unwrap().contains("students: 3"));
    // A file that may only be read is not replaced by one that may be written.
    fs::set_permissions(&real, fs::Permissions::from_mode(0o440)).unwrap();
    let asked = json!({"version": client.now()["shown"]["version"], "wish": {"students": 4}});
    let answer = client.post("/write", &asked);
    assert!(answer.status == 422 && answer.body.contains("may only be read"), "{answer:?}");
    assert!(fs::read_to_string(&real).unwrap().contains("students: 3"));
}

#[test]
fn names_can_be_tried_with_but_a_number_does_not_replace_them() {
    let text = fs::read_to_string(in_project("lessons/kiln-yard-rounds.yaml")).unwrap();
    let text = text.replace("data/", &format!("{}/", in_project("lessons/data").display()));
    let stand = stand(&text);
    let now = stand.client.now();
    assert_eq!(now["shown"]["fields"]["named"], true);
    for count in [2, 6, 9] {
        let tried = stand.ask("/try", &json!({"students": count})).json();
        assert_eq!(tried["shown"]["fields"]["students"], count);
        assert!(tried["unwritable"].as_str().unwrap().contains("by name"));
    }
    assert_eq!(stand.ask("/write", &json!({"students": 9})).status, 422);
    // What else is wished can be written.
    let thick = json!({"mixes": [mix("disc", None, "thick")]});
    assert_eq!(stand.ask("/write", &thick).status, 200);
    assert_eq!(stand.text().matches("consistency: thick").count(), 1);
    let lesson = read(&stand.lesson).unwrap();
    assert!(matches!(lesson.class.students, Students::Named(names) if names.len() == 6));
}

#[test]
fn a_value_that_others_share_is_refused() {
    let text =
        REMARKED.replace("'medium' ", "&usual medium ").replace("{base: medium,", "{base: *usual,");
    let stand = stand(&text);
    for wished in [mix("square", None, "thick"), mix("slab", Some("base"), "thick")] {
        let answer = stand.ask("/write", &json!({"mixes": [wished]}));
        assert_eq!(answer.status, 422);
        assert!(answer.body.contains("cannot be changed from here"), "{}", answer.body);
    }
    assert_eq!(stand.text(), text);
}

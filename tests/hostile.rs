//! Texts that were made to break something, by hand or by the fuzz targets (`tests/fuzz`): each is
//! answered, and none breaks anything. What a file shows stands in `tests/hostile/README.md`.

use crate::lesson_tools::{SMALL, in_project, read_files};
use puddlebook::handout::{Desk, Document, Sheet, TemplateFault, Templates};
use puddlebook::ink::Faces;
use puddlebook::lesson::{
    Edition, Language, Paper, Style, Unread, from_disk, read_weighings_with, read_with,
};
use puddlebook::plan::{Plan, learn::learn, plan};
use puddlebook::quantity::{Misread, read};
use puddlebook::{page, pdf};
use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

/// The files of a folder of `tests/hostile`, with their bytes.
fn hostile(folder: &str) -> Vec<(String, Vec<u8>)> {
    let folder = in_project("tests/hostile").join(folder);
    let paths = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut files: Vec<_> = paths
        .map(|path| {
            (path.file_name().unwrap().to_str().unwrap().to_owned(), fs::read(path).unwrap())
        })
        .collect();
    files.sort();
    assert!(!files.is_empty());
    files
}

/// Those files, and the texts that fuzz targets found to reach places of their own.
fn all(folder: &str) -> Vec<(String, Vec<u8>)> {
    let mut files = hostile(folder);
    files.extend(hostile(&format!("found/{folder}")));
    files
}

#[test]
fn every_file_is_told_what_it_shows() {
    let told = fs::read_to_string(in_project("tests/hostile/README.md")).unwrap();
    for folder in ["lessons", "tables", "templates", "pages"] {
        for (name, _) in hostile(folder) {
            assert!(told.contains(&format!("`{folder}/{name}`")), "{folder}/{name}");
        }
    }
}

#[test]
fn lessons_are_answered() {
    for (name, bytes) in all("lessons") {
        let load = |path: &Path| match path.to_str() {
            Some("lesson.yaml" | "own.yaml" | "data/own.yaml") => Ok(bytes.clone()),
            Some("data/colours.yaml" | "data/shop.yaml" | "data/stock.yaml") => {
                from_disk(&in_project("lessons").join(path))
            }
            _ => Err(Unread::NotFound),
        };
        match read_with(Path::new("lesson.yaml"), &load) {
            Ok(lesson) => {
                if let Err(reason) = plan(lesson) {
                    assert!(!reason.to_string().is_empty(), "{name}");
                }
            }
            Err(faults) => {
                let said = faults.render(Style::Plain);
                assert!(said.contains("error: ") && said.len() < 200_000, "{name}");
                assert!(!said.contains("Unexplained"), "{name}: {said}");
            }
        }
    }
}

/// The bytes to blame lie in the text, on whole characters; what is read is a number.
#[test]
fn quantities_are_answered() {
    let texts = fs::read_to_string(in_project("tests/hostile/quantities.txt")).unwrap();
    assert!(texts.lines().count() >= 100);
    let blamed = |text: &str, misread: Option<Misread>| {
        let lies_in_it = misread.is_none_or(|misread| text.get(misread.span).is_some());
        assert!(lies_in_it, "{text:?}");
    };
    for text in texts.lines() {
        let finite = read::length(text).map(|length| assert!(length.value.is_finite()));
        blamed(text, finite.err());
        blamed(text, read::volume(text).err());
        blamed(text, read::amount(text).err());
        blamed(text, read::density(text).err());
        blamed(text, read::share(text).err());
        blamed(text, read::minutes(text).err());
        blamed(text, read::days(text).err());
        blamed(text, read::money(text).err());
        blamed(text, read::number(text).err());
        let _ = read::time_of_day(text);
    }
}

#[test]
fn tables_are_answered() {
    for (name, bytes) in all("tables") {
        let load = |path: &Path| match path.to_str() {
            Some("small.yaml") => Ok(SMALL.as_bytes().to_vec()),
            Some(path) if path == name => Ok(bytes.clone()),
            _ => Err(Unread::NotFound),
        };
        match read_weighings_with(&[PathBuf::from(&name)], &load) {
            Ok(weighings) => drop(learn(&weighings.classes)),
            Err(faults) => assert!(faults.render(Style::Plain).contains("error: "), "{name}"),
        }
    }
}

/// The plan of the small lesson, and an order written with templates of these texts.
fn written(plan: &Plan, own: &BTreeMap<String, String>) -> Result<Document, TemplateFault> {
    let templates = Templates::new(Language::English, own)?;
    Desk::new(plan, &templates)?.write(Sheet::Order)
}

#[test]
fn templates_are_answered() {
    let plan = plan(read_files(&[("lesson.yaml", SMALL.as_bytes())]).unwrap()).unwrap();
    for (name, bytes) in all("templates") {
        let text = String::from_utf8(bytes).unwrap();
        let names = ["order.md", "lesson.md", "words.yaml"];
        let parts = text.splitn(3, "\n=====\n").map(str::to_owned);
        let own = names.into_iter().map(str::to_owned).zip(parts).collect();
        match written(&plan, &own) {
            Ok(document) => assert!(document.blocks.len() < 100_000, "{name}"),
            Err(fault) => assert!(fault.render().contains("error: "), "{name}"),
        }
    }
}

#[test]
fn pages_are_laid_out() {
    let plan = plan(read_files(&[("lesson.yaml", SMALL.as_bytes())]).unwrap()).unwrap();
    let faces = Faces::new();
    for (name, bytes) in all("pages") {
        let body = String::from_utf8(bytes).unwrap();
        let text = format!("{{% raw %}}{body}{{% endraw %}}");
        let own = BTreeMap::from([("order.md".to_owned(), text)]);
        let mut document = match written(&plan, &own) {
            Ok(document) => document,
            Err(fault) => {
                assert!(fault.render().contains("error: "), "{name}");
                continue;
            }
        };
        for (paper, edition) in
            [(Paper::A4, Edition::Standard), (Paper::Letter, Edition::LargePrint)]
        {
            (document.paper, document.edition) = (paper, edition);
            let pages = page::lay_out(&document, &faces);
            let bytes = pdf::write(&pages, &faces);
            assert!(bytes.is_ok_and(|bytes| bytes.starts_with(b"%PDF-")), "{name}");
        }
    }
}

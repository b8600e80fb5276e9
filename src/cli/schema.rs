//! `schema`: what may stand in a file, for editors.

use super::args::{self, SchemaKind};
use super::disk::write_all;
use super::failure::Failure;
use super::say::{self, println};
use super::wrapped::columns;
use crate::handout::words_schema;
use crate::lesson::{self, FileKind, shown};
use clap::ValueEnum;

pub(super) fn schema(arguments: &args::Schema) -> Result<(), Failure> {
    match (&arguments.out, arguments.kind) {
        (None, None) => say::bytes(overview().as_bytes()),
        (None, Some(kind)) => say::bytes(text(kind)?.as_bytes()),
        (Some(folder), kind) => {
            let kinds = kind.map_or(SchemaKind::value_variants().to_vec(), |kind| vec![kind]);
            let mut files = Vec::new();
            for kind in kinds {
                files.push((folder.join(format!("{}.json", name(kind))), text(kind)?.into_bytes()));
            }
            write_all(&files)?;
            for (path, _) in &files {
                println!("{}", shown(path));
            }
        }
    }
    Ok(())
}

/// A schema as it is written, the same bytes each time.
fn text(kind: SchemaKind) -> Result<String, Failure> {
    let schema = match kind {
        SchemaKind::Lesson => lesson::schema(FileKind::Lesson),
        SchemaKind::Data => lesson::schema(FileKind::Data),
        SchemaKind::Weighings => lesson::schema(FileKind::Weighings),
        SchemaKind::Words => words_schema(),
    };
    let text = serde_json::to_string_pretty(&schema);
    text.map(|text| text + "\n").map_err(|error| Failure::disk(format!("no schema: {error}")))
}

fn overview() -> String {
    let rows: Vec<_> = SchemaKind::value_variants()
        .iter()
        .map(|kind| {
            let about = match kind {
                SchemaKind::Lesson => "one class: who comes, what is painted",
                SchemaKind::Data => "what several lessons share: colours, price lists, films.yaml",
                SchemaKind::Weighings => "the weighed cups of one class",
                SchemaKind::Words => "the words of the handouts, words.yaml beside templates",
            };
            (name(*kind), about.to_owned())
        })
        .collect();
    format!(
        "Kinds of file that have a schema:\n{}\n\
         puddlebook schema lesson         prints one\n\
         puddlebook schema --out schema   writes all of them into a folder\n\n\
         Then the first line of a lesson names it, by the path from the lesson:\n\n  \
         # yaml-language-server: $schema=schema/lesson.json\n",
        columns(&rows)
    )
}

/// The word for a kind.
fn name(kind: SchemaKind) -> String {
    kind.to_possible_value().map(|value| value.get_name().to_owned()).unwrap_or_default()
}

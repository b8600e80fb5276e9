//! What a page lets a teacher try: how many students, and how thick the paint is.

use crate::lesson::{Class, Form, Lesson, MOST_STUDENTS, Students, Unplaced, edit, form_at};
use serde::{Deserialize, Serialize};

/// The values that can be tried, as the lesson has them.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Fields {
    students: u32,
    /// The lesson names them; then a number cannot be written into it.
    named: bool,
    /// In the order of the lesson.
    mixes: Vec<MixField>,
    /// The mixes to choose from.
    known_mixes: Vec<String>,
}

/// The mix of a canvas, or of one of its layers where the lesson says them apart.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub(super) struct MixField {
    canvas: String,
    layer: Option<String>,
    mix: String,
}

/// What is to be tried: only what differs from the lesson.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub(super) struct Wish {
    students: Option<u32>,
    #[serde(default)]
    mixes: Vec<MixField>,
}

impl Fields {
    /// The fields of a lesson, by how its text has them.
    pub(super) fn of(lesson: &Lesson, text: &str) -> Self {
        let (students, named) = match &lesson.class.students {
            Students::Count(count) => (count.get(), false),
            Students::Named(names) => (u32::try_from(names.len()).unwrap_or(u32::MAX), true),
        };
        let mut mixes = Vec::new();
        for canvas in &lesson.canvases {
            let layers = canvas.technique.layers.iter().zip(&canvas.layers);
            let apart =
                form_at(text, &["canvases", &canvas.name, "consistency"]) == Some(Form::Mapping);
            let fields = layers.map(|(named, layer)| MixField {
                canvas: canvas.name.clone(),
                layer: apart.then(|| named.name.clone()),
                mix: layer.mix.name.clone(),
            });
            mixes.extend(fields.take(if apart { usize::MAX } else { 1 }));
        }
        let known_mixes = lesson.mixes.iter().map(|mix| mix.name.clone()).collect();
        Self { students, named, mixes, known_mixes }
    }

    /// Whether the lesson names its students.
    pub(super) fn named(&self) -> bool {
        self.named
    }
}

impl Wish {
    /// Whether a number of students is wished for.
    pub(super) fn students(&self) -> Option<u32> {
        self.students
    }

    /// The text of a lesson with what is wished for; students only where they are a number.
    ///
    /// # Errors
    /// The value that cannot be changed by itself, in words, and why.
    pub(super) fn write_into(&self, text: &str) -> Result<String, String> {
        let mut text = text.to_owned();
        for field in &self.mixes {
            let path = ["canvases", &field.canvas, "consistency"];
            let path: Vec<&str> = path.into_iter().chain(field.layer.as_deref()).collect();
            text = put(&text, &path, &field.mix)?;
        }
        match self.students {
            Some(count) => put(&text, &["class", "students"], &count.to_string()),
            None => Ok(text),
        }
    }

    /// The same without the number of students.
    pub(super) fn without_students(&self) -> Self {
        Self { students: None, mixes: self.mixes.clone() }
    }
}

fn put(text: &str, path: &[&str], value: &str) -> Result<String, String> {
    edit(text, path, value).map_err(|why| refusal(path, why))
}

fn refusal(path: &[&str], why: Unplaced) -> String {
    format!("{} cannot be changed from here: {why}. Change it in the file.", path.join(" > "))
}

/// A class known by its names with another number of people: the first of them, or all of them
/// and numbers for the others.
pub(super) fn seat(class: &mut Class, count: u32) {
    let Students::Named(names) = &mut class.students else { return };
    let wanted = count.clamp(1, MOST_STUDENTS) as usize;
    names.truncate(wanted);
    for number in names.len() + 1..=wanted {
        let name = number.to_string();
        let is_taken = names.contains(&name);
        names.push(if is_taken { format!("no. {name}") } else { name });
    }
}

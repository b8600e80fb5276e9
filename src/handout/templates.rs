//! The words of the handouts: Tera templates over Markdown, compiled in, each
//! replaceable by a file of the same name.

use super::context::Context;
use super::words::Words;
use crate::lesson::Language;
use crate::quantity::show::number_of;
use serde::Serialize;
use serde_yaml::Value;
use std::collections::{BTreeMap, HashMap};
use std::error::Error;
use std::fmt;
use tera::Tera;

/// A folder of templates in the program: names and texts. A language without one of these files
/// does not compile.
macro_rules! folder {
    ($language:literal) => {
        folder!(
            $language,
            "answers.md",
            "cards.md",
            "exercises.md",
            "guide-answers.md",
            "guide-cleaning.md",
            "guide-consistency.md",
            "guide-costs.md",
            "guide-drying.md",
            "guide-glossary.md",
            "guide-how-much.md",
            "guide-index.md",
            "guide-materials.md",
            "guide-measuring.md",
            "guide-mixing.md",
            "guide-pouring.md",
            "guide-safety.md",
            "guide-tables.md",
            "guide-techniques.md",
            "guide-thin-paint.md",
            "guide-troubleshooting.md",
            "guide.md",
            "lesson.md",
            "measured.md",
            "order.md",
            "tools-check.md",
            "tools-nomogram.md",
            "tools-rings.md",
            "tools.md",
            "weigh.md",
            "worksheet.md",
            "words.yaml",
        )
    };
    ($language:literal, $($name:literal),+ $(,)?) => {
        [$(($name, include_str!(concat!("../../templates/", $language, "/", $name)))),+]
    };
}

const ENGLISH: [(&str, &str); 31] = folder!("en");
const SPANISH: [(&str, &str); 31] = folder!("es");

/// The dictionary beside the templates.
const WORDS: &str = "words.yaml";

/// Characters that Markdown gives a meaning; values from a lesson have none.
const MARKDOWN: &str = "\\*_{}[]<>#+-|&~^=!";

/// A backtick as a character reference.
pub(super) const BACKTICK: &str = "&#96;";

/// A template that cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TemplateFault {
    /// The file, such as `order.md`.
    pub template: String,
    /// What is wrong, and where the template engine can tell, the line.
    pub message: String,
}

/// All templates of one language, ready to be filled.
pub struct Templates {
    tera: Tera,
    words: Words,
}

impl Templates {
    /// The built-in templates of a language, with `replacements` (name and text) in place of
    /// those of the same name. A replaced dictionary may hold single entries.
    pub fn new(
        language: Language,
        replacements: &BTreeMap<String, String>,
    ) -> Result<Self, TemplateFault> {
        let mut tera = Tera::default();
        tera.autoescape_on(vec![".md"]);
        tera.set_escape_fn(escape);
        // Templates see the plan and nothing of the machine.
        tera.register_function("get_env", |_: &_| {
            Err(tera::Error::msg("templates cannot read the environment"))
        });
        tera.register_filter("figure", figure);
        let built_in = match language {
            Language::English => ENGLISH,
            Language::Spanish => SPANISH,
        };
        let mut texts: BTreeMap<&str, &str> = built_in.into_iter().collect();
        let mut dictionary = Value::Null;
        merge(&mut dictionary, yaml(texts.remove(WORDS).unwrap_or_default())?);
        for (name, text) in replacements {
            match name.as_str() {
                WORDS => merge(&mut dictionary, yaml(text)?),
                _ => {
                    texts.insert(name, text);
                }
            }
        }
        tera.add_raw_templates(&texts).map_err(|error| fault("", &error))?;
        let words = serde_yaml::from_value(dictionary).map_err(|error| fault(WORDS, &error))?;
        Ok(Self { tera, words })
    }

    /// The dictionary.
    pub fn words(&self) -> &Words {
        &self.words
    }

    /// Fills a template.
    pub(super) fn render(
        &self,
        template: &str,
        context: &tera::Context,
    ) -> Result<String, TemplateFault> {
        self.tera.render(template, context).map_err(|error| fault(template, &error))
    }
}

/// The JSON Schema (draft 7) of a `words.yaml`, for editors.
pub fn words_schema() -> serde_json::Value {
    let built_in = ENGLISH.into_iter().find(|(name, _)| *name == WORDS);
    let text = built_in.map_or("", |(_, text)| text);
    super::words::schema::schema(&serde_yaml::from_str(text).unwrap_or_default())
}

/// The context as Tera wants it.
pub(super) fn tera_context(context: &Context) -> Result<tera::Context, TemplateFault> {
    serialized(context)
}

/// Any context as Tera wants it.
pub(super) fn serialized(context: &impl Serialize) -> Result<tera::Context, TemplateFault> {
    tera::Context::from_serialize(context).map_err(|error| fault("context", &error))
}

fn yaml(text: &str) -> Result<Value, TemplateFault> {
    serde_yaml::from_str(text).map_err(|error| fault(WORDS, &error))
}

/// Lays `over` on `base`, mapping by mapping.
fn merge(base: &mut Value, over: Value) {
    match (base, over) {
        (Value::Mapping(base), Value::Mapping(over)) => {
            for (key, value) in over {
                merge(base.entry(key).or_insert(Value::Null), value);
            }
        }
        (base, over) => *base = over,
    }
}

/// The number of an amount without its unit, for tables that have the unit in their head.
fn figure(value: &tera::Value, _: &HashMap<String, tera::Value>) -> tera::Result<tera::Value> {
    match value.as_str() {
        Some(amount) => Ok(number_of(amount).into()),
        None => Err(tera::Error::msg("the filter `figure` takes an amount, such as canvas.face")),
    }
}

fn escape(value: &str) -> String {
    let mut out = String::with_capacity(value.len() + 8);
    for c in value.chars() {
        match c {
            // In a code span no backslash helps, and a backtick would end it.
            '`' => out.push_str(BACKTICK),
            // A line break in a value would end a paragraph or a table row.
            '\n' | '\r' => out.push(' '),
            c if MARKDOWN.contains(c) => out.extend(['\\', c]),
            c => out.push(c),
        }
    }
    out
}

/// The engine's error with all its causes.
fn fault(template: &str, error: &dyn Error) -> TemplateFault {
    let mut message = error.to_string();
    let mut cause = error.source();
    while let Some(inner) = cause {
        message.push_str(": ");
        message.push_str(&inner.to_string());
        cause = inner.source();
    }
    TemplateFault { template: template.to_string(), message }
}

impl fmt::Display for TemplateFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.template.as_str() {
            "" => write!(f, "templates: {}", self.message),
            name => write!(f, "template {name}: {}", self.message),
        }
    }
}

impl Error for TemplateFault {}

//! The words of the handouts: Tera templates over Markdown, compiled in, each
//! replaceable by a file of the same name.

use super::context::Context;
use super::sandbox::{self, Allowance, Halt};
use super::template_fault::{Excerpt, TemplateFault};
use super::words::Words;
use crate::lesson::Language;
use crate::quantity::show::number_of;
use serde::Serialize;
use serde_yaml::Value;
use std::collections::{BTreeMap, HashMap};
use std::error::Error;
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

/// All templates of one language, ready to be filled.
pub struct Templates {
    tera: Tera,
    /// Names and texts as they were given, in the order in which counters name them.
    texts: Vec<(String, String)>,
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
        tera.register_filter("figure", figure);
        sandbox::furnish(&mut tera);
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
        let counted = sandbox::guarded(&texts)?;
        let texts = texts.into_iter().map(|(name, text)| (name.to_owned(), text.to_owned()));
        let texts: Vec<_> = texts.collect();
        tera.add_raw_templates(counted).map_err(|error| sandbox::unreadable(&error, &texts))?;
        let words = serde_yaml::from_value(dictionary).map_err(|error| fault(WORDS, &error))?;
        Ok(Self { tera, texts, words })
    }

    /// The dictionary.
    pub fn words(&self) -> &Words {
        &self.words
    }

    /// Fills a template of a handout.
    pub(super) fn render(
        &self,
        template: &str,
        context: &tera::Context,
        allowance: &mut Allowance,
    ) -> Result<String, TemplateFault> {
        let fill = |paper: &mut _| self.tera.render_to(template, context, paper);
        let parts = || sandbox::size(&context.clone().into_json());
        let filled = sandbox::metered(allowance, parts, fill);
        filled.map_err(|halt| match halt {
            Halt::Engine(error, counter) => {
                sandbox::unfilled(template, &error, &self.texts, counter, context)
            }
            Halt::Stopped(stopped) => {
                let text = self.texts.get(stopped.file);
                let (name, text) = text.map_or((template, ""), |(name, text)| (name, text));
                let excerpt = Excerpt::line(text, stopped.line).with_help(stopped.help);
                TemplateFault::at(name, stopped.message, excerpt)
            }
        })
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

fn fault(template: &str, error: &dyn Error) -> TemplateFault {
    TemplateFault::new(template, sandbox::chain(error))
}

//! "What we measured": the page that says what weighed cups teach.
//!
//! In: what was learned, and how it is to be printed. Out: a document. `canvases` puts the layers
//! of each canvas together, `text` has the words for the template, `chart` the picture.

mod canvases;
mod chart;
mod text;

use super::document::{Document, Form};
use super::markdown::{self, Pictures};
use super::sandbox::Allowance;
use super::template_fault::TemplateFault;
use super::templates::{Templates, serialized};
use crate::lesson::Print;
use crate::plan::learn::Learned;

const TEMPLATE: &str = "measured.md";

/// Writes down what weighed cups teach.
///
/// # Errors
/// What the template gets wrong.
pub fn measured(
    learned: &Learned,
    print: Print,
    templates: &Templates,
) -> Result<Document, TemplateFault> {
    let words = templates.words();
    let show = words.show(&print);
    let painted = canvases::painted(learned);
    let text = text::MeasuredText::of(learned, print, words, &show);
    let picture = chart::chart(learned, &painted, words, &show);
    let pictures = Pictures::from([("weighed".to_owned(), picture)]);
    let markdown = templates.render(TEMPLATE, &serialized(&text)?, &mut Allowance::whole())?;
    let blocks = markdown::read(&markdown, &pictures).map_err(|fault| fault.of(TEMPLATE))?;
    let name = &words.sheets.measured;
    let last = learned.classes.iter().filter_map(|class| class.date).max();
    Ok(Document {
        title: name.clone(),
        author: None,
        language: words.language.clone(),
        decimal: words.numbers.decimal,
        date: last.map(|date| date.to_string()),
        form: Form::Sheet,
        paper: print.paper,
        edition: print.edition,
        header: (String::new(), name.clone()),
        footer: String::new(),
        folio: words.folio.clone(),
        continued: words.continued.clone(),
        tick_box: words.tick_box.clone(),
        ruled_line: words.ruled_line.clone(),
        cut_to: words.cut_to.clone(),
        blocks,
    })
}

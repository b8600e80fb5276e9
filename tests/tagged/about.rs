//! What a file says about itself: title shown, language, order of the tabulator key, standard.

use hayro_syntax::object::{Dict, Stream};

use super::handouts::Handout;
use super::{all_keep, ensure};
use crate::pdf_reader as reader;

#[test]
fn every_file_says_what_it_is() {
    all_keep(says_what_it_is);
}

pub fn says_what_it_is(Handout { document, file, .. }: &Handout) -> Result<(), String> {
    let root = reader::root(&file.pdf);
    let language = reader::texts(&root, "Lang");
    ensure(language.as_ref() == Some(&document.language), || format!("language {language:?}"))?;
    let part = |key| root.get::<Dict<'_>>(key).ok_or_else(|| format!("no {key}"));
    let shown = part("ViewerPreferences")?.get::<bool>("DisplayDocTitle");
    ensure(shown == Some(true), || "the title is not shown".to_owned())?;
    let marked = part("MarkInfo")?.get::<bool>("Marked");
    ensure(marked == Some(true), || "the file does not say that it is tagged".to_owned())?;
    for (number, page) in file.pdf.pages().iter().enumerate() {
        let tabs = reader::name(page.raw(), "Tabs");
        ensure(tabs.as_deref() == Some("S"), || format!("tab order {tabs:?} on page {number}"))?;
    }
    let metadata = root.get::<Stream<'_>>("Metadata").ok_or("no metadata")?;
    let metadata = metadata.decoded().map_err(|_| "metadata that cannot be read")?;
    let metadata = String::from_utf8_lossy(&metadata).into_owned();
    let escaped = document.title.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    let wanted = [
        "<pdfuaid:part>1</pdfuaid:part>".to_owned(),
        format!("<rdf:li xml:lang=\"x-default\">{escaped}</rdf:li>"),
        format!("<rdf:li>{}</rdf:li>", document.language),
    ];
    for wanted in wanted {
        ensure(metadata.contains(&wanted), || format!("no {wanted} in the metadata"))?;
    }
    Ok(())
}

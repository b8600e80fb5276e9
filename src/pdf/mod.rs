//! Pages become PDF bytes.
//!
//! In: [`Pages`], every mark in its place with the tag it belongs to, and the faces.
//! Out: the bytes of one file, the same for the same pages on any machine at any time.
//! This room decides nothing about layout and knows nothing of lessons.
//!
//! The steps: `usage` looks which glyphs are in use, `font` cuts the faces down to
//! them, `content` (with `pen`, `text` and `path`) turns marks into the operators of a
//! stream, `press` deflates it. The PDF library makes a draft of pages and faces; what it
//! does not write is added by `embed` (exact widths), `sheet` (page dictionaries and
//! streams), `link`, `field`, `outline`, `tags` and `meta`; `file` writes the bytes.

mod annotation;
mod content;
mod digest;
mod element;
mod embed;
mod error;
mod extent;
mod field;
mod file;
mod font;
mod link;
mod meta;
mod object;
mod operators;
mod outline;
mod path;
mod pen;
mod press;
mod sheet;
mod tags;
mod text;
mod usage;
mod written;

pub use error::PdfError;

use printpdf::{PdfDocument, PdfPage, PdfParseErrorSeverity, PdfSaveOptions, Pt, Rect};

use crate::crew;
use crate::ink::Faces;
use crate::page::{Page, Pages};
use content::Content;
use press::Press;
use written::Written;

/// Pages that are worth a thread: a handout of a page or two is often one of many that are
/// written side by side.
const PAGES: usize = 4;

/// Writes pages as a PDF 1.7 file.
///
/// # Errors
///
/// When the pages contradict themselves: a link to a page that is not there, content
/// of a tag that is not there, a glyph that stands for bytes outside its text.
pub fn write(pages: &Pages, faces: &Faces) -> Result<Vec<u8>, PdfError> {
    let fonts = font::Fonts::new(&usage::Usage::of_pages(pages)?)?;
    let kind = |tag: crate::page::TagId| pages.tags.get(tag.0).map(|tag| tag.kind);
    let (width, height) = pages.size;

    let draw = |press: &mut Press, page: &Page| {
        let mut content = content::draw(page, height, &fonts, kind);
        content.stream = press.deflate(&content.stream)?;
        Ok(content)
    };
    let drawn = crew::map(pages.pages.iter().collect(), PAGES, Press::new, draw);
    let drawn: Vec<Content> = drawn.into_iter().collect::<Result<_, PdfError>>()?;

    let mut document = PdfDocument::new(&pages.title);
    let mut specimen = fonts.register(&mut document.resources);
    let sheet = Rect::from_wh(Pt(width), Pt(height));
    document.pages.extend(pages.pages.iter().map(|_| PdfPage {
        media_box: sheet.clone(),
        trim_box: sheet.clone(),
        crop_box: sheet.clone(),
        ops: std::mem::take(&mut specimen),
    }));
    let mut warnings = Vec::new();
    let options = PdfSaveOptions { image_optimization: None, ..PdfSaveOptions::default() };
    let mut draft = printpdf::serialize::to_lopdf_doc(&document, &options, &mut warnings);
    if let Some(fault) = warnings.iter().find(|w| w.severity == PdfParseErrorSeverity::Error) {
        return Err(PdfError::Refused { page: fault.page, reason: fault.msg.clone() });
    }

    embed::finish(&mut draft, &fonts, faces)?;
    let sheets = sheet::finish(&mut draft)?;
    let mut shown = Vec::with_capacity(drawn.len());
    for (page, content) in drawn.into_iter().enumerate() {
        sheets.fill(&mut draft, page, content.stream)?;
        shown.push(content.shown);
    }
    let mut written = Written::default();
    let mut touched = link::add(&mut draft, pages, &sheets)?;
    let key = annotation::first_key(pages) + touched.len();
    touched.extend(field::add(&mut draft, &mut written, pages, (&sheets, faces), key)?);
    annotation::list(&mut draft, &sheets, &touched)?;
    outline::add(&mut draft, pages, &sheets)?;
    let ground = tags::Ground { sheets: &sheets, shown: &shown, touched: &touched };
    tags::add(&mut draft, &mut written, pages, &ground, faces)?;
    meta::add(&mut draft, pages)?;
    file::write(draft, written)
}

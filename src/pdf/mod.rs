//! Pages become PDF bytes.
//!
//! In: [`Pages`], every mark in its place with the tag it belongs to, and the faces.
//! Out: the bytes of one file, the same for the same pages on any machine at any time.
//! This room decides nothing about layout and knows nothing of lessons.
//!
//! The steps: `usage` looks which glyphs are in use, `font` cuts the faces down to
//! them, `content` (with `pen`, `text` and `path`) turns marks into operations
//! of the PDF library; what the library does not write is added to its draft by
//! `embed` (exact widths), `sheet` (page dictionaries), `link`, `outline`,
//! `tags` and `meta`; `file` writes the bytes.

mod content;
mod digest;
mod embed;
mod error;
mod extent;
mod file;
mod font;
mod link;
mod meta;
mod object;
mod outline;
mod parallel;
mod path;
mod pen;
mod sheet;
mod tags;
mod text;
mod usage;

pub use error::PdfError;

use printpdf::{PdfDocument, PdfPage, PdfParseErrorSeverity, PdfSaveOptions, Pt, Rect};

use crate::ink::Faces;
use crate::page::{Page, Pages};
use content::Content;

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

    let mut document = PdfDocument::new(&pages.title);
    fonts.register(&mut document.resources);
    let mut drawn: Vec<(&Page, Content)> =
        pages.pages.iter().map(|page| (page, Content::default())).collect();
    parallel::each(&mut drawn, |(page, content)| {
        *content = content::draw(page, height, &fonts, kind);
        Ok(())
    })?;
    let mut sequences = Vec::with_capacity(drawn.len());
    for (_, content) in drawn {
        sequences.push(content.sequences);
        let sheet = Rect::from_wh(Pt(width), Pt(height));
        document.pages.push(PdfPage {
            media_box: sheet.clone(),
            trim_box: sheet.clone(),
            crop_box: sheet,
            ops: content.ops,
        });
    }

    let mut warnings = Vec::new();
    let options = PdfSaveOptions { image_optimization: None, ..PdfSaveOptions::default() };
    let mut draft = printpdf::serialize::to_lopdf_doc(&document, &options, &mut warnings);
    if let Some(fault) = warnings.iter().find(|w| w.severity == PdfParseErrorSeverity::Error) {
        return Err(PdfError::Refused { page: fault.page, reason: fault.msg.clone() });
    }

    embed::finish(&mut draft, &fonts, faces)?;
    let sheets = sheet::finish(&mut draft)?;
    let links = link::add(&mut draft, pages, &sheets)?;
    outline::add(&mut draft, pages, &sheets)?;
    tags::add(&mut draft, pages, &sheets, &sequences, &links, faces)?;
    meta::add(&mut draft, pages)?;
    file::write(draft)
}

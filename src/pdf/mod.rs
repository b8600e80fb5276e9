//! Pages become PDF bytes.
//!
//! In: [`Pages`], every mark in its place with the tag it belongs to, and the faces.
//! Out: the bytes of one file, the same for the same pages on any machine at any time.
//! This room decides nothing about layout and knows nothing of lessons.
//!
//! The steps: `impose` says which pages share a side of paper, `usage` looks which glyphs are in use, `font` cuts the faces down to
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
mod impose;
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

pub(crate) use digest::digest as fingerprint;
pub use error::PdfError;

use printpdf::{PdfDocument, PdfPage, PdfParseErrorSeverity, PdfSaveOptions, Pt, Rect};

use crate::crew;
use crate::ink::Faces;
use crate::page::{MOST_PAGES, Pages};
use content::Content;
use impose::{Imposition, Side};
use press::Press;
use written::Written;

/// Pages that are worth a thread: a handout of a page or two is often one of many that are
/// written side by side.
const PAGES: usize = 4;

/// Writes pages as a PDF 1.7 file.
///
/// # Errors
///
/// When there are more of them than [`MOST_PAGES`], or they contradict themselves: a link to a page that is not there, content
/// of a tag that is not there, a glyph that stands for bytes outside its text.
pub fn write(pages: &Pages, faces: &Faces) -> Result<Vec<u8>, PdfError> {
    write_on(pages, &Imposition::single(pages), faces)
}

/// Writes pages two on a side, to be printed on both sides of the paper, folded in the
/// middle and stapled. Who hears the file hears the pages in their own order.
///
/// # Errors
///
/// As [`write()`].
pub fn write_booklet(pages: &Pages, faces: &Faces) -> Result<Vec<u8>, PdfError> {
    write_on(pages, &Imposition::folded(pages), faces)
}

fn write_on(pages: &Pages, imposition: &Imposition, faces: &Faces) -> Result<Vec<u8>, PdfError> {
    if pages.pages.len() > MOST_PAGES {
        return Err(PdfError::TooManyPages);
    }
    let fonts = font::Fonts::new(&usage::Usage::of_pages(pages)?)?;
    let draw = |press: &mut Press, side: &Side| {
        let mut content = content::draw(side, pages, &fonts);
        content.stream = press.deflate(&content.stream)?;
        Ok(content)
    };
    let drawn = crew::map(imposition.sides.iter().collect(), PAGES, Press::new, draw);
    let drawn: Vec<Content> = drawn.into_iter().collect::<Result<_, PdfError>>()?;

    let mut draft = sketch(pages, imposition, &fonts)?;
    embed::finish(&mut draft, &fonts, faces)?;
    let sheets = sheet::finish(&mut draft, imposition.places())?;
    let mut shown = Vec::with_capacity(pages.pages.len());
    for (side, content) in drawn.into_iter().enumerate() {
        sheets.fill(&mut draft, side, content.stream)?;
        shown.extend(content.pages);
    }
    shown.sort_unstable_by_key(|on_page| on_page.page);
    let mut written = Written::default();
    let mut touched = link::add(&mut draft, pages, &sheets)?;
    let key = sheets.count() + touched.len();
    touched.extend(field::add(&mut draft, &mut written, pages, (&sheets, faces), key)?);
    annotation::list(&mut draft, &sheets, &touched)?;
    outline::add(&mut draft, pages, &sheets)?;
    let ground = tags::Ground { sheets: &sheets, shown: &shown, imposition, touched: &touched };
    tags::add(&mut draft, &mut written, pages, &ground, faces)?;
    meta::add(&mut draft, pages)?;
    file::write(draft, written)
}

/// What the PDF library makes: the faces, and sides without anything on them.
fn sketch(
    pages: &Pages,
    imposition: &Imposition,
    fonts: &font::Fonts,
) -> Result<lopdf::Document, PdfError> {
    let mut document = PdfDocument::new(&pages.title);
    let mut specimen = fonts.register(&mut document.resources);
    let (width, height) = imposition.size;
    let sheet = Rect::from_wh(Pt(width), Pt(height));
    document.pages.extend(imposition.sides.iter().map(|_| PdfPage {
        media_box: sheet.clone(),
        trim_box: sheet.clone(),
        crop_box: sheet.clone(),
        ops: std::mem::take(&mut specimen),
    }));
    let mut warnings = Vec::new();
    let options = PdfSaveOptions { image_optimization: None, ..PdfSaveOptions::default() };
    let draft = printpdf::serialize::to_lopdf_doc(&document, &options, &mut warnings);
    match warnings.iter().find(|w| w.severity == PdfParseErrorSeverity::Error) {
        Some(fault) => Err(PdfError::Refused { page: fault.page, reason: fault.msg.clone() }),
        None => Ok(draft),
    }
}

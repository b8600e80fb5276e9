//! What the file says about itself: title, author, language, date, standard.

use lopdf::{Dictionary, Document, Object, Stream, StringFormat, dictionary};

use super::PdfError;
use crate::page::{Pages, Printing, Tag, TagKind};

const PRODUCER: &str = concat!("puddlebook ", env!("CARGO_PKG_VERSION"));

/// Adds document information, XMP metadata and the catalog entries beside them.
pub(super) fn add(draft: &mut Document, pages: &Pages) -> Result<(), PdfError> {
    let date = pages.date.as_deref().filter(|date| is_date(date));
    let mut info = dictionary! { "Title" => string(&pages.title), "Producer" => string(PRODUCER) };
    if let Some(author) = &pages.author {
        info.set("Author", string(author));
    }
    if let Some(date) = date {
        info.set("CreationDate", string(&format!("D:{}", date.replace('-', ""))));
    }
    let old = draft.trailer.get(b"Info").and_then(Object::as_reference);
    let old = old.map_err(|_| PdfError::Structure("document information"))?;
    draft.set_object(old, info);

    let packet = xmp(pages, date).into_bytes();
    let dict = dictionary! { "Type" => "Metadata", "Subtype" => "XML" };
    // Left readable: tools look for it without a PDF reader.
    let metadata = draft.add_object(Stream::new(dict, packet).with_compression(false));

    let catalog = catalog(draft)?;
    catalog.remove(b"PageLayout");
    if catalog.get(b"Outlines").is_err() {
        catalog.remove(b"PageMode");
    }
    catalog.set("Lang", string(&pages.language));
    let mut preferences = dictionary! { "DisplayDocTitle" => true };
    if pages.printing == Printing::AtItsSize {
        // ISO 32000-1, Table 150: the print dialogue opens without scaling.
        preferences.set("PrintScaling", Object::Name(b"None".to_vec()));
    }
    catalog.set("ViewerPreferences", preferences);
    catalog.set("Metadata", metadata);
    Ok(())
}

/// The root of the document, to be added to.
pub(super) fn catalog(draft: &mut Document) -> Result<&mut Dictionary, PdfError> {
    draft.catalog_mut().map_err(|_| PdfError::Structure("a catalog"))
}

/// A text string object (ISO 32000-1, 7.9.2.2).
pub(super) fn string(text: &str) -> Object {
    Object::String(text_string(text), StringFormat::Literal)
}

/// The bytes of a text string: ASCII as it is, anything else in UTF-16.
pub(super) fn text_string(text: &str) -> Vec<u8> {
    if text.is_ascii() {
        return text.as_bytes().to_vec();
    }
    let units = std::iter::once(0xFEFF).chain(text.encode_utf16());
    units.flat_map(u16::to_be_bytes).collect()
}

/// Year, month and day of ISO 8601.
fn is_date(date: &str) -> bool {
    date.len() == 10
        && date.bytes().enumerate().all(|(at, byte)| match at {
            4 | 7 => byte == b'-',
            _ => byte.is_ascii_digit(),
        })
}

/// Whether the file may call itself PDF/UA-1: the rules of ISO 14289-1 that lie with
/// whoever made the pages. All others are met by how this module writes.
fn is_accessible(pages: &Pages) -> bool {
    let silent = |tag: &&Tag| matches!(tag.kind, TagKind::Figure | TagKind::Field(_));
    let mut silent = pages.tags.iter().filter(silent);
    let described = silent.all(|tag| tag.alt.as_ref().is_some_and(|alt| !alt.is_empty()));
    let mut rank = 0;
    let ranked = pages.tags.iter().all(|tag| match tag.kind {
        TagKind::Heading(level) => {
            let follows = level <= rank + 1;
            rank = level;
            follows
        }
        _ => true,
    });
    let links = pages.pages.iter().flat_map(|page| &page.links);
    !pages.tags.is_empty()
        && !pages.title.is_empty()
        && !pages.language.is_empty()
        && described
        && ranked
        && links.into_iter().all(|link| !link.description.is_empty())
}

/// The metadata packet (ISO 16684-1), with the PDF/UA mark where it is earned.
fn xmp(pages: &Pages, date: Option<&str>) -> String {
    let title = escape(&pages.title);
    let mut packet = format!(
        "<?xpacket begin=\"\u{FEFF}\" id=\"W5M0MpCehiHzreSzNTczkc9d\"?>\n\
         <x:xmpmeta xmlns:x=\"adobe:ns:meta/\">\
         <rdf:RDF xmlns:rdf=\"http://www.w3.org/1999/02/22-rdf-syntax-ns#\">\
         <rdf:Description rdf:about=\"\" \
         xmlns:dc=\"http://purl.org/dc/elements/1.1/\" \
         xmlns:xmp=\"http://ns.adobe.com/xap/1.0/\" \
         xmlns:pdf=\"http://ns.adobe.com/pdf/1.3/\" \
         xmlns:pdfuaid=\"http://www.aiim.org/pdfua/ns/id/\">\n\
         <dc:format>application/pdf</dc:format>\n\
         <dc:title><rdf:Alt><rdf:li xml:lang=\"x-default\">{title}</rdf:li></rdf:Alt></dc:title>\n\
         <dc:language><rdf:Bag><rdf:li>{}</rdf:li></rdf:Bag></dc:language>\n\
         <pdf:Producer>{PRODUCER}</pdf:Producer>\n",
        escape(&pages.language),
    );
    if let Some(author) = &pages.author {
        let author = escape(author);
        packet +=
            &format!("<dc:creator><rdf:Seq><rdf:li>{author}</rdf:li></rdf:Seq></dc:creator>\n");
    }
    if let Some(date) = date {
        packet += &format!("<xmp:CreateDate>{date}</xmp:CreateDate>\n");
    }
    if is_accessible(pages) {
        packet += "<pdfuaid:part>1</pdfuaid:part>\n";
    }
    packet + "</rdf:Description></rdf:RDF></x:xmpmeta>\n<?xpacket end=\"r\"?>"
}

fn escape(text: &str) -> String {
    text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;")
}

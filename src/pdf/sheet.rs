//! Pages: their streams, and their dictionaries, in which what the PDF library repeats on
//! every page is said once.

use lopdf::{Dictionary, Document, Object, ObjectId, Stream, dictionary};

use super::PdfError;

/// The objects of the sides of sheets, in order, and where the pages stand on them.
pub(super) struct Sheets {
    sides: Vec<ObjectId>,
    /// Side and left edge of each page.
    places: Vec<(usize, f32)>,
}

impl Sheets {
    /// How many sides there are.
    pub fn count(&self) -> usize {
        self.sides.len()
    }

    /// The object of the side on which a page stands.
    pub fn get(&self, page: usize) -> Result<ObjectId, PdfError> {
        let missing = PdfError::NoSuchPage { page, pages: self.places.len() };
        let side = self.places.get(page).and_then(|(side, _)| self.sides.get(*side));
        side.copied().ok_or(missing)
    }

    /// Left edge of a page on its side, in points.
    pub fn left(&self, page: usize) -> f32 {
        self.places.get(page).map_or(0.0, |(_, left)| *left)
    }

    /// Gives a side its content stream, which is deflated already.
    pub fn fill(
        &self,
        draft: &mut Document,
        side: usize,
        deflated: Vec<u8>,
    ) -> Result<(), PdfError> {
        let old = self.dictionary(draft, side)?.get(b"Contents").and_then(Object::as_reference);
        let old = old.map_err(|_| PdfError::Structure("a content stream"))?;
        draft.set_object(old, Stream::new(dictionary! { "Filter" => "FlateDecode" }, deflated));
        Ok(())
    }

    /// Dictionary of a side, to be added to.
    pub fn dictionary<'a>(
        &self,
        draft: &'a mut Document,
        side: usize,
    ) -> Result<&'a mut Dictionary, PdfError> {
        let missing = PdfError::NoSuchPage { page: side, pages: self.sides.len() };
        dictionary(draft, self.sides.get(side).copied().ok_or(missing)?)
    }
}

/// Dictionary of a side by its object.
pub(super) fn dictionary(draft: &mut Document, id: ObjectId) -> Result<&mut Dictionary, PdfError> {
    draft.get_dictionary_mut(id).map_err(|_| PdfError::Structure("a page"))
}

/// Lets all pages share one resource dictionary that names only fonts, and leaves out
/// boxes that are no different from the page.
pub(super) fn finish(draft: &mut Document, places: Vec<(usize, f32)>) -> Result<Sheets, PdfError> {
    let sheets: Vec<ObjectId> = draft.page_iter().collect();
    let mut shared = None;
    for &id in &sheets {
        let page = dictionary(draft, id)?;
        for key in ["TrimBox", "CropBox", "Annots"] {
            page.remove(key.as_bytes());
        }
        let own = page.get(b"Resources").and_then(Object::as_reference);
        let own = own.map_err(|_| PdfError::Structure("resources"))?;
        let resources = *shared.get_or_insert(own);
        page.set("Resources", resources);
        if own != resources {
            draft.objects.remove(&own);
        }
    }
    if let Some(id) = shared {
        let resources = draft.get_dictionary_mut(id);
        let resources = resources.map_err(|_| PdfError::Structure("resources"))?;
        let unused = ["XObject", "ExtGState", "Shading"]
            .map(|key| resources.remove(key.as_bytes()).and_then(|o| o.as_reference().ok()));
        for id in unused.into_iter().flatten() {
            draft.objects.remove(&id);
        }
    }
    Ok(Sheets { sides: sheets, places })
}

/// A place on a page as a destination (ISO 32000-1, 12.3.2.2), the view's left edge
/// and size left as they are. `y` is from the bottom in points.
pub(super) fn destination(page: ObjectId, y: f32) -> Object {
    let xyz = Object::Name(b"XYZ".to_vec());
    let y = Object::Real((y * 10.0).round() / 10.0);
    Object::Array(vec![page.into(), xyz, Object::Null, y, Object::Null])
}

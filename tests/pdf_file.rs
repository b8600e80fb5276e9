//! A whole PDF, read once: fonts, pages, structure tree.

use std::collections::{BTreeMap, HashMap};

use hayro_syntax::Pdf;
use hayro_syntax::object::{Array, Dict, Number, ObjectIdentifier};

use crate::pdf_reader::{self as reader, ReadFont, ReadPage, Sequence};
use crate::pdf_tree::{self, Element};

/// A link or a field.
pub struct Touched {
    pub page: usize,
    /// `Link` or `Widget`.
    pub kind: String,
    /// What is said of it: where a link leads, what belongs into a field.
    pub text: String,
    /// Lower left and upper right corner.
    pub area: [(f32, f32); 2],
}

/// What a reader program makes of a file.
pub struct ReadFile {
    pub pdf: Pdf,
    pub fonts: BTreeMap<String, ReadFont>,
    pub pages: Vec<ReadPage>,
    /// The document element.
    pub tree: Element,
    pub touched: HashMap<ObjectIdentifier, Touched>,
    /// Where on its page each marked sequence stands, by page and number.
    places: HashMap<(usize, i64), usize>,
}

impl ReadFile {
    pub fn new(bytes: &[u8]) -> Self {
        let pdf = reader::open(bytes);
        let fonts = reader::fonts(&pdf);
        let pages: Vec<ReadPage> =
            (0..pdf.pages().len()).map(|number| reader::page(&pdf, number, &fonts)).collect();
        let tree = pdf_tree::tree(&pdf);
        let mut places = HashMap::new();
        for (number, page) in pages.iter().enumerate() {
            for (place, sequence) in page.sequences.iter().enumerate() {
                if let Some(mcid) = sequence.mcid {
                    places.insert((number, mcid), place);
                }
            }
        }
        let touched = touched(&pdf);
        Self { pdf, fonts, pages, tree, touched, places }
    }

    /// Where on its page a marked sequence stands.
    pub fn place(&self, page: Option<usize>, mcid: i64) -> Option<usize> {
        self.places.get(&(page?, mcid)).copied()
    }

    /// A marked sequence.
    pub fn sequence(&self, page: Option<usize>, mcid: i64) -> Option<&Sequence> {
        self.pages[page?].sequences.get(self.place(page, mcid)?)
    }
}

fn touched(pdf: &Pdf) -> HashMap<ObjectIdentifier, Touched> {
    let mut touched = HashMap::new();
    for (page, sheet) in pdf.pages().iter().enumerate() {
        let Some(annotations) = sheet.raw().get::<Array<'_>>("Annots") else { continue };
        for dict in annotations.iter::<Dict<'_>>() {
            let corners: Vec<f32> = dict
                .get::<Array<'_>>("Rect")
                .expect("an area")
                .iter::<Number>()
                .map(|n| n.as_f32())
                .collect();
            let text = reader::texts(&dict, "TU").or(reader::texts(&dict, "Contents"));
            let one = Touched {
                page,
                kind: reader::name(&dict, "Subtype").expect("a kind"),
                text: text.unwrap_or_default(),
                area: [(corners[0], corners[1]), (corners[2], corners[3])],
            };
            touched.insert(dict.obj_id().expect("a number"), one);
        }
    }
    touched
}

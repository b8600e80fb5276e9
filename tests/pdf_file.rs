//! A whole PDF, read once: fonts, pages, structure tree.

use std::collections::{BTreeMap, HashMap};

use hayro_syntax::Pdf;

use crate::pdf_reader::{self as reader, ReadFont, ReadPage, Sequence};
use crate::pdf_tree::{self, Element};

/// What a reader program makes of a file.
pub struct ReadFile {
    pub pdf: Pdf,
    pub fonts: BTreeMap<String, ReadFont>,
    pub pages: Vec<ReadPage>,
    /// The document element.
    pub tree: Element,
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
        Self { pdf, fonts, pages, tree, places }
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

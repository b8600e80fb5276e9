//! Pages of a PDF as pictures (SVG), drawn by a reader of PDF that did not write them, so that
//! the page shows what will print.

use super::version::Look;
use hayro_svg::hayro_interpret::InterpreterSettings;
use hayro_svg::hayro_syntax::Pdf;
use hayro_svg::{RenderCache, SvgRenderSettings, convert};
use std::collections::{HashMap, VecDeque};
use std::sync::Arc;

/// Pictures are kept up to so many bytes; a page of text has 50 to 300 KB.
const KEPT_BYTES: usize = 48 << 20;

/// White paper.
const PAPER: SvgRenderSettings = SvgRenderSettings { bg_color: [255; 4] };

/// A page as a picture, by its place in the file; `None` when the file has no such page.
pub(super) fn draw(pdf: &Arc<Vec<u8>>, page: usize) -> Option<String> {
    let file = Pdf::new(Arc::clone(pdf)).ok()?;
    let page = file.pages().get(page)?;
    Some(convert(page, &RenderCache::new(), &InterpreterSettings::default(), &PAPER))
}

/// The pictures drawn last.
#[derive(Default)]
pub(super) struct Gallery {
    pictures: HashMap<Look, Arc<str>>,
    /// Oldest first.
    order: VecDeque<Look>,
    bytes: usize,
}

impl Gallery {
    pub(super) fn get(&self, look: Look) -> Option<Arc<str>> {
        self.pictures.get(&look).cloned()
    }

    /// Keeps a picture; older ones give way.
    pub(super) fn keep(&mut self, look: Look, picture: Arc<str>) {
        if self.pictures.contains_key(&look) {
            return;
        }
        self.bytes += picture.len();
        self.pictures.insert(look, picture);
        self.order.push_back(look);
        while self.bytes > KEPT_BYTES
            && let Some(oldest) = self.order.pop_front()
        {
            let gone = self.pictures.remove(&oldest).map_or(0, |picture| picture.len());
            self.bytes = self.bytes.saturating_sub(gone);
        }
    }
}

//! The faces of one document, cut down to the glyphs in use.

use printpdf::{Codepoint, FontId, Op, ParsedFont, PdfFont, PdfFontHandle, Pt, TextItem};
use subsetter::GlyphRemapper;

use super::PdfError;
use super::usage::{FaceUsage, Usage};
use crate::ink::{Face, Faces};

/// All faces that a document uses.
pub(super) struct Fonts {
    fonts: [Option<Font>; 4],
}

/// A face as it stands in the document.
pub(super) struct Font {
    pub id: FontId,
    pub parsed: ParsedFont,
    /// By glyph of the whole face.
    glyphs: Vec<Option<FontGlyph>>,
}

/// A glyph as it stands in the document.
pub(super) struct FontGlyph {
    /// Its number in the cut-down face.
    pub id: u16,
    /// Advance in thousandths of an em, as `/W` says it.
    pub width: f32,
    /// The text that a reader copies for it.
    pub text: Box<str>,
}

impl Fonts {
    /// Cuts every face down to what `usage` says is in use.
    pub fn new(usage: &Usage) -> Result<Self, PdfError> {
        let mut fonts = [const { None }; 4];
        for (slot, face) in fonts.iter_mut().zip(Face::ALL) {
            let of_face = usage.of(face);
            if !of_face.is_empty() {
                *slot = Some(Font::new(face, of_face)?);
            }
        }
        Ok(Self { fonts })
    }

    /// A face, if it is in use.
    pub fn get(&self, face: Face) -> Option<&Font> {
        self.fonts.get(face as usize)?.as_ref()
    }

    /// Hands the faces to the PDF library, and gives a specimen of them: it embeds what it
    /// sees in use, each glyph with its text.
    pub fn register(&self, resources: &mut printpdf::PdfResources) -> Vec<Op> {
        let mut specimen = vec![Op::StartTextSection];
        for font in self.fonts.iter().flatten() {
            resources.fonts.map.insert(font.id.clone(), PdfFont::new(font.parsed.clone()));
            let glyph =
                |glyph: &FontGlyph| Codepoint::with_cid(glyph.id, 0.0, glyph.text.as_ref().into());
            let items = vec![TextItem::GlyphIds(font.glyphs().map(glyph).collect())];
            let handle = PdfFontHandle::External(font.id.clone());
            specimen.push(Op::SetFont { font: handle, size: Pt(1.0) });
            specimen.push(Op::ShowText { items });
        }
        specimen.push(Op::EndTextSection);
        specimen
    }

    /// Every face in use, with its name.
    pub fn iter(&self) -> impl Iterator<Item = (Face, &Font)> {
        Face::ALL.into_iter().filter_map(|face| Some((face, self.get(face)?)))
    }
}

impl Font {
    fn new(face: Face, usage: &FaceUsage) -> Result<Self, PdfError> {
        let ids: Vec<u16> = usage.glyphs().map(|(id, _)| id).collect();
        let remapper = GlyphRemapper::new_from_glyphs_sorted(&ids);
        let program = subsetter::subset(Faces::bytes(face), 0, &remapper)
            .map_err(|e| PdfError::Subset { face, reason: e.to_string() })?;
        let mut parsed = ParsedFont::from_bytes(&program, 0, &mut Vec::new())
            .ok_or(PdfError::Unreadable { face })?;
        parsed.font_name = Some(format!("{}+{}", subset_tag(&ids), name(face)));
        parsed.pdf_font_metrics.us_weight_class = weight(face);
        parsed.codepoint_to_glyph.clear();

        let mut font = Self { id: FontId(short_name(face).to_owned()), parsed, glyphs: Vec::new() };
        for (id, seen) in usage.glyphs() {
            let new = remapper.get(id).ok_or(PdfError::Unreadable { face })?;
            let glyph = FontGlyph { id: new, width: font.width_of(new), text: seen.text().into() };
            font.glyphs.resize_with(usize::from(id) + 1, || None);
            if let Some(slot) = font.glyphs.last_mut() {
                *slot = Some(glyph);
            }
        }
        Ok(font)
    }

    /// A glyph by its number in the whole face.
    pub fn glyph(&self, id: u16) -> Option<&FontGlyph> {
        self.glyphs.get(usize::from(id))?.as_ref()
    }

    /// Glyphs in the order of the cut-down face.
    pub fn glyphs(&self) -> impl Iterator<Item = &FontGlyph> {
        self.glyphs.iter().flatten()
    }

    fn width_of(&self, new: u16) -> f32 {
        let units = self.parsed.get_glyph_width(new).unwrap_or(0);
        f32::from(units) * 1000.0 / f32::from(self.parsed.units_per_em.max(1))
    }
}

/// Six letters that tell one choice of glyphs from another (ISO 32000-1, 9.6.4).
fn subset_tag(ids: &[u16]) -> String {
    let bytes = ids.iter().flat_map(|id| id.to_be_bytes());
    let mut rest = super::digest::digest(bytes);
    (0..6)
        .map(|_| {
            let letter = (rest % 26) as u8;
            rest /= 26;
            char::from(b'A' + letter)
        })
        .collect()
}

/// The PostScript name.
const fn name(face: Face) -> &'static str {
    match face {
        Face::Regular => "Lato-Regular",
        Face::Bold => "Lato-Bold",
        Face::Italic => "Lato-Italic",
        Face::BoldItalic => "Lato-BoldItalic",
    }
}

/// The name within content streams.
const fn short_name(face: Face) -> &'static str {
    match face {
        Face::Regular => "R",
        Face::Bold => "B",
        Face::Italic => "I",
        Face::BoldItalic => "BI",
    }
}

/// usWeightClass of the OS/2 table, which the cut-down face no longer has.
const fn weight(face: Face) -> u16 {
    match face {
        Face::Regular | Face::Italic => 400,
        Face::Bold | Face::BoldItalic => 700,
    }
}

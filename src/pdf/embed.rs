//! Embedded faces: what the PDF library leaves out of their dictionaries.

use lopdf::{Dictionary, Document, Object};

use super::PdfError;
use super::font::{Font, Fonts};
use crate::ink::Faces;

/// Gives every face its exact widths, the map from codes to glyphs that ISO 14289-1,
/// 7.21.3.2 asks for, and its height of capitals.
pub(super) fn finish(draft: &mut Document, fonts: &Fonts, faces: &Faces) -> Result<(), PdfError> {
    let mut descriptors = Vec::new();
    for object in draft.objects.values_mut() {
        let Ok(dict) = object.as_dict_mut() else { continue };
        let named = |dict: &Dictionary, font: &Font| {
            let name = dict.get(b"BaseFont").and_then(Object::as_name).ok();
            name == font.parsed.font_name.as_ref().map(String::as_bytes)
        };
        let Some((face, font)) = fonts.iter().find(|(_, font)| named(dict, font)) else { continue };
        let descendant = dict
            .get_mut(b"DescendantFonts")
            .and_then(Object::as_array_mut)
            .ok()
            .and_then(|fonts| fonts.first_mut())
            .and_then(|font| font.as_dict_mut().ok())
            .ok_or(PdfError::Structure("a descendant font"))?;
        descendant.set("W", widths(font));
        descendant.set("CIDToGIDMap", Object::Name(b"Identity".to_vec()));
        let descriptor = descendant.get(b"FontDescriptor").and_then(Object::as_reference);
        let descriptor = descriptor.map_err(|_| PdfError::Structure("a font descriptor"))?;
        descriptors.push((descriptor, faces.metrics(face).cap_height));
    }
    for (id, cap_height) in descriptors {
        let descriptor = draft.get_dictionary_mut(id);
        let descriptor = descriptor.map_err(|_| PdfError::Structure("a font descriptor"))?;
        descriptor.set("CapHeight", (cap_height * 1000.0).round() as i64);
    }
    Ok(())
}

/// The widths of all glyphs in use: they are numbered without gaps but for parts that
/// only other glyphs are made of. The library would cut halves off.
fn widths(font: &Font) -> Object {
    let mut runs: Vec<Object> = Vec::new();
    let mut next = None;
    for glyph in font.glyphs() {
        let width = number(glyph.width);
        match runs.last_mut() {
            Some(Object::Array(run)) if next == Some(glyph.id) => run.push(width),
            _ => runs.extend([i64::from(glyph.id).into(), Object::Array(vec![width])]),
        }
        next = glyph.id.checked_add(1);
    }
    Object::Array(runs)
}

fn number(value: f32) -> Object {
    if value.fract() == 0.0 { Object::Integer(value as i64) } else { Object::Real(value) }
}

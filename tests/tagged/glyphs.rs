//! Every glyph in use: its text, and its width, which `/W` and the embedded face have to say
//! alike. Accessibility checkers look past widths; viewers place text by them.

use std::collections::BTreeSet;

use ttf_parser::{Face, GlyphId};

use super::{all_keep, ensure};
use crate::pdf_file::ReadFile;

#[test]
fn every_glyph_in_use_is_as_wide_as_its_face_says() {
    all_keep(|handout| widths(&handout.file));
}

#[test]
fn every_glyph_in_use_has_a_text() {
    all_keep(|handout| texts(&handout.file));
}

/// `/W` may round to whole thousandths of an em, not more.
const ROUNDING: f32 = 0.5;

/// The codes that are shown in a font.
fn codes(file: &ReadFile, font: &str) -> BTreeSet<u16> {
    let sequences = file.pages.iter().flat_map(|page| &page.sequences);
    let glyphs = sequences.flat_map(|sequence| &sequence.glyphs);
    glyphs.filter(|glyph| glyph.font == font).map(|glyph| glyph.code).collect()
}

pub fn widths(file: &ReadFile) -> Result<(), String> {
    for (name, font) in &file.fonts {
        let face = Face::parse(&font.program, 0).map_err(|fault| fault.to_string())?;
        let codes = codes(file, name);
        ensure(!codes.is_empty(), || format!("{} is embedded for nothing", font.base))?;
        for code in codes {
            let said = font.widths.get(&code);
            let said = said.ok_or_else(|| format!("glyph {code} of {} has no width", font.base))?;
            // The codes are the numbers of the glyphs (CIDToGIDMap, which the reader holds).
            let units = face.glyph_hor_advance(GlyphId(code));
            let units = units.ok_or_else(|| format!("{} has no glyph {code}", font.base))?;
            let own = f32::from(units) * 1000.0 / f32::from(face.units_per_em());
            ensure((own - said).abs() <= ROUNDING, || {
                format!("glyph {code} of {} is {own} wide, not {said}", font.base)
            })?;
        }
    }
    Ok(())
}

pub fn texts(file: &ReadFile) -> Result<(), String> {
    for (name, font) in &file.fonts {
        for code in codes(file, name) {
            let text = font.to_unicode.get(&code);
            let known = text.is_some_and(|it| !it.is_empty() && !it.contains('\u{FFFD}'));
            ensure(code != 0 && known, || format!("glyph {code} of {} is {text:?}", font.base))?;
        }
    }
    Ok(())
}

use std::sync::OnceLock;

use harfrust::{
    Buffer, Direction, Feature, Font, GlyphId, Script, ShapeOptions, ShapePlan, ShaperFont, Tag,
    unicode,
};

use super::invisible::leaves_no_mark;
use super::{Face, Figures, Glyph, Metrics, Shaped};

/// Stands for a character that the face lacks: a white square. The face's own
/// "not defined" glyph would do for the eye, but an accessible PDF must not
/// refer to that one (ISO 14289-1, 7.21.8).
const REPLACEMENT: char = '\u{25A1}';

/// One face, ready to shape.
pub(super) struct Shaper {
    font: Font,
    /// For Latin text, one for each kind of figures; most text needs no other.
    plans: [OnceLock<ShapePlan>; 2],
    replacement: GlyphId,
    em: f32,
    pub(super) metrics: Metrics,
}

impl Shaper {
    #[expect(clippy::expect_used, reason = "the faces are compiled in and tested")]
    pub(super) fn new(face: Face) -> Self {
        let font = Font::new(face.bytes(), 0).expect("a face that is compiled in can be read");
        let em = f32::from(font.units_per_em());
        let read = font.metrics();
        let line = read.hhea_line.unwrap_or_default();
        let metrics = Metrics {
            ascender: line.ascender.to_f32() / em,
            descender: line.descender.to_f32() / em,
            cap_height: read.cap_height.map_or(0.7, |v| v.to_f32() / em),
            x_height: read.x_height.map_or(0.5, |v| v.to_f32() / em),
        };
        let replacement = font.charmap().map_unicode(REPLACEMENT).unwrap_or_default();
        Self { font, plans: [OnceLock::new(), OnceLock::new()], replacement, em, metrics }
    }

    /// Shapes a text from left to right, kerned, with ligatures, digits around a
    /// fraction slash (U+2044) as a fraction.
    pub(super) fn shape(&self, figures: Figures, text: &str) -> Shaped {
        let mut buffer = Buffer::new();
        let mut seen = Vec::with_capacity(text.len());
        let mut script = Script::COMMON;
        for (at, c) in text.char_indices().filter(|&(_, c)| !leaves_no_mark(c)) {
            let c = if matches!(c, '\t' | '\n' | '\r') { ' ' } else { c };
            if script == Script::COMMON {
                script = known(unicode::script(u32::from(c)));
            }
            buffer.push(u32::from(c), at as u32);
            seen.push((at, c));
        }
        if script == Script::COMMON {
            script = Script::LATIN;
        }
        buffer.set_direction(Direction::LeftToRight);
        buffer.set_script(Some(script));
        let features = features(figures);
        let font = ShaperFont::new(&self.font);
        let options = ShapeOptions::new().features(features.as_slice());
        let options = match script {
            Script::LATIN => options.plan(Some(self.plan(figures, features.as_slice()))),
            _ => options,
        };
        // It fails only where direction or script of plan and buffer differ.
        if harfrust::shape(&font, &mut buffer, options).is_err() {
            buffer.clear();
        }
        self.collect(&font, &buffer, &seen)
    }

    fn plan(&self, figures: Figures, features: &[Feature]) -> &ShapePlan {
        let [tabular, proportional] = &self.plans;
        let slot = match figures {
            Figures::Tabular => tabular,
            Figures::Proportional => proportional,
        };
        slot.get_or_init(|| {
            let direction = Direction::LeftToRight;
            ShapePlan::new(&self.font, direction, Some(Script::LATIN), None, features)
        })
    }

    /// Glyphs with the bytes they stand for. `seen` are the characters that were
    /// shaped with their places, in order.
    fn collect(
        &self,
        font: &ShaperFont<'_, '_>,
        buffer: &Buffer,
        seen: &[(usize, char)],
    ) -> Shaped {
        let infos = buffer.glyph_infos();
        let mut shaped = Shaped { glyphs: Vec::with_capacity(infos.len()), ..Shaped::default() };
        let mut chars = seen.iter().copied().peekable();
        let mut previous = None;
        for (index, (info, at)) in infos.iter().zip(buffer.glyph_positions()).enumerate() {
            let mut end = info.cluster as usize;
            let mut absent = false;
            if previous != Some(info.cluster) {
                let next = infos.get(index + 1..).unwrap_or_default().iter().map(|i| i.cluster);
                let next = next.filter(|&c| c != info.cluster).min();
                while let Some((place, c)) =
                    chars.next_if(|&(place, _)| next.is_none_or(|n| place < n as usize))
                {
                    end = place + c.len_utf8();
                    if info.glyph_id == 0 && font.nominal_glyph(u32::from(c)).is_none() {
                        absent = true;
                        shaped.missing.push(c);
                    }
                }
                previous = Some(info.cluster);
            }
            let (id, advance) = if absent || info.glyph_id == 0 {
                (self.replacement.to_u32(), font.glyph_h_advance(self.replacement))
            } else {
                (info.glyph_id, at.x_advance)
            };
            shaped.glyphs.push(Glyph {
                id: u16::try_from(id).unwrap_or_default(),
                advance: advance as f32 / self.em,
                x_offset: at.x_offset as f32 / self.em,
                y_offset: at.y_offset as f32 / self.em,
                text: info.cluster..end as u32,
            });
        }
        shaped.width = shaped.glyphs.iter().map(|g| g.advance).sum();
        shaped
    }
}

/// Lato's figures are tabular as they come.
fn features(figures: Figures) -> Vec<Feature> {
    match figures {
        Figures::Tabular => Vec::new(),
        Figures::Proportional => vec![Feature::new(Tag::new(b"pnum"), 1, ..)],
    }
}

fn known(script: Script) -> Script {
    match script {
        Script::INHERITED | Script::UNKNOWN => Script::COMMON,
        script => script,
    }
}

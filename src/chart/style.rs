//! Colours, sizes and weights of charts, in one place.

use crate::ink::{Colour, Dash, Palette, Stroke};

/// Ink, quiet text and accent are those of the pages, so that a chart belongs to them.
pub(super) const INK: Colour = Palette::STANDARD.ink;
pub(super) const WHITE: Colour = Palette::STANDARD.paper;
pub(super) const BLACK: Colour = Colour::new(0, 0, 0);
/// Text of context; 6.5 : 1 on white.
pub(super) const QUIET_TEXT: Colour = Palette::STANDARD.quiet;
/// Bars and hatching.
pub(super) const ACCENT: Colour = Palette::STANDARD.accent;
/// Lines of context.
pub(super) const QUIET_LINE: Colour = Colour::new(0x8C, 0x8C, 0x8C);
pub(super) const GRID: Colour = Colour::new(0xDA, 0xDC, 0xE0);

/// Colours of lines that matter: blue, bluish green, reddish purple and vermilion of
/// Okabe and Ito (2002), the order chosen so that the first two differ most in grey.
/// None of them carries a text.
pub(super) const STRONG: [(Colour, Dash); 4] = [
    (Colour::new(0x00, 0x72, 0xB2), Dash::Solid),
    (Colour::new(0x00, 0x9E, 0x73), Dash::Dashed),
    (Colour::new(0xCC, 0x79, 0xA7), Dash::DashDot),
    (Colour::new(0xD5, 0x5E, 0x00), Dash::Dotted),
];

/// Lines of context are told apart by their labels, how they are broken and how wide they
/// are in points.
pub(super) const QUIET: [(Dash, f32); 8] = [
    (Dash::Solid, 0.5),
    (Dash::Dashed, 0.7),
    (Dash::DashDot, 0.7),
    (Dash::Dotted, 0.9),
    (Dash::Solid, 1.2),
    (Dash::Dashed, 1.4),
    (Dash::DashDot, 1.4),
    (Dash::Dotted, 1.7),
];

/// Small print of pages beside which the sizes below are right.
pub(super) const SMALL_PRINT: f32 = 8.5;

/// Type sizes in points.
pub(super) const TITLE: f32 = 10.5;
pub(super) const LABEL: f32 = 9.0;
pub(super) const SMALL: f32 = 8.0;

/// Points in a millimetre (ISO 32000-1: a unit is 1/72 in; 25.4 mm to the inch).
pub(super) const MM: f32 = 72.0 / 25.4;

/// From baseline to baseline, in type sizes.
pub(super) const LEADING: f32 = 1.25;

/// A thin line in ink: outlines, ticks, leaders.
pub(super) const HAIRLINE: Stroke = Stroke { colour: INK, width: 0.5, dash: Dash::Solid };

/// A colour let through by white: 1 is the colour itself.
pub(super) fn tint(colour: Colour, share: f32) -> Colour {
    let part = |c: u8| (255.0 - (255.0 - f32::from(c)) * share.clamp(0.0, 1.0)).round() as u8;
    Colour::new(part(colour.r), part(colour.g), part(colour.b))
}

/// A text colour that stands out from a ground by at least 4.5 : 1 (WCAG 2.1, 1.4.3).
/// Black or white always does: the worse of the two ratios multiply to 21.
pub(super) fn text_on(ground: Colour) -> Colour {
    let enough = [INK, WHITE].into_iter().find(|text| text.contrast(ground) >= 4.5);
    enough.unwrap_or(BLACK)
}

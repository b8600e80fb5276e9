use super::Colour;

/// The colours of pages and of the charts on them. Nothing is said by them alone: in grey, weight,
/// rule and shape still say it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Palette {
    /// Text: near black.
    pub ink: Colour,
    /// Labels, notes, furniture.
    pub quiet: Colour,
    /// Structure: headings, links, numbers of steps.
    pub accent: Colour,
    /// Cautions, and nothing else.
    pub warm: Colour,
    /// Hairlines; carries no text.
    pub rule: Colour,
    /// Paper.
    pub paper: Colour,
    /// Ground of practice boxes and key figures; light enough to write on.
    pub tint: Colour,
    /// Ground of cautions.
    pub warm_tint: Colour,
}

/// A ground with a colour of text that is set on it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Surface {
    pub name: &'static str,
    pub ground: Colour,
    pub text: Colour,
}

impl Palette {
    /// The one that everything here is printed in.
    pub const STANDARD: Self = Self {
        ink: Colour::new(0x1C, 0x21, 0x26),
        quiet: Colour::new(0x55, 0x5F, 0x69),
        accent: Colour::new(0x12, 0x4D, 0x6B),
        warm: Colour::new(0xA8, 0x3A, 0x10),
        rule: Colour::new(0xB4, 0xBD, 0xC4),
        paper: Colour::new(0xFF, 0xFF, 0xFF),
        tint: Colour::new(0xEE, 0xF4, 0xF7),
        warm_tint: Colour::new(0xFC, 0xF2, 0xEA),
    };

    /// Every pair of ground and text that the pages use.
    pub fn surfaces(&self) -> Vec<Surface> {
        let grounds = [("paper", self.paper), ("tint", self.tint), ("warm tint", self.warm_tint)];
        let texts = [self.ink, self.quiet, self.accent, self.warm];
        grounds
            .iter()
            .flat_map(|&(name, ground)| texts.map(|text| Surface { name, ground, text }))
            .chain([
                Surface { name: "disc", ground: self.accent, text: self.paper },
                Surface { name: "label", ground: self.ink, text: self.paper },
            ])
            .collect()
    }
}

/// A face of the type family.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Face {
    Regular,
    Bold,
    Italic,
    BoldItalic,
}

impl Face {
    /// All faces.
    pub const ALL: [Self; 4] = [Self::Regular, Self::Bold, Self::Italic, Self::BoldItalic];

    /// The TrueType file of the face, as it was published.
    pub const fn bytes(self) -> &'static [u8] {
        match self {
            Self::Regular => include_bytes!("../../fonts/Lato-Regular.ttf"),
            Self::Bold => include_bytes!("../../fonts/Lato-Bold.ttf"),
            Self::Italic => include_bytes!("../../fonts/Lato-Italic.ttf"),
            Self::BoldItalic => include_bytes!("../../fonts/Lato-BoldItalic.ttf"),
        }
    }

    /// The bold of this face.
    pub const fn bold(self) -> Self {
        match self {
            Self::Regular | Self::Bold => Self::Bold,
            Self::Italic | Self::BoldItalic => Self::BoldItalic,
        }
    }

    /// The slanted of an upright face and the upright of a slanted one, so
    /// that an emphasis within an emphasis still stands out.
    pub const fn slanted(self) -> Self {
        match self {
            Self::Regular => Self::Italic,
            Self::Italic => Self::Regular,
            Self::Bold => Self::BoldItalic,
            Self::BoldItalic => Self::Bold,
        }
    }
}

/// Which figures a text is set in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Figures {
    /// All of one width, for columns.
    Tabular,
    /// Each of its own width, for running text.
    Proportional,
}

impl Figures {
    /// Both kinds.
    pub const ALL: [Self; 2] = [Self::Tabular, Self::Proportional];
}

/// Vertical measures of a face in em, upwards positive.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Metrics {
    pub ascender: f32,
    /// Below the baseline, so negative.
    pub descender: f32,
    pub cap_height: f32,
    pub x_height: f32,
}

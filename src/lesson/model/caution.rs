use schemars::JsonSchema;
use serde::Deserialize;

/// Something done in class that needs care.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Practice {
    /// A flame over the wet paint.
    Torch,
    /// Hot air over the wet paint, from a gun.
    #[serde(rename = "heat gun")]
    HeatGun,
    /// Warm air over the wet paint, from a dryer.
    #[serde(rename = "hair dryer")]
    HairDryer,
    /// Alcohol in the paint or over it.
    Alcohol,
    /// Silicone oil in the paint, for cells.
    Silicone,
    /// Dry paint or ground is sanded.
    Sanding,
    /// Two-part resin over the dry canvas.
    Resin,
}

impl Practice {
    /// The word for it in data files and templates.
    pub fn word(self) -> &'static str {
        match self {
            Self::Torch => "torch",
            Self::HeatGun => "heat gun",
            Self::HairDryer => "hair dryer",
            Self::Alcohol => "alcohol",
            Self::Silicone => "silicone",
            Self::Sanding => "sanding",
            Self::Resin => "resin",
        }
    }
}

/// A safety note.
#[derive(Debug, Clone, PartialEq)]
pub struct Caution {
    /// Its key in the data file.
    pub name: String,
    pub sign: Sign,
    /// Verb first: "Keep the flame away from alcohol".
    pub heading: String,
    /// One or two plain sentences.
    pub reason: String,
    /// Reference in small print.
    pub source: String,
    pub when: When,
}

/// When a safety note is printed.
#[derive(Debug, Clone, PartialEq)]
pub enum When {
    Always,
    /// When any of these is done.
    Doing(Vec<Practice>),
    /// When somebody younger than this is in the room.
    YoungerThan(u8),
    /// When a colour has a pigment on this list.
    Pigments(Vec<String>),
}

/// The drawn sign beside a safety note.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum Sign {
    /// A triangle: flame.
    Flame,
    /// A triangle: hot surface or air.
    Heat,
    /// A triangle: electricity and water.
    Shock,
    /// A triangle: slipping.
    Slip,
    /// A triangle: something harmful.
    Harm,
    /// A disc: gloves.
    Gloves,
    /// A disc: fresh air.
    Air,
    /// A disc: dust mask.
    Mask,
    /// A disc: an adult helps.
    Adult,
    /// A barred ring: nothing down the drain.
    Drain,
    /// A disc: read the label.
    Label,
}

impl Sign {
    /// All signs.
    pub const ALL: [Self; 11] = [
        Self::Flame,
        Self::Heat,
        Self::Shock,
        Self::Slip,
        Self::Harm,
        Self::Gloves,
        Self::Air,
        Self::Mask,
        Self::Adult,
        Self::Drain,
        Self::Label,
    ];

    /// The word for it in data files and templates.
    pub fn word(self) -> &'static str {
        match self {
            Self::Flame => "flame",
            Self::Heat => "heat",
            Self::Shock => "shock",
            Self::Slip => "slip",
            Self::Harm => "harm",
            Self::Gloves => "gloves",
            Self::Air => "air",
            Self::Mask => "mask",
            Self::Adult => "adult",
            Self::Drain => "drain",
            Self::Label => "label",
        }
    }

    /// The sign of that word.
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sign| sign.word() == word)
    }
}

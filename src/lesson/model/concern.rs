use super::super::problem::Sort;

/// What a good colleague would say of a plan, by the name under which a lesson accepts it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Concern {
    /// As good as nothing is kept in reserve.
    NoReserve,
    /// The scale is too coarse for the smallest amount that is weighed.
    CoarseScale,
    /// The level surface is too small for all canvases.
    DryingRoom,
    /// More sit at a table than have room to pour.
    CrowdedTables,
    /// A finish goes on before the canvas is dry to the touch.
    EarlyFinish,
    /// The steps take longer than the booking.
    OverBooking,
    /// A delivery comes after the lesson.
    LateDelivery,
    /// The class costs more than it may.
    OverBudget,
    /// The fee does not pay for the class.
    FeeTooLow,
    /// Something that is needed has no price.
    NoPrice,
    /// Flame or hot air among young people.
    HeatWithChildren,
    /// Alcohol, silicone or resin among young people.
    AdditivesWithChildren,
    /// Something hot in a lesson with alcohol.
    FlameAndAlcohol,
    /// A colour or a material that calls for care.
    ColourCaution,
    /// A jar whose paint no longer keeps.
    OldJar,
    /// Something that the lesson names and does not use.
    Unused,
}

impl Concern {
    /// All of them.
    pub const ALL: [Self; 16] = [
        Self::NoReserve,
        Self::CoarseScale,
        Self::DryingRoom,
        Self::CrowdedTables,
        Self::EarlyFinish,
        Self::OverBooking,
        Self::LateDelivery,
        Self::OverBudget,
        Self::FeeTooLow,
        Self::NoPrice,
        Self::HeatWithChildren,
        Self::AdditivesWithChildren,
        Self::FlameAndAlcohol,
        Self::ColourCaution,
        Self::OldJar,
        Self::Unused,
    ];

    /// Its name in lesson files and messages.
    pub fn word(self) -> &'static str {
        match self {
            Self::NoReserve => "no-reserve",
            Self::CoarseScale => "coarse-scale",
            Self::DryingRoom => "drying-room",
            Self::CrowdedTables => "crowded-tables",
            Self::EarlyFinish => "early-finish",
            Self::OverBooking => "over-booking",
            Self::LateDelivery => "late-delivery",
            Self::OverBudget => "over-budget",
            Self::FeeTooLow => "fee-too-low",
            Self::NoPrice => "no-price",
            Self::HeatWithChildren => "heat-with-children",
            Self::AdditivesWithChildren => "additives-with-children",
            Self::FlameAndAlcohol => "flame-and-alcohol",
            Self::ColourCaution => "colour-caution",
            Self::OldJar => "old-jar",
            Self::Unused => "unused",
        }
    }

    /// The concern of that name.
    pub fn from_word(word: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|concern| concern.word() == word)
    }
}

/// Something that is right all the same, and why.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Accepted {
    pub concern: Concern,
    /// In the teacher's words; never empty.
    pub reason: String,
}

/// Something that the lesson's own file names and nothing in it uses.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unused {
    /// A palette, colour, mix, technique or finish.
    pub sort: Sort,
    /// The key of the section that it stands in.
    pub section: &'static str,
    pub name: String,
}

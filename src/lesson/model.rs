//! The checked lesson: after reading, an invalid value cannot exist here. Names
//! are resolved (a canvas holds its technique, not the name of one), every share
//! list adds up to the whole, every size is positive.

use crate::quantity::{
    Currency, Date, Length, Mass, MassDensity, Money, Share, Spread, UnitSystem, Volume,
};
use serde::Deserialize;
use std::num::NonZeroU32;
use std::sync::Arc;

/// Everything one lesson file (with the data files that it names) says.
#[derive(Debug, Clone)]
pub struct Lesson {
    /// What the class is called, who gives it, when and where.
    pub heading: Heading,
    /// How it is printed.
    pub print: Print,
    /// Who comes.
    pub class: Class,
    /// What is painted, in the order of the file; never empty, names are unique.
    pub canvases: Vec<Canvas>,
    /// How cups are filled and amounts rounded.
    pub mixing: Mixing,
    /// What is needed besides paint.
    pub supplies: Vec<SupplyRule>,
    /// Where things are bought; without one the order has amounts and no packs.
    pub shop: Option<Shop>,
    /// What is in the cupboard.
    pub stock: Vec<Stocked>,
    /// What the class does that needs care, by the lesson's own word.
    pub practices: Vec<Practice>,
    /// All known safety notes, worst first; the plan selects from them.
    pub cautions: Vec<Caution>,
    /// All known techniques, for tables and charts that compare them.
    pub techniques: Vec<Arc<Technique>>,
    /// All known mixes, for tables.
    pub mixes: Vec<Arc<Mix>>,
}

/// Title block of a lesson.
#[derive(Debug, Clone, Default)]
pub struct Heading {
    /// Never empty.
    pub title: String,
    pub subtitle: Option<String>,
    pub teacher: Option<String>,
    pub place: Option<String>,
    pub date: Option<Date>,
    /// A line for every footer, such as "All names are invented."
    pub note: Option<String>,
}

/// Choices of the paper; the command line may override them.
#[derive(Debug, Clone, Copy)]
pub struct Print {
    pub units: UnitSystem,
    pub paper: Paper,
    pub edition: Edition,
    pub currency: Currency,
}

/// Paper formats.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Paper {
    /// 210 x 297 mm (ISO 216).
    A4,
    /// 8.5 x 11 in.
    Letter,
}

/// Size of the print.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Edition {
    /// Body text of 10.5 pt.
    Standard,
    /// Body text of 18 pt.
    #[serde(rename = "large print")]
    LargePrint,
}

/// The people of the class.
#[derive(Debug, Clone)]
pub struct Class {
    pub students: Students,
    /// Complete sets that the teacher pours in front of the class.
    pub demonstrations: u32,
    /// Complete sets kept ready for mishaps.
    pub spares: u32,
    /// Youngest age in the room; `None` means adults.
    pub youngest_age: Option<u8>,
    /// Students who share a table (default 4).
    pub per_table: NonZeroU32,
}

/// A number, or the first names; at least one.
#[derive(Debug, Clone)]
pub enum Students {
    Count(NonZeroU32),
    /// Never empty, no name twice.
    Named(Vec<String>),
}

/// One kind of canvas in a lesson.
#[derive(Debug, Clone)]
pub struct Canvas {
    pub name: String,
    pub shape: Shape,
    /// Depth of the edge, zero for a panel without one.
    pub depth: Length,
    pub edge: Edge,
    /// How many of it each student paints.
    pub each: NonZeroU32,
    pub technique: Arc<Technique>,
    /// One entry for each layer of the technique, in its order.
    pub layers: Vec<CanvasLayer>,
    /// Layers that follow days later, in order.
    pub finishes: Vec<Arc<Finish>>,
}

/// Outline of the face.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Shape {
    Rectangle {
        width: Length,
        height: Length,
    },
    Round {
        diameter: Length,
    },
    Oval {
        width: Length,
        height: Length,
    },
    /// Regular, with 3 to 24 sides.
    Polygon {
        sides: u32,
        side: Length,
    },
}

/// What happens to the edge of the canvas.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Edge {
    Painted,
    Bare,
}

/// Which mix and which colours go into one layer of a canvas.
#[derive(Debug, Clone)]
pub struct CanvasLayer {
    pub mix: Arc<Mix>,
    /// Shares add up to the whole exactly; no colour twice; never empty.
    pub colours: Vec<(Arc<Colour>, Share)>,
}

/// A colour: the paint it starts from.
#[derive(Debug, Clone, PartialEq)]
pub struct Colour {
    pub name: String,
    /// The paint as bought (`Material::kind` is `Paint`).
    pub paint: Arc<Material>,
    pub swatch: Rgb,
    /// Pigments on the label that call for care, such as "cadmium".
    pub pigments: Vec<String>,
}

/// A colour of the screen, sRGB.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Rgb(pub u8, pub u8, pub u8);

/// Something that goes into a cup and can be bought, or comes from the tap.
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    pub name: String,
    pub kind: MaterialKind,
    /// Positive.
    pub density: MassDensity,
    /// Volume of one drop, for additives that are counted.
    pub drop: Option<Volume>,
}

/// Kinds of material.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum MaterialKind {
    Paint,
    Medium,
    Water,
    Additive,
    Varnish,
}

/// A recipe that turns paint into pouring paint.
#[derive(Debug, Clone, PartialEq)]
pub struct Mix {
    pub name: String,
    pub consistency: Consistency,
    pub by: PartsBy,
    /// At least one part, paint among them; every number of parts is positive.
    pub parts: Vec<Part>,
    /// Drops into the finished mix.
    pub drops: Vec<Drops>,
}

/// How the parts of a mix are measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum PartsBy {
    Volume,
    Weight,
}

/// One line of a recipe.
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    pub what: Ingredient,
    pub parts: f64,
}

/// What a part consists of.
#[derive(Debug, Clone, PartialEq)]
pub enum Ingredient {
    /// The paint of the colour that is being mixed.
    ThePaint,
    Other(Arc<Material>),
}

/// So many drops for so much mixed paint.
#[derive(Debug, Clone, PartialEq)]
pub struct Drops {
    /// Has a `drop` volume.
    pub material: Arc<Material>,
    pub count: f64,
    pub per: Volume,
}

/// How a mix runs off the stick.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Consistency {
    Thin,
    Medium,
    Thick,
}

impl Consistency {
    /// All three, thin first.
    pub const ALL: [Self; 3] = [Self::Thin, Self::Medium, Self::Thick];

    /// The word for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Thin => "thin",
            Self::Medium => "medium",
            Self::Thick => "thick",
        }
    }
}

/// A way of pouring: its layers and how much paint each takes.
#[derive(Debug, Clone, PartialEq)]
pub struct Technique {
    pub name: String,
    /// One sentence on how it is done.
    pub summary: String,
    /// Never empty; the order of the work.
    pub layers: Vec<TechniqueLayer>,
    /// What it brings with it, such as a hair dryer.
    pub practices: Vec<Practice>,
}

/// One layer of a technique.
#[derive(Debug, Clone, PartialEq)]
pub struct TechniqueLayer {
    pub name: String,
    pub films: Films,
    /// Where the figures come from.
    pub basis: String,
}

/// Wet film equivalents (mixed paint per painted area, run-off included).
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Films {
    pub thin: Spread<Length>,
    pub medium: Spread<Length>,
    pub thick: Spread<Length>,
}

impl Films {
    /// The film for a consistency.
    pub fn of(&self, consistency: Consistency) -> Spread<Length> {
        match consistency {
            Consistency::Thin => self.thin,
            Consistency::Medium => self.medium,
            Consistency::Thick => self.thick,
        }
    }
}

/// A layer that goes on when the paint has dried, straight from its bottle.
#[derive(Debug, Clone, PartialEq)]
pub struct Finish {
    pub name: String,
    pub material: Arc<Material>,
    /// Wet film of one coat.
    pub film: Spread<Length>,
    pub coats: NonZeroU32,
    /// Days of drying before the first coat.
    pub after_days: u32,
    pub basis: String,
}

/// What stays in the cup, and the steps that can be measured.
#[derive(Debug, Clone, Copy)]
pub struct Mixing {
    /// What stays in one cup and on its stick.
    pub cup_loss: Volume,
    /// Amounts to mix round up to this (US units first).
    pub step_us: Volume,
    /// Amounts to mix round up to this (metric units first).
    pub step_metric: Volume,
    /// Smallest step of the kitchen scale.
    pub scale_step: Mass,
}

/// So many of an item for each of something.
#[derive(Debug, Clone)]
pub struct SupplyRule {
    pub item: String,
    /// Positive; a half means one for two.
    pub count: f64,
    pub per: Per,
    pub life: Life,
}

/// What a supply is counted by.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Per {
    Student,
    /// Each canvas painted, demonstrations and spares included.
    Canvas,
    /// Each cup of mixed colour that stands on a table.
    #[serde(rename = "colour cup")]
    ColourCup,
    Table,
    Class,
}

/// What is left of a supply after the class.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Life {
    #[serde(rename = "used up")]
    UsedUp,
    Washable,
}

/// A price list.
#[derive(Debug, Clone)]
pub struct Shop {
    pub name: String,
    /// Sizes are positive, prices not negative.
    pub packs: Vec<Pack>,
}

/// One thing that a shop sells.
#[derive(Debug, Clone)]
pub struct Pack {
    /// The name of a material or supply.
    pub item: String,
    pub size: Amount,
    pub price: Money,
}

/// How much of an item.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Amount {
    Volume(Volume),
    Mass(Mass),
    Pieces(u32),
}

/// One line of the cupboard.
#[derive(Debug, Clone)]
pub struct Stocked {
    pub item: String,
    pub amount: Amount,
}

/// Something done in class that needs care.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Practice {
    Torch,
    #[serde(rename = "heat gun")]
    HeatGun,
    #[serde(rename = "hair dryer")]
    HairDryer,
    Alcohol,
    Silicone,
    Sanding,
    Resin,
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
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize)]
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

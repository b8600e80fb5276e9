//! The file as it is written: which keys there are, what they mean, and in what form
//! their values come. Nothing is checked here beyond that.

use super::field::{At, Entries, Field, Items, Written};
use super::legible::{DropRate, Minutes, Percentage, Portion, Swatch};
use super::model::{
    Amount, Consistency, Edge, Edition, ExerciseLevel, Language, Life, MaterialKind, Paper,
    PartsBy, Per, Practice, ServiceLevel, Sign,
};
use crate::quantity::{
    Area, Currency, Date, Length, Mass, MassDensity, Money, Share, Time, UnitSystem, Volume,
};
use serde::Deserialize;

/// The keys of [`Lesson`]: those that only a lesson may hold, then those of data files.
pub(super) const KEYS: [&str; 35] = [
    "title",
    "subtitle",
    "teacher",
    "place",
    "date",
    "note",
    "language",
    "units",
    "paper",
    "print",
    "use",
    "class",
    "canvases",
    "palettes",
    "practices",
    "timetable",
    "exercises",
    "accepted",
    "colours",
    "materials",
    "mixes",
    "techniques",
    "finishes",
    "sizes",
    "room",
    "washing",
    "mixing",
    "reserve",
    "supplies",
    "shops",
    "bought elsewhere",
    "stock",
    "jars",
    "money",
    "cautions",
];

/// Keys that a data file may hold as well.
pub(super) const DATA_KEYS: &[&str] = KEYS.split_at(18).1;

/// A lesson with all its data files laid under it.
#[derive(Debug, Deserialize)]
pub(super) struct Lesson {
    /// What the class is called; it heads every handout.
    pub(super) title: Field<Written<String>>,
    /// A line under the title.
    pub(super) subtitle: Field<Written<String>>,
    /// Who gives the class.
    pub(super) teacher: Field<Written<String>>,
    /// Where it is given.
    pub(super) place: Field<Written<String>>,
    /// The day, as year-month-day.
    pub(super) date: Field<Written<Date>>,
    /// A line for every footer.
    pub(super) note: Field<Written<String>>,
    /// In which language the handouts are written, and what comes with the program is named.
    pub(super) language: Field<Language>,
    /// Which units come first on the paper.
    pub(super) units: Field<UnitSystem>,
    /// What the handouts are printed on.
    pub(super) paper: Field<Paper>,
    /// Standard size or large print.
    pub(super) print: Field<Edition>,
    /// Data files, by their paths from this file. Loading reads it before the files
    /// are laid over each other; here it only makes the key known.
    #[serde(rename = "use")]
    pub(super) _use: Field<Items<Written<String>>>,
    /// Who comes.
    pub(super) class: Field<At<Class>>,
    /// What is painted.
    pub(super) canvases: Field<Entries<Canvas>>,
    /// Colours and their shares, layer by layer.
    pub(super) palettes: Field<Entries<Entries<Entries<Written<Portion>>>>>,
    /// What is done in class that needs care.
    pub(super) practices: Field<Items<Practice>>,
    /// What a colleague would say of this plan and is right all the same, by name, each with
    /// the reason why.
    pub(super) accepted: Field<Entries<Written<String>>>,
    /// The paints.
    pub(super) colours: Field<Entries<Colour>>,
    /// What else goes into a cup or over a canvas.
    pub(super) materials: Field<Entries<Material>>,
    /// Recipes that turn paint into pouring paint.
    pub(super) mixes: Field<Entries<Mix>>,
    /// Ways of pouring.
    pub(super) techniques: Field<Entries<Technique>>,
    /// Varnishes and the like, days later.
    pub(super) finishes: Field<Entries<Finish>>,
    /// Canvas sizes for the table of paint.
    pub(super) sizes: Field<At<Sizes>>,
    /// What happens when.
    pub(super) timetable: Field<At<Timetable>>,
    /// Sums for each student.
    pub(super) exercises: Field<At<Exercises>>,
    /// Tables, and where canvases dry.
    pub(super) room: Field<At<Room>>,
    /// Water for washing up.
    pub(super) washing: Field<At<Washing>>,
    /// How cups are filled and amounts rounded.
    pub(super) mixing: Field<At<Mixing>>,
    /// How much more than expected is mixed.
    pub(super) reserve: Field<At<Reserve>>,
    /// What is needed besides paint.
    pub(super) supplies: Field<Entries<Supply>>,
    /// Where things are bought.
    pub(super) shops: Field<Entries<Shop>>,
    /// What the class costs besides, and what is asked for it.
    pub(super) money: Field<At<Charges>>,
    /// What somebody brings, or what is bought by other ways than these shops.
    #[serde(rename = "bought elsewhere")]
    pub(super) elsewhere: Field<Items<Written<String>>>,
    /// What is in the cupboard.
    pub(super) stock: Field<Entries<Written<Amount>>>,
    /// Mixed paint that is left from before.
    pub(super) jars: Field<Items<Jar>>,
    /// Safety notes.
    pub(super) cautions: Field<Entries<Caution>>,
}

/// Who comes.
#[derive(Debug, Deserialize)]
pub(super) struct Class {
    /// How many, or their first names.
    pub(super) students: Field<At<Students>>,
    /// Sets that the teacher pours in front of the class.
    pub(super) demonstrations: Field<Written<u32>>,
    /// Sets kept ready for mishaps.
    pub(super) spares: Field<Written<u32>>,
    /// Age of the youngest; without it all are adults.
    #[serde(rename = "youngest age")]
    pub(super) youngest_age: Field<Written<u32>>,
    /// How many share a table.
    #[serde(rename = "per table")]
    pub(super) per_table: Field<Written<u32>>,
}

/// A number or a list of names.
#[derive(Debug, Deserialize)]
#[serde(rename = "puddlebook: by form")]
pub(super) enum Students {
    #[serde(rename = "text")]
    Count(Written<u32>),
    #[serde(rename = "list")]
    Named(Items<Written<String>>),
}

/// One kind of canvas.
#[derive(Debug, Deserialize)]
pub(super) struct Canvas {
    pub(super) shape: Field<At<Outline>>,
    /// Of a rectangle or an oval.
    pub(super) width: Field<Written<Length>>,
    /// Of a rectangle or an oval.
    pub(super) height: Field<Written<Length>>,
    /// Of a round canvas.
    pub(super) diameter: Field<Written<Length>>,
    /// Of a polygon.
    pub(super) sides: Field<Written<u32>>,
    /// Of a polygon: the length of one side.
    pub(super) side: Field<Written<Length>>,
    /// Of a polygon: from side to opposite side.
    #[serde(rename = "across flats")]
    pub(super) across_flats: Field<Written<Length>>,
    /// Of a polygon: from corner to opposite corner.
    #[serde(rename = "across corners")]
    pub(super) across_corners: Field<Written<Length>>,
    /// Of the edge; none for a flat panel.
    pub(super) depth: Field<Written<Length>>,
    /// Whether the edge is painted.
    pub(super) edge: Field<Edge>,
    /// How many of it each student paints.
    pub(super) each: Field<Written<u32>>,
    pub(super) technique: Field<Written<String>>,
    pub(super) consistency: Field<At<MixChoice>>,
    pub(super) palette: Field<Written<String>>,
    pub(super) finishes: Field<Items<Written<String>>>,
}

/// Outlines of a canvas.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(super) enum Outline {
    Rectangle,
    Round,
    Oval,
    Polygon,
}

/// One mix for all layers, or one for each.
#[derive(Debug, Deserialize)]
#[serde(rename = "puddlebook: by form")]
pub(super) enum MixChoice {
    #[serde(rename = "text")]
    One(Written<String>),
    #[serde(rename = "mapping")]
    ByLayer(Entries<Written<String>>),
}

/// A paint.
#[derive(Debug, Deserialize)]
pub(super) struct Colour {
    /// What is bought; the name with "acrylic" after it when not said.
    pub(super) paint: Field<Written<String>>,
    pub(super) density: Field<Written<MassDensity>>,
    /// A colour of the screen.
    pub(super) swatch: Field<Written<Swatch>>,
    /// Pigments on the label that call for care.
    pub(super) pigments: Field<Items<Written<String>>>,
    /// What its label or safety data sheet warns of, in a sentence.
    pub(super) caution: Field<Written<String>>,
}

/// What goes into a cup besides paint, or over a canvas.
#[derive(Debug, Deserialize)]
pub(super) struct Material {
    pub(super) kind: Field<At<MaterialKind>>,
    pub(super) density: Field<Written<MassDensity>>,
    /// Volume of one drop.
    pub(super) drop: Field<Written<Volume>>,
    /// What its label or safety data sheet warns of, in a sentence.
    pub(super) caution: Field<Written<String>>,
}

/// A recipe.
#[derive(Debug, Deserialize)]
pub(super) struct Mix {
    pub(super) consistency: Field<Consistency>,
    /// How parts are measured.
    pub(super) by: Field<PartsBy>,
    pub(super) parts: Field<At<Entries<Written<f64>>>>,
    pub(super) drops: Field<Entries<Written<DropRate>>>,
}

/// A way of pouring.
#[derive(Debug, Deserialize)]
pub(super) struct Technique {
    /// One sentence on how it is done.
    pub(super) summary: Field<Written<String>>,
    /// What it brings with it.
    pub(super) practices: Field<Items<Practice>>,
    /// In the order of the work.
    pub(super) layers: Field<At<Entries<Layer>>>,
}

/// The wet film of one layer.
#[derive(Debug, Deserialize)]
pub(super) struct Layer {
    pub(super) thin: Field<At<LayerFilm>>,
    pub(super) medium: Field<At<LayerFilm>>,
    pub(super) thick: Field<At<LayerFilm>>,
    /// Where the figures come from.
    pub(super) basis: Field<Written<String>>,
}

/// The film of a layer in one consistency.
#[derive(Debug, Deserialize)]
pub(super) struct LayerFilm {
    pub(super) low: Field<Written<Length>>,
    pub(super) typical: Field<Written<Length>>,
    pub(super) high: Field<Written<Length>>,
    /// Where it comes from when it has been weighed.
    pub(super) weighed: Field<At<WeighedFilm>>,
}

/// What a weighed film rests on.
#[derive(Debug, Deserialize)]
pub(super) struct WeighedFilm {
    pub(super) cups: Field<Written<u32>>,
    pub(super) canvases: Field<Written<u32>>,
    pub(super) classes: Field<Written<u32>>,
    /// Of these canvases.
    pub(super) mean: Field<Written<Length>>,
    /// How much of the film is that mean.
    #[serde(rename = "own weight")]
    pub(super) own_weight: Field<Written<Share>>,
    /// The film before anything was weighed.
    #[serde(rename = "instead of")]
    pub(super) instead_of: Field<At<Film>>,
}

/// Three values of one film.
#[derive(Debug, Deserialize)]
pub(super) struct Film {
    pub(super) low: Field<Written<Length>>,
    pub(super) typical: Field<Written<Length>>,
    pub(super) high: Field<Written<Length>>,
}

/// What goes over a dry canvas.
#[derive(Debug, Deserialize)]
pub(super) struct Finish {
    pub(super) material: Field<Written<String>>,
    /// Of one coat, wet.
    pub(super) film: Field<At<Film>>,
    pub(super) coats: Field<Written<u32>>,
    /// Drying time before the first coat.
    pub(super) after: Field<Written<super::legible::Days>>,
    pub(super) basis: Field<Written<String>>,
}

/// Canvas sizes for the table of paint.
#[derive(Debug, Deserialize)]
pub(super) struct Sizes {
    /// In lessons with US units.
    pub(super) us: Field<At<Items<Size>>>,
    /// In metric lessons.
    pub(super) metric: Field<At<Items<Size>>>,
}

/// A rectangle, as shops have it.
#[derive(Debug, Deserialize)]
pub(super) struct Size {
    pub(super) width: Field<Written<Length>>,
    pub(super) height: Field<Written<Length>>,
    /// Of the edge; none for a flat panel.
    pub(super) depth: Field<Written<Length>>,
}

/// How cups are filled and amounts rounded.
#[derive(Debug, Deserialize)]
pub(super) struct Mixing {
    /// What stays in one cup and on its stick.
    #[serde(rename = "cup loss")]
    pub(super) cup_loss: Field<Written<Volume>>,
    #[serde(rename = "step us")]
    pub(super) step_us: Field<Written<Volume>>,
    #[serde(rename = "step metric")]
    pub(super) step_metric: Field<Written<Volume>>,
    #[serde(rename = "scale step")]
    pub(super) scale_step: Field<Written<Mass>>,
    /// How long mixed paint can be used.
    pub(super) keeps: Field<Written<super::legible::Days>>,
}

/// How much more than expected is mixed.
#[derive(Debug, Deserialize)]
pub(super) struct Reserve {
    /// In how many classes each colour is to be enough.
    #[serde(rename = "enough in")]
    pub(super) enough_in: Field<Written<ServiceLevel>>,
    /// From one class to the next, all its canvases together.
    #[serde(rename = "class varies by")]
    pub(super) class_varies: Field<Written<Percentage>>,
    /// From canvas to canvas.
    #[serde(rename = "students vary by")]
    pub(super) students_vary: Field<Written<Percentage>>,
    /// What is usually added for each student; only compared.
    pub(super) habit: Field<Written<Percentage>>,
    /// Where the spreads come from when they have been weighed.
    pub(super) weighed: Field<At<WeighedSpread>>,
}

/// What weighed spreads rest on.
#[derive(Debug, Deserialize)]
pub(super) struct WeighedSpread {
    pub(super) canvases: Field<Written<u32>>,
    pub(super) classes: Field<Written<u32>>,
    /// The spreads before anything was weighed.
    #[serde(rename = "instead of")]
    pub(super) instead_of: Field<At<Spreads>>,
}

/// From class to class, and from canvas to canvas.
#[derive(Debug, Deserialize)]
pub(super) struct Spreads {
    #[serde(rename = "class varies by")]
    pub(super) class_varies: Field<Written<Percentage>>,
    #[serde(rename = "students vary by")]
    pub(super) students_vary: Field<Written<Percentage>>,
}

/// What happens when.
#[derive(Debug, Deserialize)]
pub(super) struct Timetable {
    pub(super) start: Field<Written<Time>>,
    /// The room must be left by then.
    #[serde(rename = "booked until")]
    pub(super) booked_until: Field<Written<Time>>,
    /// In their order, each with how long it takes.
    pub(super) steps: Field<At<Entries<Written<Minutes>>>>,
}

/// How many sums each student gets, or that and more.
#[derive(Debug, Deserialize)]
#[serde(rename = "puddlebook: by form")]
pub(super) enum Exercises {
    #[serde(rename = "text")]
    Count(Written<u32>),
    #[serde(rename = "mapping")]
    Chosen(ExerciseChoice),
}

/// Sums for each student.
#[derive(Debug, Deserialize)]
pub(super) struct ExerciseChoice {
    /// For each student.
    pub(super) count: Field<Written<u32>>,
    /// How far all of them go; without it they begin with areas and go on from there.
    pub(super) level: Field<ExerciseLevel>,
    /// What the numbers are made from.
    pub(super) seed: Field<Written<String>>,
}

/// Tables, and where canvases dry.
#[derive(Debug, Deserialize)]
pub(super) struct Room {
    pub(super) table: Field<At<Table>>,
    /// What there is to dry on.
    #[serde(rename = "level surface")]
    pub(super) level_surface: Field<Written<Area>>,
    /// Between two drying canvases.
    pub(super) gap: Field<Written<Length>>,
    /// Until a canvas can be moved.
    pub(super) drying: Field<Written<super::legible::Days>>,
}

/// The size of one table.
#[derive(Debug, Deserialize)]
pub(super) struct Table {
    pub(super) length: Field<Written<Length>>,
    pub(super) width: Field<Written<Length>>,
}

/// Water for washing up.
#[derive(Debug, Deserialize)]
pub(super) struct Washing {
    /// For the jug, between two colours and at the end.
    #[serde(rename = "after each batch")]
    pub(super) after_each_batch: Field<Written<Volume>>,
    /// For one piece of each supply that comes back.
    #[serde(rename = "each piece")]
    pub(super) each_piece: Field<Entries<Written<Volume>>>,
    /// What one bucket is filled with.
    pub(super) bucket: Field<Written<Volume>>,
}

/// A rule for something that is not paint.
#[derive(Debug, Deserialize)]
pub(super) struct Supply {
    /// 0 takes the item off the list.
    pub(super) count: Field<Written<f64>>,
    pub(super) per: Field<Per>,
    pub(super) life: Field<Life>,
}

/// A price list and its terms.
#[derive(Debug, Deserialize)]
pub(super) struct Shop {
    pub(super) currency: Field<Written<Currency>>,
    /// What it charges for bringing an order.
    pub(super) delivery: Field<Written<Money>>,
    /// Goods for so much are brought for nothing.
    #[serde(rename = "free from")]
    pub(super) free_from: Field<Written<Money>>,
    /// It takes no order for less.
    #[serde(rename = "least order")]
    pub(super) least_order: Field<Written<Money>>,
    pub(super) packs: Field<At<Items<Pack>>>,
}

/// A line of a price list.
#[derive(Debug, Deserialize)]
pub(super) struct Pack {
    pub(super) item: Field<Written<String>>,
    pub(super) size: Field<Written<Amount>>,
    /// Of one pack.
    pub(super) price: Field<Written<Money>>,
    /// The price holds from so many packs on.
    pub(super) from: Field<Written<u32>>,
    /// It is sold by so many packs at a time.
    #[serde(rename = "only by")]
    pub(super) only_by: Field<Written<u32>>,
}

/// Costs that nobody buys in a shop, and what is asked.
#[derive(Debug, Deserialize)]
pub(super) struct Charges {
    /// For the class, whatever number comes.
    pub(super) fixed: Field<Entries<Written<Money>>>,
    #[serde(rename = "for each student")]
    pub(super) each: Field<Entries<Written<Money>>>,
    /// What each student pays.
    pub(super) fee: Field<Written<Money>>,
    /// What the class may cost at most, all that is paid for it counted.
    pub(super) budget: Field<Written<Money>>,
}

/// Mixed paint that is left from before.
#[derive(Debug, Deserialize)]
pub(super) struct Jar {
    pub(super) colour: Field<Written<String>>,
    pub(super) mix: Field<Written<String>>,
    pub(super) amount: Field<Written<Amount>>,
    /// The day it was mixed.
    pub(super) mixed: Field<Written<Date>>,
    /// How long it can be used, if not as long as other mixes.
    pub(super) keeps: Field<Written<super::legible::Days>>,
}

/// A safety note.
#[derive(Debug, Deserialize)]
pub(super) struct Caution {
    pub(super) sign: Field<Sign>,
    pub(super) heading: Field<Written<String>>,
    pub(super) reason: Field<Written<String>>,
    pub(super) source: Field<Written<String>>,
    pub(super) when: Field<At<When>>,
}

/// When a safety note is printed.
#[derive(Debug, Deserialize)]
#[serde(rename = "puddlebook: by form")]
pub(super) enum When {
    #[serde(rename = "text")]
    Word(Always),
    #[serde(rename = "mapping")]
    Rule(Occasion),
}

/// The one word for it.
#[derive(Debug, Clone, Copy, Deserialize)]
#[serde(rename_all = "lowercase")]
pub(super) enum Always {
    Always,
}

/// Exactly one of these.
#[derive(Debug, Deserialize)]
pub(super) struct Occasion {
    pub(super) doing: Field<Items<Practice>>,
    #[serde(rename = "younger than")]
    pub(super) younger_than: Field<Written<u32>>,
    pub(super) pigments: Field<Items<Written<String>>>,
}

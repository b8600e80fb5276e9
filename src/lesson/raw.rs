//! The file as it is written: which keys there are, what they mean, and in what form
//! their values come. Nothing is checked here beyond that.
//!
//! What stands above a key is read by teachers: editors show it from the schema, and `explain`
//! prints it. "needed" in an attribute says that a key has to be there: "always" in the part
//! that it belongs to, "once" in one of the files that say something of this part.

mod canvas;
mod caution;
mod class;
mod day;
mod paint;
mod reserve;
mod shop;
mod technique;

pub(super) use canvas::{Canvas, MixChoice, Outline, Size, Sizes};
pub(super) use caution::{Always, Caution, When};
pub(super) use class::{Class, Exercises, Students};
pub(super) use day::{Room, Supply, Table, Timetable, Washing};
pub(super) use paint::{Colour, Jar, Material, Mix, Mixing};
pub(super) use reserve::{Reserve, WeighedSpread};
pub(super) use shop::{Charges, Pack, Shop};
pub(super) use technique::{Film, Finish, Layer, LayerFilm, Technique};

use super::field::{At, Entries, Field, Items, Written};
use super::legible::Portion;
use super::limits;
use super::model::{Amount, Edition, Language, Paper, Practice};
use super::schema::named_concerns;
use crate::quantity::{Date, UnitSystem};
use schemars::JsonSchema;
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

/// A lesson: who comes, what is painted, and everything that differs from what comes with the
/// program.
#[derive(Debug, Deserialize, JsonSchema)]
pub(super) struct Lesson {
    /// What the class is called; it heads every handout.
    #[schemars(extend("needed" = "always"))]
    pub(super) title: Field<Written<String>>,
    /// A line under the title.
    pub(super) subtitle: Field<Written<String>>,
    /// Who gives the class; stands on the handouts.
    pub(super) teacher: Field<Written<String>>,
    /// Where the class is given; stands on the handouts.
    pub(super) place: Field<Written<String>>,
    /// The day of the class, as year-month-day. Finishes, drying and jars are reckoned from it.
    pub(super) date: Field<Written<Date>>,
    /// A line for the foot of every page.
    pub(super) note: Field<Written<String>>,
    /// The language of the handouts. Names that come with the program (techniques, mixes,
    /// supplies …) are in this language too; keys and fixed words stay English.
    #[schemars(extend("default" = "en"))]
    pub(super) language: Field<Language>,
    /// Which units come first on paper; the others follow in brackets.
    #[schemars(extend("default" = "metric"))]
    pub(super) units: Field<UnitSystem>,
    /// What the handouts are printed on.
    #[schemars(extend("default" = "a4"))]
    pub(super) paper: Field<Paper>,
    /// The size of the type on the handouts.
    #[schemars(extend("default" = "standard"))]
    pub(super) print: Field<Edition>,
    /// Data files with what several lessons share (colours, price lists, stock), by their paths
    /// from this file. A later file wins over an earlier one, and the lesson wins over all.
    // Loading reads it before the files are laid over each other; here it only makes the key
    // known.
    #[serde(rename = "use")]
    #[schemars(extend("maxItems" = limits::USED_FILES))]
    pub(super) _use: Field<Items<Written<String>>>,
    /// Who comes: students, what you pour yourself, and how many share a table.
    #[schemars(extend("needed" = "always"))]
    pub(super) class: Field<At<Class>>,
    /// What each student paints: every kind of canvas under a name of your own.
    #[schemars(extend(
        "needed" = "always",
        "minProperties" = 1,
        "maxProperties" = limits::CANVASES
    ))]
    pub(super) canvases: Field<Entries<Canvas>>,
    /// Which colours go into each layer of a canvas, under a name of your own: first the layers
    /// of the technique (most have one, called "colour"), then the colours with their shares.
    /// The shares of a layer make 100 %; one colour may take "the rest".
    #[schemars(extend("needed" = "always"))]
    pub(super) palettes: Field<Entries<Entries<Entries<Written<Portion>>>>>,
    /// What is done in class that needs care. It brings the safety notes that belong to it, and
    /// so do the techniques by themselves.
    pub(super) practices: Field<Items<Practice>>,
    /// What a colleague would say of this plan and is right all the same: the name of the
    /// warning, with the reason why. Everybody who prints the handouts can read it.
    #[schemars(transform = named_concerns)]
    pub(super) accepted: Field<Entries<Written<String>>>,
    /// The paints that you pour with, each under the name that palettes call it by.
    pub(super) colours: Field<Entries<Colour>>,
    /// What goes into a cup besides paint, or over a dry canvas: media, additives, varnishes.
    pub(super) materials: Field<Entries<Material>>,
    /// Recipes that turn paint into pouring paint. "thin", "medium" and "thick" come with the
    /// program; change one of them, or add your own under another name.
    pub(super) mixes: Field<Entries<Mix>>,
    /// Ways of pouring, and how much paint each takes. Eight come with the program; change a
    /// single value of one of them, or add your own under another name.
    pub(super) techniques: Field<Entries<Technique>>,
    /// What goes over a dry canvas days later, such as a varnish.
    pub(super) finishes: Field<Entries<Finish>>,
    /// Canvas sizes for the table of paint on the sheet of tools. Your own list takes the place
    /// of the one that comes with the program.
    pub(super) sizes: Field<At<Sizes>>,
    /// What happens when. The lesson sheet shows it by the clock, and whether it fits the
    /// booking.
    pub(super) timetable: Field<At<Timetable>>,
    /// Sums for each student behind the worksheet, with other numbers than the neighbours have:
    /// how many, or that and more.
    pub(super) exercises: Field<At<Exercises>>,
    /// The tables of the room, and where wet canvases dry.
    pub(super) room: Field<At<Room>>,
    /// Water for washing up.
    pub(super) washing: Field<At<Washing>>,
    /// How cups are filled, and to which steps amounts are rounded up.
    pub(super) mixing: Field<At<Mixing>>,
    /// How much more than expected is mixed, so that no colour runs out.
    pub(super) reserve: Field<At<Reserve>>,
    /// What is needed besides paint: each thing with a rule that counts it.
    pub(super) supplies: Field<Entries<Supply>>,
    /// Price lists of the shops where things are bought, each under the name of its shop.
    #[schemars(extend("maxProperties" = limits::SHOPS))]
    pub(super) shops: Field<Entries<Shop>>,
    /// What the class costs besides what is bought, and what you ask for it.
    pub(super) money: Field<At<Charges>>,
    /// Things that are not bought in these shops: they stay on the list, without a price.
    #[serde(rename = "bought elsewhere")]
    pub(super) elsewhere: Field<Items<Written<String>>>,
    /// What is in the cupboard: items by the names of the price lists, and how much there is.
    pub(super) stock: Field<Entries<Written<Amount>>>,
    /// Mixed paint that is left from before; it counts while it keeps. Needs the date of the
    /// lesson.
    pub(super) jars: Field<Items<Jar>>,
    /// Safety notes. The usual ones come with the program; change one, or add your own.
    pub(super) cautions: Field<Entries<Caution>>,
}

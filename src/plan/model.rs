//! The plan: every number of a class as a plain value. No text for people.

use super::{Balance, Formula, RoomPlan, Split, TimetablePlan};
use crate::lesson::{
    Amount, CanvasLayer, Caution, Colour, Finish, Lesson, Life, Material, Mix, ReserveRule,
};
use crate::quantity::show::rounded;
use crate::quantity::{Area, Date, Length, Mass, MassDensity, Money, Share, Spread, Volume};
use std::sync::Arc;

/// A lesson worked out.
#[derive(Debug, Clone)]
pub struct Plan {
    pub lesson: Lesson,
    pub heads: Heads,
    /// One for each canvas of the lesson, in its order.
    pub canvases: Vec<CanvasPlan>,
    /// Mixed paint of one student, all canvases (typical film, cup loss included).
    pub student_paint: Spread<Volume>,
    /// Mixed paint of the whole class, demonstrations and spares included.
    pub class_paint: Spread<Volume>,
    /// What the teacher mixes for the whole class: one batch a colour and mix.
    pub mixing: Vec<Batch>,
    /// What the finishes take, one line a material.
    pub finishing: Vec<MaterialNeed>,
    /// What batches and finishes take together, one line a material, by kind.
    pub materials: Vec<MaterialNeed>,
    pub supplies: Vec<SupplyNeed>,
    /// What a class that uses what is expected leaves mixed, in the order of `mixing`.
    pub leftovers: Vec<Leftover>,
    /// How the reserve in `mixing` and `finishing` is argued, and what a habit would do instead.
    pub reserve: Reserve,
    pub order: Order,
    pub cost: Cost,
    /// One for each canvas of the lesson, in its order.
    pub worked: Vec<WorkedExample>,
    /// The safety notes of this lesson, worst first.
    pub cautions: Vec<Caution>,
    /// By the clock, if the lesson says what happens when.
    pub timetable: Option<TimetablePlan>,
    /// Tables, drying and washing-up.
    pub room: RoomPlan,
}

impl Plan {
    /// What is mixed for the class: all batches, each rounded up to its step.
    pub fn to_mix(&self) -> Volume {
        self.mixing.iter().map(|batch| batch.volume).fold(Volume::default(), |sum, v| sum + v)
    }
}

/// How many sets are painted.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Heads {
    pub students: u32,
    pub demonstrations: u32,
    pub spares: u32,
    pub tables: u32,
}

impl Heads {
    /// Sets of canvases to mix for.
    pub fn sets(&self) -> u32 {
        self.students.saturating_add(self.demonstrations).saturating_add(self.spares)
    }
}

/// Areas of one canvas.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Areas {
    pub face: Area,
    /// Perimeter of the face.
    pub perimeter: Length,
    /// Perimeter times depth, zero when the edge stays bare.
    pub edge: Area,
    /// Face and edge.
    pub painted: Area,
}

/// What one canvas takes.
#[derive(Debug, Clone)]
pub struct CanvasPlan {
    pub name: String,
    pub areas: Areas,
    /// Layers of the technique, in the order of the work.
    pub layers: Vec<LayerPlan>,
    pub finishes: Vec<FinishPlan>,
    /// All layers of the technique together, without cup loss.
    pub paint: Spread<Volume>,
    /// All layers with what stays in cups and on sticks.
    pub to_mix: Volume,
}

impl CanvasPlan {
    /// What the paint of all layers weighs, without what stays in the cups.
    pub fn paint_mass(&self) -> Mass {
        let cups = self.layers.iter().flat_map(|layer| &layer.cups);
        cups.map(|cup| cup.paint * cup.density()).fold(Mass::default(), |sum, mass| sum + mass)
    }
}

/// What one layer of one canvas takes.
#[derive(Debug, Clone)]
pub struct LayerPlan {
    pub name: String,
    pub film: Spread<Length>,
    /// Painted area times film.
    pub paint: Spread<Volume>,
    pub layer: CanvasLayer,
    /// One for each colour of the layer, in its order.
    pub cups: Vec<CupPlan>,
}

/// One cup of one colour for one layer of one canvas.
#[derive(Debug, Clone)]
pub struct CupPlan {
    pub colour: Arc<Colour>,
    pub share: Share,
    /// Share of the layer, without what stays in the cup.
    pub paint: Volume,
    /// What is filled into it: the paint and what stays in the cup, up to a whole step of
    /// the scale.
    pub fill: Mass,
    /// That much, mixed for this one cup. Drops come in whole ones, so its mass may miss
    /// the fill by less than the scale shows.
    pub batch: Batch,
}

impl CupPlan {
    /// What one volume of the fill weighs.
    pub fn density(&self) -> MassDensity {
        if self.batch.volume > Volume::default() {
            self.fill / self.batch.volume
        } else {
            self.batch.density
        }
    }
}

/// A finish on one canvas.
#[derive(Debug, Clone)]
pub struct FinishPlan {
    pub finish: Arc<Finish>,
    /// All coats.
    pub paint: Spread<Volume>,
}

/// A colour mixed in one go.
#[derive(Debug, Clone)]
pub struct Batch {
    pub colour: Arc<Colour>,
    pub mix: Arc<Mix>,
    /// Cups to fill from it.
    pub cups: u32,
    /// What is expected to be used, cup loss included.
    pub expected: Volume,
    /// What is mixed on top of it so that the colour is enough; nothing in the batch of a single
    /// cup.
    pub reserve: Volume,
    /// What its cups are filled with, each to a whole step of the scale.
    pub fills: Volume,
    /// Taken out of jars that were mixed before.
    pub from_jars: Volume,
    /// What is mixed: expected and reserve, or what fills the cups where that is more, less what
    /// the jars give, rounded up to what can be measured: a step of volume for the class and
    /// of the scale for one cup. Nothing when the jars have it all.
    pub volume: Volume,
    pub mass: Mass,
    /// By ideal mixing: sum of masses over sum of volumes.
    pub density: MassDensity,
    /// In the order of the recipe; volumes and masses add up to the batch.
    pub ingredients: Vec<Poured>,
}

impl Batch {
    /// What is needed: expected and reserve; never more than `volume` and `from_jars`.
    pub fn need(&self) -> Volume {
        self.expected + self.reserve
    }
}

/// One ingredient on the scale.
#[derive(Debug, Clone)]
pub struct Poured {
    pub material: Arc<Material>,
    pub volume: Volume,
    pub mass: Mass,
    /// What to add on the scale: `mass` in whole steps of it, so that the readings are the
    /// running sum of what was added.
    pub weighed: Mass,
    /// Reading of the scale after it, cup tared.
    pub reading: Mass,
    /// For additives that are counted.
    pub drops: Option<u32>,
}

/// A material for the whole class.
#[derive(Debug, Clone)]
pub struct MaterialNeed {
    pub material: Arc<Material>,
    /// What is expected to be used.
    pub expected: Volume,
    /// What is kept in reserve.
    pub reserve: Volume,
    /// Expected and reserve, and what the rounding of batches adds.
    pub volume: Volume,
    pub mass: Mass,
}

/// A supply for the whole class.
#[derive(Debug, Clone)]
pub struct SupplyNeed {
    pub item: String,
    pub pieces: u32,
    pub life: Life,
}

/// Why so much is kept in reserve.
///
/// Each colour is to be enough by itself, so each has its own reserve, and together they are
/// more than the reserve that one paint for all would take.
#[derive(Debug, Clone)]
pub struct Reserve {
    pub rule: ReserveRule,
    /// So many standard deviations are kept: the normal quantile of the level.
    pub deviations: f64,
    /// All mixed paint, cup loss included.
    pub expected: Volume,
    /// The reserves of all colours and mixes together: what is mixed on top.
    pub by_colour: Volume,
    /// What would do if all colours were one paint; at most `by_colour`.
    pub as_one: Volume,
    pub habit: Habit,
}

/// What the same class would mix and buy if so much were added for each student and nothing
/// else argued. For comparison only.
#[derive(Debug, Clone)]
pub struct Habit {
    /// Added to what is expected.
    pub extra: Share,
    /// What each batch of `Plan::mixing` would be, in its order, rounded up to its step.
    pub mixing: Vec<Volume>,
    /// What each line of `Plan::finishing` would be, in its order.
    pub finishing: Vec<Volume>,
    /// What would be paid for packs.
    pub total: Money,
}

impl Habit {
    /// What would be mixed for the class: all batches.
    pub fn to_mix(&self) -> Volume {
        self.mixing.iter().copied().sum()
    }
}

/// Mixed paint that is left after a class.
#[derive(Debug, Clone)]
pub struct Leftover {
    pub colour: Arc<Colour>,
    pub mix: Arc<Mix>,
    pub volume: Volume,
    pub mass: Mass,
    /// When the oldest part of it was mixed; `None` when the lesson has no date.
    pub mixed: Option<Date>,
    /// The last day on which it can be used.
    pub last_day: Option<Date>,
}

impl Leftover {
    /// How many cups it would fill of each kind of canvas of a plan, kind by kind.
    pub fn covers(&self, plan: &Plan) -> Vec<Cover> {
        super::jars::covers(self, &plan.canvases)
    }
}

/// Cups of one kind of canvas that a leftover would fill.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cover {
    pub canvas: String,
    pub cups: u32,
}

/// Several lessons that are bought for together.
#[derive(Debug, Clone)]
pub struct Course {
    /// By date; each with an order as if it were bought for alone.
    pub lessons: Vec<Plan>,
    /// By day.
    pub deliveries: Vec<Delivery>,
    /// What orders for each lesson by itself would cost together.
    pub lesson_by_lesson: Money,
}

/// One order of a course.
#[derive(Debug, Clone)]
pub struct Delivery {
    /// `None` when it must be there before the first of its lessons.
    pub day: Option<Date>,
    /// Which lessons of the course it supplies.
    pub lessons: std::ops::Range<usize>,
    pub order: Order,
}

/// An order and what it is for.
#[derive(Debug, Clone, Copy)]
pub struct Errand<'a> {
    /// The lessons that it supplies, by date; at least one.
    pub lessons: &'a [Plan],
    /// When it is delivered; `None` when it must be there before the first lesson.
    pub day: Option<Date>,
    pub order: &'a Order,
}

impl<'a> Errand<'a> {
    /// The order of one lesson by itself.
    pub fn of(plan: &'a Plan) -> Self {
        Self { lessons: std::slice::from_ref(plan), day: None, order: &plan.order }
    }
}

/// What to buy.
#[derive(Debug, Clone)]
pub struct Order {
    /// Materials first (paints, media, additives, varnishes), then supplies.
    pub lines: Vec<OrderLine>,
    /// One for each shop where something is bought, in the order of the lesson.
    pub bills: Vec<ShopBill>,
    /// All bills.
    pub total: Money,
    /// `None` when no way to buy is cheaper; when the search reached its limit of work, no
    /// way is cheaper by more than this.
    pub within: Option<Money>,
    /// What everything would cost from each shop alone; empty with fewer than two shops.
    pub singly: Vec<SingleShop>,
}

/// What is paid to one shop.
#[derive(Debug, Clone)]
pub struct ShopBill {
    /// Its place among the shops of all lessons.
    pub shop: usize,
    pub name: String,
    pub goods: Money,
    pub delivery: Money,
    /// The charge that the goods made unnecessary by reaching the sum for it.
    pub delivery_saved: Money,
}

impl ShopBill {
    /// Goods and delivery.
    pub fn total(&self) -> Money {
        self.goods + self.delivery
    }
}

/// Everything from one shop.
#[derive(Debug, Clone)]
pub struct SingleShop {
    pub name: String,
    /// `None` when it does not sell everything, or takes no order so small.
    pub total: Option<Money>,
}

/// One item of the order.
#[derive(Debug, Clone)]
pub struct OrderLine {
    pub item: String,
    pub what: OrderItem,
    /// What each lesson of the order needs, in their order.
    pub by_lesson: Vec<Amount>,
    /// What must be at hand for all of them.
    pub needed: Amount,
    /// The part of `needed` that is kept in reserve; nothing of a supply.
    pub reserve: Amount,
    pub in_stock: Amount,
    /// `needed - in_stock`, at least nothing; in the kind of `needed`.
    pub to_buy: Amount,
    pub purchase: Purchase,
}

/// What kind of item a line is.
#[derive(Debug, Clone)]
pub enum OrderItem {
    Material(Arc<Material>),
    Supply(Life),
}

/// How a line is met.
#[derive(Debug, Clone)]
pub enum Purchase {
    /// Stock is enough (or it comes from the tap).
    Nothing,
    /// The least-cost packs.
    Packs { packs: Vec<PackCount>, cost: Money, left_over: Amount },
    /// The lesson says that it is not bought in these shops.
    Elsewhere,
    /// No price list says where.
    NoPrice,
}

/// So many of one pack.
#[derive(Debug, Clone)]
pub struct PackCount {
    /// Place of the shop, as in [`ShopBill::shop`].
    pub shop: usize,
    /// Place in the price list of the shop.
    pub shelf: usize,
    pub size: Amount,
    pub price: Money,
    pub count: u32,
}

/// What the class costs.
#[derive(Debug, Clone)]
pub struct Cost {
    /// What is paid at the till.
    pub order: Money,
    pub per_student: Money,
    /// What is taken out of packs and stock, reserve included, priced by the packs bought
    /// (stock at the price of the list).
    pub used: Money,
    /// `used` by what it went into.
    pub split: Split,
    /// What is paid and taken in, with what the lesson says besides.
    pub balance: Balance,
    /// Items without a price, left out of the sums.
    pub unpriced: Vec<String>,
}

/// A sum worked step by step for one canvas.
#[derive(Debug, Clone)]
pub struct WorkedExample {
    pub canvas: String,
    pub steps: Vec<Step>,
}

/// One line of a worked example: what is worked out, from what, to what.
#[derive(Debug, Clone)]
pub struct Step {
    pub what: StepKind,
    /// How `gives` follows from `from`.
    pub formula: Formula,
    /// In the order of the formula.
    pub from: Vec<Figure>,
    pub gives: Figure,
}

/// What a step works out, from operands in the order given here.
#[derive(Debug, Clone, PartialEq)]
pub enum StepKind {
    /// Rectangle: width x height. Round: pi x half x half. Oval: pi x half width x half
    /// height. Polygon: sides x side x distance from the centre to a side / 2.
    Face,
    /// Rectangle: 2 x (width + height). Round: pi x diameter. Oval: pi x (half width +
    /// half height) x factor of its proportions. Polygon: sides x side. Left out, with
    /// the edge area, when the edge stays bare.
    Perimeter,
    /// perimeter x depth.
    EdgeArea,
    /// face + edge (zero when it stays bare).
    PaintedArea,
    /// painted / area that one unit of paint covers.
    LayerPaint { layer: String },
    /// layer paint x share.
    ColourPaint { layer: String, colour: String },
    /// (colour paint + cup loss) x density, rounded up to whole steps of the scale; the step
    /// is the fourth operand.
    ColourMass { layer: String, colour: String },
}

/// A quantity with the digits it is printed with; `shown` is what the pocket
/// calculator starts from, and reproduces `gives` from `from`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Figure {
    /// In `unit`, rounded to `decimals`.
    pub shown: f64,
    pub decimals: u8,
    pub unit: FigureUnit,
}

impl Figure {
    /// Whether a pocket calculator that shows `result` agrees with this figure: rounded to
    /// its last digit, halves up, it is the figure.
    pub fn agrees_with(&self, result: f64) -> bool {
        // A calculator that shows an exact half is rounded up by whoever reads it.
        let read = rounded(result, usize::from(self.decimals));
        (read - self.shown).abs() <= read.abs() * 1e-12
    }
}

/// Units of worked examples.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum FigureUnit {
    None,
    Percent,
    Inch,
    Centimetre,
    SquareInch,
    SquareCentimetre,
    FluidOunce,
    Millilitre,
    Gram,
    SquareInchPerFluidOunce,
    SquareCentimetrePerMillilitre,
    GramPerFluidOunce,
    GramPerMillilitre,
}

//! What the class costs, where it goes, and what a student would have to pay.

use super::batch::hex;
use super::order::priced;
use crate::handout::words::Words;
use crate::lesson::Charge;
use crate::plan::{CanvasCost, ClassFee, ColourCost, Fees, Plan};
use crate::quantity::show::Show;
use crate::quantity::{Coin, Decimal, Money};
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

/// Charges weigh by the ten-thousandth, finer than the coins of any currency.
const FINE: u32 = 10_000;
/// More charges than a lesson has; a weight that does not fit is cut to leave room for them.
const COMMON: u64 = 1_000_000;

/// What the class costs. What nobody knows or asks for is empty.
#[derive(Debug, Clone, Serialize)]
pub struct CostText {
    /// Paid for packs and delivery.
    pub order: String,
    pub per_student: String,
    /// Taken out of packs and stock.
    pub used: String,
    pub used_per_student: String,
    pub unpriced: Vec<String>,
    /// `used` by what it went into.
    pub canvases: Vec<CanvasCostText>,
    pub colours: Vec<ColourCostText>,
    pub finishes: String,
    pub supplies: String,
    /// Paid whatever number comes, and for each student.
    pub fixed: Vec<ChargeText>,
    pub each: Vec<ChargeText>,
    /// All that is paid.
    pub total: String,
    pub total_per_student: String,
    /// The least fee at which this class pays for itself.
    pub pays_for_itself: String,
    /// The fee that is asked and what it brings.
    pub fee: String,
    pub income: String,
    /// What the class may cost at most; empty when the lesson does not say.
    pub budget: String,
    /// One of the two, without a sign; both are empty when income and total are equal.
    pub surplus: String,
    pub loss: String,
}

/// What the canvases of one kind take.
#[derive(Debug, Clone, Serialize)]
pub struct CanvasCostText {
    pub name: String,
    pub count: String,
    pub layers: Vec<LayerCostText>,
    /// Empty when nothing goes over the paint.
    pub finishes: String,
    pub total: String,
    /// For one of them.
    pub one: String,
}

/// What a layer takes on all canvases of a kind.
#[derive(Debug, Clone, Serialize)]
pub struct LayerCostText {
    pub name: String,
    pub colours: Vec<ColourCostText>,
    pub total: String,
}

/// What a colour takes.
#[derive(Debug, Clone, Serialize)]
pub struct ColourCostText {
    pub name: String,
    /// `#RRGGBB`.
    pub swatch: String,
    pub paint: String,
    /// Medium, water and additives.
    pub added: String,
    pub total: String,
}

/// Something that is paid besides.
#[derive(Debug, Clone, Serialize)]
pub struct ChargeText {
    pub what: String,
    /// For the class.
    pub total: String,
    /// For each student, rounded to the coin where it is shared.
    pub per_student: String,
}

/// What classes of the same lesson would cost.
#[derive(Debug, Clone, Serialize)]
pub struct FeesText {
    /// By number of students; empty where nothing is known to cost anything.
    pub classes: Vec<ClassFeeText>,
    /// The fewest students with whom the fee that is asked pays; empty if with none.
    pub pays_from: String,
    /// Larger classes with which it does not.
    pub fails_again: Vec<String>,
    /// The largest class that was looked at.
    pub last: String,
}

/// A class of so many students.
#[derive(Debug, Clone, Serialize)]
pub struct ClassFeeText {
    pub students: String,
    /// Whether it is this class.
    pub here: bool,
    /// Whether the fee that is asked pays.
    pub pays: bool,
    /// Paid for packs and delivery.
    pub bought: String,
    pub total: String,
    /// The least fee at which it pays for itself.
    pub fee: String,
}

pub(super) fn cost(plan: &Plan, show: &Show) -> CostText {
    let (cost, balance, split) = (&plan.cost, &plan.cost.balance, &plan.cost.split);
    let takings = balance.takings.as_ref();
    let paid = |money| if is_known(plan) { show.money(money) } else { String::new() };
    let surplus = takings.map(|takings| takings.surplus).unwrap_or_default();
    let priced = |money| priced(plan, money, show);
    let some = |money| if money == Money::ZERO { String::new() } else { priced(money) };
    let is_priced = !plan.lesson.shops.is_empty();
    let colours = split.colours();
    let charges = &plan.lesson.charges;
    CostText {
        order: priced(cost.order),
        per_student: priced(cost.per_student),
        used: priced(cost.used),
        used_per_student: priced(split.per_student),
        unpriced: cost.unpriced.clone(),
        canvases: split
            .canvases
            .iter()
            .filter(|_| is_priced)
            .map(|canvas| canvas_cost(canvas, show))
            .collect(),
        colours: colours.iter().filter(|_| is_priced).map(|it| colour_cost(it, show)).collect(),
        finishes: some(split.finishes()),
        supplies: some(split.supplies),
        fixed: fixed(plan, show),
        each: charges.each.iter().map(|it| each(it, plan, show)).collect(),
        total: paid(balance.total),
        total_per_student: paid(balance.per_student),
        pays_for_itself: paid(balance.pays_for_itself),
        fee: takings.map(|takings| show.money(takings.fee)).unwrap_or_default(),
        income: takings.map(|takings| show.money(takings.income)).unwrap_or_default(),
        budget: charges.budget.map(|budget| show.money(budget)).unwrap_or_default(),
        surplus: above_nothing(surplus, show),
        loss: above_nothing(Money::ZERO - surplus, show),
    }
}

fn above_nothing(money: Money, show: &Show) -> String {
    if money > Money::ZERO { show.money(money) } else { String::new() }
}

/// Whether the lesson says what anything costs.
fn is_known(plan: &Plan) -> bool {
    let charges = &plan.lesson.charges;
    !(plan.lesson.shops.is_empty() && charges.fixed.is_empty() && charges.each.is_empty())
}

fn canvas_cost(canvas: &CanvasCost, show: &Show) -> CanvasCostText {
    let finishes: Money = canvas.finishes.iter().copied().sum();
    CanvasCostText {
        name: canvas.name.clone(),
        count: canvas.count.to_string(),
        layers: canvas
            .layers
            .iter()
            .map(|layer| LayerCostText {
                name: layer.name.clone(),
                colours: layer.cups.iter().map(|cup| colour_cost(cup, show)).collect(),
                total: show.money(layer.total()),
            })
            .collect(),
        finishes: above_nothing(finishes, show),
        total: show.money(canvas.total()),
        one: show.money(canvas.per_canvas),
    }
}

fn colour_cost(cost: &ColourCost, show: &Show) -> ColourCostText {
    ColourCostText {
        name: cost.colour.name.clone(),
        swatch: hex(cost.colour.swatch),
        paint: show.money(cost.paint),
        added: show.money(cost.added),
        total: show.money(cost.total()),
    }
}

/// What is paid once. The shares of a student are in whole coins that come, with the share of
/// the order and what each student costs, to what a student costs in all, as printed.
fn fixed(plan: &Plan, show: &Show) -> Vec<ChargeText> {
    let (balance, charges) = (&plan.cost.balance, &plan.lesson.charges.fixed);
    let coin = Coin::of(plan.lesson.print.currency);
    let shares = balance.per_student - coin.nearest(plan.cost.per_student) - balance.each;
    let weight = |charge: &Charge| {
        let fine = charge.amount.amount().checked_mul(Decimal::from(FINE));
        fine.and_then(|fine| fine.to_u64()).unwrap_or(u64::MAX / COMMON)
    };
    let weights: Vec<u64> = charges.iter().map(weight).collect();
    let shares = coin.split(shares, &weights);
    let text = |(charge, share): (&Charge, Money)| ChargeText {
        what: charge.what.clone(),
        total: show.money(charge.amount),
        per_student: show.money(share),
    };
    charges.iter().zip(shares).map(text).collect()
}

fn each(charge: &Charge, plan: &Plan, show: &Show) -> ChargeText {
    ChargeText {
        what: charge.what.clone(),
        total: show.money(charge.amount * plan.heads.students),
        per_student: show.money(charge.amount),
    }
}

impl FeesText {
    /// The fees of a plan as text.
    pub fn of(plan: &Plan, fees: &Fees, words: &Words) -> Self {
        let show = words.show(&plan.lesson.print);
        let known = fees.classes.iter().filter(|_| is_known(plan));
        let class = |class: &ClassFee| ClassFeeText {
            students: class.students.to_string(),
            here: class.students == plan.heads.students,
            pays: fees.pays(class),
            bought: priced(plan, class.bought, &show),
            total: show.money(class.total),
            fee: show.money(class.fee),
        };
        Self {
            classes: known.map(class).collect(),
            pays_from: fees.pays_from().map(|from| from.to_string()).unwrap_or_default(),
            fails_again: fees.fails_again().iter().map(u32::to_string).collect(),
            last: fees.classes.last().map(|class| class.students.to_string()).unwrap_or_default(),
        }
    }
}

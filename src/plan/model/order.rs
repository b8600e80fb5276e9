//! What is bought, where, and what it costs.

use super::super::{Balance, Split};
use super::Plan;
use crate::lesson::{Amount, Life, Material};
use crate::quantity::{Date, Money};
use std::sync::Arc;

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

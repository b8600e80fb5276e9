//! What a student's weighing is compared with: worked with what is planned, from figures as
//! they are printed.

use crate::handout::words::{Words, fill};
use crate::plan::{Batch, CanvasPlan, Plan, rule_film};
use crate::quantity::show::{Show, fewer_digits, rounded, with_unit};
use crate::quantity::units::{in_gram, ml, us_fl_oz};
use crate::quantity::{Coin, Decimal, Money, UnitSystem, Volume};
use rust_decimal::prelude::ToPrimitive;
use serde::Serialize;

/// Used against the rule of thumb.
#[derive(Debug, Clone, Serialize)]
pub struct CompareText {
    /// Grams to volume: `158 g ÷ 33.12 g per fl oz = 4.77 fl oz`.
    pub used_sum: String,
    /// Used by the rule: `4.77 fl oz ÷ 4.8 fl oz × 100 = 99 %`.
    pub share_sum: String,
    /// Area to the unit of volume: `120 in² ÷ 4.77 fl oz = 25.2 in² per fl oz`.
    pub cover_sum: String,
    /// What is saved against the rule; empty without prices.
    pub saving: Option<SavingText>,
}

/// Money that the rule of thumb would cost more.
#[derive(Debug, Clone, Serialize)]
pub struct SavingText {
    /// Of one fluid ounce or 100 mL of the colours of the canvas, mixed.
    pub price: String,
    /// ISO 4217.
    pub currency: String,
    /// Rule less used, times the price, with its result; empty where they differ by less than
    /// a figure in grams can tell.
    pub sum: String,
    /// Whether more is used than the rule gives: then it is used less rule.
    pub dearer: bool,
}

/// Whole grams of a cup tell no smaller part of the rule.
const SAME: f64 = 0.005;

/// What one canvas is compared with.
pub(super) fn compare(plan: &Plan, at: usize, words: &Words, show: &Show) -> Option<CompareText> {
    let canvas = plan.canvases.get(at)?;
    let per = &words.steps;
    let (pattern, per_weight, decimals, hundred) = match show.units() {
        UnitSystem::Us => (&per.per_fluid_ounce, us_fl_oz(1.0), 1, 1.0),
        UnitSystem::Metric => (&per.per_100_millilitres, ml(1.0), 0, 100.0),
    };
    // The figures that the sheets print, and no more of their digits.
    let paint = canvas.paint.typical();
    let density = canvas.paint_mass() / paint;
    let weight_digits = if hundred > 1.0 { 3 } else { 2 };
    let weight = rounded(in_gram(density * per_weight), weight_digits);
    let grams = rounded(in_gram(canvas.paint_mass()), 1);
    let used = rounded(grams / weight, show.volume_digits());
    let area = rounded(show.area_number(canvas.areas.painted), 1);
    let cover = area / used * hundred;
    let times = if hundred > 1.0 { " × 100" } else { "" };
    let weighs = match show.units() {
        UnitSystem::Us => &per.per_fluid_ounce,
        UnitSystem::Metric => &per.per_millilitre,
    };
    let used_text = volume(used, show);
    let rule = show.volume_number(canvas.areas.painted * rule_film());
    let rule = by_size(rule, show.volume_digits());
    Some(CompareText {
        used_sum: format!(
            "{} ÷ {} = {used_text}",
            with_unit(&show.trimmed(grams, 1), "g"),
            fill(weighs, &[("amount", &show.density(density))]),
        ),
        cover_sum: format!(
            "{} ÷ {used_text}{times} = {}",
            show.area(canvas.areas.painted),
            fill(
                pattern,
                &[("amount", &with_unit(&show.trimmed(cover, decimals), show.area_unit()))]
            ),
        ),
        share_sum: format!(
            "{used_text} ÷ {} × 100 = {}",
            volume(rule, show),
            show.percent(used / rule)
        ),
        saving: saving(plan, at, (used, rule), show),
    })
}

/// A volume of so many units, with the digits of worked sums.
fn volume(number: f64, show: &Show) -> String {
    with_unit(
        &show.trimmed(number, show.volume_digits()),
        &show.volume_unit().replace(' ', "\u{a0}"),
    )
}

/// Rounded as [`Show`] prints an amount: with fewer decimals the larger it is.
fn by_size(value: f64, decimals: usize) -> f64 {
    rounded(value, decimals.saturating_sub(fewer_digits(value)))
}

/// The price is what the lesson says the mixed paint of the canvas costs, what stays in cups and
/// jugs included.
fn saving(plan: &Plan, at: usize, (used, rule): (f64, f64), show: &Show) -> Option<SavingText> {
    let canvas = plan.canvases.get(at)?;
    let coin = Coin::of(plan.lesson.print.currency);
    let unit = match show.units() {
        UnitSystem::Us => us_fl_oz(1.0),
        UnitSystem::Metric => ml(100.0),
    };
    let price = coin.nearest(price(plan, at, canvas, unit)?);
    if price <= Money::ZERO {
        return None;
    }
    let dearer = used > rule;
    let (more, less) = if dearer { (used, rule) } else { (rule, used) };
    let difference = rounded(more - less, show.volume_digits());
    let divisor = match show.units() {
        UnitSystem::Us => 1.0,
        UnitSystem::Metric => 100.0,
    };
    let saved = Decimal::from_f64_retain(difference / divisor)?.round_dp(6);
    let saved = coin.nearest(Money::new(saved.checked_mul(price.amount())?));
    let per = if divisor > 1.0 { " ÷ 100" } else { "" };
    let told = difference > SAME * rule;
    let sum = format!(
        "({} − {}){per} × {} = {}",
        volume(more, show),
        volume(less, show),
        show.money(price),
        show.money(saved),
    );
    let currency = plan.lesson.print.currency.code().to_owned();
    let sum = if told { sum } else { String::new() };
    Some(SavingText { price: show.money(price), currency, sum, dearer })
}

/// What a volume of the mixed paint of a canvas costs; none where something in it has no price,
/// or nothing is mixed afresh.
fn price(plan: &Plan, at: usize, canvas: &CanvasPlan, unit: Volume) -> Option<Money> {
    let cost = plan.cost.split.canvases.get(at).filter(|_| !plan.lesson.shops.is_empty())?;
    let mut mixed = Volume::default();
    for cup in canvas.layers.iter().flat_map(|layer| &layer.cups) {
        let is_it = |batch: &&Batch| {
            batch.colour.name == cup.colour.name && batch.mix.name == cup.batch.mix.name
        };
        let batch = plan.mixing.iter().find(is_it)?;
        let unpriced = |name: &String| plan.cost.unpriced.contains(name);
        if batch.ingredients.iter().any(|poured| unpriced(&poured.material.name))
            || batch.expected <= Volume::default()
        {
            return None;
        }
        mixed += batch.volume * (cup.batch.expected / batch.expected).value;
    }
    let paid: Money = cost.layers.iter().map(|layer| layer.total()).sum();
    let one = paid.per_head(cost.count)?.amount().to_f64()?;
    if mixed <= Volume::default() {
        return None;
    }
    Decimal::from_f64_retain(one * (unit / mixed).value).map(Money::new)
}

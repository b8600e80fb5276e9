use crate::lesson::Charge;
use crate::plan::{self, CanvasCost, ColourCost, LayerCost, Plan, Split};
use crate::quantity::{Coin, Currency, Money};
use serde_json::{Value, json};

/// What a class costs, where it goes, and the fees of other classes.
pub(super) fn cost(plan: &Plan) -> Value {
    let cost = &plan.cost;
    let purse = Purse(plan.lesson.print.currency);
    json!({
        "order": cost.order.amount().to_string(),
        "used": cost.used.amount().to_string(),
        "per_student": cost.per_student.amount().to_string(),
        "unpriced": cost.unpriced,
        "split": split(plan, purse),
        "balance": balance(plan, purse),
        "fees": fees(plan, purse),
    })
}

/// Amounts in one currency.
#[derive(Clone, Copy)]
struct Purse(Currency);

impl Purse {
    /// An amount as text with at least the decimals of its currency, and the currency.
    fn holds(self, money: Money) -> Value {
        let mut amount = money.amount().normalize();
        amount.rescale(amount.scale().max(Coin::of(self.0).decimals()));
        json!({ "amount": amount.to_string(), "currency": self.0.code() })
    }

    fn may_hold(self, money: Option<Money>) -> Option<Value> {
        money.map(|money| self.holds(money))
    }
}

fn split(plan: &Plan, purse: Purse) -> Value {
    let split: &Split = &plan.cost.split;
    let canvases = split.canvases.iter().zip(&plan.canvases).map(|(cost, canvas)| {
        let finishes = canvas.finishes.iter().zip(&cost.finishes).map(
            |(finish, cost)| json!({ "finish": finish.finish.name, "total": purse.holds(*cost) }),
        );
        canvas_cost(cost, finishes.collect(), purse)
    });
    let colours = split.colours();
    json!({
        "canvases": canvases.collect::<Vec<_>>(),
        "colours": colours.iter().map(|cost| colour(cost, purse)).collect::<Vec<_>>(),
        "finishes": purse.holds(split.finishes()),
        "supplies": purse.holds(split.supplies),
        "total": purse.holds(split.total()),
        "per_student": purse.holds(split.per_student),
    })
}

fn canvas_cost(cost: &CanvasCost, finishes: Vec<Value>, purse: Purse) -> Value {
    json!({
        "canvas": cost.name,
        "count": cost.count,
        "layers": cost.layers.iter().map(|cost| layer(cost, purse)).collect::<Vec<_>>(),
        "finishes": finishes,
        "total": purse.holds(cost.total()),
        "per_canvas": purse.holds(cost.per_canvas),
    })
}

fn layer(cost: &LayerCost, purse: Purse) -> Value {
    json!({
        "layer": cost.name,
        "colours": cost.cups.iter().map(|cost| colour(cost, purse)).collect::<Vec<_>>(),
        "total": purse.holds(cost.total()),
    })
}

fn colour(cost: &ColourCost, purse: Purse) -> Value {
    json!({
        "colour": cost.colour.name,
        "paint": purse.holds(cost.paint),
        "added": purse.holds(cost.added),
        "total": purse.holds(cost.total()),
    })
}

fn balance(plan: &Plan, purse: Purse) -> Value {
    let balance = &plan.cost.balance;
    let charges = |charges: &[Charge]| {
        let charges = charges
            .iter()
            .map(|charge| json!({ "what": charge.what, "amount": purse.holds(charge.amount) }));
        charges.collect::<Vec<_>>()
    };
    json!({
        "bought": purse.holds(balance.bought),
        "fixed": purse.holds(balance.fixed),
        "fixed_charges": charges(&plan.lesson.charges.fixed),
        "for_each_student": purse.holds(balance.each),
        "charges_for_each_student": charges(&plan.lesson.charges.each),
        "total": purse.holds(balance.total),
        "per_student": purse.holds(balance.per_student),
        "pays_for_itself": purse.holds(balance.pays_for_itself),
        "budget": purse.may_hold(plan.lesson.charges.budget),
        "fee": purse.may_hold(balance.takings.map(|takings| takings.fee)),
        "income": purse.may_hold(balance.takings.map(|takings| takings.income)),
        "surplus": purse.may_hold(balance.takings.map(|takings| takings.surplus)),
    })
}

fn fees(plan: &Plan, purse: Purse) -> Value {
    let fees = plan::fees(plan);
    let classes = fees.classes.iter().map(|class| {
        json!({
            "students": class.students,
            "bought": purse.holds(class.bought),
            "within": purse.may_hold(class.within),
            "total": purse.holds(class.total),
            "fee": purse.holds(class.fee),
            "pays": fees.asked.map(|_| fees.pays(class)),
        })
    });
    json!({
        "asked": purse.may_hold(fees.asked),
        "pays_from": fees.pays_from(),
        "fails_again": fees.fails_again(),
        "classes": classes.collect::<Vec<_>>(),
    })
}

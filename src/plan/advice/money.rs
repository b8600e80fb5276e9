use super::{Matter, Warning, path};
use crate::plan::{Plan, Purchase};
use crate::quantity::Money;

/// What there is to say of money.
pub(super) fn warnings(plan: &Plan) -> impl Iterator<Item = Warning> {
    [over_budget(plan), fee_too_low(plan), no_price(plan)].into_iter().flatten()
}

fn over_budget(plan: &Plan) -> Option<Warning> {
    let balance = &plan.cost.balance;
    let budget = plan.lesson.charges.budget.filter(|budget| balance.total > *budget)?;
    let matter = Matter::OverBudget { budget, total: balance.total, bought: balance.bought };
    Some(Warning { matter, path: path(["money", "budget"]) })
}

fn fee_too_low(plan: &Plan) -> Option<Warning> {
    let balance = &plan.cost.balance;
    let takings = balance.takings.filter(|takings| takings.surplus < Money::ZERO)?;
    let (pays, loss) = (balance.pays_for_itself, balance.total - takings.income);
    let matter = Matter::FeeTooLow { fee: takings.fee, pays, loss };
    Some(Warning { matter, path: path(["money", "fee"]) })
}

/// A lesson without shops asks for no prices.
fn no_price(plan: &Plan) -> Option<Warning> {
    let lines = plan.order.lines.iter();
    let unsold = lines.filter(|line| matches!(line.purchase, Purchase::NoPrice));
    let items: Vec<String> = unsold.map(|line| line.item.clone()).collect();
    let asks = !plan.lesson.shops.is_empty() && !items.is_empty();
    asks.then(|| Warning { matter: Matter::NoPrice { items }, path: path(["shops"]) })
}

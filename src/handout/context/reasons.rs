//! Why an order is as it is, a sentence each.

use crate::handout::words::{Words, fill};
use crate::plan::Order;
use crate::quantity::Money;
use crate::quantity::show::Show;

/// The sentences, the weightiest first.
pub(super) fn reasons(order: &Order, words: &Words, show: &Show) -> Vec<String> {
    let words = &words.reasons;
    let mut reasons = Vec::new();
    let alone: Vec<(&str, Money)> = order
        .singly
        .iter()
        .filter_map(|single| Some((single.name.as_str(), single.total?)))
        .collect();
    let best_alone = alone.iter().min_by_key(|(_, total)| *total);
    match (order.bills.as_slice(), best_alone) {
        // From one shop, although there are others.
        ([only], _) if !order.singly.is_empty() => {
            let dearer = alone.iter().filter(|(name, _)| *name != only.name);
            let dearer: Vec<String> = dearer
                .map(|(name, total)| {
                    fill(&words.dearer, &[("shop", name), ("total", &show.money(*total))])
                })
                .collect();
            let others = if dearer.is_empty() {
                words.nobody_else.clone()
            } else {
                dearer.join(&words.between)
            };
            reasons.push(fill(&words.one_shop, &[("shop", &only.name), ("others", &others)]));
        }
        ([_, _, ..], Some((name, total))) => {
            let saved = show.money(*total - order.total);
            let blanks =
                [("shop", *name), ("total", &show.money(*total)), ("saved", saved.as_str())];
            reasons.push(fill(&words.split, &blanks));
        }
        ([_, _, ..], None) => reasons.push(words.no_one_sells_all.clone()),
        _ => {}
    }
    for bill in order.bills.iter().filter(|bill| bill.delivery_saved > Money::ZERO) {
        let saved = show.money(bill.delivery_saved);
        reasons.push(fill(&words.free_delivery, &[("shop", &bill.name), ("saved", &saved)]));
    }
    if let Some(gap) = order.within {
        reasons.push(fill(&words.within, &[("gap", &show.money(gap))]));
    }
    reasons
}

use super::super::desk::Desk;
use super::super::field::{At, Entries, Field, Written};
use super::super::limits;
use super::super::model::{Charge, Charges};
use super::super::problem::ProblemKind;
use super::super::raw;
use crate::quantity::{Currency, Money};

/// What the class costs besides; without a currency no decimals are looked at.
pub(super) fn charges(
    desk: Desk<'_>,
    field: &Field<At<raw::Charges>>,
    currency: Option<Currency>,
) -> Option<Charges> {
    let raw = match field {
        Field::Absent => return Some(Charges::default()),
        Field::Broken => return None,
        Field::Present(at) => &at.value,
    };
    let list = |field: &Field<Entries<Written<Money>>>| listed(desk, field, currency);
    let (fixed, each) = (list(&raw.fixed), list(&raw.each));
    let sum = |field: &Field<Written<Money>>| match field {
        Field::Absent => Some(None),
        Field::Broken => None,
        Field::Present(written) => amount(desk, written, currency).map(Some),
    };
    let (fee, budget) = (sum(&raw.fee), sum(&raw.budget));
    Some(Charges { fixed: fixed?, each: each?, fee: fee?, budget: budget? })
}

/// Costs by name; those of nothing are left out.
fn listed(
    desk: Desk<'_>,
    field: &Field<Entries<Written<Money>>>,
    currency: Option<Currency>,
) -> Option<Vec<Charge>> {
    let entries = match field {
        Field::Absent => return Some(Vec::new()),
        Field::Broken => return None,
        Field::Present(entries) => &entries.0,
    };
    let charges: Vec<Option<Charge>> = entries
        .iter()
        .map(|entry| {
            let amount = amount(desk, entry.value.as_ref()?, currency)?;
            Some(Charge { what: entry.name.clone(), amount })
        })
        .collect();
    let charges: Option<Vec<Charge>> = charges.into_iter().collect();
    Some(charges?.into_iter().filter(|charge| charge.amount > Money::ZERO).collect())
}

/// An amount with no more decimals than the currency has.
pub(super) fn amount(
    desk: Desk<'_>,
    written: &Written<Money>,
    currency: Option<Currency>,
) -> Option<Money> {
    let amount = desk.bounded(written, &limits::PRICE)?;
    let exponent = currency.and_then(|currency| Some((currency, currency.exponent()?)));
    if let Some((currency, decimals)) = exponent
        && amount.amount().normalize().scale() > u32::from(decimals)
    {
        let kind = ProblemKind::MoneyDecimals { currency: currency.code(), decimals };
        desk.fault(written.node, kind);
        return None;
    }
    Some(amount)
}

use super::{Currency, Decimal, Money};
use rust_decimal::RoundingStrategy;
use std::num::NonZeroU32;

/// The smallest coin of a currency, by the decimals that ISO 4217 gives it. What is shared
/// out in whole coins can be paid, and adds up.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Coin {
    decimals: u32,
}

impl Coin {
    /// Of a currency; of a hundredth where ISO 4217 has no decimals for it.
    pub fn of(currency: Currency) -> Self {
        Self { decimals: currency.exponent().map_or(2, u32::from) }
    }

    /// Decimals of an amount in whole coins.
    pub fn decimals(self) -> u32 {
        self.decimals
    }

    /// The nearest whole number of coins, halves away from zero.
    pub fn nearest(self, amount: Money) -> Money {
        self.whole(amount.amount(), RoundingStrategy::MidpointAwayFromZero)
    }

    /// What each of `heads` pays so that together they pay the amount: the least whole number
    /// of coins that does.
    pub fn to_cover(self, amount: Money, heads: NonZeroU32) -> Money {
        let heads = Decimal::from(heads.get());
        let each = amount.amount().checked_div(heads).unwrap_or_default();
        let each = self.whole(each, RoundingStrategy::ToPositiveInfinity);
        // A quotient is cut off after 28 digits, which may hide that a coin more is needed.
        let coin = Decimal::new(1, self.decimals);
        match each.amount().checked_mul(heads) {
            Some(paid) if paid < amount.amount() => each + Money::new(coin),
            _ => each,
        }
    }

    /// Shares an amount out in proportion to weights, in whole coins: all shares are rounded
    /// down, then those with the largest remainders get a coin more (the earlier of equals).
    /// The shares add up to the amount exactly. Weights that are all zero count as equal;
    /// without weights there is nobody to share it.
    pub fn split(self, amount: Money, weights: &[u64]) -> Vec<Money> {
        // An amount finer than a coin is shared in its own finest part, so that none is lost.
        let scale = self.decimals.max(amount.amount().normalize().scale());
        let mut fine = amount.amount();
        fine.rescale(scale);
        let all: i128 = weights.iter().copied().map(i128::from).sum();
        let equal = vec![1; weights.len()];
        let (weights, all) =
            if all == 0 { (equal.as_slice(), equal.len() as i128) } else { (weights, all) };
        let mut parts: Vec<Part> =
            weights.iter().map(|weight| Part::of(fine.mantissa(), *weight, all)).collect();
        let mut missing = fine.mantissa() - parts.iter().map(|part| part.coins).sum::<i128>();
        let mut order: Vec<usize> = (0..parts.len()).collect();
        let remainder = |at: &usize| parts.get(*at).map_or(0, |part| part.remainder);
        order.sort_by_key(|at| std::cmp::Reverse(remainder(at)));
        for at in order {
            if let Some(part) = parts.get_mut(at).filter(|_| missing > 0) {
                part.coins += 1;
                missing -= 1;
            }
        }
        let money = |coins| Decimal::try_from_i128_with_scale(coins, scale).unwrap_or_default();
        parts.into_iter().map(|part| Money::new(money(part.coins))).collect()
    }

    fn whole(self, amount: Decimal, strategy: RoundingStrategy) -> Money {
        Money::new(amount.round_dp_with_strategy(self.decimals, strategy))
    }
}

/// A share rounded down, and what that left of a coin, in parts of the sum of weights.
struct Part {
    coins: i128,
    remainder: i128,
}

impl Part {
    /// `coins x weight / all` by long division: the product may not fit where both are large.
    fn of(coins: i128, weight: u64, all: i128) -> Self {
        let weight = i128::from(weight);
        let (whole, rest) = (coins.div_euclid(all), coins.rem_euclid(all));
        // `rest` and `weight` are at most `all`, a sum of weights.
        let part = rest.saturating_mul(weight);
        Self {
            coins: whole.saturating_mul(weight).saturating_add(part.div_euclid(all)),
            remainder: part.rem_euclid(all),
        }
    }
}
